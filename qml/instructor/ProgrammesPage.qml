// SPDX-License-Identifier: GPL-3.0-or-later
// The programmes that lie beside the hub's database, as keys: a tap checks one.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent

    Said { leftAt: 20; base: 114; size: 25; font.bold: true; text: qsTr("Which programme is checked?") }
    Said { leftAt: 20; base: 160; size: 22; color: Theme.mute; width: 1240 * Theme.u; wrapMode: Text.WordWrap; text: Instructor.programmes.namesEmpty }
    Repeater {
        model: Instructor.programmes.names
        Key {
            required property int index
            required property var model
            x: (20 + 422 * (index % 3)) * Theme.u
            y: (140 + 172 * Math.floor(index / 3)) * Theme.u
            width: 396 * Theme.u
            height: 148 * Theme.u
            text: model.name
            onActed: Instructor.programmes.check(model.name)
        }
    }
    BesideBar {
        note: qsTr("to training")
        onWentBack: Instructor.training.open()
    }
    BarKey {
        at: 816
        wide: 210
        visible: Instructor.programmes.namePages > 1
        text: qsTr("Next page")
        note: Instructor.programmes.namePageText
        onActed: Instructor.programmes.nextNames()
    }
}
