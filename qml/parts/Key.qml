// SPDX-License-Identifier: GPL-3.0-or-later
// A key for finger, mouse and keyboard: inverts while pressed, acts on release inside, takes no second tap
// within 250 ms, shows its focus. One accessible name, which is also how scripts and tests find it. Its face
// is text with an optional note below it, or whatever is placed inside.
import QtQuick
import Floorwheel

Item {
    id: key

    property string text
    property string note
    /// The accessible name; the text unless said otherwise.
    property string name: text
    /// Filled: the chosen one or the one main thing to do.
    property bool strong: false
    property color fill: strong ? (ThisScreen.inRoom ? Theme.go : Theme.ink) : Theme.keyFill
    property color ink: strong ? (ThisScreen.inRoom ? Theme.ink : Theme.paper) : Theme.text
    property color edge: strong ? fill : Theme.rule
    property real radius: (ThisScreen.inRoom ? Theme.instructor.radius : Theme.touch.radius) * Theme.u
    property real textSize: ThisScreen.inRoom ? Theme.instructor.mainKey : Theme.touch.key
    property real noteSize: ThisScreen.inRoom ? Theme.instructor.row : Theme.touch.note
    property bool bold: true
    property string family: Theme.plain
    /// As it is drawn now, for what is placed inside.
    readonly property bool pressed: area.pressed && area.containsMouse
    readonly property color faceNow: pressed ? ink : fill
    readonly property color inkNow: pressed ? fill : ink
    default property alias content: inside.data

    signal acted()

    // By keyboard or assistive technology: each press is meant.
    function act(): void {
        if (enabled)
            acted();
    }
    // By finger or mouse: a second tap within a quarter second is a bounce.
    function tap(): void {
        const now = Date.now();
        if (now - lastAct < Theme.sameKeyAgain && now >= lastAct)
            return;
        lastAct = now;
        acted();
    }
    property real lastAct: 0

    activeFocusOnTab: true // the chain passes over what is disabled or hidden by itself
    Accessible.role: Accessible.Button
    Accessible.name: name
    Accessible.description: note
    Accessible.focusable: true
    Accessible.onPressAction: key.act()
    Keys.onReturnPressed: (event) => { if (!event.isAutoRepeat) key.act(); }
    Keys.onEnterPressed: (event) => { if (!event.isAutoRepeat) key.act(); }
    Keys.onSpacePressed: (event) => { if (!event.isAutoRepeat) key.act(); }

    Rectangle {
        anchors.fill: parent
        radius: key.radius
        color: key.enabled ? key.faceNow : (ThisScreen.inRoom ? Theme.ink : Theme.shade)
        border.width: Math.max(1, Math.round(2 * Theme.u))
        border.color: key.edge
    }
    Rectangle { // focus, outside the edge so that it never hides the face
        anchors.fill: parent
        anchors.margins: -5 * Theme.u
        visible: key.activeFocus
        radius: key.radius + 5 * Theme.u
        color: "transparent"
        border.width: Math.max(2, Math.round(4 * Theme.u))
        border.color: ThisScreen.inRoom ? Theme.paper : Theme.active
    }
    Column {
        anchors.centerIn: parent
        width: parent.width - 24 * Theme.u
        visible: key.text !== "" && inside.children.length === 0
        Text {
            width: parent.width
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.WordWrap
            text: key.text
            textFormat: Text.PlainText
            color: key.enabled ? key.inkNow : Theme.quiet
            font.family: key.family
            font.bold: key.bold
            font.pixelSize: Math.round(key.textSize * Theme.u)
        }
        Text {
            width: parent.width
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.WordWrap
            visible: key.note !== ""
            text: key.note
            textFormat: Text.PlainText
            color: key.enabled ? key.inkNow : Theme.quiet
            font.family: Theme.plain
            font.pixelSize: Math.round(key.noteSize * Theme.u)
        }
    }
    Item {
        id: inside
        anchors.fill: parent
    }
    MouseArea {
        id: area
        anchors.fill: parent
        onClicked: key.tap() // on release inside; released outside it does nothing
        onPressed: key.forceActiveFocus(Qt.MouseFocusReason)
    }
}
