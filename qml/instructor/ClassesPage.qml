// SPDX-License-Identifier: GPL-3.0-or-later
// Every class of the timetable, paged.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent
    Said { leftAt: 20; base: 122; size: 30; font.bold: true; text: qsTr("Which class?") }
    Repeater {
        model: Instructor.classes.all
        Key {
            required property int index
            required property var model
            x: (20 + 422 * (index % 3)) * Theme.u
            y: (158 + 234 * Math.floor(index / 3)) * Theme.u
            width: 397 * Theme.u
            height: 210 * Theme.u
            fill: model.chosen ? Theme.paper : Theme.panel
            ink: model.chosen ? Theme.ink : Theme.paper
            text: qsTr("%1 %2").arg(model.time).arg(model.name)
            note: model.when === "" ? model.people : qsTr("%1, %2").arg(model.when).arg(model.people)
            onActed: Instructor.classes.choose(model.row)
        }
    }
    BarKey {
        at: 20
        wide: 190
        text: qsTr("Leave as it is")
        onActed: Instructor.flow.leave()
    }
    BarKey {
        at: 234
        wide: 190
        visible: Instructor.classes.pages > 1
        text: qsTr("Next classes")
        note: qsTr("page %1 of %2").arg(Instructor.classes.page + 1).arg(Instructor.classes.pages)
        onActed: Instructor.classes.nextPage()
    }
}
