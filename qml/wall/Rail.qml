// SPDX-License-Identifier: GPL-3.0-or-later
// The rail in pieces between neighbouring discs (and the gate), so that a step of the hand repaints only the
// piece it is on. In a ring changeover chevrons fill it instead.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: rail
    required property WallView view
    readonly property bool chevrons: view.rail === "chevrons"
    readonly property bool beads: view.rail === "beads"
    readonly property color tone: view.tone === "go" ? Theme.go : view.tone === "held" ? Theme.heldColour : Theme.active

    Rectangle { // bed of the chevrons
        visible: rail.chevrons
        x: 960 - 412
        y: 624 - 412
        width: 824
        height: 824
        radius: 412
        color: "transparent"
        border.width: 36
        border.color: Theme.bed
    }
    Repeater {
        model: Math.max(0, rail.view.railCuts.length - 1)
        RailPiece {
            required property int index
            visible: !rail.chevrons
            from: rail.view.railCuts[index] ?? 0
            to: rail.view.railCuts[index + 1] ?? 0
            hand: rail.view.rail === "plain" ? 360 : rail.view.hand
            beads: rail.beads
            tone: rail.tone
        }
    }
    ChevronRing {
        visible: rail.chevrons
        anchors.fill: parent
        view: rail.view
    }
}
