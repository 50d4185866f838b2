// SPDX-License-Identifier: GPL-3.0-or-later
// The touch screen against a real hub process: what a person taps, found by accessible names, ends as a row of
// the store, read by this test's own SQL. Taps are counted. Each test opens a class of its own.
import QtQuick
import QtTest
import Floorwheel
import FloorwheelTest

Item {
    id: page
    width: 1920
    height: 1080

    TouchScreen {
        id: screen
        anchors.fill: parent
        visible: HubLink.everConnected
    }

    TestCase {
        id: testCase
        name: "Touch"
        when: windowShown

        property string classId
        property int version: 0
        property int taps: 0
        property int classes: 0

        // People of more classes than one keep their ids and aliases.
        readonly property string floor: `
work_s = 40
change_s = 20
lead_in_s = 0
laps = 2
slots = 6
style = "ring"
guests = 1

[[station]]
id = "A"
exercise = "goblet-squat"
capacity = 1
at = [0.0, 0.0]
offers_kg = [8, 12, 16, 20]
reps = 12
rir = 2

[[station]]
id = "B"
exercise = "side-plank"
capacity = 1
at = [3.0, 0.0]
reps = 30

[[station]]
id = "C"
exercise = "seated-row"
capacity = 1
at = [3.0, 3.0]
offers_kg = [10, 15, 20]
reps = 10
rir = 3

[[member]]
id = "m1"
shown_as = "Ana P."
level = "novice"
loads_kg = { A = 16.0, C = 15.0 }

[[member]]
id = "m2"
shown_as = "Zoë T."
level = "novice"
loads_kg = { A = 8.0, C = 10.0 }

[[member]]
id = "m3"
shown_as = "Chloe D."
level = "novice"
`

        function openClass(): void {
            classes += 1;
            classId = told("class.add", { toml: '[class]\nname = "Evening ' + classes + '"\nstart = 2026-03-05T18:30:00+01:00\n' + floor })["class"];
            told("class.open", { "class": classId });
            version = 0;
            taps = 0;
            tryVerify(() => screen.visit.page === "arrive" && screen.visit.checkIn.className === "Evening " + classes);
        }
        function told(kind: string, body: var): var {
            const receipt = TestHub.tell(kind, body);
            compare(receipt.code, undefined, kind + ": " + receipt.text);
            return receipt.body ?? {};
        }
        /// Everybody is here, the run sheet is out, the first slot is worked.
        function startClass(): void {
            openClass();
            told("heads.count", { "class": classId, here: ["m1", "m2"], guests: 1 });
            const proposal = TestHub.ask("proposal", { "class": classId });
            const body = proposal.body ?? proposal;
            told("class.publish", { "class": classId, saw: 0, proposal: body.proposal });
            version = 1;
            told("class.start", { "class": classId, saw: 1 });
            tryVerify(() => screen.visit.page === "who", 10000);
            tryVerify(() => screen.visit.people.count === 3);
        }
        /// The changeover after the present slot.
        function endSlot(): void {
            told("class.skip", { "class": classId, saw: version });
            tryCompare(ClassTime, "phase", "change");
        }
        function initTestCase(): void {
            tryCompare(HubLink, "connected", true, 20000);
        }
        function cleanup(): void {
            screen.visit.done();
            screen.visit.leaveMs = 15000;
            screen.visit.kept.lineMs = 8000;
            told("class.end", { "class": classId });
            tryVerify(() => HubLink.waiting === 0, 10000);
        }

        function key(name: string): var {
            tryVerify(() => TestHub.control(page, name) !== null, 10000, "no control '" + name + "' among: " + TestHub.names(page));
            return TestHub.control(page, name);
        }
        function tap(name: string): void {
            const item = key(name);
            const t = touchEvent(item);
            t.press(0, item).commit();
            t.release(0, item).commit();
            taps += 1;
        }
        function sees(text: string): void {
            tryVerify(() => TestHub.sees(page, text), 10000, "'" + text + "' is not among: " + TestHub.names(page));
        }
        /// Rows of one statement once there are as many as told.
        function rows(statement: string, count: int): var {
            tryVerify(() => TestHub.sql(statement).length === count, 10000, statement);
            return TestHub.sql(statement);
        }
        readonly property string inClass: "class = x'" + classId.replace(/-/g, "") + "'"
        /// Who stands at a station in slot 1, by the run sheet's ring: its alias.
        function aliasAt(letter: string): string {
            const keys = screen.visit.people;
            for (let i = 0; i < keys.rowCount(); ++i) {
                const at = keys.index(i, 0);
                if (keys.data(at, Qt.UserRole + 3) === letter)
                    return keys.data(at, Qt.UserRole + 2);
            }
            return "";
        }

        function test_check_in_takes_two_taps(): void {
            openClass();
            tap("Chloe D.");
            sees("How is it today?");
            tap("Fine");
            compare(taps, 2);
            sees("You are in, Chloe D.");
            compare(rows("SELECT member FROM check_in WHERE " + inClass, 1)[0][0], "m3");
            tap("Done");
            compare(screen.visit.page, "arrive");
            tryVerify(() => screen.visit.checkIn.here === 1);
        }

        function test_first_letters_find_somebody_and_dead_letters_do_nothing(): void {
            openClass();
            compare(TestHub.control(page, "B"), null); // nobody's alias begins so
            tap("Z");
            sees("1 Your name begins with Z");
            compare(TestHub.control(page, "Ana P."), null);
            tap("Zoë T.");
            compare(taps, 2);
            compare(rows("SELECT member FROM check_in WHERE " + inClass, 1)[0][0], "m2");
        }

        function test_i_am_not_takes_the_check_in_back(): void {
            openClass();
            tap("Ana P.");
            rows("SELECT member FROM check_in WHERE " + inClass, 1);
            tap("I am not Ana P.");
            rows("SELECT member FROM check_in WHERE " + inClass, 0);
            compare(screen.visit.page, "arrive");
        }

        function test_something_hurts_goes_to_the_instructor_alone(): void {
            openClass();
            tap("Ana P.");
            tap("Something hurts");
            tap("Lower back");
            compare(taps, 3);
            sees("Stop, and go to the instructor");
            tryCompare(screen.visit, "answerConfirmed", true);
            // instructor is bit 2, tool bit 4 of an audience.
            const words = rows("SELECT w.json, w.audience FROM journal j JOIN journal_words w USING (seq) WHERE j.kind = 'answer.today' AND j." + inClass, 1);
            compare(JSON.parse(words[0][0]), { answer: "hurts", spot: "lower_back" });
            compare(words[0][1], 4 + 16);
            compare(TestHub.sql("SELECT 1 FROM journal WHERE kind = 'answer.today' AND body LIKE '%hurts%'").length, 0);
            tap("I go to the instructor");
            compare(screen.visit.page, "arrive");
        }

        function test_somebody_new_takes_an_alias_and_a_seat(): void {
            openClass();
            tap("I am new here");
            const alias = "M" + String.fromCharCode(96 + classes) + "i";
            for (const letter of alias.toUpperCase())
                tap(letter);
            sees(alias);
            tap("Take this alias");
            sees("You are in, " + alias);
            tap("Fine");
            compare(rows("SELECT w.shown_as FROM check_in c JOIN member_words w ON w.member = c.member WHERE c." + inClass, 1)[0][0], alias);
            compare(rows("SELECT expected FROM seat WHERE " + inClass + " AND member NOT LIKE 'm_' AND NOT guest", 1)[0][0], 0);
        }

        function test_as_planned_takes_two_taps_from_rest(): void {
            startClass();
            endSlot();
            const who = aliasAt("A") === "G1" ? aliasAt("C") : aliasAt("A");
            tap(who);
            sees("As planned");
            tap("As planned");
            compare(taps, 2);
            compare(screen.visit.page, "who");
            sees("Kept: " + who);
            const row = rows("SELECT member, slot, done, load_hg, reps FROM set_record WHERE " + inClass, 1)[0];
            compare(row[1], 1);
            compare(row[2], 1);
            verify(row[3] > 0);
            tryCompare(HubLink, "waiting", 0);
            // The line names nobody's values.
            verify(!TestHub.sees(page, "kg"));
        }

        function test_another_load_takes_three_taps_and_two_changes_four(): void {
            startClass();
            endSlot();
            const who = aliasAt("A") === "G1" ? aliasAt("C") : aliasAt("A");
            tap(who);
            tap("More Load");
            tap("Keep this");
            compare(taps, 3);
            const first = rows("SELECT load_hg, reps, rir FROM set_record WHERE " + inClass, 1)[0];
            taps = 0;
            tap(who);
            sees("Kept already: you can mend it");
            tap("Less Repetitions");
            tap("Could have done 0 more");
            tap("Keep this");
            compare(taps, 4);
            const both = rows("SELECT load_hg, reps, rir, corrects IS NULL FROM set_record WHERE " + inClass + " ORDER BY seq", 2);
            compare(both[0][3], 1);
            compare(both[1][3], 0);
            compare(both[1][1], first[1] - 1);
            compare(both[1][2], 0);
        }

        function test_undo_takes_a_record_back(): void {
            startClass();
            endSlot();
            const who = aliasAt("B");
            tap(who);
            tap("As planned");
            tap("Undo");
            sees("Taken back: " + who);
            const both = rows("SELECT done FROM set_record WHERE " + inClass + " ORDER BY seq", 2);
            compare(both[0][0], 1);
            compare(both[1][0], 0);
        }

        function test_the_undo_goes_after_its_time(): void {
            startClass();
            endSlot();
            screen.visit.kept.lineMs = 50;
            tap(aliasAt("B"));
            tap("As planned");
            tryVerify(() => TestHub.control(page, "Undo") === null);
            tryCompare(screen.visit.kept, "what", "");
        }

        function test_without_a_planned_load_it_is_chosen_first(): void {
            startClass();
            // The guest comes to a station with loads by the third slot at the latest.
            const guest = () => {
                const keys = screen.visit.people;
                for (let i = 0; i < keys.rowCount(); ++i)
                    if (keys.data(keys.index(i, 0), Qt.UserRole + 1) === "G1")
                        return keys.data(keys.index(i, 0), Qt.UserRole + 3);
                return "";
            };
            endSlot();
            if (guest() === "B") {
                told("class.skip", { "class": classId, saw: version });
                endSlot();
            }
            tryVerify(() => guest() === "A" || guest() === "C");
            const lightest = guest() === "A" ? ["8 kg", 80] : ["10 kg", 100];
            tap("G1");
            sees("Which load did you use? The lightest stands first.");
            compare(TestHub.control(page, "As planned"), null);
            tap(lightest[0]);
            tap("As planned");
            compare(taps, 3);
            compare(rows("SELECT member, load_hg FROM set_record WHERE " + inClass, 1)[0], ["G1", lightest[1]]);
        }

        function test_a_missed_set_is_recorded_later(): void {
            startClass();
            endSlot();
            told("class.skip", { "class": classId, saw: version });
            endSlot();
            tryCompare(screen.visit, "slotEnded", 2);
            const who = aliasAt("B");
            tap(who);
            tap("Other sets");
            const sets = screen.visit.card.others;
            compare(sets.rowCount(), 2);
            tap(sets.data(sets.index(1, 0), Qt.UserRole + 2)); // the latest stands first
            tryCompare(screen.visit.card, "slot", 1);
            tap("Did not do this set");
            const row = rows("SELECT slot, done, load_hg IS NULL FROM set_record WHERE " + inClass, 1)[0];
            compare(row, [1, 0, 1]);
        }

        function test_after_the_class_recording_stays_open(): void {
            startClass();
            endSlot();
            told("class.end", { "class": classId });
            tryCompare(screen.visit, "ended", true);
            compare(screen.visit.page, "who");
            tap(aliasAt("B"));
            tap("As planned");
            rows("SELECT 1 FROM set_record WHERE " + inClass, 1);
            openClass(); // for cleanup
        }

        function test_the_hub_away_keeps_and_confirms_later(): void {
            startClass();
            endSlot();
            const who = aliasAt("B");
            TestHub.kill();
            tryCompare(HubLink, "connected", false);
            tap(who);
            tap("As planned");
            sees("Kept: " + who);
            compare(HubLink.waiting, 1);
            verify(TestHub.names(page).includes("Outbox: 1"), TestHub.names(page));
            const mark = () => {
                const keys = screen.visit.people;
                for (let i = 0; i < keys.rowCount(); ++i)
                    if (keys.data(keys.index(i, 0), Qt.UserRole + 2) === who)
                        return keys.data(keys.index(i, 0), Qt.UserRole + 4);
                return "";
            };
            compare(mark(), "kept");
            verify(TestHub.restart());
            tryCompare(HubLink, "waiting", 0, 20000);
            compare(rows("SELECT done FROM set_record WHERE " + inClass, 1)[0][0], 1);
            compare(mark(), "kept");
        }

        function test_it_leaves_without_a_touch_after_a_warning(): void {
            openClass();
            compare(screen.visit.leaveMs, 15000);
            tap("Ana P.");
            sees("Leaves in 15 s without a touch");
            screen.visit.leaveMs = 600;
            sees("Leaves in 5 s: touch anywhere to stay");
            mouseClick(page, 1000, 330); // where nothing is: it stays
            compare(screen.visit.warning, false);
            compare(screen.visit.page, "question");
            tryCompare(screen.visit, "page", "arrive");
        }

        function test_stop_and_help_asks_nothing_of_people(): void {
            startClass();
            tap(aliasAt("A"));
            told("class.stop", { "class": classId });
            sees("Stop and help");
            compare(TestHub.control(page, "As planned"), null);
            told("class.over", { "class": classId });
            sees("Held");
            sees("As planned"); // the card is where it was
        }
    }
}
