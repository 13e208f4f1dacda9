"""The card for trying a cloth: a slope of 41.5 degrees, a ruler as wide as the strip, a square to prove them.

Drawn for the paper that A4 and Letter have in common, within its margins: 190 x 259 mm.
"""

from __future__ import annotations

from cmath import rect
from collections.abc import Mapping
from dataclasses import dataclass
from math import radians, tan

from drafting.fabric.overhang import SLOPE
from drafting.geometry import Path, line
from drafting.ground.frozen import freeze
from drafting.ground.units import shown_unit
from drafting.sheet import Layer, Sheet, Stroke, Text, box_path
from drafting.sheet.scale import scale_square

WIDE, HIGH = 190.0, 259.0
CORNER = 6 + 218j
"""Where the strip leaves the table, on the card."""

FRONT = 150.0
"""mm of the card that stand against the table's front."""

RULER = 6 + 30j
REACH = 180
"""mm that the ruler measures."""

SQUARE = 88 + 150j

HEAD = ("The overhang test",)


@dataclass(frozen=True)
class CardRuler:
    """What the card is in: mm of a figure of its ruler, of the marks between, their name, how wide it is.

    `square` is the number of the scale square that proves it; `loaded` is the width, the marks and the load of
    the loaded strip.
    """

    figure: float
    ticks: Mapping[float, float]
    called: str
    wide: float
    strip: str
    loaded: tuple[str, str, str]
    square: int

    def __post_init__(self) -> None:
        freeze(self, "ticks")


CM = CardRuler(
    figure=10.0,
    ticks={10.0: 6.0, 5.0: 4.5, 1.0: 3.0},
    called="cm",
    wide=25.0,
    strip="25 mm",
    loaded=("5 cm", "100 mm", "500 g"),
    square=1,
)
INCHES = CardRuler(
    figure=25.4,
    ticks={25.4: 6.0, 12.7: 5.0, 6.35: 4.0, 3.175: 3.2, 1.5875: 2.4},
    called="inches",
    wide=25.4,
    strip="1 in",
    loaded=("2 in", "4 in", "500 g (17 5/8 oz)"),
    square=0,
)
"""Sixteenths, as on a tape; strips of 1 in and 25 mm are the same test (`Source.ASTM_D1388`: 25 mm)."""

HOW = (
    "Print at 100 %, prove the square, glue on card, cut out.",
    "Stand the slope at the table's front, its corner level",
    "with the table's top. Lay a strip {strip} wide flat, the",
    "ruler on it, both ends at the edge. Push both out",
    "together until the strip's tip touches the slope. What",
    "the ruler says at the table's edge hangs over; half of",
    "it is the bending length. Turn the strip over, try both",
    "ends, and take the mean of four.",
)
LOADED = (
    "The loaded strip: cut it twice as wide as this ruler ({wide}), mark {marks} on it, hang it up, clip {load}",
    "along its whole lower edge, wait a minute, and read the marks. Along, across, and on the bias.",
)


def strip_card(unit: str | None = "cm") -> Sheet:
    """Return the card as a sheet, true to scale, its ruler in cm or in inches."""
    scale = INCHES if shown_unit(unit) == "in" else CM
    wide, marks, load = scale.loaded
    how = tuple(line.format(strip=scale.strip) for line in HOW)
    loaded = tuple(line.format(wide=wide, marks=marks, load=load) for line in LOADED)
    ruler, figures = _ruler(scale)
    square, *captions = scale_square(scale.square, SQUARE)
    texts = (
        Text(6 + 250j, 5.0, HEAD, bold=True),
        Text(6 + 243j, 2.5, how),
        *captions,
        *_slope_words(),
        *figures,
        Text(6 + 22j, 2.7, loaded),
    )
    return Sheet(HEAD[0], WIDE, HIGH, (_slope(), square, *ruler), texts, " ".join((*how, *loaded)))


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


def _ruler(scale: CardRuler) -> tuple[tuple[Stroke, ...], tuple[Text, ...]]:
    x, y = RULER.real, RULER.imag
    top = complex(x, y + scale.wide)
    least = min(scale.ticks)
    at = [n * least for n in range(1, round(REACH / least))]
    ticks = tuple(line(top + mm, top + mm - 1j * _tick(mm, scale)) for mm in at)
    figures = tuple(
        Text(top + n * scale.figure - 10j, 3.2, (f"{n}",), "middle", layer=Layer.SCALE)
        for n in range(1, int((REACH - 1) / scale.figure) + 1)
    )
    wide = f"This ruler is as wide as the strip: {scale.strip}."
    words = (f"{scale.called} that hang over. {wide} This end to the front.",)
    frame = box_path((x, y, x + REACH, y + scale.wide))
    strokes = (Stroke(Layer.CUT, (frame,), "ruler", closed=True), Stroke(Layer.SCALE, ticks, "scale-check.ruler"))
    return strokes, (*figures, Text(complex(x + 3, y + 5), 3.2, words, layer=Layer.SCALE))


def _tick(mm: float, scale: CardRuler) -> float:
    """Return how long a mark is: the longest of those whose step it is a multiple of."""
    return next(length for every, length in scale.ticks.items() if abs(mm / every - round(mm / every)) < 1e-6)
