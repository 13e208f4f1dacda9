"""The figure from the front and from the back: one half, drawn for each hand.

Drawn for the hand at the right of the picture, x = 0 on the middle; the other one is mirrored. The
sections give every width, the arms are held away so far that they clear the trunk.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.body import Body
from drafting.body.body import Side
from drafting.geometry import Path
from drafting.sheet.wearer.arm import Arm, arm
from drafting.sheet.wearer.curves import flowing, ring
from drafting.worn.levels import FigureBuild

LEAST_TILT, MOST_TILT, CLEAR = 9.0, 38.0, 14.0
"""Degrees an arm is held away from the body, and mm between arm and trunk (ours)."""


@dataclass(frozen=True)
class HalfFigure:
    """One half of the figure: `shoulder` bone, `side_neck`, `armpit`, the `arm`, and its outline.

    `contour` runs from the neck over the shoulder, round the arm, down the side, round the leg to
    the crotch; `trunk` is the part of it from the armpit to the ankle.
    """

    side_neck: complex
    shoulder: complex
    armpit: complex
    arm: Arm
    contour: Path
    trunk: Path
    leg: tuple[tuple[float, float, float], ...]

    def leg_at(self, index: int) -> tuple[float, float, float]:
        """Return height, middle and half width of the leg at thigh, lower thigh, knee, calf, ankle."""
        return self.leg[index]


def half_figure(body: Body, form: FigureBuild, side: Side) -> HalfFigure:
    """Return one half of the figure with that hand's own shoulder and arm."""
    lv = form.levels
    side_neck = complex(form.half("neck_base_girth"), lv.side_neck)
    length, drop = body.hand("shoulder_length", side), body.hand("shoulder_drop", side)
    drop = min(drop, 0.9 * length)
    shoulder = side_neck + complex(math.sqrt(length**2 - drop**2), -drop)
    leg = _leg(form)
    trunk_points = _trunk(form, leg)
    hanging = _hanging(body, form, side, shoulder, trunk_points)
    armpit = _armpit(form, hanging)
    trunk = flowing([armpit, *trunk_points], arrive=-1j)
    contour = Path.joined(
        (
            flowing([*_neck(form, side_neck, shoulder), *hanging.outer()]),
            flowing([*hanging.inner(), armpit]),
            trunk,
            _inside(form, leg),
        )
    )
    return HalfFigure(
        side_neck=side_neck, shoulder=shoulder, armpit=armpit, arm=hanging, contour=contour, trunk=trunk, leg=leg
    )


def head(form: FigureBuild) -> Path:
    """Return the outline of the head, closed."""
    lv, w = form.levels, form.half("head_girth")
    tall = lv.crown - lv.chin
    right = [
        complex(x * w, lv.chin + y * tall)
        for x, y in ((0.42, 0.05), (0.80, 0.24), (0.97, 0.48), (0.99, 0.66), (0.74, 0.90))
    ]
    left = [-point.conjugate() for point in reversed(right)]
    return ring([complex(0, lv.chin), *right, complex(0, lv.crown), *left])


def _neck(form: FigureBuild, side_neck: complex, shoulder: complex) -> list[complex]:
    """Return points from under the jaw down the neck and along the shoulder to its bone."""
    lv, w = form.levels, form.half("neck_girth")
    top = lv.chin + 0.18 * (lv.crown - lv.chin)
    slope = shoulder - side_neck
    rise = max(6 * form.unit, 0.16 * abs(slope.imag))
    return [
        complex(min(w, 0.76 * form.half("head_girth")), top),
        complex(0.98 * w, 0.45 * top + 0.55 * lv.side_neck),
        side_neck + 4j * form.unit,
        side_neck + 0.42 * slope - 0.3j * rise,
        shoulder - 0.10 * slope,
    ]


def _leg(form: FigureBuild) -> tuple[tuple[float, float, float], ...]:
    """Return (height, middle, half width) at thigh, lower thigh, knee, calf and ankle."""
    lv = form.levels
    gap = 5 * form.unit
    thigh = min(form.half("thigh_girth"), 0.53 * form.half("hip_girth"))
    top = gap + thigh
    foot = min(0.86 * top, 60 * form.unit + 0.35 * thigh)
    knee = max(form.half("knee_girth") + gap, 0.55 * top + 0.45 * foot)
    names = (("lower_thigh", 0.72), ("knee", 1.0), ("calf", 1.0), ("ankle", 1.0))
    rows = [(lv.thigh, top, thigh)]
    for name, share in names:
        level = getattr(lv, name)
        if name == "calf":
            middle = max(foot + 0.5 * (knee - foot), form.half("calf_girth") + gap)
        elif name == "ankle":
            middle = foot
        else:
            middle = top + share * (knee - top)
        rows.append((level, middle, form.half(f"{name}_girth")))
    return tuple(rows)


def _trunk(form: FigureBuild, leg: tuple[tuple[float, float, float], ...]) -> list[complex]:
    """Return points down the side of trunk and leg to the ankle."""
    lv = form.levels
    rows = [
        (lv.bust, "bust_girth"),
        (lv.under_bust, "under_bust_girth"),
        (lv.waist, "waist_girth"),
        (lv.hip, "hip_girth"),
    ]
    points = [complex(form.half(name), y) for y, name in rows]
    (_, tc, tw), *lower = leg
    hip, knee_side = points[-1], complex(lower[0][1] + lower[0][2], lower[0][0])
    outer = max(tc + tw, 0.97 * hip.real)
    for t in (0.35, 0.7):
        x = knee_side.real + (outer - knee_side.real) * (1 - t**1.3)
        points.append(complex(x, hip.imag + t * (knee_side.imag - hip.imag)))
    points += [complex(c + w, y) for y, c, w in lower]
    calf = points[-2]
    points[-2] = complex(calf.real, calf.imag + 0.03 * lv.knee)  # the calf is higher outside
    return points


def _hanging(body: Body, form: FigureBuild, side: Side, shoulder: complex, trunk: list[complex]) -> Arm:
    """Return the arm, held away from the trunk until it clears it."""
    inset = 0.06 * form.sections["upper_arm_girth"].width
    for step in range(int(MOST_TILT - LEAST_TILT) + 1):
        hanging = arm(body, form, side, shoulder - inset, LEAST_TILT + step)
        clear = (_room(hanging, point) > CLEAR * form.unit for point in trunk[1:5])
        if _room(hanging, trunk[0]) > 5 * form.unit and all(clear):
            break
    return hanging


def _room(hanging: Arm, point: complex) -> float:
    """Return how far a point of the trunk lies inside of the arm's inner side, mm."""
    gone = (point - hanging.top) * hanging.down.conjugate()
    if not 0 < gone.real < hanging.tip:
        return math.inf
    widths = hanging.widths
    wide = next((w for along, w in widths if along >= gone.real), widths[-1][1])
    return -gone.imag - wide / 2


def _armpit(form: FigureBuild, hanging: Arm) -> complex:
    """Return where the arm's inner side meets the trunk, at the height of the armpit."""
    along, wide = hanging.widths[0]
    inner = hanging.at(along, -wide / 2)
    level = form.levels.armpit
    x = inner.real + (level - inner.imag) * hanging.down.real / hanging.down.imag
    return complex(min(max(x, 0.80 * form.half("high_bust_girth")), 1.02 * x), level)


def _inside(form: FigureBuild, leg: tuple[tuple[float, float, float], ...]) -> Path:
    """Return the line round the foot and up the inside of the leg to the crotch."""
    lv, u = form.levels, form.unit
    (ty, tc, tw), *lower = leg
    y, c, w = lower[-1]
    low = 0.24 * y
    foot = [
        complex(c + w, y),
        complex(c + 1.08 * w, 0.55 * y),
        complex(c + w + 20 * u, low),
        complex(c + w + 22 * u, 0.10 * y),
        complex(c + 0.8 * w, 0.0),
        complex(c - 0.5 * w, 0.02 * y),
        complex(c - w - 4 * u, 0.16 * y),
        complex(c - w - 1 * u, 0.55 * y),
        complex(c - w, y),
    ]
    up = [complex(c - w, y) for y, c, w in reversed(lower[:-1])]
    calf = up[0]
    up[0] = complex(calf.real, calf.imag - 0.02 * lv.knee)
    return Path.joined(
        (
            flowing(foot, leave=-1j, arrive=1j),
            flowing([foot[-1], *up, complex(tc - tw, ty), complex(0, lv.crotch)], leave=1j),
        )
    )
