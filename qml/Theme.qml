// SPDX-License-Identifier: GPL-3.0-or-later
// Every colour, size and duration of all screens. Sizes are in px of the size a screen was drawn for (wall,
// touch, desk 1920 x 1080; instructor 1280 x 800); multiply by u, the size of one such px on this window.
// Contrast figures are in DEVELOPERS.md. Hues: Okabe and Ito's colour-blind-safe palette; neutrals are our own.
pragma Singleton
import QtQuick
import Floorwheel

QtObject {
    // Set by Main (or a test) to the window's size; one window a process.
    property real windowWidth: ThisScreen.designWidth
    property real windowHeight: ThisScreen.designHeight
    readonly property real u: Math.min(windowWidth / ThisScreen.designWidth, windowHeight / ThisScreen.designHeight)

    // Grounds: the room's screens are ink, the counter's paper.
    readonly property color ink: "#0B1420"
    readonly property color face: "#0F1C2A"
    readonly property color bed: "#22344A"
    readonly property color panel: "#182634"
    readonly property color paper: "#F4F0E6"
    readonly property color card: "#FFFFFF"
    readonly property color shade: "#E4DECF"
    readonly property color mute: "#BCC8D4"
    readonly property color pmute: "#3B4550"
    readonly property color line: "#5B7086"
    readonly property color pline: "#7A7564"
    readonly property color strand: "#8494A3"
    // Meanings, never alone: each comes with a word and a shape.
    readonly property color active: "#0072B2"      // blue: work, show, warm-up, lap break, cool-down
    readonly property color go: "#F0E442"          // yellow: now, where to go, the one main key
    readonly property color heldColour: "#56B4E9"  // sky: held; what a change would change
    readonly property color alarm: "#D55E00"       // vermilion: edge of the octagon, box of an absence
    readonly property color aid: "#009E73"         // green: first-aid sign only

    // For parts that lie on either ground.
    readonly property color ground: ThisScreen.inRoom ? ink : paper
    readonly property color text: ThisScreen.inRoom ? paper : ink
    readonly property color quiet: ThisScreen.inRoom ? mute : pmute
    readonly property color rule: ThisScreen.inRoom ? line : pline
    readonly property color keyFill: ThisScreen.inRoom ? panel : card

    // Typefaces, and the capital's part of an em: pixelSize = cap / capOfEm.
    readonly property string plain: ThisScreen.plainFamily
    readonly property string narrow: ThisScreen.narrowFamily
    readonly property string caption: ThisScreen.captionFamily
    readonly property real capOfEm: 0.70

    // A size set for each kind of screen.
    readonly property WallSizes wall: WallSizes {}
    component WallSizes: QtObject { // capital heights
        readonly property real clock: 426
        readonly property real letterShown: 284
        readonly property real word: 142
        readonly property real alias: 71
        readonly property real near: 43
        readonly property real aliasWork: 44
        readonly property real emergency: 75
        readonly property real marginX: 14
        readonly property real marginY: 12
    }
    readonly property TouchSizes touch: TouchSizes {}
    component TouchSizes: QtObject { // letter sizes (px of em), keys
        readonly property real value: 57
        readonly property real mainKey: 46
        readonly property real key: 30
        readonly property real note: 22
        readonly property real keyLeast: 89
        readonly property real gap: 17
        readonly property real radius: 10
        readonly property real controlsFrom: 360
    }
    readonly property InstructorSizes instructor: InstructorSizes {}
    component InstructorSizes: QtObject {
        readonly property real state: 36
        readonly property real mainKey: 28
        readonly property real row: 20
        readonly property real head: 22
        readonly property real least: 14
        readonly property real keyLeast: 130
        readonly property real gap: 24
        readonly property real readRow: 60
        readonly property real radius: 8
        readonly property real barTop: 660
        readonly property real barBottom: 790
    }
    readonly property DeskSizes desk: DeskSizes {}
    component DeskSizes: QtObject {
        readonly property real title: 31
        readonly property real head: 24
        readonly property real row: 20
        readonly property real note: 17
        readonly property real cap: 16
        readonly property real grid: 8
        readonly property real radius: 6
    }

    // Motion, ms. Above four times the usual speed, or in a picture, all of it ends at once.
    readonly property bool calm: ClassTime.calm
    readonly property int turn: calm ? 0 : 400     // near to go face and back; heel and leader in the show
    readonly property int chevron: calm ? 0 : 300
    readonly property int grow: calm ? 0 : 200     // tags in the last five seconds
    readonly property int sameKeyAgain: 250        // a second tap within this is a bounce
}
