"""A sign drawn on its wearer: strain runs straight, loose cloth bows, a gap stands off, a hem tilts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from drafting.body import Body
from drafting.fitting.bands import GarmentSort
from drafting.fitting.signs import BodySpot, FitSign, Fold, FoldKind, SignView
from drafting.geometry import Cubic, Path, line
from drafting.geometry.path import Box
from drafting.sheet.figures import SmallFigure
from drafting.sheet.wearer.front import half_figure
from drafting.worn.levels import FigureBuild

BOW, GAP = 0.18, 0.30
"""How far a loose fold bows and a gap stands off, as shares of its length (ours, by eye)."""

ARM = 10.0
"""Places from here on lie on the arm."""


@dataclass(frozen=True)
class SignDrawn:
    """A sign on the figure, mm, y up from the floor: what shows of it is in `box`."""

    outlines: tuple[Path, ...]
    lines: tuple[Path, ...]
    box: Box


def sign_drawn(sign: FitSign, figures: Sequence[SmallFigure], body: Body, form: FigureBuild) -> SignDrawn:
    """Return a sign on its wearer: `figures` are hers from all sides, `form` her levels and widths."""
    name = "front" if sign.view is SignView.FRONT else "back"
    figure = next(one for one in figures if one.name == name)
    lines = tuple(path for fold in sign.folds for path in _lines(fold, body, form))
    return SignDrawn((*figure.outlines, *figure.details), lines, _box(sign, figure, form))


def _lines(fold: Fold, body: Body, form: FigureBuild) -> Iterator[Path]:
    a, b = (_at(spot, body, form) for spot in (fold.start, fold.end))
    ends = [(a, b), (-a.conjugate(), -b.conjugate())] if fold.both else [(a, b)]
    for start, end in ends:
        yield from _drawn(start, end, fold.kind)


def _drawn(a: complex, b: complex, kind: FoldKind) -> Iterator[Path]:
    across = 1j * (b - a)
    if kind is FoldKind.STRAIN:
        yield line(a, b)
        return
    bow = {FoldKind.LOOSE: BOW, FoldKind.GAP: GAP, FoldKind.TILT: 0.0}[kind] * across
    yield _bowed(a, b, bow)
    if kind is not FoldKind.LOOSE:
        yield _bowed(a, b, -bow if bow else 0.06 * across)


def _bowed(a: complex, b: complex, bow: complex) -> Path:
    return Path((Cubic(a, a + (b - a) / 3 + bow, b - (b - a) / 3 + bow, b),))


def _at(spot: BodySpot, body: Body, form: FigureBuild) -> complex:
    place, out = spot
    if place >= ARM:
        arm = half_figure(body, form, "left").arm
        return arm.at((place - ARM) * arm.wrist, out * arm.widths[0][1] / 2)
    heights, halves = _levels(form)
    low = min(int(place), len(heights) - 2)
    share = place - low
    y = heights[low] + share * (heights[low + 1] - heights[low])
    return complex(out * (halves[low] + share * (halves[low + 1] - halves[low])), y)


def _levels(form: FigureBuild) -> tuple[list[float], list[float]]:
    """Return height and half width at neck, armpit, bust, waist, hip, crotch, knee and floor."""
    lv, hip = form.levels, form.half("hip_girth")
    heights = [lv.side_neck, lv.armpit, lv.bust, lv.waist, lv.hip, lv.crotch, lv.knee, 0.0]
    trunk = [form.half(name) for name in ("neck_base_girth", "high_bust_girth", "bust_girth", "waist_girth")]
    return heights, [*trunk, hip, 0.97 * hip, 0.8 * hip, 0.6 * hip]


def _box(sign: FitSign, figure: SmallFigure, form: FigureBuild) -> Box:
    """Return the part of the figure that a sign is seen on: the trunk, or from waist to knee."""
    lv = form.levels
    legs = GarmentSort.LEGS in sign.sorts
    low, high = (lv.knee, lv.waist) if legs else (lv.crotch, lv.chin)
    return figure.box[0], low - 60.0, figure.box[2], high + (60.0 if legs else 0.0)
