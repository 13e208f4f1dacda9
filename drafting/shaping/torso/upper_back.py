"""The back above the across line as it is drawn: neck, shoulder, armhole, their darts, and a yoke's seam.

Half frame (centre on x = 0, side on +x). How much is opened is settled in `round_back`.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from drafting.draft.chain import laid_end_to_end
from drafting.geometry import Path, line, smooth, turn
from drafting.geometry.brent import brent_zero
from drafting.ground import tolerances as tol
from drafting.shaping.torso.armhole import straight_and_bend
from drafting.shaping.torso.dart_mouth import BEND_OVER, short_legs, true_mouth
from drafting.shaping.torso.neckline import Neckline
from drafting.shaping.torso.round_back import BLADE, ON_NECK, ON_SHOULDER, Blade, Rounding

SHOULDER_SHORT, NECK_SHORT = 30.0, 0.40
"""mm at adult scale that the shoulder dart ends short of the blade, the neck dart's share (ours)."""


@dataclass(frozen=True)
class Seamline:
    """One edge with a dart in it or none: its path before the dart, both legs, its path after it."""

    before: Path
    legs: tuple[Path, Path] | None = None
    after: Path | None = None


@dataclass(frozen=True)
class UpperBack:
    """The drawn upper back. `shoulder` runs from the shoulder point to the neck, `neck` on to the nape,
    `armhole` from the shoulder point to the underarm, its last segment the scoop.

    With a yoke `yoke` is its lower edge, outwards, and `lower` the back's upper edge, likewise: `armhole`
    then runs as it is sewn, and `armholes` are its two parts as they lie; `depth` is how far below the
    nape it was cut off, before the back was opened.
    """

    shoulder: Seamline
    neck: Seamline
    armhole: Path
    armholes: tuple[Path, ...]
    yoke: Path | None = None
    lower: Path | None = None
    depth: float = 0.0

    @property
    def tip(self) -> complex:
        return self.shoulder.before.start

    @property
    def side_neck(self) -> complex:
        return self.neck.before.start

    @property
    def nape(self) -> complex:
        return (self.neck.after or self.neck.before).end


def blade_of(neck: Neckline, armhole: Path) -> Blade:
    """Return the distances by which darts are settled, for a planned neckline and back armhole."""
    across = armhole.segments[-1].start
    blade = _blade(across)
    on_shoulder = neck.back.end + ON_SHOULDER * (armhole.start - neck.back.end)
    on_neck = neck.back.at((1 - ON_NECK) * neck.back.length)
    return Blade(across.real - blade.real, abs(on_shoulder - blade), abs(on_neck - blade), across.real)


def _blade(across: complex) -> complex:
    return complex(BLADE * across.real, across.imag)


def upper_back(neck: Neckline, armhole: Path, rounding: Rounding, scale: float) -> UpperBack:
    """Return the upper back; `armhole` is the planned one, shoulder point to underarm."""
    neck = _flatter(neck, rounding.flat)
    if rounding.plain:
        shoulder = line(armhole.start, neck.back.end)
        return UpperBack(Seamline(shoulder), Seamline(neck.back.reversed()), armhole, (armhole,))
    if rounding.yoked:
        return _with_yoke(neck, armhole, rounding, scale)
    return _opened(neck, armhole, rounding, scale)


def _flatter(neck: Neckline, by: float) -> Neckline:
    """Return the neckline with its nape raised by so much, still square to the centre back."""
    if by <= 0:
        return neck
    back = neck.back
    return replace(neck, back=Path((smooth(back.start + 1j * by, back.end, 1 + 0j, back.arrive),)))


def _opened(neck: Neckline, armhole: Path, rounding: Rounding, scale: float) -> UpperBack:
    """Return the upper back opened about the across point, darts turning back what lies inside them."""
    across = armhole.segments[-1].start
    blade = _blade(across)
    angle = rounding.shoulder + rounding.neck + rounding.turned
    apex = across + (blade - across) * turn(-angle)
    aside = 0.0 if rounding.turned else (apex - blade).real
    up = complex(-aside, rounding.lift)
    tip = apex + up

    def outer(p: complex) -> complex:
        return across + (p - across) * turn(-angle) + up

    def middle(p: complex) -> complex:
        return apex + (p - blade) * turn(-angle + rounding.shoulder) + up

    def inner(p: complex) -> complex:
        return apex + (p - blade) * turn(-angle + rounding.shoulder + rounding.neck) + up

    shoulder = line(armhole.start, neck.back.end)
    parts = shoulder.split((1 - ON_SHOULDER) * shoulder.length)
    necks = neck.back.reversed().split(ON_NECK * neck.back.length)
    near = 0.35 * neck.back.length
    shoulders = parts[0].mapped(outer), parts[1].mapped(middle)
    on_shoulder = _opened_edge(shoulders, tip, rounding.shoulder, SHOULDER_SHORT * scale, BEND_OVER * scale)
    far = NECK_SHORT * abs(necks[0].end - blade)
    on_neck = _opened_edge((necks[0].mapped(middle), necks[1].mapped(inner)), tip, rounding.neck, far, near)
    leave = armhole.leave * turn(-angle)
    upper = straight_and_bend(outer(armhole.start), leave, across, armhole.segments[-1].tangent(0.0))
    whole = Path((*upper, armhole.segments[-1]))
    return UpperBack(on_shoulder, on_neck, whole, (whole,))


def _opened_edge(parts: tuple[Path, Path], apex: complex, angle: float, short: float, over: float) -> Seamline:
    """Return an edge whose two parts a wedge of `angle` degrees about `apex` has moved apart, or one path."""
    before, after = parts
    if angle <= 0:
        return Seamline(Path.joined(parts))
    mouth = true_mouth(before, *short_legs(before.end, after.start, apex, short), after, over)
    return Seamline(mouth.before, (mouth.leg_in, mouth.leg_out), mouth.after)


def _with_yoke(neck: Neckline, armhole: Path, rounding: Rounding, scale: float) -> UpperBack:
    """Return the upper back as a yoke: its lower edge is level, and the back's edge below it falls to the
    armhole, both equally long. A dart in the yoke's shoulder turns what lies outside it down.
    """
    nape = neck.back.start.imag
    asked = nape - max(rounding.depth, LEAST_DEPTH * scale) if rounding.depth else None
    _, below = _parted(armhole, asked, LEAST_ARMHOLE * scale)
    across, turning = below.start, armhole.segments[-1].start
    arm, angle = turning.real - _blade(turning).real, rounding.shoulder
    falls = rounding.yoke + arm * math.sin(math.radians(angle))
    seam = 1j * (across.imag + falls)
    fall = math.degrees(math.atan2(2 * falls, across.real)) if falls > 0 else 0.0
    lower = Path((smooth(seam, across, 1 + 0j, turn(-fall)),)) if fall else line(seam, across)
    yoke, end = _yoke_edge(seam, lower.length, arm, angle)
    plain = 1j * (rounding.yoke + rounding.lift)
    level = complex(lower.length, across.imag + rounding.yoke)

    def outer(p: complex) -> complex:
        return end + (p + plain - level) * turn(-angle)

    def inner(p: complex) -> complex:
        return p + plain + seam - 1j * level.imag

    tip = inner(_still(outer, inner)) if angle else 0j
    seamline, necks = line(armhole.start, neck.back.end), neck.back.reversed()
    parts = seamline.split((1 - ON_SHOULDER) * seamline.length)
    opened = parts[0].mapped(outer), parts[1].mapped(inner)
    shoulder = _opened_edge(opened, tip, angle, SHOULDER_SHORT * scale, BEND_OVER * scale)
    arrive = below.leave * turn(fall - angle)
    upper = straight_and_bend(shoulder.before.start, armhole.leave * turn(-angle), yoke.end, arrive)
    above = Path(upper)
    sewn = laid_end_to_end([below.reversed(), above.reversed()]).reversed()
    on_neck = Seamline(necks.mapped(inner))
    return UpperBack(
        shoulder=shoulder,
        neck=on_neck,
        armhole=sewn,
        armholes=(above, below),
        yoke=yoke,
        lower=lower,
        depth=nape - across.imag,
    )


LEAST_DEPTH, LEAST_ARMHOLE = 25.0, 12.0
"""mm at adult scale: so deep at least a yoke is at the centre back, so high at the armhole (ours: what two
allowances, and one, turn into)."""


def _parted(armhole: Path, height: float | None, least: float) -> tuple[Path, Path]:
    """Return an armhole above and below a height, `least` mm below its top; or above and below where it turns."""
    straight, scoop = armhole.segments[:-1], armhole.segments[-1:]
    if height is None or not straight:
        return Path(straight or scoop), Path(scoop)
    above = Path(straight)
    if height <= above.end.imag + tol.CLOSED:
        return above, Path(scoop)
    height = min(height, above.start.imag - min(least, 0.5 * (above.start.imag - above.end.imag)))
    at = float(brent_zero(lambda s: above.at(s).imag - height, 0.0, above.length, within=1e-10))
    upper, lower = above.split(at)
    return upper, Path((*lower.segments, *scoop))


def _still(one: Callable[[complex], complex], other: Callable[[complex], complex]) -> complex:
    """Return the point that two moves, one turned against the other, take to the same place."""
    apart, further = one(0j) - other(0j), one(1 + 0j) - other(1 + 0j)
    return apart / (apart - further)


def _yoke_edge(seam: complex, long: float, arm: float, angle: float) -> tuple[Path, complex]:
    """Return the yoke's lower edge from the centre `seam`, `long` mm, and its end at the armhole: it bends
    down by the dart's angle, as the yoke outside the blade has turned."""
    if angle <= 0:
        return line(seam, seam + long), seam + long
    down = arm * math.sin(math.radians(angle))
    out = long - arm * (1 - math.cos(math.radians(angle)))
    for _ in range(20):  # one smooth bend is a hair shorter than the two straights; settles at once
        end = seam + complex(out, -down)
        edge = Path((smooth(seam, end, 1 + 0j, turn(-angle)),))
        out += long - edge.length
    return edge, end
