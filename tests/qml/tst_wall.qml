// SPDX-License-Identifier: GPL-3.0-or-later
// The wall against a real hub, from no class to the end: what it says after each command of the instructor, and
// that it goes on when the hub is gone.
import QtQuick
import QtTest
import Floorwheel
import FloorwheelTest

Item {
    id: page
    width: 1920
    height: 1080
    Binding { target: Theme; property: "windowWidth"; value: 1920 }
    Binding { target: Theme; property: "windowHeight"; value: 1080 }

    WallScreen {
        id: wall
        anchors.fill: parent
    }
    SignalSpy { id: hand; target: wall.view; signalName: "handChanged" }
    SignalSpy { id: face; target: wall.view; signalName: "faceChanged" }
    SignalSpy { id: wheel; target: wall.view; signalName: "wheelChanged" }
    SignalSpy { id: lines; target: wall.view; signalName: "linesChanged" }

    TestCase {
        name: "Wall"
        when: windowShown
        property string classId
        property int version: 0

        function told(kind: string, body: var): var {
            const receipt = TestHub.tell(kind, Object.assign({ "class": classId }, body));
            compare(receipt.code, undefined, kind + ": " + receipt.text);
            return receipt.body ?? {};
        }
        function says(text: string): void {
            tryVerify(() => TestHub.sees(page, text), 20000, "'" + text + "' among " + TestHub.names(page));
        }
        function saysNot(text: string): void {
            tryVerify(() => !TestHub.sees(page, text), 20000, "'" + text + "' still there");
        }

        function test_a_no_class(): void {
            says("Floorwheel");
            says("waits for a class");
            verify(!wall.view.pointing);
        }
        function test_b_who_is_in(): void {
            classId = TestHub.addSmallClass(4, 4, "Wall ring");
            told("class.open", {});
            says("Come in");
            says("18:30");
            says("Wall ring");
            told("check_in", { member: "m2" });
            says("Ada 2.");
            says("1 here");
            verify(!TestHub.sees(page, "Ada 1."));
            told("heads.count", { here: ["m1", "m2", "m3", "m4"], guests: 0 });
            says("4 here");
        }
        function test_c_published(): void {
            const answer = TestHub.ask("proposal", { "class": classId });
            told("class.publish", { saw: 0, proposal: (answer.body ?? answer).proposal });
            version = 1;
            says("First place");
            compare(wall.view.state, "ready");
            compare(wall.view.tags.rowCount(), 4); // a tag beside everybody, nobody has started
        }
        function test_d_started_the_hand_goes_and_nothing_else(): void {
            told("class.start", { saw: version });
            tryCompare(wall.view, "state", "lead-in");
            told("class.skip", { saw: version });
            says("Work");
            says("Slot 1");
            says("Lap 1");
            tryVerify(() => hand.count > 0);
            wheel.clear();
            lines.clear();
            face.clear();
            hand.clear();
            tryVerify(() => hand.count >= 20, 10000);
            compare(wheel.count, 0, "discs, rail and chevrons stay");
            compare(lines.count, 0, "leaders stay");
            verify(face.count <= 4, "once a second at most, in about two seconds: " + face.count);
        }
        function test_e_changeover_names_the_next_place(): void {
            told("class.skip", { saw: version });
            tryCompare(wall.view, "state", "change");
            verify(TestHub.sees(page, "Move one on") || TestHub.sees(page, "Next place"), TestHub.names(page));
            compare(wall.view.tags.rowCount(), 4);
            verify(wall.view.goFace);
        }
        function test_f_held_and_on_again(): void {
            told("class.hold", {});
            says("Held");
            says("Clock");
            compare(wall.view.tone, "held");
            verify(wall.view.goFace, "the face it stopped in");
            told("class.resume", { saw: version });
            saysNot("Held");
        }
        function test_g_stop_and_help(): void {
            told("class.stop", {});
            says("Stop and help");
            says("weights down");
            says("since stop");
            saysNot("Ada 1.");
            told("class.over", {});
            says("Held"); // never straight to work
            told("class.resume", { saw: version });
            saysNot("Held");
        }
        function test_h_without_the_hub_the_class_goes_on(): void {
            told("class.skip", { saw: version });
            says("Slot 2");
            TestHub.kill();
            says("On its own");
            hand.clear();
            tryVerify(() => hand.count >= 10, 10000, "the hand stands still");
            verify(TestHub.restart());
            saysNot("On its own");
        }
        function test_i_ended(): void {
            told("class.end", {});
            says("Floorwheel");
        }
    }
}
