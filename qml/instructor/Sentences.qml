// SPDX-License-Identifier: GPL-3.0-or-later
// A heading and what there is to say under it, one sentence after the other.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Column {
    id: sentences
    property string title
    property list<string> lines
    property color colour: Theme.paper
    property real size: 18
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
            width: sentences.width
            visible: text !== ""
            text: modelData
            wrapMode: Text.WordWrap
            color: sentences.colour
            textFormat: Text.PlainText
            font.family: Theme.plain
            font.pixelSize: Math.round(sentences.size * Theme.u)
        }
    }
}
