"""The figure from the side, facing right; x = 0 is the plumb line through the shoulder.

Every depth comes from the sections; where the section lies along the plumb line is ours, by eye: the
back is upright from blades to seat, the waist hollow, fullness goes to the front.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from drafting.body import Body
from drafting.geometry import Path, line
from drafting.ground.frozen import freeze
from drafting.sheet.wearer.arm import Arm, arm
from drafting.sheet.wearer.curves import flowing, ring
from drafting.worn.levels import FigureBuild

ARM_FORWARD = 4.0
"""Degrees that a hanging arm points forward (ours)."""


@dataclass(frozen=True)
class Profile:
    """The side view: `back` from the nape to the heel, `front` from the throat to the instep.

    `spans` holds (height, back, front) at each level by the name of its girth.
    """

    outline: Path
    back: Path
    front: Path
    head: Path
    arm: Arm
    arm_outline: Path
    spans: Mapping[str, tuple[float, float, float]]
    nape: complex
    side_neck: complex
    throat: complex
    crotch: complex

    def __post_init__(self) -> None:
        freeze(self, "spans")

    def middle(self, name: str) -> tuple[float, float, float]:
        """Return height, middle and half depth at a level."""
        y, back, front = self.spans[name]
        return y, (back + front) / 2, (front - back) / 2


def profile(body: Body, form: FigureBuild) -> Profile:
    """Return the side view of `body`."""
    lv, u = form.levels, form.unit
    spans = _spans(form)
    nape = complex(spans["high_bust_girth"][1] + 44 * u, lv.nape)
    deep = form.depth("neck_base_girth")
    throat = nape + complex(0.95 * deep, lv.throat - lv.nape)
    side_neck = complex(nape.real + 0.46 * deep, lv.side_neck)
    head = _head(form, throat.real)
    back, front = _back(form, spans, nape), _front(form, spans, throat)
    neck_back, neck_front = _neck(form, nape, head)
    outline = Path.joined(
        (
            flowing([neck_front, throat], arrive=front.leave),
            front,
            _foot(form, spans),
            back.reversed(),
            flowing([nape, neck_back], leave=-back.leave),
        )
    )
    hanging, shape = _arm(body, form, side_neck)
    _, low, high = spans["thigh_girth"]
    crotch = complex(low + 0.42 * (high - low), lv.crotch)
    return Profile(
        outline=outline,
        back=back,
        front=front,
        head=head,
        arm=hanging,
        arm_outline=shape,
        spans=spans,
        nape=nape,
        side_neck=side_neck,
        throat=throat,
        crotch=crotch,
    )


def _spans(form: FigureBuild) -> dict[str, tuple[float, float, float]]:
    lv, u = form.levels, form.unit
    deep = form.depth
    blades = -0.50 * deep("high_bust_girth") - 6 * u
    waist = blades + 26 * u
    seat = waist - 10 * u - 0.62 * max(deep("hip_girth") - deep("waist_girth"), 0.0)
    backs = {
        "high_bust_girth": (lv.armpit, blades),
        "bust_girth": (lv.bust, blades + 4 * u),
        "under_bust_girth": (lv.under_bust, blades + 13 * u),
        "waist_girth": (lv.waist, waist),
        "hip_girth": (lv.hip, seat),
    }
    found = {name: (y, back, back + deep(name)) for name, (y, back) in backs.items()}
    thigh = seat + 0.10 * deep("hip_girth")
    knee = -0.5 * deep("knee_girth") + 2 * u
    rows = (
        ("thigh_girth", lv.thigh, thigh),
        ("lower_thigh_girth", lv.lower_thigh, knee - 0.30 * (knee - thigh) + 2 * u),
        ("knee_girth", lv.knee, knee),
        ("calf_girth", lv.calf, knee - 16 * u),
        ("ankle_girth", lv.ankle, knee + 4 * u),
    )
    return found | {name: (y, back, back + deep(name)) for name, y, back in rows}


def _back(form: FigureBuild, spans: dict[str, tuple[float, float, float]], nape: complex) -> Path:
    """Return the back line from the nape to above the heel."""
    lv, u = form.levels, form.unit
    points = [nape]
    points.append(
        complex(0.5 * (nape.real + spans["high_bust_girth"][1]) - 12 * u, nape.imag - 0.40 * (lv.nape - lv.armpit))
    )
    names = ("high_bust_girth", "under_bust_girth", "waist_girth", "hip_girth")
    points += [complex(spans[name][1], spans[name][0]) for name in names]
    y, back, _ = spans["thigh_girth"]
    points.append(complex(back + 4 * u, y - 14 * u))
    points += _legs(spans, 1)
    return flowing(points, arrive=-1j)


def _front(form: FigureBuild, spans: dict[str, tuple[float, float, float]], throat: complex) -> Path:
    """Return the front line from the throat to above the instep."""
    u = form.unit
    high, bust, under, waist, hip = (
        complex(spans[name][2], spans[name][0])
        for name in ("high_bust_girth", "bust_girth", "under_bust_girth", "waist_girth", "hip_girth")
    )
    belly = complex(max(waist.real, hip.real) + 3 * u, 0.5 * waist.imag + 0.5 * hip.imag)
    slope = complex(0.30 * high.real + 0.70 * bust.real, 0.40 * high.imag + 0.60 * bust.imag)
    tip = complex(0.05 * high.real + 0.95 * bust.real, 0.14 * high.imag + 0.86 * bust.imag)
    flat = 0.5 * throat + 0.5 * slope + complex(5 * u, 8 * u)
    fold = complex(0.78 * bust.real + 0.22 * under.real, 0.46 * bust.imag + 0.54 * under.imag)
    y, _, thigh = spans["thigh_girth"]
    points = [throat, flat, slope, tip, bust, fold, under, waist, belly, hip, complex(thigh, y - 50 * u)]
    return flowing([*points, *_legs(spans, 2)], arrive=-1j)


def _legs(spans: dict[str, tuple[float, float, float]], side: int) -> list[complex]:
    names = ("lower_thigh_girth", "knee_girth", "calf_girth", "ankle_girth")
    return [complex(spans[name][side], spans[name][0]) for name in names]


def _foot(form: FigureBuild, spans: dict[str, tuple[float, float, float]]) -> Path:
    """Return the line from above the instep round toes and sole to above the heel."""
    y, back, front = spans["ankle_girth"]
    long = 0.152 * form.levels.crown  # foot length / height, Source.DRILLIS_CONTINI
    heel = back - 0.07 * long
    top = [
        complex(front, y),
        complex(front + 0.07 * long, 0.60 * y),
        complex(heel + 0.70 * long, 0.36 * y),
        complex(heel + 0.95 * long, 0.19 * y),
        complex(heel + 0.985 * long, 0.06 * y),
        complex(heel + 0.94 * long, 0.0),
    ]
    under = [complex(heel + 0.10 * long, 0.0), complex(heel, 0.14 * y), complex(back, 0.62 * y), complex(back, y)]
    return Path.joined(
        (flowing(top, leave=-1j, arrive=-1), line(top[-1], under[0]), flowing(under, leave=-1, arrive=1j))
    )


def _neck(form: FigureBuild, nape: complex, head: Path) -> tuple[complex, complex]:
    """Return the tops of the neck's back and front lines, where the head covers them."""
    lv, u = form.levels, form.unit
    tall, deep = lv.crown - lv.chin, form.depth("neck_girth")
    behind = head.bounds[0] + 0.10 * form.depth("head_girth")
    back = complex(max(nape.real + 16 * u, behind), lv.chin + 0.36 * tall)
    return back, complex(back.real + 0.98 * deep, lv.chin + 0.14 * tall)


def _head(form: FigureBuild, throat: float) -> Path:
    lv = form.levels
    tall, deep = lv.crown - lv.chin, form.depth("head_girth")
    left = throat - 0.56 * deep
    shape = (
        (0.84, 0.0),
        (0.92, 0.10),
        (0.935, 0.24),
        (0.985, 0.345),
        (0.945, 0.50),
        (0.94, 0.68),
        (0.80, 0.91),
        (0.50, 1.0),
        (0.16, 0.89),
        (0.01, 0.64),
        (0.07, 0.38),
        (0.22, 0.22),
        (0.44, 0.17),
        (0.64, 0.06),
    )
    return ring([complex(left + x * deep, lv.chin + y * tall) for x, y in shape])


def _arm(body: Body, form: FigureBuild, side_neck: complex) -> tuple[Arm, Path]:
    drop = (body.hand("shoulder_drop", "left") + body.hand("shoulder_drop", "right")) / 2
    top = complex(side_neck.real - 10 * form.unit, side_neck.imag - drop)
    hanging = arm(body, form, "left", top, ARM_FORWARD, deep=True)
    u, wide = hanging.widths[0]
    cap = [
        hanging.at(0.45 * u, -0.48 * wide),
        hanging.at(0.12 * u, -0.30 * wide),
        top,
        hanging.at(0.12 * u, 0.30 * wide),
    ]
    outer, inner = hanging.outer(), hanging.inner()
    return hanging, ring([*cap, *outer[1:], *inner[1:]])
