// SPDX-License-Identifier: GPL-3.0-or-later
// 'My week' at the shared touch screen against a real hub: no number before the member has asked at the desk, the
// numbers those of the store as this test's own SQL counts them, gone when the page is left, and legible with long
// names, all 21 groups, or nothing done. FLOORWHEEL_PICTURES names a folder for pictures to look at.
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
    SignalSpy {
        id: refusals
        target: HubLink
        signalName: "refused"
    }

    TestCase {
        id: testCase
        name: "TouchWeek"
        when: windowShown

        property string classId
        readonly property string longest: "Maximiliane-Friederike Wimmersberger-Weh" // 40 letters
        readonly property TouchWeek week: screen.visit.week
        property int slots: 0

        readonly property string floor: `
[class]
name = "Evening of weeks"
start = 2026-03-05T18:30:00+01:00
work_s = 40
change_s = 20
lead_in_s = 0
slots = 8
[[station]]
id = "A"
exercise = "bench-press"
capacity = 4
at = [0.0, 0.0]
[[station]]
id = "B"
exercise = "squat"
capacity = 4
at = [3.0, 0.0]
[[member]]
id = "m1"
shown_as = "Ana P."
level = "novice"
loads_kg = { A = 40.0, B = 50.0 }
[[member]]
id = "m2"
shown_as = "Nil N."
level = "novice"
loads_kg = { A = 40.0, B = 50.0 }
[[member]]
id = "m3"
shown_as = "${longest}"
level = "novice"
loads_kg = { A = 40.0, B = 50.0 }
`

        function told(kind: string, body: var): var {
            const receipt = TestHub.tell(kind, body);
            compare(receipt.code, undefined, kind + ": " + receipt.text);
            return receipt.body ?? {};
        }
        function set(member: string, exercise: string, kg: real, reps: int): void {
            slots += 1;
            HubLink.tell("record.add", { "class": classId, member: member, station: "A", exercise: exercise, slot: 1 + slots % 8,
                                 done: true, load_hg: Math.round(10 * kg), reps: reps, rir: 2 });
        }
        /// What was recorded up to now becomes so many days older.
        function age(days: int): void {
            tryCompare(HubLink, "waiting", 0, 20000);
            TestHub.kill();
            tryCompare(HubLink, "connected", false, 20000);
            verify(TestHub.rewrite("UPDATE set_record SET civil_ms = civil_ms - " + days + " * 86400000, local_day = date(local_day, '-" + days + " days');"));
            verify(TestHub.restart());
            tryCompare(HubLink, "connected", true, 20000);
        }
        function initTestCase(): void {
            tryCompare(HubLink, "connected", true, 20000);
            classId = told("class.add", { toml: floor })["class"];
            told("class.open", { "class": classId });
            told("heads.count", { "class": classId, here: ["m1", "m2", "m3"], guests: 1 });
            const proposal = TestHub.ask("proposal", { "class": classId });
            told("class.publish", { "class": classId, saw: 0, proposal: (proposal.body ?? proposal).proposal });
            told("class.start", { "class": classId, saw: 1 });
            // Three visits of m1, the last of them now; m3 does everything there is.
            const visit = kg => {
                for (let i = 0; i < 2; ++i) {
                    set("m1", "bench-press", kg, 12);
                    set("m1", "squat", kg + 5, 12);
                    set("m1", "seated-row", kg - 10, 10);
                }
            };
            visit(45);
            age(14);
            visit(47.5);
            age(7);
            visit(50);
            set("m1", "overhead-triceps-extension", 12.5, 10);
            set("m1", "plank", 0, 30);
            const table = TestHub.ask("exercises", {});
            const all = (table.body ?? table).exercises;
            const covered = {};
            for (const e of all) {
                if (e.primary.every(g => covered[g]))
                    continue;
                e.primary.forEach(g => covered[g] = true);
                for (let i = 0; i < 4; ++i)
                    set("m3", e.id, 20, 10);
            }
            tryCompare(HubLink, "waiting", 0, 20000);
            compare(Object.keys(covered).length, 20); // all but neck, the aim of no exercise of the table
            tryCompare(HubLink, "connected", true, 20000);
            tryCompare(screen.visit, "page", "who", 20000);
        }
        function cleanup(): void {
            screen.visit.done();
            screen.visit.leaveMs = 15000;
        }

        function tap(name: string): void {
            tryVerify(() => TestHub.control(page, name) !== null, 10000, "no control '" + name + "' among: " + TestHub.names(page));
            const item = TestHub.control(page, name);
            const t = touchEvent(item);
            t.press(0, item).commit();
            t.release(0, item).commit();
        }
        function sees(text: string): void {
            tryVerify(() => TestHub.sees(page, text), 10000, "'" + text + "' is not among: " + TestHub.names(page));
        }
        function open(member: string): void {
            screen.visit.openCard(member);
            tap("My week");
            compare(screen.visit.page, "week");
        }
        function ask(member: string): void {
            told("page.show", { member: member, on: true });
            tryVerify(() => HubLink.connected);
            open(member);
            tryCompare(week, "state", "shown", 10000);
        }

        function test_1_no_number_before_it_was_asked_for(): void {
            open("m1");
            compare(week.state, "off");
            sees("Your numbers are not shown here.");
            verify(!/\d+ (kg|sets)/.test(TestHub.names(page)), TestHub.names(page));
            compare(TestHub.control(page, "Do not show my numbers here"), null);
            compare(TestHub.picture(page, "week-off"), "");
            // Nor does the hub give them to this screen, or let it switch them on.
            refusals.clear();
            HubLink.ask("member.page", { member: "m1" });
            tryCompare(refusals, "count", 1, 10000);
            compare(refusals.signalArguments[0][1], "refused");
            HubLink.tell("page.show", { member: "m1", on: true });
            tryCompare(refusals, "count", 2, 10000);
            compare(TestHub.sql("SELECT count(*) FROM own_page"), [[0]]);
            tap("Back");
            compare(screen.visit.page, "card");
            compare(screen.visit.alias, "Ana P.");
        }
        function test_2_the_numbers_are_those_of_the_store(): void {
            ask("m1");
            const sets = exercise => TestHub.sql("SELECT count(*) FROM set_record WHERE member = 'm1' AND exercise LIKE '" + exercise + "' AND civil_ms > (SELECT max(civil_ms) FROM set_record) - 3600000")[0][0];
            compare(week.workingSets, sets("%"));
            compare(sets("bench-press"), 2);
            sees("Chest");
            sees("2 sets, under 3"); // bench press
            sees("3 sets, 3 to 9");  // triceps: bench press and its own
            sees("none yet");
            sees("8");
            sees("working sets");
            // 12 repetitions with 2 in reserve at 50 kg: the next load of the floor is 10 % more.
            sees("Bench press");
            sees("55 kg × 8–12, 2 sets");
            sees("Up: all sets reached the top. Begin at 8.");
            sees("Trends");
            compare(week.trends.count, 3);
            compare(week.pages, 2);
            sees("Not medical advice: stop on pain, ask the instructor, follow the advice of a licensed professional.");
            legible("ana");
            tap("Other loads");
            compare(week.page, 1);
            legible("ana-2");
            keyClick(Qt.Key_Return); // it has the focus; a second tap at once would be a bounce
            compare(week.page, 0);
        }
        function test_3_what_the_instructor_decided_is_said(): void {
            told("load.decide", { member: "m1", exercise: "bench-press", load_kg: 50 });
            ask("m1");
            sees("50 kg × 8–12, 2 sets");
            tryVerify(() => /Decided by the instructor on \d+ \w+\./.test(TestHub.names(page)), 5000, TestHub.names(page));
        }
        function test_4_nobody_there_for_15_s_and_the_numbers_are_gone(): void {
            ask("m1");
            screen.visit.leaveMs = 300;
            tryCompare(screen.visit, "page", "who", 5000);
            compare(week.state, "");
            compare(week.loads.count, 0);
            compare(week.sectors.count, 0);
            compare(week.workingSets, 0);
            screen.visit.leaveMs = 15000;
            ask("m1");
            tap("Done"); // one tap
            compare(screen.visit.page, "who");
            compare(week.state, "");
        }
        function test_5_nothing_done_yet(): void {
            ask("m2");
            compare(week.sectors.count, 14);
            compare(week.workingSets, 0);
            sees("None yet. The first sets that you record make the first suggestion.");
            sees("A line needs two visits with one exercise.");
            legible("nothing");
        }
        function test_6_all_groups_and_a_long_name(): void {
            ask("m3");
            compare(week.sectors.count, 20); // tst_touch_ring has the twenty-first
            legible("all-groups");
            for (let i = 1; i < week.pages; ++i) {
                week.turn();
                texts("all-groups-" + i);
            }
        }
        function test_7_anybody_switches_it_off_here(): void {
            ask("m1");
            tap("Do not show my numbers here");
            tryCompare(week, "state", "off", 10000);
            sees("Your numbers are no longer shown here.");
            verify(!/\d+ (kg|sets)/.test(TestHub.names(page)), TestHub.names(page));
            compare(TestHub.sql("SELECT shown FROM own_page WHERE member = 'm1'"), [[0]]);
            compare(week.loads.count, 0);
        }
        function test_8_a_guest_has_no_week(): void {
            screen.visit.openCard("G1");
            compare(screen.visit.page, "card");
            compare(TestHub.control(page, "My week"), null);
        }
        function test_9_the_hub_away(): void {
            told("page.show", { member: "m1", on: true });
            screen.visit.openCard("m1");
            TestHub.kill();
            tryCompare(HubLink, "connected", false);
            tap("My week");
            tryCompare(week, "state", "away", 5000);
            sees("The hub is away.");
            verify(TestHub.restart());
            tryCompare(HubLink, "connected", true, 20000);
        }

        // ---- legible: nothing cut off, nothing over another text or a key, letters of 4.7 mm at least
        function legible(name: string): void {
            waitForRendering(screen);
            texts(name);
            TestHub.picture(page, "week-" + name + ".png");
        }
        function texts(name: string): void {
            const texts = [];
            walk(screen, texts);
            const mmAPx = ThisScreen.mm.width / 1920;
            for (let i = 0; i < texts.length; ++i) {
                const t = texts[i];
                const what = name + ": '" + t.text + "' " + t.rect;
                verify(t.rect.x >= 0 && t.rect.x + t.rect.width <= 1920 && t.rect.y >= 0 && t.rect.y + t.rect.height <= 1081, what + " leaves the screen");
                verify(t.pixels * mmAPx >= 4.7, what + " is too small: " + t.pixels);
                verify(!t.cut, what + " is cut off");
                for (let j = 0; j < i; ++j) {
                    const o = texts[j].rect;
                    const dx = Math.min(t.rect.x + t.rect.width, o.x + o.width) - Math.max(t.rect.x, o.x);
                    const dy = Math.min(t.rect.y + t.rect.height, o.y + o.height) - Math.max(t.rect.y, o.y);
                    if (dx > 0 && dy > 1)
                        fail(what + " lies over '" + texts[j].text + "' " + o);
                }
            }
            verify(texts.length > 30, name + ": " + texts.length + " texts");
        }
        function walk(item: var, found: var): void {
            if (!item.visible)
                return;
            if (item.lineCount !== undefined && item.text !== undefined && item.text !== "") {
                const at = item.mapToItem(page, 0, 0);
                const x = item.horizontalAlignment === Text.AlignHCenter ? at.x + (item.width - item.contentWidth) / 2 : at.x;
                // A line has air over its letters (accents up to 0.87 em) and a little below them.
                const air = Math.max(0, item.baselineOffset - 0.87 * item.font.pixelSize);
                const foot = 0.05 * item.font.pixelSize;
                found.push({ text: item.text, rect: Qt.rect(x, at.y + air, item.contentWidth, item.contentHeight - air - foot), pixels: item.font.pixelSize, cut: item.truncated });
            }
            for (const child of Array.from({ length: item.children.length }, (_, i) => item.children[i]))
                walk(child, found);
        }
    }
}
