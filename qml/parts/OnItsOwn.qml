// SPDX-License-Identifier: GPL-3.0-or-later
// The quiet line of a screen whose hub is away: the class goes on, what is recorded waits. Empty while the hub
// is in touch and nothing waits. An item whose text changes is what assistive technology announces.
import QtQuick
import Floorwheel

Text {
    readonly property bool away: HubLink.everConnected && !HubLink.connected
    text: {
        const waits = HubLink.waiting === 0 ? "" : HubLink.waiting === 1 ? qsTr("Outbox: 1 waits for the hub, nothing is lost") : qsTr("Outbox: %1 wait for the hub, nothing is lost").arg(HubLink.waiting);
        if (!away)
            return waits;
        return waits === "" ? qsTr("On its own") : qsTr("On its own. %1").arg(waits);
    }
    visible: text !== ""
    textFormat: Text.PlainText
    color: Theme.text
    font.family: Theme.plain
    Accessible.role: Accessible.StaticText
    Accessible.name: text
}
