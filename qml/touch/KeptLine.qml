// SPDX-License-Identifier: GPL-3.0-or-later
// What was kept last, without a value, with its undo; the line goes by itself. Its text is what assistive
// technology announces.
import QtQuick
import Floorwheel

Item {
    id: line
    required property TouchVisit visit
    readonly property TouchKept kept: visit.kept
    readonly property bool shown: kept.what !== ""
    /// Room for the undo key at the right end.
    property real keyWidth: 270
    height: 97 * Theme.u

    Tick {
        visible: line.kept.what === "record" || line.kept.what === "check_in"
        x: 4 * Theme.u
        anchors.verticalCenter: parent.verticalCenter
        width: 46 * Theme.u
    }
    Column {
        visible: line.shown
        x: 66 * Theme.u
        width: line.width - x - (line.kept.undoable ? line.keyWidth + 24 : 0) * Theme.u
        anchors.verticalCenter: parent.verticalCenter
        TouchNote {
            id: said
            width: parent.width
            size: 34
            font.bold: true
            text: {
                switch (line.kept.what) {
                case "record":
                    return qsTr("Kept: %1").arg(line.kept.alias);
                case "not_done":
                    return qsTr("Kept as not done: %1").arg(line.kept.alias);
                case "check_in":
                    return qsTr("In: %1").arg(line.kept.alias);
                case "undone":
                    return qsTr("Taken back: %1").arg(line.kept.alias);
                case "refused":
                    return qsTr("Not kept, tell the instructor: %1").arg(line.kept.alias);
                default:
                    return "";
                }
            }
            Accessible.role: Accessible.StaticText
            Accessible.name: text
        }
        TouchNote {
            width: parent.width
            size: 32
            visible: text !== ""
            text: {
                if (line.kept.what === "refused")
                    return line.kept.trouble;
                if (line.kept.what === "undone" || line.kept.alias !== line.visit.card.alias)
                    return "";
                return line.kept.what === "check_in" ? "" : nextPlace.text;
            }
        }
    }
    NextPlace {
        id: nextPlace
        visible: false
        card: line.visit.card
    }
    Key {
        visible: line.kept.undoable
        x: line.width - width
        width: line.keyWidth * Theme.u
        height: line.height
        text: qsTr("Undo")
        textSize: 40
        onActed: line.kept.undo()
    }
}
