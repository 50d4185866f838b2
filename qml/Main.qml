// SPDX-License-Identifier: GPL-3.0-or-later
// The window: the screen of this role; before the first contact with a hub, what is missing and what happens.
import QtQuick
import QtQuick.Window
import Floorwheel

Window {
    id: window
    width: ThisScreen.designWidth
    height: ThisScreen.designHeight
    title: qsTr("Floorwheel")
    color: Theme.ground

    Binding { target: Theme; property: "windowWidth"; value: window.width }
    Binding { target: Theme; property: "windowHeight"; value: window.height }

    Component { id: wall; WallScreen {} }
    Component { id: touch; TouchScreen {} }
    Component { id: instructor; InstructorScreen {} }
    Component { id: desk; DeskScreen {} }

    Loader {
        anchors.fill: parent
        focus: true
        visible: HubLink.everConnected
        sourceComponent: ({ wall: wall, touch: touch, instructor: instructor, desk: desk })[ThisScreen.role]
    }
    NoHub {
        anchors.fill: parent
        visible: !HubLink.everConnected
    }
}
