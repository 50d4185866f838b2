// SPDX-License-Identifier: GPL-3.0-or-later
// The present segment as a strip of marks, one a second (at most 40): run is thin, left is thick, a pointer
// stands between. Steps once a second; nothing in it is animated.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: strip
    property int secondsLong: ClassTime.secondsLong
    property int secondsLeft: ClassTime.secondsLeft
    /// Yellow when people go, blue otherwise; the word beside the strip says the same.
    property bool going: ClassTime.phase === "change" || ClassTime.phase === "lead-in"
    property color markLeft: going ? Theme.go : Theme.active
    property color markRun: Theme.line
    property color pointer: going ? Theme.go : Theme.paper
    readonly property int marks: Math.min(40, secondsLong)
    readonly property int marksLeft: secondsLong > 0 ? Math.min(marks, Math.ceil(secondsLeft * marks / secondsLong)) : 0
    readonly property real pitch: marks > 0 ? width / marks : 0
    readonly property real markWidth: Math.min(pitch * 0.62, 14 * Theme.u)
    implicitHeight: 66 * Theme.u

    Repeater {
        model: strip.marks
        Rectangle {
            required property int index
            readonly property bool gone: index < strip.marks - strip.marksLeft
            // Whole px: the software renderer leaves traces of a mark that ends between two.
            x: Math.round(index * strip.pitch)
            y: Math.round(strip.height * 0.70 - height / 2)
            width: Math.round(gone ? strip.pitch * 0.8 : strip.markWidth)
            height: Math.round(gone ? 5 * Theme.u : strip.height * 0.58)
            color: gone ? strip.markRun : strip.markLeft
        }
    }
    Triangle {
        visible: strip.marks > 0
        x: (strip.marks - strip.marksLeft) * strip.pitch - width / 2
        y: 0
        width: strip.height * 0.37
        colour: strip.pointer
    }
}
