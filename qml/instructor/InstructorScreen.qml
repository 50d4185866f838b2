// SPDX-License-Identifier: GPL-3.0-or-later
// The instructor's screen: the head, the page that the flow names, and stop and help, which never leaves.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: screen

    function pageOf(name: string): string {
        switch (name) {
        case "classes": return "ClassesPage.qml";
        case "heads": return "HeadsPage.qml";
        case "floor": return "FloorPage.qml";
        case "proposal":
        case "start": return "ProposalPage.qml";
        case "compare": return "ComparePage.qml";
        case "run":
        case "held":
        case "ended": return "RunPage.qml";
        case "change": return "ChangePage.qml";
        case "pick": return "PickPage.qml";
        case "preview": return "PreviewPage.qml";
        case "end": return "EndPage.qml";
        case "stopped": return "StoppedPage.qml";
        case "training": return "TrainingPage.qml";
        case "talk": return "TalkPage.qml";
        case "write": return "WritePage.qml";
        case "new": return "NewcomersPage.qml";
        case "programmes": return "ProgrammesPage.qml";
        case "findings": return "FindingsPage.qml";
        default: return "ClassPage.qml";
        }
    }

    Loader {
        anchors.fill: parent
        source: screen.pageOf(Instructor.flow.page)
    }

    LiveHeader {
        anchors.fill: parent
        visible: Instructor.flow.live
    }
    Item {
        anchors.fill: parent
        visible: !Instructor.flow.live
        Said { leftAt: 20; base: 40; size: 31; font.bold: true; text: Instructor.flow.title }
        Said { leftAt: 20; base: 68; size: 20; color: Theme.mute; text: Instructor.flow.subtitle }
        Said { rightAt: 1260; base: 33; size: 31; font.family: Theme.narrow; font.bold: true; text: ClassTime.clockText }
        FourWords {
            x: 1252 * Theme.u - width
            y: 46 * Theme.u
            step: Instructor.flow.step
        }
    }
    Rectangle {
        x: 20 * Theme.u
        y: 81 * Theme.u
        width: 1240 * Theme.u
        height: Math.max(1, 2 * Theme.u)
        color: Theme.line
    }
    OnItsOwn {
        x: 330 * Theme.u
        y: 640 * Theme.u
        font.pixelSize: Math.round(16 * Theme.u)
    }
    Rectangle { // what was refused, and why
        visible: Instructor.flow.notice !== ""
        x: 20 * Theme.u
        y: 84 * Theme.u
        width: 1240 * Theme.u
        height: notice.height + 16 * Theme.u
        radius: Theme.instructor.radius * Theme.u
        color: Theme.paper
        Accessible.role: Accessible.AlertMessage
        Accessible.name: Instructor.flow.notice
        Text {
            id: notice
            x: 16 * Theme.u
            width: parent.width - 32 * Theme.u
            anchors.verticalCenter: parent.verticalCenter
            wrapMode: Text.WordWrap
            text: Instructor.flow.notice
            color: Theme.ink
            textFormat: Text.PlainText
            font.family: Theme.plain
            font.bold: true
            font.pixelSize: Math.round(20 * Theme.u)
        }
    }
    StopKey {}
}
