"""The few light lines within the outline that make a figure readable. All by eye."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.body import Body
from drafting.body.rules import NATURAL_RISE
from drafting.geometry import Path
from drafting.sheet.wearer.curves import flowing
from drafting.sheet.wearer.front import HalfFigure
from drafting.sheet.wearer.profile import Profile
from drafting.worn.levels import FigureBuild

FULL = 70.0
"""mm of bust over high bust from which the line under the breast is drawn whole."""


def front_details(body: Body, form: FigureBuild, right: HalfFigure, left: HalfFigure) -> tuple[Path, ...]:
    """Return collar bones, breasts, navel, groin and knees."""
    lv, u = form.levels, form.unit
    lower = NATURAL_RISE if body.waist_level == "natural" else 0.0
    navel = complex(0, lv.waist - lower * lv.crown)
    found = [flowing([navel + 5j * u, navel - 6j * u])]
    for half, flip in ((right, False), (left, True)):
        bone = half.shoulder
        collar = flowing(
            [
                complex(0.14 * bone.real, lv.throat + 6 * u),
                complex(0.45 * bone.real, lv.throat + 12 * u),
                complex(0.84 * bone.real, bone.imag),
            ]
        )
        own = [collar, _breast(body, form), _groin(form), *_knee(form, half)]
        found += [path.mirrored() if flip else path for path in own]
    return tuple(found)


def back_details(form: FigureBuild, right: HalfFigure, left: HalfFigure) -> tuple[Path, ...]:
    """Return the spine, shoulder blades, seat and the hollows of the knees."""
    lv, u = form.levels, form.unit
    low = lv.hip + 0.25 * (lv.waist - lv.hip)
    found = [
        flowing([complex(0, lv.nape - 60 * u), complex(0, lv.waist)]),
        flowing([complex(0, low), complex(0, lv.crotch + 4 * u)]),
    ]
    for half, flip in ((right, False), (left, True)):
        x, y = 0.52 * form.half("high_bust_girth"), lv.armpit
        blade = flowing(
            [
                complex(0.72 * x, y + 62 * u),
                complex(0.62 * x, y + 10 * u),
                complex(0.95 * x, y - 22 * u),
                complex(1.3 * x, y - 4 * u),
            ]
        )
        wide = 0.52 * form.half("hip_girth")
        seat = flowing(
            [
                complex(6 * u, lv.crotch - 4 * u),
                complex(0.6 * wide, lv.crotch - 22 * u),
                complex(1.35 * wide, lv.crotch - 4 * u),
            ]
        )
        own = [blade, seat, *_knee(form, half)]
        found += [path.mirrored() if flip else path for path in own]
    return tuple(found)


def side_details(form: FigureBuild, side: Profile) -> tuple[Path, ...]:
    """Return the ear."""
    x0, y0, x1, y1 = side.head.bounds
    w, h = x1 - x0, y1 - y0
    at = complex(x0 + 0.44 * w, y0 + 0.40 * h)
    ear = [0.10j * h, complex(0.055 * w, 0.115 * h), complex(0.06 * w, 0.04 * h), complex(0.01 * w, -0.04 * h)]
    return (flowing([at + p for p in ear]),)


def _breast(body: Body, form: FigureBuild) -> Path:
    """Return the line under one breast, the fuller the rounder."""
    fullness = max(0.0, body["bust_girth"] - body["high_bust_girth"]) / form.unit
    round_ = min(1.0, 0.22 + 0.78 * fullness / FULL)
    x, y = body["bust_point_width"] / 2, form.levels.bust
    r = min(0.40 * form.half("bust_girth"), 0.85 * x)
    low = y - (0.30 + 0.55 * round_) * r
    return flowing(
        [
            complex(x - 0.80 * r, low + 0.42 * round_ * r),
            complex(x - 0.45 * r, low + 0.10 * round_ * r),
            complex(x + 0.08 * r, low),
            complex(x + 0.62 * r, low + 0.28 * round_ * r),
            complex(x + (0.80 + 0.05 * round_) * r, low + (0.20 + 0.50 * round_) * r),
        ]
    )


def _groin(form: FigureBuild) -> Path:
    lv = form.levels
    out = 0.60 * form.half("hip_girth")
    return flowing(
        [
            complex(0.16 * out, lv.crotch + 0.006 * lv.crown),
            complex(0.55 * out, lv.crotch + 0.020 * lv.crown),
            complex(out, lv.crotch + 0.042 * lv.crown),
        ]
    )


def _knee(form: FigureBuild, half: HalfFigure) -> Iterator[Path]:
    y, middle, wide = half.leg_at(2)
    low = y - 0.30 * wide
    yield flowing(
        [
            complex(middle - 0.42 * wide, low + 0.22 * wide),
            complex(middle, low),
            complex(middle + 0.42 * wide, low + 0.22 * wide),
        ]
    )
