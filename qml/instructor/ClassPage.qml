// SPDX-License-Identifier: GPL-3.0-or-later
// Which class do you take? The next one is proposed; two more and the whole timetable lie beside it.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent
    Said { leftAt: 20; base: 122; size: 30; font.bold: true; text: qsTr("Which class do you take?") }

    component Card: Key {
        id: card
        property string big
        property string corner
        property string middle
        property string low
        y: 158 * Theme.u
        width: 397 * Theme.u
        height: 200 * Theme.u
        Said { leftAt: 24; base: 57; size: 44; text: card.big; color: card.inkNow; font.family: Theme.narrow; font.bold: true }
        Said { rightAt: 372; base: 54; size: 22; text: card.corner; color: card.pressed ? card.inkNow : Theme.mute }
        Said {
            leftAt: 24
            base: 104
            size: 27
            width: 350 * Theme.u
            wrapMode: Text.WordWrap
            lineHeight: 0.9
            text: card.middle
            color: card.inkNow
            font.bold: true
        }
        Said { leftAt: 24; base: 180; size: 22; text: card.low; color: card.pressed ? card.inkNow : Theme.mute }
    }
    Repeater {
        model: Instructor.classes.others
        Card {
            required property int index
            required property var model
            readonly property int row: model.index
            x: (20 + 422 * index) * Theme.u
            big: model.time
            middle: model.name
            corner: model.when
            low: model.people
            name: qsTr("%1 %2").arg(model.time).arg(model.name)
            onActed: Instructor.classes.choose(model.row)
        }
    }
    Card {
        x: 864 * Theme.u
        visible: Instructor.classes.others.count > 0
        big: qsTr("Other")
        middle: qsTr("today or later")
        low: qsTr("from the timetable")
        name: qsTr("Other class")
        onActed: Instructor.flow.open("classes")
    }
    Rectangle {
        x: 20 * Theme.u
        y: (Instructor.classes.others.count > 0 ? 382 : 158) * Theme.u
        width: 1240 * Theme.u
        height: 254 * Theme.u
        radius: Theme.instructor.radius * Theme.u
        color: Theme.panel
        Said { id: time; leftAt: 24; base: 60; size: 54; text: Instructor.classes.bigTime; font.family: Theme.narrow; font.bold: true }
        Said { x: time.x + time.width + 24 * Theme.u; base: 56; size: 37; font.bold: true; text: Instructor.classes.bigName }
        Said { rightAt: 1216; base: 56; size: 24; text: Instructor.classes.bigWhen }
        Said { leftAt: 24; base: 114; size: 24; text: Instructor.classes.people }
        Said { leftAt: 24; base: 154; size: 24; text: Instructor.classes.plan }
        Said { leftAt: 24; base: 194; size: 24; color: Theme.mute; text: Instructor.flow.readyText }
    }
    BarKey {
        at: 20
        wide: 190
        text: qsTr("Training")
        note: qsTr("pain, progress, talks")
        noteSize: 18
        onActed: Instructor.training.open()
    }
    BarKey {
        at: 582
        wide: 444
        visible: Instructor.classes.bigTime !== ""
        strong: true
        text: Instructor.classes.bigTime
        note: qsTr("next: count heads")
        onActed: Instructor.classes.take()
    }
}
