// SPDX-License-Identifier: GPL-3.0-or-later
// The shared touch screen: one page at a time, as the visit says. Paper ground; all keys in the lower two thirds.
pragma ComponentBehavior: Bound
import QtQuick
import Floorwheel

Rectangle {
    id: screen
    color: Theme.paper
    /// Read by tests; pages forward every tap to it.
    readonly property TouchVisit visit: theVisit

    TouchVisit { id: theVisit }

    Component { id: nonePage; NonePage { visit: theVisit } }
    Component { id: arrivePage; ArrivePage { visit: theVisit } }
    Component { id: everybodyPage; EverybodyPage { visit: theVisit } }
    Component { id: newPage; NewPage { visit: theVisit } }
    Component { id: questionPage; QuestionPage { visit: theVisit } }
    Component { id: spotPage; SpotPage { visit: theVisit } }
    Component { id: hurtsPage; HurtsPage { visit: theVisit } }
    Component { id: inPage; InPage { visit: theVisit } }
    Component { id: whoPage; WhoPage { visit: theVisit } }
    Component { id: cardPage; CardPage { visit: theVisit } }
    Component { id: setsPage; SetsPage { visit: theVisit } }
    Component { id: stopPage; StopPage {} }

    Loader {
        anchors.fill: parent
        focus: true
        sourceComponent: ({
                arrive: arrivePage,
                everybody: everybodyPage,
                "new": newPage,
                question: questionPage,
                spot: spotPage,
                hurts: hurtsPage,
                "in": inPage,
                who: whoPage,
                card: cardPage,
                sets: setsPage,
                stop: stopPage
            })[theVisit.page] ?? nonePage
    }
}
