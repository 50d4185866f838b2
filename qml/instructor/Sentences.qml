// SPDX-License-Identifier: GPL-3.0-or-later
// A heading and what there is to say under it, one sentence after the other. What does not fit in `room` ends in
// an ellipsis or is left out: the last sentences say the least.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Column {
    id: sentences
    property string title
    property list<string> lines
    property color colour: Theme.paper
    property real size: 18
    property real room: 1e6
    visible: title !== "" || lines.length > 0
    Text {
        width: parent.width
        visible: text !== ""
        text: sentences.title
        wrapMode: Text.WordWrap
        color: Theme.paper
        textFormat: Text.PlainText
        font.family: Theme.plain
        font.bold: true
        font.pixelSize: Math.round((sentences.size + 1) * Theme.u)
    }
    Repeater {
        model: sentences.lines
        Text {
            required property string modelData
            readonly property bool fits: y + 1.5 * font.pixelSize <= sentences.room
            width: sentences.width
            height: fits ? Math.min(implicitHeight, sentences.room - y) : 0
            visible: modelData !== ""
            text: fits ? modelData : ""
            elide: Text.ElideRight
            wrapMode: Text.WordWrap
            color: sentences.colour
            textFormat: Text.PlainText
            font.family: Theme.plain
            font.pixelSize: Math.round(sentences.size * Theme.u)
        }
    }
}
