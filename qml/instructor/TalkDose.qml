// SPDX-License-Identifier: GPL-3.0-or-later
// Done of planned sets this week, a row a muscle group: filled what was done, outlined what was planned. Word
// and number stand beside it; full is not praise.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: dose
    readonly property real pitch: Math.min(29, 452 / Math.max(1, Instructor.talk.groups.count))
    readonly property real letters: Math.min(20, pitch - 4)
    Said { base: 21; size: 21; font.bold: true; text: qsTr("This week: sets done of planned") }
    Said {
        base: 52
        size: 20
        color: Theme.mute
        visible: Instructor.talk.ready && Instructor.talk.groups.count === 0
        text: qsTr("No sets yet.")
    }
    Repeater {
        model: Instructor.talk.groups
        Item {
            id: row
            required property int index
            required property string group
            required property string amount
            required property string band
            required property real donePart
            required property real plannedPart
            y: (34 + dose.pitch * index) * Theme.u
            width: dose.width
            height: dose.pitch * Theme.u
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1: %2, %3").arg(group).arg(amount).arg(band)
            Said { base: 20; size: dose.letters; text: row.group }
            Rectangle {
                x: 128 * Theme.u
                y: 6 * Theme.u
                width: 104 * Theme.u * row.plannedPart
                height: (dose.pitch - 9) * Theme.u
                visible: row.plannedPart > 0
                color: "transparent"
                border.width: Math.max(1, 2 * Theme.u)
                border.color: Theme.mute
            }
            Rectangle {
                x: 128 * Theme.u
                y: 10 * Theme.u
                width: 104 * Theme.u * row.donePart
                height: (dose.pitch - 17) * Theme.u
                color: Theme.paper
            }
            Said { leftAt: 242; base: 20; size: dose.letters; font.bold: true; text: row.amount }
            Said { rightAt: 384; base: 20; size: dose.letters - 1; color: Theme.mute; text: row.band }
        }
    }
}
