// SPDX-License-Identifier: GPL-3.0-or-later
// The desk by mouse and keys against a real hub: check in, take back, walk in, read the reports; each outcome is
// read from the store by this test's own SQL.
import QtQuick
import QtTest
import Floorwheel
import FloorwheelTest

Item {
    id: page
    width: 1920
    height: 1080

    DeskScreen {
        id: desk
        anchors.fill: parent
        focus: true
    }

    TestCase {
        id: testCase
        name: "Desk"
        when: windowShown
        property string classId

        function initTestCase(): void {
            classId = TestHub.addSmallClass(4, 5, "Desk ring");
            verify(classId !== "");
            TestHub.tell("class.open", { "class": classId });
            tryVerify(() => TestHub.sees(page, "18:30 Desk ring"), 20000, "the class is not shown");
            tryVerify(() => TestHub.control(page, "Ada 5.") !== null);
        }
        function control(name: string): Item {
            tryVerify(() => TestHub.control(page, name) !== null, 20000, name + " among " + TestHub.names(page));
            return TestHub.control(page, name);
        }
        function checkIns(member: string): int {
            return TestHub.sql("SELECT count(*) FROM journal WHERE kind = 'check_in' AND body LIKE '%\"" + member + "\"%'")[0][0];
        }

        function test_1_a_name_and_a_key_check_somebody_in(): void {
            mouseClick(control("Ada 2."));
            mouseClick(control("Check in"));
            tryVerify(() => TestHub.sees(page, "1 here, 4 expected"), 20000, "not counted");
            compare(checkIns("m2"), 1);
        }
        function test_2_the_same_by_keyboard_alone(): void {
            desk.forceActiveFocus();
            mouseClick(control("Ada 3."));
            keyClick(Qt.Key_I);
            tryVerify(() => TestHub.sees(page, "2 here, 3 expected"), 20000, "not counted");
            compare(checkIns("m3"), 1);
        }
        function test_3_a_check_in_is_taken_back(): void {
            mouseClick(control("Ada 3."));
            keyClick(Qt.Key_N);
            tryVerify(() => TestHub.sees(page, "1 here, 4 expected"), 20000, "not taken back");
            keyClick(Qt.Key_Z); // the latest: Ada 2.
            tryVerify(() => TestHub.sees(page, "0 here, 5 expected"), 20000, "not taken back");
        }
        function test_3b_the_own_week_is_shown_and_hidden_at_the_members_word(): void {
            mouseClick(control("Ada 2."));
            mouseClick(control("Show own week"));
            tryVerify(() => TestHub.control(page, "Hide own week") !== null, 20000, "not shown");
            waitForRendering(desk);
            compare(TestHub.picture(page, "desk-own-week"), "");
            compare(TestHub.sql("SELECT member, shown FROM own_page"), [["m2", 1]]);
            mouseClick(control("Ada 3.")); // another's is another's
            tryVerify(() => TestHub.control(page, "Show own week") !== null);
            mouseClick(control("Ada 2."));
            tryVerify(() => TestHub.control(page, "Hide own week") !== null);
            keyClick(Qt.Key_P);
            tryVerify(() => TestHub.control(page, "Show own week") !== null, 20000, "not hidden");
            compare(TestHub.sql("SELECT member, shown FROM own_page"), [["m2", 0]]);
        }
        function test_4_a_walk_in_is_added_and_seated(): void {
            keyClick(Qt.Key_A);
            for (const letter of "Uma W.")
                keyClick(letter);
            mouseClick(control("intermediate"));
            tryVerify(() => TestHub.control(page, "Seat") !== null);
            mouseClick(control("Seat"));
            tryVerify(() => TestHub.sees(page, "1 here, 5 expected"), 20000, "not seated");
            verify(TestHub.sees(page, "walk-in"));
        }
        function test_5_an_alias_too_wide_for_the_wall_is_not_taken(): void {
            keyClick(Qt.Key_A);
            for (const letter of "Wwwwwwwwwwwwwwww")
                keyClick(letter);
            compare(TestHub.control(page, "Seat"), null);
            verify(TestHub.sees(page, "too wide for the wall: " + widthShown() + " of 370"));
            keyClick(Qt.Key_Escape);
        }
        function widthShown(): string {
            return /too wide for the wall: (\d+)/.exec(TestHub.names(page))[1];
        }
        function test_6_a_closed_class_is_in_the_reports(): void {
            TestHub.tell("class.end", { "class": classId });
            mouseClick(control("Attendance"));
            tryVerify(() => TestHub.sees(page, "Visits by member"));
            tryVerify(() => TestHub.sees(page, "Desk ring"), 20000, "no line of attendance");
            tryVerify(() => TestHub.sees(page, "Uma W."), 20000, "no visits");
            keyClick(Qt.Key_W);
            tryVerify(() => TestHub.sees(page, "12 weeks"));
            keyClick(Qt.Key_1);
            tryVerify(() => TestHub.sees(page, "Walk-in"));
        }
    }
}
