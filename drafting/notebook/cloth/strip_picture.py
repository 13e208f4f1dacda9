"""The strip of the overhang test, drawn as it bends over the table's edge."""

from __future__ import annotations

from math import cos, radians, sin

from drafting.export.svg_writer import Svg, element, number, words
from drafting.geometry.elastica import bent_strip
from drafting.notebook.cloth.ruled import METRIC, Ruled

LEFT, TOP = 70.0, 18.0
"""Where the table's edge is drawn."""

WIDE, HIGH = 360.0, 230.0
LARGEST = 250.0
"""Units that the strip may take: a longer one is drawn smaller."""

DEEPEST = 180.0
"""Units that it may hang down."""

LIES = 60.0
"""Units of the strip that still lie on the table."""


def strip_svg(overhang: float, angle: float, bending_length: float, ruled: Ruled = METRIC) -> Svg:
    """Return a strip of this `bending_length` hanging over by `overhang` mm, and the slope at `angle`:
    twice its size where there is room."""
    strip = bent_strip(overhang / bending_length, 1.0, 1.0)
    scale = min(2.0, LARGEST / overhang, DEEPEST / overhang / sin(radians(angle)))
    size = bending_length * scale
    points = [(LEFT + size * x, TOP + size * y) for x, y in zip(strip.out[::8], strip.down[::8], strict=True)]
    drawn = " L ".join(f"{number(x, 2)} {number(y, 2)}" for x, y in points)
    far = 1.18 * (points[-1][0] - LEFT) / cos(radians(angle)) + 20
    end = LEFT + far * cos(radians(angle)), TOP + far * sin(radians(angle))
    slope = f"M {LEFT:g} {TOP:g} L {number(end[0], 1)} {number(end[1], 1)}"
    tip = points[-1]
    return element(
        "svg",
        words("title", "The strip over the table's edge"),
        element("path", class_="table", d=f"M 0 {TOP:g} H {LEFT:g} V {HIGH:g} H 0 Z"),
        element("path", class_="mark", d=f"M {LEFT:g} {TOP:g} H {WIDE:g}"),
        element("path", class_="mark slope", d=slope),
        element(
            "path",
            class_="bent",
            d=f"M {LEFT - LIES:g} {TOP:g} L {drawn}",
            data_overhang=number(overhang, 1),
            data_bending_length=number(bending_length, 3),
        ),
        element("circle", class_="tip", cx=number(tip[0], 2), cy=number(tip[1], 2), r="3"),
        words("text", f"{angle:g} degrees", x=number(end[0] + 4, 1), y=number(end[1], 1)),
        words("text", f"{ruled.said(overhang)} over the edge", x=f"{LEFT + 6:g}", y="11"),
        class_="swatch bent-strip",
        role="img",
        viewBox=f"0 0 {WIDE:g} {HIGH:g}",
    )
