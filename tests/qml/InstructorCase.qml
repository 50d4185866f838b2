// SPDX-License-Identifier: GPL-3.0-or-later
// What tests of the instructor's screen do with it: find, tap and see by name, and hold every page against the
// sizes and distances that fingers need.
import QtQuick
import QtTest
import FloorwheelTest

TestCase {
    id: screenCase
    required property Item shown
    property int taps: 0
    when: windowShown

    function control(name: string): Item {
        tryVerify(() => TestHub.control(shown, name) !== null, 20000, name + " among " + TestHub.names(shown));
        return TestHub.control(shown, name);
    }
    function tap(name: string): void {
        const key = control(name);
        key.lastAct = 0; // the bounce guard has its own test
        const t = touchEvent(key);
        t.press(0, key).commit();
        t.release(0, key).commit();
        taps += 1;
    }
    function sees(text: string): void {
        tryVerify(() => TestHub.sees(shown, text), 20000, text + " among " + TestHub.names(shown));
    }
    function keys(item: Item): var {
        let found = [];
        if (!item.visible)
            return found;
        if (typeof item.acted === "function")
            found.push(item);
        for (let i = 0; i < item.children.length; ++i)
            found = found.concat(keys(item.children[i]));
        return found;
    }
    /// Texts that are no part of a key.
    function texts(item: Item): var {
        let found = [];
        if (!item.visible || typeof item.acted === "function")
            return found;
        if (item.contentHeight !== undefined && item.text)
            found.push(item);
        for (let i = 0; i < item.children.length; ++i)
            found = found.concat(texts(item.children[i]));
        return found;
    }
    /// Every text is on the page and clear of the keys; every key is large enough, apart from the others, on
    /// the page, and has a name of its own.
    function keysAreFit(): void {
        const all = keys(shown);
        verify(all.length > 0);
        const names = {};
        for (const k of all) {
            const r = k.mapToItem(shown, 0, 0, k.width, k.height);
            verify(r.width >= 130 && r.height >= 130, k.name + ": " + r);
            verify(r.x >= 0 && r.y >= 80 && r.right <= 1280 && r.bottom <= 800, k.name + ": " + r);
            verify(k.name !== "", "a key without a name");
            verify(!(k.name in names), "twice: " + k.name);
            names[k.name] = true;
            for (const o of all) {
                if (o === k)
                    continue;
                const s = o.mapToItem(shown, 0, 0, o.width, o.height);
                const gap = Math.max(s.x - r.right, r.x - s.right, s.y - r.bottom, r.y - s.bottom);
                verify(gap >= 22, k.name + " and " + o.name + ": " + gap);
            }
        }
        for (const t of texts(shown)) {
            const r = t.mapToItem(shown, 0, 0, t.width, t.contentHeight);
            verify(r.x >= 0 && r.y >= 0 && r.right <= 1280 && r.bottom <= 800, t.text + ": " + r);
            for (const k of all) {
                const s = k.mapToItem(shown, 0, 0, k.width, k.height);
                verify(r.right <= s.x || s.right <= r.x || r.bottom <= s.y + 1 || s.bottom <= r.y + 1, t.text + " lies on " + k.name);
            }
        }
        const stop = all.filter(k => k.mapToItem(shown, 0, 0).x === 1050);
        compare(stop.length, 1);
        compare(stop[0].width, 210);
    }
    /// No text ends in an ellipsis.
    function nothingIsCut(item = shown): void {
        if (!item.visible)
            return;
        verify(item.truncated !== true, "cut: " + item.text);
        for (let i = 0; i < item.children.length; ++i)
            nothingIsCut(item.children[i]);
    }
}
