// SPDX-License-Identifier: GPL-3.0-or-later
// Training on the instructor's screen, against a real hub whose store holds weeks played through the hub itself:
// pain and progress, the talk sheet, what is written there. Rows are read back by this test's own SQL. The
// functions build on each other, in the order of their numbers.
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
        name: "InstructorTraining"
        shown: page
        property string classId

        function classFile(): string {
            let toml = "[class]\nname = \"Mill ring\"\nstart = 2026-03-05T18:30:00+01:00\nwork_s = 400\nchange_s = 20\nslots = 3\n";
            const exercises = ["goblet-squat", "seated-row", "press-up"];
            for (let s = 0; s < 3; ++s)
                toml += "[[station]]\nid = \"" + "ABC"[s] + "\"\nexercise = \"" + exercises[s] + "\"\ncapacity = 2\nat = [" + s + ".0, 1.0]\n";
            const aliases = ["Wren A.", "Rook B.", "Teal C.", "Finch D."];
            for (let m = 0; m < 4; ++m)
                toml += "[[member]]\nid = \"w" + (m + 1) + "\"\nshown_as = \"" + aliases[m] + "\"\nlevel = \"novice\"\n";
            return toml;
        }
        /// w1 stands still, w2 gets on and then says that the thighs hurt, w3 came twice, w4 never.
        function past(): var {
            const classes = [];
            const rookLoads = [80, 80, 120, 120];
            [16, 11, 6, 2].forEach((ago, i) => {
                    const reps = i === 0 ? 12 : 11;
                    classes.push({
                            ago: ago,
                            here: i < 2 ? ["w1", "w2"] : ["w1", "w2", "w3"],
                            sets: [["w1", "A", 1, 160, reps], ["w1", "B", 2, 200, reps], ["w1", "C", 3, 0, 8 + i], ["w2", "A", 2, rookLoads[i], 12]]
                        });
                });
            classes[3].hurts = "w2";
            classes[3].spot = "quadriceps";
            return classes;
        }
        function one(query: string): var {
            return TestHub.sql(query)[0][0];
        }
        function count(n: int, word: string): string {
            return n + " " + word + (n === 1 ? "" : "s");
        }
        function dayOf(iso: string): string {
            const months = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];
            const [year, month, day] = iso.split("-");
            return Number(day) + " " + months[Number(month) - 1];
        }

        function initTestCase(): void {
            verify(TestHub.playPast(classFile(), past()));
            classId = TestHub.addClass(classFile());
            verify(classId !== "");
            tryVerify(() => HubLink.connected, 30000);
        }

        function test_01_pain_and_standstill_lie_beside_the_main_control(): void {
            sees("Which class do you take?");
            const main = control("18:30");
            compare(main.x, 582);
            compare(main.width, 444);
            tap("Training");
            sees("Pain noted: 1");
            sees("No progress: 2");
            keysAreFit();
            const visits = one("SELECT count(DISTINCT local_day) FROM set_record WHERE member = 'w1' AND exercise = 'goblet-squat'");
            const row = control("No progress: Wren A., Goblet squat");
            compare(row.aside, "16 kg");
            compare(row.line, count(visits - 1, "visit") + " without progress");
            verify(row.reason.includes("Four visits with 16 kg"), row.reason);
            const pain = control("Pain: Rook B., Goblet squat");
            compare(pain.line, "noted on " + dayOf(one("SELECT max(i.local_day) FROM check_in i WHERE i.member = 'w2'")));
            verify(pain.reason.startsWith("Ask before this exercise"), pain.reason);
            sees("Pain: stop the exercise and ask. What a licensed professional advises comes first. This is no diagnosis and no medical advice.");
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-training"), "");
            tap("Back");
            control("18:30");
        }

        function test_02_the_talk_sheet_says_what_was_done(): void {
            tap("Training");
            tap("No progress: Wren A., Goblet squat");
            sees("Wren A.");
            const week = TestHub.ask("talk.sheet", { "member": "w1" }).week;
            const visits = one("SELECT count(*) FROM check_in WHERE member = 'w1' AND iso_week = '" + week + "'");
            const sets = one("SELECT count(*) FROM set_record WHERE member = 'w1' AND iso_week = '" + week + "'");
            const planned = one("SELECT count(*) FROM journal j JOIN check_in i ON i.class = j.class AND i.member = 'w1', json_each(j.body, '$.sheet.rows') r, json_each(r.value, '$.stations') s WHERE j.kind = 'class.publish' AND i.iso_week = '" + week + "' AND json_extract(r.value, '$.member') = 'w1' AND s.value IS NOT NULL");
            sees("This week: " + count(visits, "visit") + ", " + count(sets, "set") + " of " + planned + " planned.");
            sees("Last four weeks: 4 visits, 12 sets.");
            sees("16 kg on " + dayOf(one("SELECT min(local_day) FROM check_in WHERE member = 'w1'")));
            sees("11 repetitions on " + dayOf(one("SELECT max(local_day) FROM check_in WHERE member = 'w1'")));
            // The line, the repeater and a dot for each of four visits.
            compare(findChild(page, "dots").children.length, 6);
            keysAreFit();
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-talk"), "");
            tap("Back");
            sees("No progress: 2");
            tap("Pain: Rook B., Goblet squat");
            sees("Rook B.");
            sees("12 kg on " + dayOf(one("SELECT max(local_day) FROM check_in WHERE member = 'w2'")));
            keysAreFit();
        }

        function write(text: string): void {
            for (const letter of text.toUpperCase())
                tap(letter === " " ? "Space" : letter);
        }

        function test_03_the_goal_is_written_on_our_own_keys_and_kept(): void {
            tap("Write the goal");
            sees("Rook B.: the goal, in their own words");
            keysAreFit();
            verify(!TestHub.control(page, "Keep this"), "nothing was written yet");
            write("lift my zoo");
            sees("Written: Lift my zoo");
            tap("Erase");
            tap("Figures and signs");
            keysAreFit();
            for (const key of [".", "Space", "Q", "5", ",", "Ü"])
                tap(key);
            tap("Letters");
            write("b");
            sees("Written: Lift my zo. Q5,üb");
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-write"), "");
            compare(one("SELECT count(*) FROM journal WHERE kind = 'talk.note'"), 0);
            tap("Keep this");
            sees("Lift my zo. Q5,üb");
            control("Write the goal");
            sees("written on " + dayOf(new Date().toISOString().slice(0, 10)));
            compare(TestHub.sql("SELECT w.member, json_extract(w.json, '$.goal') FROM journal j JOIN journal_words w ON w.seq = j.seq WHERE j.kind = 'talk.note'")[0], ["w2", "Lift my zo. Q5,üb"]);
        }

        function test_04_a_keyboard_writes_too(): void {
            tap("Write what we agreed");
            sees("Rook B.: what we agreed");
            for (const key of ["b", "o", "x", " ", "s", "t", "e", "p"])
                keyClick(key);
            sees("Written: box step");
            keyClick(Qt.Key_Backspace);
            sees("Written: box ste");
            tap("Keep this");
            sees("box ste");
            compare(one("SELECT json_extract(w.json, '$.agreed') FROM journal j JOIN journal_words w ON w.seq = j.seq WHERE j.kind = 'talk.note' ORDER BY j.seq DESC"), "box ste");
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-talk-agreed"), "");
        }

        function test_05_a_draft_outlives_a_hub_that_is_away_and_a_class_that_goes_on(): void {
            tap("Write what we agreed");
            write(" up");
            sees("Written: box ste up");
            TestHub.kill();
            tryVerify(() => !HubLink.connected);
            tap("Keep this");
            tryVerify(() => Instructor.flow.notice !== "", 20000, "nothing says that the hub is away");
            sees("Written: box ste up");
            verify(TestHub.restart());
            tryVerify(() => HubLink.connected, 30000);
            verify(!("code" in TestHub.tell("class.open", { "class": classId })));
            sees("Tap everybody who is here"); // the class comes first
            tap("Training");
            tap("Pain: Rook B., Goblet squat");
            sees("box ste");
            tap("Write what we agreed");
            sees("Written: box ste up");
            tap("Keep this");
            sees("box ste up");
            compare(one("SELECT count(*) FROM journal WHERE kind = 'talk.note'"), 3);
            tap("Back");
            tap("Back");
            keysAreFit();
        }

        function test_06_new_members_and_what_to_look_at(): void {
            // At check-in: a word beside them. w1 and w2 have come four times, w3 twice, w4 never.
            for (const [alias, note] of [["Wren A.", "expected"], ["Rook B.", "expected"], ["Teal C.", "expected, visit 3"], ["Finch D.", "expected, visit 1"]])
                compare(control(alias).note, note);
            keysAreFit();
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-heads-new"), "");
            tap("Training");
            tap("New members");
            sees("On the first four visits: 2");
            const teal = control("Teal C., visit 3");
            compare(teal.line, "expected");
            compare(teal.about, TestHub.ask("members.new", {}).rows.find(r => r.member === "w3").look_at[0]);
            compare(control("Finch D., visit 1").about, "Show, and let them practise with light loads.");
            keysAreFit();
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-new"), "");
            verify(!("code" in TestHub.tell("check_in", { "class": classId, "member": "w4" })));
            tryVerify(() => control("Finch D., visit 1").line === "here");
            tap("Finch D., visit 1");
            sees("This week: 1 visit, 0 sets of 0 planned.");
            keysAreFit();
            tap("Back");
            sees("On the first four visits: 2");
            tap("Back");
            sees("Pain noted: 1");
            tap("Back");
            verify(!("code" in TestHub.tell("check_in.undo", { "class": classId, "member": "w4" })));
        }

        function test_07_while_the_class_runs_it_is_read_and_hold_is_there(): void {
            tap("All 4 are here");
            control("Publish");
            keysAreFit();
            tap("Training");
            sees("Pain noted: 1");
            tap("Back");
            tap("Publish");
            control("Start");
            keysAreFit();
            compare(TestHub.picture(page, "instructor-start"), "");
            tap("Start");
            control("Hold");
            keysAreFit();
            sees("novice, visit 1");
            sees("novice, visit 3");
            compare(TestHub.picture(page, "instructor-run"), "");
            tap("Training");
            keysAreFit();
            tap("Pain: Rook B., Goblet squat");
            sees("box ste up");
            verify(!TestHub.control(page, "Write the goal"));
            keysAreFit();
            const hold = control("Hold");
            compare(hold.mapToItem(page, 0, 0).x, 20);
            tap("Hold");
            tryVerify(() => Instructor.flow.stage === "held");
            compare(one("SELECT count(*) FROM journal WHERE kind = 'class.hold'"), 1);
            mouseClick(page, 40, 700); // again where Hold was: nothing lies there
            sees("box ste up");
            control("Write the goal");
            tap("Back");
            tap("Back");
            keysAreFit();
            tap("Training");
            sees("Pain noted: 1");
            tap("Back");
            control("Resume");
        }
    }
}
