"""The tape lines that show from the front or from the back."""

from __future__ import annotations

from drafting.body import Body
from drafting.geometry import Path, line
from drafting.sheet.wearer.arm import GIRTHS, Arm
from drafting.sheet.wearer.curves import ellipse, flowing, stretch_between
from drafting.sheet.wearer.front import HalfFigure
from drafting.sheet.wearer.model import Lines
from drafting.worn.levels import FigureBuild

TILT = 0.11
"""Half height of a ring / depth of its section: seen from some 13 degrees above (ours)."""

OVER_CURVE = 0.92
"""Straight across / along the skin, for widths taken over the curved back (ours, by eye)."""

TRUNK = {
    "high_bust_girth": "armpit",
    "bust_girth": "bust",
    "under_bust_girth": "under_bust",
    "waist_girth": "waist",
    "hip_girth": "hip",
}
LEG = ("thigh_girth", "lower_thigh_girth", "knee_girth", "calf_girth", "ankle_girth")


def front_tapes(body: Body, form: FigureBuild, right: HalfFigure, left: HalfFigure) -> dict[str, Lines]:
    """Return every tape line of the front view; `right` is the half at the right of the picture."""
    lv = form.levels
    nipple = complex(body["bust_point_width"] / 2, lv.bust)
    waist = complex(0.88 * nipple.real, lv.waist)
    neck, under_neck = right.side_neck, complex(0, lv.throat)
    over = flowing([neck, neck - 0.5j * (neck.imag - nipple.imag) + 0.12 * nipple.real, nipple])
    down = Path.joined((over, flowing([nipple, waist])))
    return {
        **_rings(form, right),
        **_both_hands(right, left),
        "height": _tall(right, lv.crown),
        "neck_base_girth": Lines(
            (flowing([-neck.conjugate(), under_neck, neck]),),
            (flowing([-neck.conjugate(), complex(0, lv.nape), neck]),),
        ),
        "across_front_width": _across(body["across_front_width"], _fold_level(form, right)),
        "bust_point_depth": _ended(over),
        "bust_point_width": _ended(line(-nipple.conjugate(), nipple)),
        "front_waist_length": _ended(down),
        "waist_to_hip": _ended(stretch_between(right.trunk, lv.waist, lv.hip)),
        "outside_leg_length": _to_floor(stretch_between(right.trunk, lv.waist, lv.ankle)),
        "inside_leg_length": _ended(line(complex(0, lv.crotch), 0j)),
        "knee_height": _ended(line(complex(right.leg_at(2)[1], lv.knee), right.leg_at(2)[1] + 0j)),
    }


def back_tapes(body: Body, form: FigureBuild, right: HalfFigure, left: HalfFigure) -> dict[str, Lines]:
    """Return every tape line of the back view; `right` is the half at the right of the picture."""
    lv = form.levels
    nape, neck, left_bone = complex(0, lv.nape), right.side_neck, -left.shoulder.conjugate()
    level = _fold_level(form, right)
    rings = {name: ring for name, ring in _rings(form, right).items() if name in TRUNK}
    rings["high_bust_girth"] = rings["high_bust_girth"].moved(14j * form.unit)
    return {
        **rings,
        "nape_height": _ended(line(nape, 0j)),
        "nape_to_floor": _ended(line(nape, 0j)),
        "neck_base_girth": Lines(
            (flowing([-neck.conjugate(), nape - 6j * form.unit, neck]),),
            (flowing([-neck.conjugate(), complex(0, lv.throat), neck]),),
        ),
        "back_shoulder_width": _ended(flowing([left_bone, nape - 4j * form.unit, right.shoulder])),
        "shoulder_length": _both_hands(right, left)["shoulder_length"],
        "across_back_width": _across(OVER_CURVE * body["across_back_width"], level),
        "across_back_low_width": _across(OVER_CURVE * body["across_back_low_width"], lv.armpit),
        "axilla_depth": _depth(form, lv.armpit),
        "scye_depth": _depth(form, lv.scye),
        "back_waist_length": Lines(
            (line(nape, complex(0, lv.waist)),),
            (_level(form, "waist_girth", lv.waist),),
            (nape, complex(0, lv.waist)),
        ),
    }


def _rings(form: FigureBuild, right: HalfFigure) -> dict[str, Lines]:
    lv = form.levels
    tall = lv.crown - lv.chin
    found = {
        name: _ring(0, form.half(name), getattr(lv, level), form.depth(name)) for name, level in TRUNK.items()
    }
    found["head_girth"] = _ring(0, form.half("head_girth"), lv.chin + 0.66 * tall, form.depth("head_girth"))
    mid = 0.42 * lv.chin + 0.58 * lv.side_neck
    found["neck_girth"] = _ring(0, form.half("neck_girth"), mid, form.depth("neck_girth"))
    for name, (y, middle, half) in zip(LEG, right.leg, strict=True):
        found[name] = _ring(middle, half, y, form.depth(name))
    return found | {name: limb_ring(right.arm, name) for name in GIRTHS}


def _ring(x: float, half: float, y: float, depth: float) -> Lines:
    near, far = ellipse(complex(x, y), half + 0j, 1j * TILT * depth)
    return Lines((near,), (far,))


def limb_ring(arm: Arm, name: str) -> Lines:
    """Return a ring square to the arm."""
    along, wide = arm.width(name)
    near, far = ellipse(arm.at(along), arm.down * 1j * wide / 2, -arm.down * TILT * wide)
    return Lines((near,), (far,))


def _both_hands(right: HalfFigure, left: HalfFigure) -> dict[str, Lines]:
    """Return shoulder and arm lines; shoulders on both hands, as they may differ."""
    hands = [(h.side_neck, h.shoulder) for h in (right, left)]
    hands[1] = (-hands[1][0].conjugate(), -hands[1][1].conjugate())
    above = [complex(bone.real, neck.imag) for neck, bone in hands]
    drops = tuple(line(up, bone) for up, (_, bone) in zip(above, hands, strict=True))
    level = tuple(line(neck, up) for up, (neck, _) in zip(above, hands, strict=True))
    arm = right.arm
    outer = [right.shoulder, *arm.outer()]
    return {
        "shoulder_length": Lines(
            tuple(line(*hand) for hand in hands), (), tuple(end for hand in hands for end in hand)
        ),
        "shoulder_drop": Lines(drops, level, tuple(end for drop in drops for end in (drop.start, drop.end))),
        "arm_length": _ended(flowing(outer[:7])),
        "upper_arm_length": _ended(flowing(outer[:5])),
    }


def _tall(right: HalfFigure, crown: float) -> Lines:
    x = right.contour.bounds[2] + 45
    return Lines(
        (line(x + 0j, complex(x, crown)),),
        (line(complex(0, crown), complex(x, crown)),),
        (x + 0j, complex(x, crown)),
    )


def _fold_level(form: FigureBuild, right: HalfFigure) -> float:
    """Return the height half-way down the armhole."""
    return (right.shoulder.imag + form.levels.armpit) / 2


def _across(width: float, y: float) -> Lines:
    return _ended(line(complex(-width / 2, y), complex(width / 2, y)))


def _level(form: FigureBuild, name: str, y: float) -> Path:
    return line(complex(-form.half(name), y), complex(form.half(name), y))


def _depth(form: FigureBuild, y: float) -> Lines:
    nape, end = complex(0, form.levels.nape), complex(0, y)
    return Lines((line(nape, end),), (_level(form, "high_bust_girth", y),), (nape, end))


def _to_floor(path: Path) -> Lines:
    floor = path.end.real + 0j
    return _ended(Path.joined((path, line(path.end, floor))))


def _ended(path: Path) -> Lines:
    return Lines((path,), (), (path.start, path.end))
