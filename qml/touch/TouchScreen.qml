// SPDX-License-Identifier: GPL-3.0-or-later
// The shared touch screen: one page at a time, as the visit says. Paper ground; all keys in the lower two thirds.
import QtQuick
import Floorwheel

Rectangle {
    id: screen
    color: Theme.paper
    /// Read by tests; pages forward every tap to it.
    readonly property TouchVisit visit: theVisit
    readonly property var files: ({
            none: "NonePage",
            arrive: "ArrivePage",
            everybody: "EverybodyPage",
            "new": "NewPage",
            question: "QuestionPage",
            spot: "SpotPage",
            hurts: "HurtsPage",
            "in": "InPage",
            who: "WhoPage",
            card: "CardPage",
            sets: "SetsPage",
            week: "WeekPage",
            stop: "StopPage"
        })
    property string shownPage

    function showPage(): void {
        if (shownPage === theVisit.page)
            return;
        shownPage = theVisit.page;
        loader.setSource(Qt.resolvedUrl(files[shownPage] + ".qml"), { visit: theVisit });
    }

    TouchVisit {
        id: theVisit
        onPageChanged: screen.showPage()
        Component.onCompleted: screen.showPage()
    }
    Loader {
        id: loader
        anchors.fill: parent
        focus: true
    }
}
