// SPDX-License-Identifier: GPL-3.0-or-later
// One out of many, as large keys; what it is for stands above them.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent
    Said { leftAt: 20; base: 122; size: 30; font.bold: true; text: Instructor.picker.title }
    Said {
        leftAt: 20
        base: 200
        size: 24
        visible: Instructor.picker.empty
        text: qsTr("There is nothing to choose from.")
    }
    Repeater {
        model: Instructor.picker.options
        Key {
            id: option
            required property int index
            required property var model
            readonly property bool station: model.letter !== ""
            x: (20 + 210 * (index % 6)) * Theme.u
            y: (158 + 154 * Math.floor(index / 6)) * Theme.u
            width: 186 * Theme.u
            height: 130 * Theme.u
            name: station ? qsTr("%1, %2").arg(model.letter).arg(model.text) : model.text
            note: model.note
            onActed: Instructor.picker.pick(model.id)
            Column {
                anchors.centerIn: parent
                width: parent.width - 12 * Theme.u
                spacing: 4 * Theme.u
                LetterDisc {
                    visible: option.station
                    anchors.horizontalCenter: parent.horizontalCenter
                    diameter: 52
                    letter: option.model.letter
                    fill: option.inkNow
                    ink: option.faceNow
                }
                Text {
                    width: parent.width
                    horizontalAlignment: Text.AlignHCenter
                    wrapMode: Text.WordWrap
                    lineHeight: 0.9
                    text: option.model.text
                    color: option.inkNow
                    textFormat: Text.PlainText
                    font.family: Theme.narrow
                    font.bold: true
                    font.pixelSize: Math.round((option.station ? 22 : 27) * Theme.u)
                }
                Text {
                    width: parent.width
                    horizontalAlignment: Text.AlignHCenter
                    visible: text !== ""
                    wrapMode: Text.WordWrap
                    text: option.note
                    color: option.pressed ? option.inkNow : Theme.mute
                    textFormat: Text.PlainText
                    font.family: Theme.plain
                    font.pixelSize: Math.round(17 * Theme.u)
                }
            }
        }
    }
    BarKey {
        at: 20
        wide: 190
        visible: Instructor.flow.stage === "run"
        text: qsTr("Hold")
        note: qsTr("the class")
        onActed: Instructor.flow.hold()
    }
    BarKey {
        at: 234
        wide: 190
        text: qsTr("Leave as it is")
        onActed: Instructor.picker.leave()
    }
    BarKey {
        at: 448
        wide: 190
        visible: Instructor.picker.pages > 1
        text: qsTr("Next page")
        note: Instructor.picker.pageText
        onActed: Instructor.picker.nextPage()
    }
}
