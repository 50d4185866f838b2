// SPDX-License-Identifier: GPL-3.0-or-later
// A key of the bar at the foot of the page: where it begins and how wide it is, in px of the drawn size.
import QtQuick
import Floorwheel

Key {
    property real at: 20
    property real wide: Theme.instructor.keyLeast
    x: at * Theme.u
    y: Theme.instructor.barTop * Theme.u
    width: wide * Theme.u
    height: (Theme.instructor.barBottom - Theme.instructor.barTop) * Theme.u
    textSize: strong ? 38 : 28
}
