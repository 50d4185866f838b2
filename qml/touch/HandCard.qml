// SPDX-License-Identifier: GPL-3.0-or-later
// The set as planned in one large key, and beside it what may differ.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Item {
    id: hand
    required property TouchVisit visit
    readonly property TouchCard card: visit.card

    Key {
        id: asPlanned
        width: 560 * Theme.u
        height: 195 * Theme.u
        strong: true
        name: qsTr("As planned")
        note: hand.planText
        onActed: hand.visit.asPlanned()
        Column {
            anchors.centerIn: parent
            width: parent.width - 24 * Theme.u
            spacing: 4 * Theme.u
            TouchNote {
                width: parent.width
                horizontalAlignment: Text.AlignHCenter
                size: 70
                font.bold: true
                color: asPlanned.inkNow
                text: asPlanned.name
            }
            TouchNote {
                width: parent.width
                horizontalAlignment: Text.AlignHCenter
                size: 31
                color: asPlanned.inkNow
                text: hand.planText
            }
        }
    }
    readonly property string planText: {
        const c = card;
        if (c.hold)
            return c.plannedLoad === "" ? qsTr("%1 s held").arg(c.plannedReps) : qsTr("%1 kg, %2 s held").arg(c.plannedLoad).arg(c.plannedReps);
        const done = c.plannedLoad === "" ? (c.plannedReps === 1 ? qsTr("one repetition") : qsTr("%1 repetitions").arg(c.plannedReps)) : qsTr("%1 kg × %2").arg(c.plannedLoad).arg(c.plannedReps);
        return c.plannedRir >= 4 ? qsTr("%1, could have done 4 or more").arg(done) : qsTr("%1, could have done %2 more").arg(done).arg(c.plannedRir);
    }

    Stepper {
        visible: hand.card.loadLine
        y: 222 * Theme.u
        label: qsTr("Load")
        value: hand.card.load
        unit: qsTr("kg")
        canLess: hand.card.lighter
        canMore: hand.card.heavier
        onLess: hand.card.stepLoad(-1)
        onMore: hand.card.stepLoad(1)
    }
    TouchNote {
        visible: !hand.card.loadLine
        y: 247 * Theme.u
        size: 36
        color: Theme.pmute
        text: hand.card.plannedLoad === "" ? qsTr("No load here: own body") : qsTr("Load %1 kg").arg(hand.card.plannedLoad)
    }
    Stepper {
        y: 334 * Theme.u
        label: hand.card.hold ? qsTr("Seconds") : qsTr("Repetitions")
        value: hand.card.reps
        canLess: hand.card.fewer
        canMore: hand.card.more
        onLess: hand.card.stepReps(-1)
        onMore: hand.card.stepReps(1)
    }
    Key {
        x: 746 * Theme.u
        y: 222 * Theme.u
        width: 360 * Theme.u
        height: 207 * Theme.u
        strong: true
        text: qsTr("Keep this")
        textSize: 50
        onActed: hand.visit.keepThis()
    }
    Item {
        visible: !hand.card.hold
        y: 446 * Theme.u
        width: 1106 * Theme.u
        height: 95 * Theme.u
        TouchNote {
            anchors.verticalCenter: parent.verticalCenter
            size: 34
            text: qsTr("Could have done")
        }
        Repeater {
            model: 5
            Key {
                required property int index
                x: (276 + index * 121) * Theme.u
                width: (index < 4 ? 104 : 250) * Theme.u
                height: parent.height
                text: index < 4 ? index : qsTr("4 or more")
                name: index < 4 ? qsTr("Could have done %1 more").arg(index) : qsTr("Could have done 4 or more")
                textSize: 40
                strong: hand.card.rir === index
                onActed: hand.card.setRir(index)
            }
        }
        TouchNote {
            x: 1028 * Theme.u
            anchors.verticalCenter: parent.verticalCenter
            size: 34
            text: qsTr("more")
        }
    }
}
