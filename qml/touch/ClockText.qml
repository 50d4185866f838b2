// SPDX-License-Identifier: GPL-3.0-or-later
// The time of day at the upper right.
import QtQuick
import Floorwheel

CapText {
    x: 1880 * Theme.u - width
    base: 132
    cap: 60
    color: Theme.ink
    text: ClassTime.clockText
}
