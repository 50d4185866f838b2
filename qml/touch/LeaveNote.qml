// SPDX-License-Identifier: GPL-3.0-or-later
// Says that the page goes by itself, and five seconds before that it does.
import QtQuick
import Floorwheel

TouchNote {
    required property TouchVisit visit
    size: 34
    font.bold: visit.warning
    color: visit.warning ? Theme.ink : Theme.pmute
    text: visit.warning ? qsTr("Leaves in 5 s: touch anywhere to stay") : qsTr("Leaves in 15 s without a touch")
    horizontalAlignment: Text.AlignRight
}
