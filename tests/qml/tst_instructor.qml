// SPDX-License-Identifier: GPL-3.0-or-later
// One class from the instructor's screen against a real hub: four taps to a running class, hold, changes that are
// previewed and then done, stop and help, the end. What happened is read from the store by this test's own SQL.
// The functions build on each other, in the order of their numbers.
import QtQuick
import QtTest
import Floorwheel
import FloorwheelTest

Item {
    id: page
    width: 1280
    height: 800

    InstructorScreen {
        id: screen
        anchors.fill: parent
        focus: true
    }

    InstructorCase {
        id: testCase
        name: "Instructor"
        shown: page
        property string classId

        // --- the class, the store
        function classFile(): string {
            let toml = "[class]\nname = \"Tide ring\"\nstart = 2026-03-05T18:30:00+01:00\nlaps = 2\nwork_s = 400\nchange_s = 20\nlead_in_s = 600\n";
            const exercises = ["goblet-squat", "press-up", "seated-row", "split-squat", "leg-curl"];
            for (let s = 0; s < 5; ++s)
                toml += "[[station]]\nid = \"" + "ABCDE"[s] + "\"\nexercise = \"" + exercises[s] + "\"\ncapacity = 2\nat = [" + s + ".0, 1.0]\n";
            for (let m = 1; m <= 7; ++m)
                toml += "[[member]]\nid = \"m" + m + "\"\nshown_as = \"Ada " + m + ".\"\nlevel = \"novice\"\n";
            return toml;
        }
        function rows(kind: string): int {
            return TestHub.sql("SELECT count(*) FROM journal WHERE kind = '" + kind + "'")[0][0];
        }
        function journalEnd(): int {
            return TestHub.sql("SELECT max(seq) FROM journal")[0][0];
        }
        function version(): int {
            return TestHub.sql("SELECT coalesce(max(json_extract(body, '$.sheet.version')), 0) FROM journal")[0][0];
        }
        function state(): string {
            for (const c of TestHub.ask("classes", {}).classes)
                if (c["class"] === classId)
                    return c.state;
            return "";
        }

        function initTestCase(): void {
            classId = TestHub.addClass(classFile());
            verify(classId !== "");
            tryVerify(() => HubLink.connected);
        }
        function init(): void {
            taps = 0;
        }

        function test_01_four_taps_to_a_running_class(): void {
            sees("Which class do you take?");
            keysAreFit();
            tap("18:30");
            sees("Tap everybody who is here");
            keysAreFit();
            control("All 7 are here");
            for (let m = 1; m <= 6; ++m)
                verify(!("code" in TestHub.tell("check_in", { "class": classId, "member": "m" + m })));
            sees("6 tapped, 0 more, 6 in all. 4 seats left.");
            tap("6 are here");
            tryVerify(() => TestHub.control(page, "Publish") !== null, 30000);
            keysAreFit();
            compare(version(), 0);
            tap("Publish");
            control("Start");
            keysAreFit();
            compare(version(), 1);
            tap("Start");
            control("Hold");
            keysAreFit();
            compare(taps, 4);
            compare(TestHub.sql("SELECT group_concat(kind, ' ') FROM (SELECT kind FROM journal WHERE kind NOT IN ('class.add', 'check_in') ORDER BY seq)")[0][0],
                    "class.open heads.count class.publish class.start");
            compare(state(), "running");
        }

        function test_02_hold_is_one_press_and_a_second_at_its_place_does_not_resume(): void {
            const hold = control("Hold");
            compare(hold.x, 20);
            const places = [40, 180, 340].map(x => hold.mapToItem(page, x - 20, 60));
            tap("Hold");
            control("Resume");
            compare(taps, 1);
            compare(state(), "held");
            keysAreFit();
            const before = journalEnd();
            for (const p of places) {
                mouseClick(page, p.x, p.y);
                wait(0);
                if (TestHub.control(page, "Resume") === null)
                    tap(TestHub.control(page, "Back") === null ? "Leave as it is" : "Back");
                control("Resume");
            }
            compare(journalEnd(), before);
            compare(state(), "held");
            tap("Resume");
            control("Hold");
            compare(state(), "running");
        }

        function test_03_skip_ends_the_segment(): void {
            sees("First place");
            tap("Skip");
            sees("Work");
            sees("Slot 1 of 10, lap 1");
            compare(rows("class.skip"), 1);
            tap("Give them time");
            tryCompare(ClassTime, "secondsLong", 415);
        }

        function preview(deed: string, options: list<string>): void {
            tap("Change");
            keysAreFit();
            tap(deed);
            for (const o of options) {
                control(o);
                keysAreFit();
                tap(o);
            }
            sees("Nothing is changed yet.");
            tryVerify(() => TestHub.control(page, "Do it") !== null, 30000, TestHub.names(page));
            keysAreFit();
        }

        function test_04_a_late_arrival_is_previewed_and_then_done(): void {
            const before = journalEnd();
            preview("Came late", ["Ada 7."]);
            compare(journalEnd(), before);
            sees("Slot 1 stays as it was.");
            const sky = Instructor.plait.skyDots.length;
            verify(sky > 0, "nobody in sky");
            tap("Do it");
            tryCompare(Instructor.flow, "page", "run");
            compare(rows("class.late"), 1);
            compare(version(), 2);
            compare(TestHub.sql("SELECT json_extract(body, '$.member') FROM journal WHERE kind = 'class.late'")[0][0], "m7");
        }

        function test_05_a_leaver_and_leave_as_it_is(): void {
            preview("Left early", ["Ada 2."]);
            const before = journalEnd();
            tap("Leave as it is");
            control("Hold");
            compare(journalEnd(), before);
            preview("Left early", ["Ada 2."]);
            tap("Do it");
            tryCompare(Instructor.flow, "page", "run");
            compare(rows("class.leave"), 1);
            compare(version(), 3);
        }

        function test_06_a_closed_station_has_three_ways_out(): void {
            const before = journalEnd();
            preview("Station closed", ["B, Press-up"]);
            control("Close B to the end");
            control("Close B for two slots");
            control("Press-up, hands on a bench instead");
            compare(Instructor.change.choices.count, 3);
            verify(Instructor.plait.closed.length > 0);
            compare(journalEnd(), before);
            tap("Close B for two slots");
            tryVerify(() => TestHub.control(page, "Do it") !== null, 30000);
            tap("Close B to the end");
            tryVerify(() => TestHub.control(page, "Do it") !== null, 30000);
            tap("Do it");
            tryCompare(Instructor.flow, "page", "run");
            compare(rows("station.close"), 1);
            compare(version(), 4);
            compare(TestHub.sql("SELECT count(*) FROM journal, json_each(body, '$.sheet.rows') AS r, json_each(r.value, '$.stations') AS s WHERE kind = 'station.close' AND s.key >= 1 AND s.value = 'B'")[0][0], 0);
            preview("Used again", ["B, Press-up"]);
            tap("Do it");
            tryCompare(Instructor.flow, "page", "run");
            compare(version(), 5);
        }

        function test_07_a_run_sheet_that_changed_meanwhile_is_previewed_anew(): void {
            preview("Left early", ["Ada 3."]);
            TestHub.tell("class.late", { "class": classId, "saw": 5 });
            sees("The run sheet changed meanwhile: this is what the change would do now.");
            tryVerify(() => TestHub.control(page, "Do it") !== null, 30000, TestHub.names(page));
            compare(version(), 6);
            tap("Do it");
            tryCompare(Instructor.flow, "page", "run");
            compare(version(), 7);
            compare(rows("class.leave"), 2);
        }

        function test_08_another_exercise_and_two_stations_swapped(): void {
            tap("Change");
            tap("Other exercise");
            tap("B, Press-up");
            const first = Instructor.picker.options.data(Instructor.picker.options.index(0, 0), 258);
            keysAreFit();
            tap(first);
            tryVerify(() => TestHub.control(page, "Do it") !== null, 30000, TestHub.names(page));
            tap("Do it");
            tryCompare(Instructor.flow, "page", "run");
            compare(rows("station.set"), 1);
            preview("Swap two", ["A, Goblet squat", "D, Split squat"]);
            tap("Do it");
            tryCompare(Instructor.flow, "page", "run");
            compare(rows("station.swap"), 1);
            compare(version(), 9);
        }

        function test_09_stop_and_help_holds_all_and_leads_to_held(): void {
            tap("Stop and help");
            compare(taps, 1);
            sees("The person first");
            tryVerify(() => state() === "stopped");
            keysAreFit();
            tap("It is over");
            control("Resume");
            compare(state(), "held");
            compare(rows("class.over"), 1);
            compare(rows("class.resume"), 1);
        }

        function test_10_the_roster_is_stepped_by_two_keys(): void {
            const first = Instructor.run.member;
            tap("Down the roster");
            verify(Instructor.run.member !== first);
            tap("Up the roster");
            compare(Instructor.run.member, first);
        }

        function test_11_the_keyboard_does_the_same(): void {
            const resume = control("Resume");
            resume.forceActiveFocus(Qt.TabFocusReason);
            verify(resume.activeFocus);
            resume.lastAct = 0;
            keyClick(Qt.Key_Return);
            control("Hold");
            compare(state(), "running");
            let steps = 0;
            const hold = control("Hold");
            while (!hold.activeFocus && steps++ < 20)
                keyClick(Qt.Key_Tab);
            verify(hold.activeFocus, "Hold is not reached by Tab");
            keyClick(Qt.Key_Space);
            control("Resume");
        }

        function test_12_a_hub_that_is_away_does_not_keep_help_away(): void {
            TestHub.kill();
            tryVerify(() => !HubLink.connected);
            tap("Resume");
            tryVerify(() => Instructor.flow.notice !== "", 20000, "nothing says that the hub is away");
            tap("Stop and help");
            sees("The person first");
            verify(TestHub.restart());
            tryVerify(() => HubLink.connected, 30000);
            tap("It is over");
            control("Resume");
            compare(state(), "held");
        }

        function test_13_the_end_takes_a_second_press(): void {
            tap("End");
            sees("End the class here?");
            keysAreFit();
            compare(rows("class.end"), 0);
            tap("End the class");
            sees("Which class do you take?");
            compare(rows("class.end"), 1);
        }

        function test_14_as_laid_out_and_another_count_of_slots(): void {
            classId = TestHub.addClass(classFile().replace("Tide ring", "Ebb ring"));
            sees("Ebb ring");
            keysAreFit();
            tap("18:30");
            tap("All 7 are here");
            control("Publish");
            tap("As laid out");
            keysAreFit();
            tap("Station B");
            tap("Close");
            control("Open");
            keysAreFit();
            compare(TestHub.sql("SELECT json_extract(body, '$.station') FROM journal WHERE kind = 'station.close' ORDER BY seq DESC")[0][0], "B");
            tap("Undo last");
            control("Close");
            compare(TestHub.sql("SELECT json_extract(body, '$.station') FROM journal WHERE kind = 'station.open' ORDER BY seq DESC")[0][0], "B");
            tap("Set exercise");
            keysAreFit();
            tap("Press-up, hands on a bench");
            tryVerify(() => TestHub.sees(page, "Press-up, hands on a bench") && TestHub.control(page, "The floor is right") !== null);
            tap("As in the file");
            tryVerify(() => !TestHub.sees(page, "Press-up, hands on a bench"));
            compare(rows("floor.as_in_file"), 1);
            tap("Close");
            control("Open");
            tap("The floor is right");
            control("Publish");
            tap("Compare");
            keysAreFit();
            const more = Instructor.proposal.slotCount + 1;
            tap(more + " slots");
            tap("Take " + more + " slots");
            tap("Publish");
            control("Start");
            compare(TestHub.sql("SELECT json_extract(body, '$.sheet.timing.slots') FROM journal WHERE kind = 'class.publish' ORDER BY seq DESC")[0][0], more);
            compare(TestHub.sql("SELECT count(*) FROM journal AS j, json_each(j.body, '$.sheet.rows') AS r, json_each(r.value, '$.stations') AS s WHERE j.seq = (SELECT max(seq) FROM journal WHERE kind = 'class.publish') AND s.value = 'B'")[0][0], 0);
        }
    }
}
