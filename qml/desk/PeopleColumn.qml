// SPDX-License-Identifier: GPL-3.0-or-later
// A column of people: a tick for who is here, a ring for who is expected. Longer than the page, it is turned by
// wheel, Page Up and Page Down, and says which rows are seen.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: column
    property string heading
    property bool here: true
    property alias model: list.model
    property alias count: list.count
    property string chosen
    readonly property real rowHeight: 46 * Theme.u
    signal picked(string key)

    function move(by: int): void {
        const now = list.model.indexOf(chosen);
        const next = Math.max(0, Math.min(list.count - 1, now < 0 ? 0 : now + by));
        if (list.count > 0)
            picked(list.model.keyAt(next));
    }
    function show(key: string): void {
        list.positionViewAtIndex(list.model.indexOf(key), ListView.Contain);
    }

    DeskText {
        id: head
        size: Theme.desk.head - 2
        font.bold: true
        text: column.heading
    }
    DeskText {
        anchors.left: head.right
        anchors.leftMargin: 20 * Theme.u
        anchors.baseline: head.baseline
        visible: list.count > list.rowsSeen
        size: Theme.desk.note
        color: Theme.pmute
        text: qsTr("%1 to %2 of %3").arg(list.firstSeen + 1).arg(Math.min(list.count, list.firstSeen + list.rowsSeen)).arg(list.count)
    }
    ListView {
        id: list
        readonly property int rowsSeen: Math.floor(height / column.rowHeight)
        readonly property int firstSeen: Math.round(contentY / column.rowHeight)
        y: 44 * Theme.u
        width: parent.width
        // Whole rows only: a name cut in half reads as another name.
        height: Math.floor((parent.height - y) / column.rowHeight) * column.rowHeight
        clip: true
        interactive: count > rowsSeen
        boundsBehavior: Flickable.StopAtBounds
        snapMode: ListView.SnapToItem
        delegate: Item {
            id: row
            required property string key
            required property string alias
            required property string time
            required property string note
            readonly property bool chosen: column.chosen === key
            width: list.width
            height: column.rowHeight
            // Whole rows only; and on the software renderer a Shape is not cut off by its list.
            visible: y > list.contentY - 2 && y + height < list.contentY + list.height + 2

            Accessible.role: Accessible.ListItem
            Accessible.name: alias
            Accessible.description: column.here ? qsTr("here since %1").arg(time) : qsTr("expected")
            Accessible.selectable: true
            Accessible.selected: chosen
            Accessible.onPressAction: column.picked(row.key)

            Rectangle {
                anchors.fill: parent
                visible: row.chosen || area.pressed
                radius: Theme.desk.radius * Theme.u
                color: Theme.card
                border.width: 4 * Theme.u
                border.color: Theme.active
            }
            Tick {
                visible: column.here
                x: 6 * Theme.u
                anchors.verticalCenter: parent.verticalCenter
                width: 24 * Theme.u
                colour: Theme.ink
            }
            Rectangle {
                visible: !column.here
                x: 9 * Theme.u
                anchors.verticalCenter: parent.verticalCenter
                width: 18 * Theme.u
                height: width
                radius: width / 2
                color: "transparent"
                border.width: 3 * Theme.u
                border.color: Theme.ink
            }
            DeskText {
                id: aliasText
                x: 40 * Theme.u
                anchors.verticalCenter: parent.verticalCenter
                size: 26
                font.family: Theme.narrow
                font.bold: true
                text: row.alias
            }
            DeskText {
                id: timeText
                x: Math.max(150 * Theme.u, aliasText.x + aliasText.implicitWidth + 14 * Theme.u)
                anchors.verticalCenter: parent.verticalCenter
                color: Theme.pmute
                text: row.time
            }
            DeskText {
                x: column.here ? Math.max(timeText.x + 62 * Theme.u, timeText.x + timeText.implicitWidth + 10 * Theme.u) : timeText.x
                anchors.verticalCenter: parent.verticalCenter
                text: row.note
            }
            Rectangle {
                anchors.bottom: parent.bottom
                width: parent.width
                height: Math.max(1, Math.round(1.5 * Theme.u))
                visible: !row.chosen
                color: Theme.shade
            }
            MouseArea {
                id: area
                anchors.fill: parent
                onClicked: column.picked(row.key)
            }
        }
    }
}
