// SPDX-License-Identifier: GPL-3.0-or-later
// The key of one person or one set: the station's disc, the label, and a tick (kept) or a bar (not done).
import QtQuick
import Floorwheel

Key {
    id: key
    property string letter
    property string mark
    property string label
    property real size: 44
    name: label
    note: mark === "kept" ? qsTr("kept") : mark === "not done" ? qsTr("not done") : ""

    LetterDisc {
        id: disc
        visible: key.letter !== ""
        diameter: 64
        fill: key.inkNow
        ink: key.faceNow
        letter: key.letter
        x: 22 * Theme.u
        anchors.verticalCenter: parent.verticalCenter
    }
    Text {
        x: (key.letter !== "" ? 104 : 26) * Theme.u
        width: (key.mark !== "" ? sign.x : key.width) - x - 12 * Theme.u
        anchors.verticalCenter: parent.verticalCenter
        text: key.label
        textFormat: Text.PlainText
        wrapMode: Text.WordWrap
        lineHeight: 0.8
        maximumLineCount: 2
        color: key.inkNow
        font.family: Theme.narrow
        font.bold: true
        font.pixelSize: Math.round(key.size * Theme.u)
    }
    Item {
        id: sign
        x: key.width - 64 * Theme.u
        width: 44 * Theme.u
        height: parent.height
        Tick {
            visible: key.mark === "kept"
            anchors.centerIn: parent
            width: 44 * Theme.u
            colour: key.inkNow
        }
        Rectangle {
            visible: key.mark === "not done"
            anchors.centerIn: parent
            width: 34 * Theme.u
            height: 7 * Theme.u
            radius: height / 2
            color: key.inkNow
        }
    }
}
