// SPDX-License-Identifier: GPL-3.0-or-later
// After stop and help: the person first. Nothing here decides anything; the class waits.
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent
    Octagon { x: 20 * Theme.u; y: 112 * Theme.u; width: 200 * Theme.u }
    Said { leftAt: 256; base: 186; size: 64; font.family: Theme.narrow; font.bold: true; text: qsTr("Stop and help") }
    Said {
        leftAt: 256
        base: 290
        size: 84
        font.family: Theme.narrow
        font.bold: true
        text: Math.floor(Instructor.flow.sinceStop / 60) + ":" + String(Instructor.flow.sinceStop % 60).padStart(2, "0")
        Accessible.role: Accessible.StaticText
        Accessible.name: qsTr("Time since stop")
        Accessible.description: text
        id: since
    }
    Said { x: since.x + since.width + 20 * Theme.u; base: 290; size: 30; color: Theme.mute; text: qsTr("since stop") }
    Column {
        x: 20 * Theme.u
        y: 344 * Theme.u
        width: 1000 * Theme.u
        spacing: 18 * Theme.u
        Sentences {
            width: parent.width
            size: 26
            title: qsTr("The person first")
            lines: [qsTr("Follow the emergency arrangements of this house. You decide what is done; this screen only keeps the time.")]
        }
        Sentences {
            width: parent.width
            size: 26
            lines: Instructor.flow.emergency
        }
        Sentences {
            width: parent.width
            size: 22
            colour: Theme.mute
            lines: [
                Instructor.flow.live ? qsTr("The class clock stands still and every wall says so.") : qsTr("No class is running."),
                qsTr("When you say that it is over, the class is held. Nothing goes on by itself.")
            ]
        }
    }
}
