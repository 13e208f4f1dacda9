"""What lies over and beside the pieces on the screen: a grid in cm or inches, and a scale bar."""

from __future__ import annotations

import math

from drafting.export.svg_writer import FONT, Svg, element, number, path_element, svg_joined, words
from drafting.geometry.path import Box
from drafting.ground.units import LengthUnit
from drafting.notebook.picture.view import Frame

GRIDS: dict[LengthUnit, tuple[tuple[float, str, float, str], ...]] = {
    "cm": ((10.0, "1 cm", 100.0, "10 cm"), (50.0, "5 cm", 100.0, "10 cm"), (100.0, "10 cm", 1000.0, "1 m")),
    "in": ((25.4, "1 in", 254.0, "10 in"), (127.0, "5 in", 254.0, "10 in"), (254.0, "10 in", 1270.0, "50 in")),
}
"""Distance and words of pale and of stronger lines, mm: the first whose pale lines lie far enough
apart is taken."""

CLOSE = 7.0
"""Pixels between two pale lines, at least (ours: nearer ones turn to grey)."""

BARS: dict[LengthUnit, tuple[tuple[float, str], ...]] = {
    "cm": tuple((10.0 * n, f"{n} cm") for n in (100, 50, 20, 10, 5, 2, 1)),
    "in": tuple((25.4 * n, f"{n} in") for n in (40, 20, 10, 5, 2, 1)),
}

LONGEST = 0.2
"""Share of the picture's width that the scale bar takes at most (ours)."""


def grid(frame: Frame, height: float, unit: LengthUnit) -> Svg:
    """Return the grid over all that is shown, counted from the sheet's lower left corner."""
    fine, _, strong, _ = _grid(frame, unit)
    every = _lines(frame.box, height, fine, skip=round(strong / fine))
    heavy = _lines(frame.box, height, strong)
    lines = path_element("fine", every), path_element("strong", heavy)
    return element("g", *lines, class_="grid")


def bar(frame: Frame, height: float, unit: LengthUnit) -> Svg:
    """Return the strip at the foot, and on its last line the scale bar and what squares measure."""
    x0, y0, x1, _ = frame.box
    em, low = frame.em, height - y0
    room = LONGEST * frame.width
    long, said = next((b for b in BARS[unit] if b[0] <= room), BARS[unit][-1])
    _, fine, _, strong = _grid(frame, unit)
    x, y = x0 + 0.8 * em, low - 0.7 * em
    ticks = "".join(f"M{x + long * n / 5:.2f} {y:.2f}v{-0.5 * em:.2f}" for n in range(6))
    left, right, floor = x0 - frame.width, x1 + frame.width, low + frame.width
    foot = f"M{left:.2f} {low - frame.foot:.2f}H{right:.2f}V{floor:.2f}H{left:.2f}Z"
    drawn = f"M{x:.2f} {y:.2f}h{long:.2f}{ticks}"
    squares = f"Squares {fine}, heavy lines {strong}"
    texts = ((x + long + 0.5 * em, said), (x0 + 0.4 * frame.width, squares))
    return svg_joined(
        [
            path_element("foot", foot),
            path_element("scale-check", drawn, ' id="scale-bar"'),
            element(
                "g",
                *(words("text", text, x=number(at, 2), y=number(y, 2)) for at, text in texts),
                class_="measured",
                font_family=FONT,
                font_size=number(em, 2),
            ),
        ]
    )


def _grid(frame: Frame, unit: LengthUnit) -> tuple[float, str, float, str]:
    wide_enough = (g for g in GRIDS[unit] if g[0] >= CLOSE * frame.pixel)
    return next(wide_enough, GRIDS[unit][-1])


def _lines(box: Box, height: float, step: float, skip: int = 0) -> str:
    """Return upright and level lines every `step` mm, but for each `skip`-th (drawn stronger)."""
    x0, y0, x1, y1 = box
    upright = (step * n for n in _numbers(x0 - (x1 - x0), x1 + (x1 - x0), step, skip))
    level = (height - step * n for n in _numbers(y0, y1 + (y1 - y0), step, skip))
    top, low = height - y1 - (y1 - y0), height - y0
    left, wide = x0 - (x1 - x0), 3 * (x1 - x0)
    return "".join(
        [f"M{x:.2f} {top:.2f}V{low:.2f}" for x in upright] + [f"M{left:.2f} {y:.2f}h{wide:.2f}" for y in level]
    )


def _numbers(low: float, high: float, step: float, skip: int) -> list[int]:
    found = range(math.ceil(low / step), math.floor(high / step) + 1)
    return [n for n in found if not skip or n % skip]
