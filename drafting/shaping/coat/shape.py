"""The coat's body in three panels: back, side body, forepart. Settled numbers, armholes and seams.

Back in the back frame (centre on x = 0, side +x), forepart in the front frame (likewise), nape at 0, y
up, mm. All that is taken in at the waist goes to the centre back, the back seam and the front seam;
there is no side seam, and all seams stand upright at the waist, so the closed waist runs on smoothly.
The bust is shaped by the front seam: it turns about a point on the bust line, the bust point itself
where the bust is full, farther to the side where it is flat (ours).
"""

from __future__ import annotations

import cmath
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.geometry import Cubic, Path, heights, line, smooth, solve, turn, unit
from drafting.geometry.solve import root_near
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale
from drafting.shaping.torso.across import settled_armholes
from drafting.shaping.torso.armhole import armhole_ends
from drafting.shaping.torso.plan import BACK_OF_GROWTH, TorsoEase, TorsoPlan, plan_torso
from drafting.shaping.torso.round_back import rounding_said, settled_turn
from drafting.shaping.torso.upper_back import UpperBack, blade_of, upper_back

BACK_AT_WAIST = 0.14
"""Half back at the waist as a share of the half waist (ours)."""

CENTRE_BACK, BACK_SEAM = 0.18, 0.46
"""Shares of the suppression taken in at the centre back and the back seam; the front seam takes the
rest (most in the back seam is common practice, the figures are ours)."""

CENTRE_LIMITS, LEAST_BACK_SEAM = (8.0, 24.0), 12.0
"""mm at adult scale: least and most at the centre back, least in the back seam (ours)."""

FULL_BUST = 9.0
"""degrees of bust shaping from which the front seam passes through the bust point itself (ours)."""

FLAT_PLACE = 0.50
"""Where the seam passes on a flat bust: so far from the bust point to the side (ours, by eye)."""

FARTHEST = 0.75
"""The seam passes the bust line at most at this share of the half front (ours)."""

ON_ARMHOLE = (0.30, 0.42)
"""Where the front seam meets the armhole, from the underarm: flat and full bust (ours)."""

MOST_OF_SCOOP = 0.9
"""The front seam meets the armhole below the across point: at most at this share of the scoop (ours)."""

CURVE_ABOVE = 0.7
"""Share of the front seam's whole turn at the bust line that lies above it (ours, by eye)."""


@dataclass(frozen=True)
class WaistIntake:
    """What the seams take in at the waist, half coat, mm; `belly` is what the front edge adds."""

    centre: float
    back: float
    front: float
    belly: float


@dataclass(frozen=True)
class CoatShape:
    """The settled plan and every curve of the half coat body.

    Back frame: `centre` (down), `back_panel` and `back_partner` (down from the armhole; the partner
    is the side body's). Front frame: `front_panel` and `front_partner` likewise. Armholes run from
    the shoulder point to the underarm, the front one with the bust shaping open at the pivot;
    `fitted_back` is the back's as planned, before a rounded back turned it.
    """

    plan: TorsoPlan
    taken: WaistIntake
    centre: Path
    back_panel: Path
    back_partner: Path
    front_panel: Path
    front_partner: Path
    upper_back: UpperBack
    fitted_back: Path
    front_upper: Path
    front_lower: Path
    front_neck: complex
    bust_notch: float

    @property
    def back_armhole(self) -> Path:
        return self.upper_back.armhole

    @property
    def pivot(self) -> complex:
        return self.plan.bust_point

    def across(self, p: complex) -> complex:
        """Return a point of the front frame in the back frame, the side closed."""
        return complex(self.plan.half - p.real, p.imag)


def coat_shape(body: Body, ease: TorsoEase, drop: float, more: tuple[float, float] = (0.0, 0.0)) -> CoatShape:
    """Return the shape for an underarm `drop` mm below the axilla.

    `more` (mm, half coat) is added to the frame's bust and waist, for what shaped seams take out at
    the bust line and what slanting edges add at the waist: see `bust_line_gaps`.
    """
    plan = plan_torso(
        body, replace(ease, bust=ease.bust + 2 * more[0], waist=ease.waist + 2 * more[1]), drop, body_scale(body)
    )
    return _shape(body, ease, _pivoted(plan))


def bust_line_gaps(shape: CoatShape) -> float:
    """Return what the shaped seams take out at the bust line, half coat, mm."""
    y = shape.plan.bust_line
    return path_x_at(shape.centre, y) + path_x_at(shape.back_partner, y) - path_x_at(shape.back_panel, y)


def path_x_at(path: Path, y: float) -> float:
    """Return x where a path that runs steadily down passes height `y`."""
    for part in path.segments:
        if part.end.imag <= y <= part.start.imag:
            return heights.x_at(part.as_cubic(), y)
    return (path.start if y > path.start.imag else path.end).real


def _shape(body: Body, ease: TorsoEase, plan: TorsoPlan) -> CoatShape:
    ends = armhole_ends(plan, complex(plan.back, plan.underarm), complex(plan.front, plan.underarm))
    holes = settled_armholes(body, ease, plan, ends, (1 + 0j, turn(plan.kappa)), -plan.kappa)
    plan = holes.plan
    blade = blade_of(plan.neck, holes.back)
    rounding = settled_turn(plan, blade.across)
    plan = replace(plan, findings=(*plan.findings, *rounding_said(plan, rounding, blade)))
    above = upper_back(plan.neck, holes.back, rounding, plan.scale)
    return _with_seams(plan, (above, holes.back), holes.front, ends.front_neck)


def _pivoted(plan: TorsoPlan) -> TorsoPlan:
    """Return the plan with the point that the bust shaping turns about in place of the bust point."""
    flat = 1 - _fullness(plan)
    point = plan.bust_point
    aside = point.real + flat * FLAT_PLACE * (plan.front - point.real)
    return replace(plan, bust_point=complex(min(aside, FARTHEST * plan.front), point.imag))


def _fullness(plan: TorsoPlan) -> float:
    return min(1.0, plan.kappa / FULL_BUST)


def waist_intake(plan: TorsoPlan, spare: float) -> WaistIntake:
    """Return how what is spare at the waist is taken in. A waist too large for it grows the front.

    A belly is let out in front by three quarters of it, and behind by the rest.
    """
    k, own = plan.scale, spare + plan.growth
    behind = BACK_OF_GROWTH * plan.growth / (CENTRE_BACK + BACK_SEAM)
    centre = min(CENTRE_LIMITS[1] * k, max(CENTRE_LIMITS[0] * k, CENTRE_BACK * (own - behind)))
    back = max(LEAST_BACK_SEAM * k, BACK_SEAM * (own - behind))
    rest = spare - centre - back
    return WaistIntake(centre, back, max(0.0, rest), max(0.0, -rest))


def _with_seams(plan: TorsoPlan, behind: tuple[UpperBack, Path], before: Path, front_neck: complex) -> CoatShape:
    taken = waist_intake(plan, plan.half - plan.waist_half)
    above, fitted = behind
    across = above.armhole.segments[-1].start
    centre = _centre(plan, above, across.imag, taken.centre)
    panel, partner = _back_seam(plan, across, taken)
    share = ON_ARMHOLE[0] + (ON_ARMHOLE[1] - ON_ARMHOLE[0]) * _fullness(plan)
    below = min(share * before.length, MOST_OF_SCOOP * before.lengths[-1])
    upper, lower = before.split(before.length - below)
    lower = lower.turned(plan.bust_point, turn(-plan.kappa))
    front, side, notch = _front_seam(plan, upper.end, lower.start, taken)
    return CoatShape(
        plan=plan,
        taken=taken,
        centre=centre,
        back_panel=panel,
        back_partner=partner,
        front_panel=front,
        front_partner=side,
        upper_back=above,
        fitted_back=fitted,
        front_upper=upper,
        front_lower=lower,
        front_neck=front_neck,
        bust_notch=notch,
    )


def _centre(plan: TorsoPlan, above: UpperBack, across: float, taken: float) -> Path:
    """Square to the neck and down to the across back, then hollowed to the waist; upright there."""
    top, low = complex(0, across), complex(taken, plan.waist)
    run = top.imag - low.imag
    leave = -1j * above.neck.before.reversed().leave
    first = line(above.nape, top).segments
    if abs(leave + 1j) > 1e-9:
        first = (smooth(above.nape, top, leave, -1j),)
    return Path((*first, Cubic(top, top - 0.42j * run, low + 0.36j * run, low)))


def _back_seam(plan: TorsoPlan, top: complex, taken: WaistIntake) -> tuple[Path, Path]:
    """From the across point in one bend to the waist; the side body's edge ends lower, as it is
    straighter, so that both are equally long."""
    foot = complex(taken.centre + BACK_AT_WAIST * plan.waist_half, plan.waist)
    lean = cmath.phase((foot - top) / -1j)
    leave = unit(foot - top) * cmath.exp(0.45j * lean)
    panel = Path((smooth(top, foot, leave, -1j),))

    def partner(lower: float) -> Path:
        end = foot + taken.back - 1j * lower
        return Path((smooth(top, end, leave, -1j),))

    reach = 0.25 * abs(foot - top)
    lower = solve(
        lambda d: partner(d).length,
        panel.length,
        (-reach, reach),
        what="back seam",
        turn="check the back waist length and the waist girth",
        guess=0.0,
    )
    return panel, partner(lower)


def _front_seam(plan: TorsoPlan, top: complex, side_top: complex, taken: WaistIntake) -> tuple[Path, Path, float]:
    """Return the forepart's edge and the side body's, both down through the pivot, and how far down
    the forepart's reaches it. Both leave the armhole alike, so the closed armhole stays smooth."""
    pivot = plan.bust_point
    feet = [complex(pivot.real + s * taken.front / 2, plan.waist) for s in (-1, 1)]
    above = [unit(pivot - p) for p in (top, side_top)]
    turns = [cmath.phase(unit(f - pivot) / up) for f, up in zip(feet, above, strict=True)]
    off = cmath.exp(-0.25j * CURVE_ABOVE * sum(turns))

    headings = [a * cmath.exp(1j * CURVE_ABOVE * t) for a, t in zip(above, turns, strict=True)]
    heads = [smooth(p, pivot, a * off, h) for p, a, h in zip((top, side_top), above, headings, strict=True)]

    def below(i: int, lower: float) -> Cubic:
        return smooth(pivot, feet[i] - 1j * lower, headings[i], -1j)

    front = Path((heads[0], below(0, 0.0)))
    wanted = front.length - heads[1].length
    reach = 0.4 * (pivot.imag - plan.waist)
    lower = root_near(lambda d: below(1, d).length - wanted, 0.0, (-reach, reach), 1e-7)
    if lower is None and not below(1, -reach).length < wanted < below(1, reach).length:
        raise DraftError(
            "the front seam's two edges cannot be made equal",
            value=f"bust line {told(pivot.imag - plan.waist)} above the waist",
            turn="measure bust point depth and front waist length again",
        )
    if lower is None:
        lower = solve(lambda d: below(1, d).length, wanted, (-reach, reach), what="front seam")
    return front, Path((heads[1], below(1, lower))), front.lengths[0]
