// SPDX-License-Identifier: GPL-3.0-or-later
// Members on one of their first four visits and what we suggest to look at. A tap leads to the talk sheet.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent

    Said { leftAt: 20; base: 114; size: 25; font.bold: true; text: Instructor.newcomers.heading }
    Said { leftAt: 20; base: 160; size: 22; color: Theme.mute; text: Instructor.newcomers.empty }
    Repeater {
        model: Instructor.newcomers.members
        TrainingKey {
            required property int index
            required property var model
            x: (20 + 632 * (index % 2)) * Theme.u
            y: (128 + 174 * Math.floor(index / 2)) * Theme.u
            alias: model.alias
            aside: model.visit
            about: model.purpose
            line: model.where
            reason: model.more
            name: qsTr("%1, %2").arg(model.alias).arg(model.visit)
            onActed: Instructor.talk.open(model.member)
        }
    }
    Said {
        leftAt: 20
        base: 648
        size: 17
        text: qsTr("Suggestions, no medical advice. On pain: stop. What a licensed professional advises comes first.")
    }
    BesideBar {
        note: qsTr("to training")
        onWentBack: Instructor.training.open()
    }
    BarKey {
        at: 816
        wide: 210
        visible: Instructor.newcomers.pages > 1
        text: qsTr("Next page")
        note: Instructor.newcomers.pageText
        onActed: Instructor.newcomers.nextPage()
    }
}
