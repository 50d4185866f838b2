// SPDX-License-Identifier: GPL-3.0-or-later
// One sector of the dose ring: four parts of equal depth, filled from the inside to its band.
import QtQuick
import QtQuick.Shapes
import Floorwheel

Shape {
    id: sector
    required property real from // degrees clockwise from the top
    required property real sweep
    required property int band
    property real inner: 118 // px of the drawn size
    property real outer: 284
    readonly property real part: (outer - inner) / 4
    readonly property real centre: outer * Theme.u
    width: 2 * centre
    height: width

    // What lies between two radii, within the angles.
    component Field: ShapePath {
        id: field
        property real centre
        property real low
        property real high
        property real from
        property real sweep
        readonly property real first: (from - 90) * Math.PI / 180
        readonly property real last: first + sweep * Math.PI / 180
        strokeColor: "transparent"
        joinStyle: ShapePath.MiterJoin
        startX: centre + low * Math.cos(first)
        startY: centre + low * Math.sin(first)
        PathLine {
            x: field.centre + field.high * Math.cos(field.first)
            y: field.centre + field.high * Math.sin(field.first)
        }
        PathAngleArc {
            moveToStart: false
            centerX: field.centre
            centerY: field.centre
            radiusX: field.high
            radiusY: field.high
            startAngle: field.from - 90
            sweepAngle: field.sweep
        }
        PathLine {
            x: field.centre + field.low * Math.cos(field.last)
            y: field.centre + field.low * Math.sin(field.last)
        }
        PathAngleArc {
            moveToStart: false
            centerX: field.centre
            centerY: field.centre
            radiusX: field.low
            radiusY: field.low
            startAngle: field.from + field.sweep - 90
            sweepAngle: -field.sweep
        }
    }
    // Where one part ends: on the blue in the card's colour.
    component Line: ShapePath {
        id: line
        property real centre
        property real reach
        property real from
        property real sweep
        strokeWidth: 2 * Theme.u
        fillColor: "transparent"
        capStyle: ShapePath.FlatCap
        PathAngleArc {
            centerX: line.centre
            centerY: line.centre
            radiusX: line.reach
            radiusY: line.reach
            startAngle: line.from - 90
            sweepAngle: line.sweep
        }
    }

    Field {
        centre: sector.centre
        low: sector.inner * Theme.u
        high: sector.outer * Theme.u
        from: sector.from
        sweep: sector.sweep
        fillColor: Theme.card
    }
    Field {
        centre: sector.centre
        low: sector.inner * Theme.u
        high: (sector.inner + sector.band * sector.part) * Theme.u
        from: sector.from
        sweep: sector.sweep
        fillColor: sector.band > 0 ? Theme.active : "transparent"
    }
    Line {
        centre: sector.centre
        reach: (sector.inner + sector.part) * Theme.u
        from: sector.from
        sweep: sector.sweep
        strokeColor: sector.band > 1 ? Theme.card : Theme.pline
    }
    Line {
        centre: sector.centre
        reach: (sector.inner + 2 * sector.part) * Theme.u
        from: sector.from
        sweep: sector.sweep
        strokeColor: sector.band > 2 ? Theme.card : Theme.pline
    }
    Line {
        centre: sector.centre
        reach: (sector.inner + 3 * sector.part) * Theme.u
        from: sector.from
        sweep: sector.sweep
        strokeColor: sector.band > 3 ? Theme.card : Theme.pline
    }
    Field {
        centre: sector.centre
        low: sector.inner * Theme.u
        high: sector.outer * Theme.u
        from: sector.from
        sweep: sector.sweep
        strokeColor: Theme.ink
        strokeWidth: 3 * Theme.u
        fillColor: "transparent"
    }
}
