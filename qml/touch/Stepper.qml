// SPDX-License-Identifier: GPL-3.0-or-later
// A number with large keys for less and more.
import QtQuick
import Floorwheel

Item {
    id: stepper
    property string label
    property string value
    property string unit
    property bool canLess: true
    property bool canMore: true
    signal less()
    signal more()
    height: 95 * Theme.u

    TouchNote {
        anchors.verticalCenter: parent.verticalCenter
        size: 36
        text: stepper.label
    }
    Key {
        id: lessKey
        x: 276 * Theme.u
        width: 121 * Theme.u
        height: stepper.height
        name: qsTr("Less %1").arg(stepper.label)
        enabled: stepper.canLess
        edge: enabled ? Theme.rule : Theme.shade
        onActed: stepper.less()
        Rectangle {
            anchors.centerIn: parent
            width: 40 * Theme.u
            height: 9 * Theme.u
            color: lessKey.enabled ? lessKey.inkNow : Theme.quiet
        }
    }
    Row {
        x: 397 * Theme.u
        width: 180 * Theme.u
        anchors.verticalCenter: parent.verticalCenter
        leftPadding: (width - number.width - unit.width) / 2
        Text {
            id: number
            text: stepper.value
            textFormat: Text.PlainText
            color: Theme.ink
            font.family: Theme.narrow
            font.bold: true
            font.pixelSize: Math.round(76 * Theme.u)
        }
        TouchNote {
            id: unit
            anchors.baseline: number.baseline
            size: 32
            leftPadding: text === "" ? 0 : 10 * Theme.u
            text: stepper.unit
        }
    }
    Key {
        id: moreKey
        x: 577 * Theme.u
        width: 121 * Theme.u
        height: stepper.height
        name: qsTr("More %1").arg(stepper.label)
        enabled: stepper.canMore
        edge: enabled ? Theme.rule : Theme.shade
        onActed: stepper.more()
        Rectangle {
            anchors.centerIn: parent
            width: 40 * Theme.u
            height: 9 * Theme.u
            color: moreKey.enabled ? moreKey.inkNow : Theme.quiet
        }
        Rectangle {
            anchors.centerIn: parent
            width: 9 * Theme.u
            height: 40 * Theme.u
            color: moreKey.enabled ? moreKey.inkNow : Theme.quiet
        }
    }
}
