// SPDX-License-Identifier: GPL-3.0-or-later
// One line by our own keys: 24 letters, then Z and the rest on the bar; the other face has figures and signs.
// A keyboard, where there is one, writes too.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: page
    anchors.fill: parent
    focus: true
    Component.onCompleted: forceActiveFocus()
    Keys.onPressed: event => {
        if (event.key === Qt.Key_Backspace) {
            Instructor.pen.back();
        } else if (event.text !== "" && !(event.modifiers & (Qt.ControlModifier | Qt.AltModifier))) {
            Instructor.pen.type(event.text);
        } else {
            return;
        }
        event.accepted = true;
    }

    Said { leftAt: 20; base: 110; size: 20; font.bold: true; text: Instructor.pen.title }
    Said { rightAt: 1260; base: 110; size: 18; color: Theme.mute; text: Instructor.pen.waits ? qsTr("One moment …") : Instructor.pen.room }
    Rectangle {
        x: 20 * Theme.u
        y: 120 * Theme.u
        width: 1240 * Theme.u
        height: 66 * Theme.u
        radius: Theme.instructor.radius * Theme.u
        color: Theme.paper
        Text {
            x: 14 * Theme.u
            width: parent.width - 28 * Theme.u
            anchors.verticalCenter: parent.verticalCenter
            wrapMode: Text.WrapAtWordBoundaryOrAnywhere
            maximumLineCount: 2
            lineHeight: 0.9
            text: Instructor.pen.draft + "|"
            color: Theme.ink
            textFormat: Text.PlainText
            font.family: Theme.plain
            font.pixelSize: Math.round(24 * Theme.u)
            Accessible.role: Accessible.EditableText
            Accessible.name: qsTr("Written: %1").arg(Instructor.pen.draft)
        }
    }
    Repeater {
        model: Instructor.pen.keys
        Key {
            required property int index
            required property string modelData
            x: (20 + 158 * (index % 8)) * Theme.u
            y: (198 + 154 * Math.floor(index / 8)) * Theme.u
            width: 134 * Theme.u
            height: 130 * Theme.u
            text: modelData
            textSize: 46
            onActed: Instructor.pen.press(modelData)
        }
    }

    BarKey {
        at: 20
        visible: Instructor.flow.stage === "run"
        fill: Theme.heldColour
        ink: Theme.ink
        edge: Theme.heldColour
        text: qsTr("Hold")
        note: qsTr("the class")
        onActed: Instructor.flow.hold()
    }
    BarKey {
        at: 20
        visible: Instructor.flow.stage !== "run"
        text: qsTr("Leave as it is")
        textSize: 25
        onActed: Instructor.pen.leave()
    }
    BarKey {
        at: 174
        text: "Z"
        textSize: 46
        onActed: Instructor.pen.press("Z")
    }
    BarKey {
        at: 328
        text: Instructor.pen.letters ? qsTr("1 2 Q") : qsTr("A B C")
        note: Instructor.pen.letters ? qsTr("and signs") : ""
        name: Instructor.pen.letters ? qsTr("Figures and signs") : qsTr("Letters")
        noteSize: 18
        onActed: Instructor.pen.otherKeys()
    }
    BarKey {
        at: 482
        text: qsTr("Space")
        onActed: Instructor.pen.press(" ")
    }
    BarKey {
        at: 636
        text: qsTr("Erase")
        note: qsTr("one back")
        noteSize: 18
        onActed: Instructor.pen.back()
    }
    BarKey {
        at: 790
        wide: 236
        strong: enabled
        enabled: Instructor.pen.canKeep
        text: qsTr("Keep this")
        textSize: 34
        onActed: Instructor.pen.keep()
    }
}
