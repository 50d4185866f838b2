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

    Loader {
        anchors.fill: parent
        focus: true
        visible: HubLink.everConnected
        // By file, so that a screen loads its own types only.
        source: ({
                wall: "wall/WallScreen.qml",
                touch: "touch/TouchScreen.qml",
                instructor: "instructor/InstructorScreen.qml",
                desk: "desk/DeskScreen.qml"
            })[ThisScreen.role]
    }
    NoHub {
        anchors.fill: parent
        visible: !HubLink.everConnected
    }
}
