// SPDX-License-Identifier: GPL-3.0-or-later
// A member on a page of the training part: alias and load large, what it is about, why in up to two lines.
import QtQuick
import Floorwheel

Key {
    id: row
    property string alias
    property string aside
    property string about
    property string line
    property string reason
    width: 608 * Theme.u
    height: 150 * Theme.u
    note: qsTr("%1, %2. %3").arg(aside).arg(line).arg(reason)

    component Line: Text {
        x: 16 * Theme.u
        width: parent ? (parent as Item).width - 32 * Theme.u : 0
        elide: Text.ElideRight
        textFormat: Text.PlainText
        font.family: Theme.plain
        font.pixelSize: Math.round(20 * Theme.u)
    }
    Line {
        id: weight
        width: implicitWidth
        x: row.width - width - 16 * Theme.u
        y: 8 * Theme.u
        text: row.aside
        color: row.inkNow
        font.bold: true
        font.pixelSize: Math.round(27 * Theme.u)
    }
    Line {
        y: 3 * Theme.u
        width: weight.x - 32 * Theme.u
        text: row.alias
        fontSizeMode: Text.HorizontalFit // 40 characters at most; 24 px is enough for them
        minimumPixelSize: Math.round(24 * Theme.u)
        height: 40 * Theme.u
        verticalAlignment: Text.AlignVCenter
        color: row.inkNow
        font.family: Theme.narrow
        font.bold: true
        font.pixelSize: Math.round(34 * Theme.u)
    }
    Flow { // beside each other where there is room
        id: facts
        x: 16 * Theme.u
        y: 44 * Theme.u
        width: row.width - 32 * Theme.u
        spacing: 0
        Line {
            x: 0
            width: implicitWidth + 18 * Theme.u
            text: row.about
            color: row.inkNow
            font.bold: true
            font.pixelSize: Math.round(22 * Theme.u)
        }
        Line {
            x: 0
            width: implicitWidth
            height: 26 * Theme.u
            verticalAlignment: Text.AlignVCenter
            text: row.line
            color: row.inkNow
        }
    }
    Line {
        y: facts.y + facts.height
        text: row.reason
        color: row.pressed ? row.inkNow : Theme.mute
        wrapMode: Text.WordWrap
        maximumLineCount: facts.height > 40 * Theme.u ? 2 : 3
        lineHeight: 0.9
        font.pixelSize: Math.round(18 * Theme.u)
    }
}
