// SPDX-License-Identifier: GPL-3.0-or-later
// Where it hurts: keys beside two plain figures. The answer goes to the instructor alone and names no cause.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    required property TouchVisit visit
    readonly property real keysTop: 360
    readonly property real pitch: 112

    CapText {
        x: 40 * Theme.u
        base: 110
        cap: 54
        text: qsTr("Stop. Where does it hurt, %1?").arg(page.visit.alias)
    }
    TouchNote {
        x: 40 * Theme.u
        y: 140 * Theme.u
        width: 1840 * Theme.u
        size: 35
        text: qsTr("Tap the nearest word. Only the instructor sees it. This screen names no cause: ask the instructor before you go on.")
    }
    TouchRule {
        x: 40 * Theme.u
        y: 240 * Theme.u
        width: 1840 * Theme.u
    }
    TouchNote {
        x: 472 * Theme.u - width / 2
        y: 262 * Theme.u
        size: 36
        font.bold: true
        text: qsTr("Front of the body")
    }
    TouchNote {
        x: 1448 * Theme.u - width / 2
        y: 262 * Theme.u
        size: 36
        font.bold: true
        text: qsTr("Back of the body")
    }
    PlainFigure {
        x: 322 * Theme.u
        y: 356 * Theme.u
    }
    PlainFigure {
        x: 1298 * Theme.u
        y: 356 * Theme.u
        back: true
    }

    // Spots by their place on a figure of 300 by 560; key: column x and row of the page.
    Repeater {
        model: [
            { group: "shoulders", word: qsTr("Shoulders"), x: 40, row: 0, fx: 82, fy: 116, figure: 322 },
            { group: "biceps", word: qsTr("Front of upper arm"), x: 40, row: 1, fx: 68, fy: 180, figure: 322 },
            { group: "forearms", word: qsTr("Forearm, wrist"), x: 40, row: 2, fx: 52, fy: 270, figure: 322 },
            { group: "hip_flexors", word: qsTr("Front of hip"), x: 40, row: 3, fx: 112, fy: 338, figure: 322 },
            { group: "quadriceps", word: qsTr("Front of thigh"), x: 40, row: 4, fx: 118, fy: 430, figure: 322 },
            { group: "chest", word: qsTr("Chest"), x: 642, row: 0, fx: 182, fy: 136, figure: 322 },
            { group: "serratus", word: qsTr("Side of ribs"), x: 642, row: 1, fx: 206, fy: 186, figure: 322 },
            { group: "abs", word: qsTr("Front of trunk"), x: 642, row: 2, fx: 154, fy: 232, figure: 322 },
            { group: "obliques", word: qsTr("Side of trunk"), x: 642, row: 3, fx: 192, fy: 272, figure: 322 },
            { group: "adductors", word: qsTr("Inside of thigh"), x: 642, row: 4, fx: 160, fy: 404, figure: 322 },
            { group: "shin", word: qsTr("Shin, front of ankle"), x: 341, row: 5.36, fx: 128, fy: 508, figure: 322 },
            { group: "neck", word: qsTr("Neck"), x: 1016, row: 0, fx: 142, fy: 88, figure: 1298 },
            { group: "rotator_cuff", word: qsTr("Deep in the shoulder"), x: 1016, row: 1, fx: 88, fy: 126, figure: 1298 },
            { group: "triceps", word: qsTr("Back of upper arm"), x: 1016, row: 2, fx: 66, fy: 190, figure: 1298 },
            { group: "abductors", word: qsTr("Outside of hip"), x: 1016, row: 3, fx: 102, fy: 334, figure: 1298 },
            { group: "hamstrings", word: qsTr("Back of thigh"), x: 1016, row: 4, fx: 118, fy: 430, figure: 1298 },
            { group: "upper_back", word: qsTr("Upper back"), x: 1618, row: 0, fx: 172, fy: 130, figure: 1298 },
            { group: "lats", word: qsTr("Broad back"), x: 1618, row: 1, fx: 192, fy: 196, figure: 1298 },
            { group: "lower_back", word: qsTr("Lower back"), x: 1618, row: 2, fx: 162, fy: 270, figure: 1298 },
            { group: "glutes", word: qsTr("Buttocks"), x: 1618, row: 3, fx: 184, fy: 330, figure: 1298 },
            { group: "calves", word: qsTr("Calf, heel"), x: 1618, row: 4, fx: 178, fy: 492, figure: 1298 }
        ]
        SpotKey {
            required property var modelData
            visit: page.visit
            x: modelData.x * Theme.u
            y: (page.keysTop + modelData.row * page.pitch) * Theme.u
            group: modelData.group
            word: modelData.word
            at: Qt.point(modelData.figure + modelData.fx - modelData.x, 356 + modelData.fy - page.keysTop - modelData.row * page.pitch)
        }
    }

    Key {
        x: 40 * Theme.u
        y: 960 * Theme.u
        width: 262 * Theme.u
        height: 95 * Theme.u
        fill: Theme.paper
        text: qsTr("Back")
        textSize: 36
        onActed: page.visit.back()
    }
    Key {
        x: 1618 * Theme.u
        y: 960 * Theme.u
        width: 262 * Theme.u
        height: 95 * Theme.u
        fill: Theme.paper
        text: qsTr("Somewhere else")
        textSize: 32
        onActed: page.visit.hurtsAt("")
    }
    LeaveNote {
        x: 1590 * Theme.u - width
        y: 984 * Theme.u
        size: 30
        visit: page.visit
    }
}
