"""How each layer looks: width, dash and colour by meaning, told apart in grey too.

Widths and dashes are mm on paper. Every line is known by its dash and width first;
colour only helps.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Path, line, turn, unit
from drafting.ground.palette import Colour
from drafting.sheet import Layer


@dataclass(frozen=True, slots=True)
class LineStyle:
    """Line `width` mm, `dash` (drawn, left out, ... mm; empty is solid).

    `halo` mm of paper lie under the line on both sides, so that the line below it does not show.
    """

    width: float
    dash: tuple[float, ...] = ()
    colour: Colour = Colour.INK
    halo: float = 0.0


STYLES: dict[Layer, LineStyle] = {
    Layer.CLOTH: LineStyle(0.35, (), Colour.FAINT),
    Layer.CUT: LineStyle(0.7, (), Colour.INK),
    Layer.STITCH: LineStyle(0.35, (5.0, 2.0), Colour.SEAM),
    Layer.FOLD: LineStyle(0.45, (12.0, 2.0, 1.5, 2.0), Colour.INK, halo=0.6),
    Layer.DART: LineStyle(0.25, (3.0, 1.5), Colour.SEAM),
    Layer.LEVEL: LineStyle(0.2, (1.0, 1.6), Colour.FAINT),
    Layer.GRAIN: LineStyle(0.4, (), Colour.INK),
    Layer.STRETCH: LineStyle(0.4, (), Colour.STRETCH),
    Layer.NOTCH: LineStyle(0.5, (), Colour.INK),
    Layer.PLACEMENT: LineStyle(0.25, (), Colour.SOFT),
    Layer.GUIDE: LineStyle(0.18, (), Colour.FAINT),
    Layer.SCALE: LineStyle(0.3, (), Colour.INK),
    Layer.JOIN: LineStyle(0.15, (), Colour.FAINT),
    Layer.PAGE: LineStyle(0.25, (), Colour.FAINT),
    Layer.LABEL: LineStyle(0.0, (), Colour.INK),
}

TEXT_COLOURS: dict[Layer, Colour] = {
    Layer.LEVEL: Colour.SOFT,
    Layer.GUIDE: Colour.SOFT,
    Layer.STRETCH: Colour.STRETCH,
    Layer.JOIN: Colour.FAINT,
    Layer.PAGE: Colour.FAINT,
}
"""Text is drawn in ink on every other layer."""

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
