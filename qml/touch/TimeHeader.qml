// SPDX-License-Identifier: GPL-3.0-or-later
// The ink strip over the pages of a class under way: the word for now, its clock, its marks, the outbox.
import QtQuick
import Floorwheel

Rectangle {
    id: strip
    required property TouchVisit visit
    readonly property bool runs: !visit.ended
    width: parent ? parent.width : 0
    height: 132 * Theme.u
    color: Theme.ink

    Rectangle { // held: a plate behind the word, as on the wall
        visible: ClassTime.held && strip.runs
        x: 24 * Theme.u
        y: 18 * Theme.u
        width: word.width + 32 * Theme.u
        height: 96 * Theme.u
        color: Theme.heldColour
    }
    CapText {
        id: word
        x: 40 * Theme.u
        base: 92
        cap: 52
        color: ClassTime.held && strip.runs ? Theme.ink : Theme.paper
        text: {
            if (!strip.runs)
                return qsTr("The class is over");
            if (ClassTime.held)
                return qsTr("Held");
            switch (ClassTime.phase) {
            case "show":
                return qsTr("Watch");
            case "warm-up":
                return qsTr("Warm-up");
            case "lead-in":
                return qsTr("First place");
            case "work":
                return qsTr("Work");
            case "change":
                return strip.visit.movesOneOn ? qsTr("Move one on") : qsTr("Next place");
            case "break":
                return ClassTime.lapBreak ? qsTr("Lap break") : qsTr("Break");
            case "cool-down":
                return qsTr("Cool-down");
            default:
                return "";
            }
        }
    }
    CapText {
        visible: strip.runs
        x: 640 * Theme.u - width
        base: 92
        cap: 52
        color: Theme.paper
        text: ClassTime.secondsLeft > 99 ? qsTr("%1 min").arg(Math.ceil(ClassTime.secondsLeft / 60)) : ClassTime.secondsLeft
    }
    TimeStrip {
        visible: strip.runs
        x: 690 * Theme.u
        y: 20 * Theme.u
        width: 480 * Theme.u
        height: 66 * Theme.u
    }
    TouchNote {
        x: 1880 * Theme.u - width
        y: (away.visible ? 22 : 44) * Theme.u
        size: 32
        color: Theme.paper
        text: qsTr("Recording stays open all day")
    }
    OnItsOwn {
        id: away
        x: 1880 * Theme.u - width
        y: 70 * Theme.u
        color: Theme.paper
        font.pixelSize: Math.round(28 * Theme.u)
    }
}
