// SPDX-License-Identifier: GPL-3.0-or-later
// A walk-in: alias and level of somebody new, or a member who is not on this class's list. Enter seats them.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Rectangle {
    id: panel
    required property DeskToday today
    property string level: "novice"
    readonly property bool fits: today.walkInPx <= 370
    radius: 10 * Theme.u
    color: Theme.card
    border.width: 2 * Theme.u
    border.color: Theme.pline

    function start(): void {
        field.forceActiveFocus(Qt.ShortcutFocusReason);
    }

    DeskText {
        id: title
        x: 20 * Theme.u
        y: 42 * Theme.u - baselineOffset
        size: Theme.desk.title
        font.bold: true
        text: qsTr("Walk-in")
    }
    KeyCap {
        anchors.left: title.right
        anchors.leftMargin: 20 * Theme.u
        anchors.verticalCenter: title.verticalCenter
        text: "A"
    }
    DeskText {
        anchors.right: parent.right
        anchors.rightMargin: 20 * Theme.u
        anchors.baseline: title.baseline
        font.bold: true
        text: panel.today.canSeat ? qsTr("for %1").arg(panel.today.classTime) : qsTr("check-in is not open")
    }
    DeskText {
        x: 20 * Theme.u
        y: 108 * Theme.u - baselineOffset
        color: Theme.pmute
        text: qsTr("Alias on the wall")
    }
    Rectangle {
        x: 202 * Theme.u
        y: 74 * Theme.u
        width: parent.width - x - 20 * Theme.u
        height: 54 * Theme.u
        radius: Theme.desk.radius * Theme.u
        color: Theme.paper
        border.width: (field.activeFocus ? 4 : 2) * Theme.u
        border.color: field.activeFocus ? Theme.ink : Theme.pline
        TextInput {
            id: field
            anchors.fill: parent
            anchors.leftMargin: 16 * Theme.u
            anchors.rightMargin: 16 * Theme.u
            verticalAlignment: TextInput.AlignVCenter
            activeFocusOnTab: true
            enabled: panel.today.canSeat
            maximumLength: 40
            clip: true
            color: Theme.ink
            font.family: Theme.plain
            font.bold: true
            font.pixelSize: Math.round(Theme.desk.head * Theme.u)
            Accessible.role: Accessible.EditableText
            Accessible.name: qsTr("Alias on the wall")
            Accessible.editable: true
            text: panel.today.walkIn
            onTextEdited: panel.today.walkIn = text
            Keys.onReturnPressed: seat.act()
            Keys.onEnterPressed: seat.act()
            Keys.onEscapePressed: {
                panel.today.walkIn = "";
                panel.forceActiveFocus();
            }
            Binding on text { value: panel.today.walkIn }
            MouseArea {
                anchors.fill: parent
                cursorShape: Qt.IBeamCursor
                onPressed: (mouse) => {
                    field.forceActiveFocus(Qt.MouseFocusReason);
                    field.cursorPosition = field.positionAt(mouse.x, mouse.y);
                }
            }
        }
    }
    DeskText {
        x: 202 * Theme.u
        y: 158 * Theme.u - baselineOffset
        color: Theme.pmute
        visible: panel.today.walkIn !== ""
        text: panel.fits ? qsTr("as the wall will show it: %1 of 370, fits").arg(panel.today.walkInPx) : qsTr("too wide for the wall: %1 of 370").arg(panel.today.walkInPx)
    }
    DeskText {
        x: 20 * Theme.u
        y: 212 * Theme.u - baselineOffset
        color: Theme.pmute
        text: qsTr("Level")
    }
    Row {
        x: 202 * Theme.u
        y: 178 * Theme.u
        spacing: 8 * Theme.u
        Repeater {
            model: [
                { id: "novice", word: qsTr("novice") },
                { id: "intermediate", word: qsTr("intermediate") },
                { id: "advanced", word: qsTr("advanced") }
            ]
            DeskKey {
                required property var modelData
                text: modelData.word
                strong: panel.level === modelData.id
                fill: strong ? Theme.ink : Theme.paper
                enabled: panel.today.canSeat
                onActed: panel.level = modelData.id
            }
        }
    }
    DeskKey {
        id: seat
        x: 202 * Theme.u
        y: 254 * Theme.u
        text: panel.today.classTime === "" ? qsTr("Seat") : qsTr("Seat at %1").arg(panel.today.classTime)
        name: qsTr("Seat")
        cap: ""
        enabled: panel.today.canSeat && panel.today.walkIn.trim() !== "" && panel.fits
        onActed: panel.today.seatNew(panel.level)
        KeyCap {
            anchors.left: parent.right
            anchors.leftMargin: 10 * Theme.u
            anchors.verticalCenter: parent.verticalCenter
            text: qsTr("Enter")
        }
    }
    Column {
        x: 20 * Theme.u
        y: 324 * Theme.u
        spacing: 8 * Theme.u
        DeskText {
            visible: panel.today.known.count > 0
            color: Theme.pmute
            text: qsTr("Known already, not on this list:")
        }
        Row {
            spacing: 8 * Theme.u
            Repeater {
                model: panel.today.known
                DeskKey {
                    required property string key
                    required property string alias
                    text: alias
                    name: qsTr("Seat %1").arg(alias)
                    onActed: panel.today.seatKnown(key)
                }
            }
        }
    }
    DeskText {
        x: 20 * Theme.u
        anchors.bottom: parent.bottom
        anchors.bottomMargin: 16 * Theme.u
        width: parent.width - 40 * Theme.u
        wrapMode: Text.Wrap
        text: panel.today.said
        font.bold: true
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }
}
