"""The tape lines that show from the side."""

from __future__ import annotations

from drafting.geometry import Path, line
from drafting.sheet.wearer.arm import GIRTHS
from drafting.sheet.wearer.curves import ellipse, flowing, stretch_between
from drafting.sheet.wearer.front_tapes import LEG, TILT, TRUNK, limb_ring
from drafting.sheet.wearer.model import Lines
from drafting.sheet.wearer.profile import Profile
from drafting.worn.levels import FigureBuild


def side_tapes(form: FigureBuild, side: Profile) -> dict[str, Lines]:
    """Return every tape line of the side view."""
    lv = form.levels
    hip = side.middle("hip_girth")[1]
    waist, floor = complex(hip, lv.waist), complex(hip, 0)
    knee = complex(side.spans["knee_girth"][2], lv.knee)
    arm = side.arm
    return {
        **_rings(form, side),
        **_crotch(form, side),
        "front_waist_length": _ended(_down_front(form, side, lv.waist)),
        "bust_point_depth": _ended(_down_front(form, side, lv.bust)),
        "neck_base_girth": Lines((flowing([side.nape, side.side_neck, side.throat]),)),
        "back_waist_length": _ended(stretch_between(side.back, lv.nape, lv.waist)),
        "waist_to_hip": _ended(line(waist, complex(hip, lv.hip))),
        "outside_leg_length": _ended(line(waist, floor)),
        "waist_to_floor": _ended(line(waist, floor)),
        "body_rise": Lines(
            (line(waist, complex(hip, lv.crotch)),),
            (line(*(complex(x, lv.crotch) for x in side.spans["thigh_girth"][1:])),),
            (waist, complex(hip, lv.crotch)),
        ),
        "knee_height": _ended(line(knee, complex(knee.real, 0))),
        "arm_length": _ended(flowing([arm.top, arm.at(arm.elbow), arm.at(arm.wrist)])),
        "upper_arm_length": _ended(line(arm.top, arm.at(arm.elbow))),
        "heel_girth": _heel(form, side),
    }


def _down_front(form: FigureBuild, side: Profile, low: float) -> Path:
    """Return the way from the side neck point onto the front line and down it."""
    front = stretch_between(side.front, form.levels.armpit, low)
    return Path.joined((flowing([side.side_neck, front.start], arrive=front.leave), front))


def _rings(form: FigureBuild, side: Profile) -> dict[str, Lines]:
    lv = form.levels
    found = {name: _ring(form, *side.middle(name), name) for name in (*TRUNK, *LEG)}
    x0, _, x1, _ = side.head.bounds
    across = (x1 - x0) / 2
    level = lv.chin + 0.66 * (lv.crown - lv.chin)
    found["head_girth"] = _ring(form, level, (x0 + x1) / 2 - 0.02 * across, 0.95 * across, "head_girth")
    half = form.depth("neck_girth") / 2
    middle = complex(
        0.5 * (side.nape.real + side.throat.real) + 3 * form.unit, 0.42 * lv.chin + 0.58 * lv.side_neck
    )
    near, far = ellipse(middle, half - 0.3j * half, 1j * TILT * form.sections["neck_girth"].width)
    found["neck_girth"] = Lines((near,), (far,))
    return found | {name: limb_ring(side.arm, name) for name in GIRTHS}


def _ring(form: FigureBuild, y: float, x: float, half: float, name: str) -> Lines:
    near, far = ellipse(complex(x, y), half + 0j, 1j * TILT * form.sections[name].width)
    return Lines((near,), (far,))


def _crotch(form: FigureBuild, side: Profile) -> dict[str, Lines]:
    """Return the way from the front waist between the legs to the back waist."""
    lv = form.levels
    turn = lv.crotch + 0.45 * (lv.hip - lv.crotch)
    front, back = (stretch_between(side.front, lv.waist, turn), stretch_between(side.back, lv.waist, turn))
    inner = side.crotch
    first, second = _bottom(front.end, inner), _bottom(back.end, inner).reversed()
    return {
        "total_crotch_length": Lines((front, back), (Path.joined((first, second)),), (front.start, back.start)),
        "back_crotch_length": Lines((back,), (second,), (inner, back.start)),
    }


def _bottom(start: complex, low: complex) -> Path:
    heading = low - complex(start.real, low.imag)
    return flowing([start, low], leave=-1j, arrive=heading)


def _heel(form: FigureBuild, side: Profile) -> Lines:
    y, back, front = side.spans["ankle_girth"]
    heel = complex(back - 0.06 * (front - back), 0.10 * y)
    instep = complex(front + 0.16 * (front - back), 0.60 * y)
    along = (instep - heel) / 2
    near, far = ellipse((heel + instep) / 2, along, 1j * along / abs(along) * 13 * form.unit)
    return Lines((near,), (far,))


def _ended(path: Path) -> Lines:
    return Lines((path,), (), (path.start, path.end))
