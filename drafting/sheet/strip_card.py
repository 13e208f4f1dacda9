"""The card for trying a cloth: a slope of 41.5 degrees, a ruler as wide as the strip, a square to prove them.

Drawn for the paper that A4 and Letter have in common, within its margins: 190 x 259 mm.
"""

from __future__ import annotations

from cmath import rect
from math import radians, tan

from drafting.fabric.overhang import SLOPE
from drafting.geometry import Path, line
from drafting.sheet import Layer, Sheet, Stroke, Text, box_path
from drafting.sheet.scale import scale_square

WIDE, HIGH = 190.0, 259.0
CORNER = 6 + 218j
"""Where the strip leaves the table, on the card."""

FRONT = 150.0
"""mm of the card that stand against the table's front."""

STRIP = 25.0
"""mm: the width of a test strip (`Source.ASTM_D1388`)."""

RULER = 6 + 30j
REACH = 180
"""mm that the ruler measures."""

SQUARE = 88 + 150j
TICKS = {10: 6.0, 5: 4.5, 1: 3.0}
"""mm: the length of a tick at every tenth, fifth and single mm."""

HEAD = ("The overhang test",)
HOW = (
    "Print at 100 %, prove the square, glue on card, cut out.",
    "Stand the slope at the table's front, its corner level",
    "with the table's top. Lay a strip 25 mm wide flat, the",
    "ruler on it, both ends at the edge. Push both out",
    "together until the strip's tip touches the slope. What",
    "the ruler says at the table's edge hangs over; half of",
    "it is the bending length. Turn the strip over, try both",
    "ends, and take the mean of four.",
)
LOADED = (
    "The loaded strip: cut it twice as wide as this ruler (5 cm), mark 100 mm on it, hang it up, clip 500 g",
    "along its whole lower edge, wait a minute, and read the marks. Along, across, and on the bias.",
)


def strip_card() -> Sheet:
    """Return the card as a sheet, true to scale."""
    ruler, figures = _ruler()
    square, *captions = scale_square(1, SQUARE)
    texts = (
        Text(6 + 250j, 5.0, HEAD, bold=True),
        Text(6 + 243j, 2.5, HOW),
        *captions,
        *_slope_words(),
        *figures,
        Text(6 + 22j, 2.7, LOADED),
    )
    return Sheet(HEAD[0], WIDE, HIGH, (_slope(), square, *ruler), texts, " ".join((*HOW, *LOADED)))


def _slope() -> Stroke:
    foot = CORNER - 1j * FRONT
    tip = foot + FRONT / tan(radians(SLOPE))
    return Stroke(Layer.CUT, (Path.polygon(CORNER, foot, tip),), "slope", closed=True)


def _slope_words() -> tuple[Text, ...]:
    inside = CORNER - 1j * FRONT
    against = ("this side against the table's front,", "the upper corner level with its top")
    along = CORNER + rect(60.0, -radians(SLOPE)) + complex(-18, -14)
    return (
        Text(inside + (6 + 14j), 3.2, against),
        Text(along, 4.5, (f"slope {SLOPE:g} degrees",), "middle", bold=True),
    )


def _ruler() -> tuple[tuple[Stroke, ...], tuple[Text, ...]]:
    x, y = RULER.real, RULER.imag
    top = complex(x, y + STRIP)
    ticks = tuple(line(top + mm, top + mm - 1j * _tick(mm)) for mm in range(1, REACH))
    figures = tuple(
        Text(top + mm - 10j, 3.2, (f"{mm // 10}",), "middle", layer=Layer.SCALE) for mm in range(10, REACH, 10)
    )
    words = ("cm that hang over. This ruler is as wide as the strip: 25 mm. This end to the front.",)
    frame = box_path((x, y, x + REACH, y + STRIP))
    strokes = (Stroke(Layer.CUT, (frame,), "ruler", closed=True), Stroke(Layer.SCALE, ticks, "scale-check.ruler"))
    return strokes, (*figures, Text(complex(x + 3, y + 5), 3.2, words, layer=Layer.SCALE))


def _tick(mm: int) -> float:
    return next(length for every, length in TICKS.items() if mm % every == 0)
