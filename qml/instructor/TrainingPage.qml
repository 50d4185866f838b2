// SPDX-License-Identifier: GPL-3.0-or-later
// Beside the class: whose last visit notes pain, who makes no progress. A tap leads to the talk sheet.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent

    Said { leftAt: 20; base: 114; size: 25; font.bold: true; text: Instructor.training.painHeading }
    Said { leftAt: 652; base: 114; size: 25; font.bold: true; text: Instructor.training.stallHeading }
    Said { leftAt: 20; base: 160; size: 22; color: Theme.mute; text: Instructor.training.painEmpty }
    Said { leftAt: 652; base: 160; size: 22; color: Theme.mute; text: Instructor.training.stallEmpty }
    Repeater {
        model: Instructor.training.pain
        TrainingKey {
            required property int index
            required property var model
            x: 20 * Theme.u
            y: (128 + 174 * index) * Theme.u
            alias: model.alias
            aside: model.load
            about: model.exercise
            line: model.line
            reason: model.reason
            name: qsTr("Pain: %1, %2").arg(model.alias).arg(model.exercise)
            onActed: Instructor.talk.open(model.member)
        }
    }
    Repeater {
        model: Instructor.training.stalls
        TrainingKey {
            required property int index
            required property var model
            x: 652 * Theme.u
            y: (128 + 174 * index) * Theme.u
            alias: model.alias
            aside: model.load
            about: model.exercise
            line: model.line
            reason: model.reason
            name: qsTr("No progress: %1, %2").arg(model.alias).arg(model.exercise)
            onActed: Instructor.talk.open(model.member)
        }
    }
    Said {
        leftAt: 20
        base: 648
        size: 17
        text: qsTr("Pain: stop the exercise and ask. What a licensed professional advises comes first. This is no diagnosis and no medical advice.")
    }
    BesideBar {
        note: qsTr("to the class")
        onWentBack: Instructor.flow.leave()
    }
    BarKey {
        at: 368
        wide: 200
        text: qsTr("New members")
        note: qsTr("first four visits")
        textSize: 25
        onActed: Instructor.newcomers.open()
    }
    BarKey {
        at: 592
        wide: 200
        text: qsTr("Programmes")
        note: qsTr("check one")
        textSize: 25
        onActed: Instructor.programmes.open()
    }
    BarKey {
        at: 816
        wide: 210
        visible: Instructor.training.pages > 1
        text: qsTr("Next page")
        note: Instructor.training.pageText
        onActed: Instructor.training.nextPage()
    }
}
