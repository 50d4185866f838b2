// SPDX-License-Identifier: GPL-3.0-or-later
// The instructor's training pages at their fullest, against a real hub: long aliases, more rows than a page holds,
// many muscle groups, the longest goal and agreement. Nothing is cut, nothing lies on a key, pages turn.
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
        name: "InstructorCrowd"
        shown: page
        readonly property var exercises: ["goblet-squat", "seated-row", "press-up", "leg-curl", "overhead-press", "triceps-extension", "biceps-curl", "calf-raise", "plank", "back-extension"]
        readonly property string letters: "ABCDEFGHJK"

        /// 40 characters, the most there may be, and all different.
        function alias(m: int): string {
            return ("Wilhelmina-Maximiliane van der Mommsenwald").slice(0, 37) + " " + m + ".";
        }
        function classFile(): string {
            let toml = "[class]\nname = \"Mill ring\"\nstart = 2026-03-05T18:30:00+01:00\nwork_s = 400\nchange_s = 20\nslots = 10\n";
            exercises.forEach((e, s) => toml += "[[station]]\nid = \"" + letters[s] + "\"\nexercise = \"" + e + "\"\ncapacity = 2\nat = [" + s + ".0, 1.0]\n");
            for (let m = 1; m <= 8; ++m)
                toml += "[[member]]\nid = \"w" + m + "\"\nshown_as = \"" + alias(m) + "\"\nlevel = \"intermediate\"\n";
            return toml;
        }
        /// w1 to w4 stand still at the seated row, w1 does all exercises; w5 to w8 are new.
        function past(): var {
            return [16, 11, 6, 2].map((ago, i) => {
                    const here = ["w1", "w2", "w3", "w4"];
                    const sets = here.map(m => [m, "B", 2, 200, 11]);
                    exercises.forEach((e, s) => sets.push(["w1", letters[s], s + 1, 100, 12]));
                    return {
                        ago: ago,
                        here: i < 3 ? here : here.concat(["w5", "w6", "w7", "w8"]),
                        sets: sets,
                        hurts: i === 3 ? "w4" : "",
                        spot: "lats"
                    };
                });
        }

        function initTestCase(): void {
            verify(TestHub.playPast(classFile(), past()));
            tryVerify(() => HubLink.connected, 30000);
            const words = "Größer werden, ";
            const line = words.repeat(14).slice(0, 199) + ".";
            compare(line.length, 200);
            verify(!("code" in TestHub.tell("talk.note", { "member": "w1", "goal": line, "agreed": line })));
        }

        function test_01_a_full_list_turns_its_pages(): void {
            tap("Training");
            tryVerify(() => Instructor.training.pages > 1);
            compare(Instructor.training.stalls.count, 3);
            keysAreFit();
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-training-full"), "");
            tap("Next page");
            keysAreFit();
            nothingIsCut();
            tap("New members");
            sees("On the first four visits: 4");
            keysAreFit();
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-new-full"), "");
            tap("Back");
        }

        function test_02_a_full_sheet_fits(): void {
            compare(Instructor.training.pageText, "page 1 of " + Instructor.training.pages);
            tap("No progress: " + alias(1) + ", " + Instructor.training.stalls.data(Instructor.training.stalls.index(0, 0), 259));
            sees(alias(1));
            tryVerify(() => Instructor.talk.groups.count >= 12, 20000, Instructor.talk.groups.count + " groups");
            compare(Instructor.talk.loads.count, 3);
            keysAreFit();
            nothingIsCut();
            compare(TestHub.picture(page, "instructor-talk-full"), "");
            tryVerify(() => overlap() === "", 5000, "once it is laid out");
            compare(overlap(), "");
        }
        /// Which text lies on which, or "".
        function overlap(): string {
            const all = texts(page).filter(t => t.contentWidth > 0);
            for (const a of all)
                for (const b of all) {
                    const r = a.mapToItem(page, 0, 0, a.contentWidth, a.contentHeight);
                    const s = b.mapToItem(page, 0, 0, b.contentWidth, b.contentHeight);
                    if (!(a === b || r.right <= s.x || s.right <= r.x || r.bottom <= s.y + 6 || s.bottom <= r.y + 6))
                        return a.text + " lies on " + b.text;
                }
            return "";
        }

        function test_03_the_longest_line_is_written_whole(): void {
            tap("Write the goal");
            sees("0 characters left");
            nothingIsCut();
            keysAreFit();
            tap("B");
            sees("0 characters left");
            compare(TestHub.picture(page, "instructor-write-full"), "");
            tap("Erase");
            sees("1 character left");
        }
    }
}
