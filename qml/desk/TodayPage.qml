// SPDX-License-Identifier: GPL-3.0-or-later
// Today: the classes on the left, the chosen one's people in the middle, walk-ins and the last check-ins right.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

FocusScope {
    id: page

    DeskToday { id: today }

    function pick(key: string): void {
        today.chosenMember = key;
        here.show(key);
        expected.show(key);
    }
    Keys.onUpPressed: (today.canUndo ? here : expected).move(-1)
    Keys.onDownPressed: (today.canUndo ? here : expected).move(1)
    Keys.onLeftPressed: here.move(0)
    Keys.onRightPressed: expected.move(0)

    DeskText {
        id: title
        x: 28 * Theme.u
        y: 50 * Theme.u - baselineOffset
        size: Theme.desk.title
        font.bold: true
        text: qsTr("Today")
    }
    DeskText {
        anchors.left: title.right
        anchors.leftMargin: 24 * Theme.u
        anchors.baseline: title.baseline
        color: Theme.pmute
        text: today.dateText
    }
    DeskText {
        anchors.right: parent.right
        anchors.rightMargin: 28 * Theme.u
        anchors.baseline: title.baseline
        color: Theme.pmute
        visible: !away.visible
        text: qsTr("hub in touch")
    }
    OnItsOwn {
        id: away
        anchors.right: parent.right
        anchors.rightMargin: 28 * Theme.u
        anchors.baseline: title.baseline
        font.pixelSize: Math.round(Theme.desk.row * Theme.u)
        font.bold: true
    }

    DeskText {
        x: 28 * Theme.u
        y: 103 * Theme.u - baselineOffset
        size: Theme.desk.head - 2
        font.bold: true
        text: qsTr("Classes")
    }
    ListView {
        id: cards
        x: 28 * Theme.u
        y: 123 * Theme.u
        width: 501 * Theme.u
        height: 822 * Theme.u
        spacing: 11 * Theme.u
        clip: true
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds
        model: today.classes
        delegate: ClassCard {
            id: card
            required property string state
            standing: state
            chosen: key === today.chosenClass
            onActed: today.chosenClass = key
        }
    }
    DeskText {
        x: 28 * Theme.u
        y: 976 * Theme.u - baselineOffset
        size: Theme.desk.note
        color: Theme.pmute
        text: cards.count === 0 ? qsTr("no class in the hub yet: floorwheel tell class.add") : qsTr("filled: here; hollow: expected")
    }
    Rectangle {
        x: 551 * Theme.u
        y: 88 * Theme.u
        width: 2 * Theme.u
        height: 896 * Theme.u
        color: Theme.pline
    }

    DeskText {
        x: 575 * Theme.u
        y: 103 * Theme.u - baselineOffset
        width: 633 * Theme.u
        size: 28
        font.family: Theme.narrow
        font.bold: true
        text: today.classTitle
    }
    PeopleColumn {
        id: here
        x: 575 * Theme.u
        y: 122 * Theme.u
        width: 333 * Theme.u
        height: 862 * Theme.u
        heading: qsTr("Here: %1").arg(count)
        model: today.here
        chosen: today.chosenMember
        onPicked: (key) => page.pick(key)
    }
    PeopleColumn {
        id: expected
        x: 938 * Theme.u
        y: 122 * Theme.u
        width: 250 * Theme.u
        height: 640 * Theme.u
        heading: qsTr("Expected: %1").arg(count)
        here: false
        model: today.expected
        chosen: today.chosenMember
        onPicked: (key) => page.pick(key)
    }
    Column {
        x: 945 * Theme.u
        y: 786 * Theme.u
        spacing: 8 * Theme.u
        DeskText {
            font.bold: true
            text: today.chosenAlias === "" ? qsTr("Choose a name (mouse, arrows)") : qsTr("Chosen: %1").arg(today.chosenAlias)
        }
        DeskKey {
            text: qsTr("Check in")
            cap: "I"
            enabled: today.canCheckIn
            onActed: today.checkIn(today.chosenMember)
        }
        DeskKey {
            text: qsTr("Not here")
            cap: "N"
            enabled: today.canUndo
            onActed: today.undo(today.chosenMember)
        }
        DeskKey { // at the member's own word: the touch screen is everybody's
            text: today.pageShown ? qsTr("Hide own week") : qsTr("Show own week")
            cap: "P"
            enabled: today.canShowPage
            onActed: today.showPage(today.chosenMember, !today.pageShown)
        }
    }
    WalkIn {
        id: walkIn
        x: 1228 * Theme.u
        y: 78 * Theme.u
        width: 672 * Theme.u
        height: 500 * Theme.u
        today: today
    }
    Shortcut {
        sequence: "A"
        enabled: page.visible
        onActivated: walkIn.start()
    }
    LastPanel {
        x: 1228 * Theme.u
        y: 602 * Theme.u
        width: 672 * Theme.u
        height: 382 * Theme.u
        today: today
    }
}
