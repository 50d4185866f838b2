// SPDX-License-Identifier: GPL-3.0-or-later
// The shared parts: a key acts on release inside and once, by finger, mouse and keyboard, and shows it is pressed.
import QtQuick
import QtTest
import Floorwheel
import FloorwheelTest

Item {
    id: page
    width: 800
    height: 400

    Key {
        id: first
        x: 40
        y: 40
        width: 200
        height: 100
        text: "Fine"
        onActed: acts.count += 1
    }
    Key {
        id: second
        x: 300
        y: 40
        width: 200
        height: 100
        text: "Done"
    }
    TimeStrip {
        id: strip
        x: 40
        y: 200
        width: 400
        height: 60
        secondsLong: 20
        secondsLeft: 13
    }
    QtObject {
        id: acts
        property int count: 0
    }

    TestCase {
        id: testCase
        name: "Parts"
        when: windowShown

        function init(): void {
            acts.count = 0;
            first.lastAct = 0;
        }

        function test_key_acts_on_release_inside(): void {
            const t = touchEvent(first);
            t.press(0, first).commit();
            compare(first.pressed, true);
            compare(acts.count, 0);
            t.release(0, first).commit();
            compare(first.pressed, false);
            compare(acts.count, 1);
        }
        function test_key_released_outside_does_nothing(): void {
            const t = touchEvent(first);
            t.press(0, first).commit();
            t.move(0, first, 500, 300).commit();
            t.release(0, first, 500, 300).commit();
            compare(acts.count, 0);
        }
        function test_second_tap_within_a_quarter_second_is_a_bounce(): void {
            mouseClick(first);
            mouseClick(first);
            compare(acts.count, 1);
            first.lastAct -= Theme.sameKeyAgain; // as if that time had gone by
            mouseClick(first);
            compare(acts.count, 2);
        }
        function test_key_inverts_while_pressed(): void {
            const fill = String(first.faceNow);
            const ink = String(first.inkNow);
            mousePress(first);
            compare(String(first.faceNow), ink);
            compare(String(first.inkNow), fill);
            mouseRelease(first);
            compare(String(first.faceNow), fill);
        }
        function test_key_works_by_tab_and_enter(): void {
            first.forceActiveFocus();
            keyClick(Qt.Key_Return);
            keyClick(Qt.Key_Space); // two presses are meant as two
            compare(acts.count, 2);
            keyClick(Qt.Key_Tab);
            compare(second.activeFocus, true);
        }
        function test_disabled_key_does_nothing_and_is_no_control(): void {
            first.enabled = false;
            mouseClick(first);
            compare(acts.count, 0);
            compare(TestHub.control(page, "Fine"), null);
            first.enabled = true;
            compare(TestHub.control(page, "Fine"), first);
        }
        function test_strip_has_a_mark_a_second(): void {
            compare(strip.marks, 20);
            compare(strip.marksLeft, 13);
        }
        function test_strip_of_a_long_segment_has_forty(): void {
            strip.secondsLong = 360;
            strip.secondsLeft = 1;
            compare(strip.marks, 40);
            compare(strip.marksLeft, 1);
            strip.secondsLong = 20;
            strip.secondsLeft = 13;
        }
    }
}
