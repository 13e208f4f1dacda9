"""How each layer looks: width, dash and colour by meaning, told apart in grey too.

Widths and dashes are mm on paper. Every line is known by its dash and width first;
colour only helps.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Path, line, turn, unit
from drafting.sheet import Layer


@dataclass(frozen=True, slots=True)
class LineStyle:
    """Line `width` mm, `dash` (drawn, left out, ... mm; empty is solid), `colour` as #rrggbb.

    `halo` mm of white lie under the line on both sides, so that the line below it does not show.
    """

    width: float
    dash: tuple[float, ...] = ()
    colour: str = "#000000"
    halo: float = 0.0


INK, SEWN, CLAY, SLATE, MIST = "#111111", "#1f4e79", "#8f3d17", "#4d4d4d", "#7a7a7a"

STYLES: dict[Layer, LineStyle] = {
    Layer.CLOTH: LineStyle(0.35, (), MIST),
    Layer.CUT: LineStyle(0.7, (), INK),
    Layer.STITCH: LineStyle(0.35, (5.0, 2.0), SEWN),
    Layer.FOLD: LineStyle(0.45, (12.0, 2.0, 1.5, 2.0), INK, halo=0.6),
    Layer.DART: LineStyle(0.25, (3.0, 1.5), SEWN),
    Layer.LEVEL: LineStyle(0.2, (1.0, 1.6), MIST),
    Layer.GRAIN: LineStyle(0.4, (), INK),
    Layer.STRETCH: LineStyle(0.4, (), CLAY),
    Layer.NOTCH: LineStyle(0.5, (), INK),
    Layer.PLACEMENT: LineStyle(0.25, (), SLATE),
    Layer.GUIDE: LineStyle(0.18, (), MIST),
    Layer.SCALE: LineStyle(0.3, (), INK),
    Layer.JOIN: LineStyle(0.15, (), MIST),
    Layer.PAGE: LineStyle(0.25, (), MIST),
    Layer.LABEL: LineStyle(0.0, (), INK),
}

TEXT_COLOURS: dict[Layer, str] = {
    Layer.LEVEL: SLATE,
    Layer.GUIDE: SLATE,
    Layer.STRETCH: CLAY,
    Layer.JOIN: MIST,
    Layer.PAGE: MIST,
}
"""Text is drawn in `INK` on every other layer."""

TINTS = ("#eef2f6", "#f6f0e8", "#edf3ea", "#f3edf3", "#f4f3e6", "#e9f1f2")
"""Light fills, one a piece in turn, so near in lightness that lines read alike on all of them."""

GARMENT_TINTS = ("#e3edf7", "#f0d9b5", "#b9d6bb", "#d3b3cf", "#8fb4cf", "#c08f74")
"""Fills on the cloth, one a garment: each darker than the one before, so that grey tells them apart."""

CLOTH_TINT = "#fdfcf9"
"""Fill of the cloth under the pieces."""

HEAD = 9.0
"""mm: length of an arrow head."""


def open_head(tip: complex, heading: complex, size: float = HEAD) -> Path:
    """Return an arrow head of two lines, as a grainline carries it."""
    back = -unit(heading) * size
    return line(tip + back * turn(20), tip, tip + back * turn(-20))


def full_head(tip: complex, heading: complex, size: float = HEAD) -> Path:
    """Return a three-cornered arrow head, as a stretch arrow carries it."""
    back = -unit(heading) * size
    left, right = tip + back * turn(18), tip + back * turn(-18)
    return line(left, tip, right, left)


def bracket(start: complex, end: complex, inward: complex, size: float = HEAD) -> tuple[Path, ...]:
    """Return the mark for a fold: a line beside it whose ends turn to the fold with arrow heads.

    `start` and `end` lie on the fold; `inward` points into the piece.
    """
    step = unit(inward) * 1.6 * size
    shaft = line(start, start + step, end + step, end)
    return shaft, open_head(start, -inward, 0.7 * size), open_head(end, -inward, 0.7 * size)
