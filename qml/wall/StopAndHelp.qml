// SPDX-License-Identifier: GPL-3.0-or-later
// Stop and help: the wheel is gone; the site's own words, an octagon, the time since the stop.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: help
    required property WallView view

    component Line: Text {
        property real base
        property real cap: 75
        y: base - baselineOffset
        textFormat: Text.PlainText
        color: Theme.paper
        font.family: Theme.narrow
        font.hintingPreference: Font.PreferNoHinting
        font.bold: true
        font.pixelSize: Math.round(cap / Theme.capOfEm)
    }

    Line {
        anchors.horizontalCenter: parent.horizontalCenter
        base: 182
        cap: Theme.wall.word
        text: help.view.headline
        Accessible.role: Accessible.AlertMessage
        Accessible.name: text
    }
    Octagon {
        x: 659
        y: 289
        width: 602
        height: 602
        edgeWidth: 24
        fill: Theme.paper
    }
    Line {
        anchors.horizontalCenter: parent.horizontalCenter
        base: 484
        cap: 57
        color: Theme.ink
        text: qsTr("weights down")
    }
    Line {
        anchors.horizontalCenter: parent.horizontalCenter
        base: 661
        cap: Theme.wall.word
        color: Theme.ink
        text: help.view.sinceStop
    }
    Line {
        anchors.horizontalCenter: parent.horizontalCenter
        base: 747
        cap: 47
        font.bold: false
        color: Theme.ink
        text: qsTr("since stop")
    }
    Repeater {
        model: help.view.emergency
        Item {
            id: entry
            required property int index
            required property var modelData
            readonly property bool atLeft: index < 2
            y: index % 2 === 0 ? 0 : 290
            width: help.width

            Line {
                id: head
                x: entry.atLeft ? 40 : 1880 - width
                base: 400
                cap: Theme.wall.near
                font.bold: false
                color: Theme.mute
                text: entry.modelData.head
            }
            Line {
                x: entry.atLeft ? 40 : 1880 - width
                base: 512
                cap: Theme.wall.emergency
                text: entry.modelData.text
            }
            Rectangle {
                x: entry.atLeft ? 38 : 1338
                y: 548
                width: 544
                height: 4
                radius: 2
                color: Theme.line
            }
            Rectangle { // the first-aid sign: a white cross on green
                visible: entry.modelData.firstAid
                x: head.x + (entry.atLeft ? head.width + 31 : -86)
                y: 350
                width: 58
                height: 58
                radius: 5
                color: Theme.aid
                Rectangle { x: 23; y: 9; width: 12; height: 40; color: Theme.card }
                Rectangle { x: 9; y: 23; width: 40; height: 12; color: Theme.card }
            }
        }
    }
    Line {
        anchors.horizontalCenter: parent.horizontalCenter
        base: 1048
        cap: Theme.wall.alias
        text: help.view.keep
    }
}
