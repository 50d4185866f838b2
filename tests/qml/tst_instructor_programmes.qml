// SPDX-License-Identifier: GPL-3.0-or-later
// The programme check on the instructor's screen against a real hub with programme files in its data folder:
// names, findings, a file that cannot be read.
import QtQuick
import QtTest
import Floorwheel
import FloorwheelTest

Item {
    id: page
    width: 1280
    height: 800

    Rectangle { // the window's ground, for the pictures
        anchors.fill: parent
        color: Theme.ground
    }
    InstructorScreen {
        anchors.fill: parent
        focus: true
    }

    InstructorCase {
        name: "InstructorProgrammes"
        shown: page

        function initTestCase(): void {
            tryVerify(() => HubLink.connected, 30000);
        }

        function test_a_programme_is_checked(): void {
            tap("Training");
            tap("Programmes");
            sees("No file NAME.programme.toml lies in the folder 'programmes' of the hub's data folder.");
            keysAreFit();
            tap("Back");
            verify(TestHub.writeProgramme("heavy", "tests/kiosk/files/programmes/14-to-failure.programme.toml"));
            verify(TestHub.writeProgramme("two-evenings", "tests/kiosk/files/programmes/01-two-full-body-days.programme.toml"));
            verify(TestHub.writeProgramme("rounds", "tests/kiosk/files/programmes/18-circuits.programme.toml"));
            verify(TestHub.writeProgramme("torn", "tests/kiosk/files/programmes/14-to-failure.programme.toml", 60));
            tap("Programmes");
            control("two-evenings");
            keysAreFit();
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-programmes"), "");
            tap("heavy");
            const findings = TestHub.ask("programme.check", { "name": "heavy" }).findings;
            verify(findings.some(f => f.severity === "must"));
            sees("To the last one");
            const grave = findings.find(f => f.severity === "must");
            sees("Must change");
            sees(grave.found);
            sees(grave.wanted);
            sees(grave.mend);
            sees(grave.source);
            keysAreFit();
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-findings"), "");
            tap("Back");
            tap("rounds");
            tryCompare(Instructor.programmes.findings, "count", 3);
            keysAreFit();
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-findings-3"), "");
            tap("Next findings");
            keysAreFit();
            tap("Back");
            tap("two-evenings");
            tryVerify(() => Instructor.programmes.summary.includes("worth knowing") || Instructor.programmes.summary.includes("no finding by these rules"));
            tap("Back");
            tap("torn");
            sees("This file cannot be read.");
            tryVerify(() => Instructor.programmes.error.startsWith("torn.programme.toml:"));
            keysAreFit();
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-torn"), "");
            tap("Back");
            tap("Back");
            tap("Back");
        }
    }
}
