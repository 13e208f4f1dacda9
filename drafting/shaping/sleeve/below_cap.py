"""The sleeve below the upper-arm line: leaning seams, a hem square to both or straight, the elbow's bend.

Frame: upper-arm line on y = 0, crown above x = 0, front on +x (the block mirrors it afterwards).
Both seams lean in by the same angle, so they are equal however the cap divides the width.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass, replace

from drafting.geometry import Path, line, smooth, turn, unit
from drafting.geometry.brent import brent_zero
from drafting.shaping.sleeve.cap import Cap

STEPS = 12
"""Each step of the hem leaves a small share of what was amiss; so many settle any sleeve."""


LAST_ELBOW = 0.92
"""Of a seam's length: an elbow nearer to the hem is not marked and not bent (ours)."""


SHARPEST = 27.0
"""Degrees by which a straight hem's corners may miss a right angle (ours: at 31 a slit loses its allowance)."""

LAST_BOW = 0.93
"""Of a seam's length: nearer to the hem no seam is bowed out for the forearm (ours: the hem is as wide there)."""


BESIDE_SLIT = 15.0
"""mm: the seam allowance usual along a slit. Where it meets the hem's, turned up aslant, it is lost for so
far times the tangent of that angle; a slit keeps it beside its middle."""


@dataclass(frozen=True)
class Forearm:
    """What the lower sleeve must be: width, wrist (hem length), length on the middle line and elbow
    depth, both from the crown, mm. The hem's corners lie `bow` lower than where the middle line ends. A
    hem that a straight cuff is sewn to is straight; its seams end in a `slit` (mm), so nothing meets in an
    angle.
    `fullest` is how far below the crown the forearm is fullest, and how wide the sleeve is there at least:
    where straight seams would make it narrower they are bowed out. `aslant` is the lean of both seams at
    the hem, radians, where it is not the cap's."""

    cap: Cap
    width: float
    wrist: float
    length: float
    elbow: float
    bow: float = 0.0
    straight_hem: bool = False
    slit: float = 0.0
    fullest: tuple[float, float] = (0.0, 0.0)
    aslant: float | None = None

    @property
    def corner(self) -> float:
        """Depth of the hem's corners below the crown, mm."""
        return self.length + self.bow

    @property
    def elbow_share(self) -> float:
        """How far down the seams the elbow lies."""
        return (self.elbow - self.cap.height) / (self.corner - self.cap.height)

    @property
    def straight(self) -> bool:
        """Whether the hem is straight: asked for, and its corners not so sharp that no allowance fits there."""
        aside, down = abs(self.width - self.wrist) / 2, self.length - self.cap.height
        held = self.bowed(aside)  # bowed seams are turned at their ends as a straight hem needs them
        sharpest = min(math.tan(math.radians(SHARPEST)), self.slit / 2 / BESIDE_SLIT)
        return self.straight_hem and (held or aside <= down * sharpest)

    @property
    def lean(self) -> float:
        """Lean of both seams at the hem, radians."""
        return math.radians(self.cap.lean) if self.aslant is None else self.aslant

    @property
    def fullest_share(self) -> float:
        """How far down the seams the forearm is fullest."""
        return (self.fullest[0] - self.cap.height) / (self.corner - self.cap.height)

    def bowed(self, step: float) -> bool:
        """Whether seams that come in straight by `step` mm each leave too little for the forearm."""
        share = self.fullest_share
        apart = self.width - 2 * step * share
        return max(0.0, self.elbow_share) < share < LAST_BOW and apart < self.fullest[1] - 0.01

    def inward(self, share: float) -> float:
        """How far each seam has come in so far down, mm: evenly to the hem, or to the forearm and then on."""
        full, last = self.fullest_share, self.step
        if not self.bowed(last):
            return last * share
        first = (self.width - self.fullest[1]) / 2
        if share <= full:
            return first * share / full
        return first + (last - first) * (share - full) / (1 - full)

    @property
    def step(self) -> float:
        """How far each seam has come in at the hem, mm: the hem is then `wrist` long."""
        e = 0.0 if self.straight else self.lean
        chord = self.wrist * math.sin(e) / e if abs(e) > 1e-9 else self.wrist
        return (self.width - chord) / 2

    def hem(self, back: complex, front: complex, down_back: complex, down_front: complex) -> Path:
        """Return the hem between its corners: straight, or square to both seams at its ends."""
        if self.straight:
            return line(back, front)
        return Path((smooth(back, front, down_back * 1j, down_front * 1j),))


@dataclass(frozen=True)
class SleeveSeams:
    """Front seam from underarm to hem; back seam likewise (in two parts where a dart lies between);
    hem from back to front; the elbow line from the back (or the dart's tip) to the front, None where
    the sleeve ends above it, and how far down both seams it lies; the dart's legs towards and from
    its tip, read from underarm to hem. `lean` is that of both seams where they leave the cap, degrees.
    """

    front: Path
    back: tuple[Path, ...]
    hem: Path
    elbow: Path | None
    elbow_at: float
    dart: tuple[Path, Path] | None = None
    lean: float = 0.0


def _across(f: Forearm, share: float) -> tuple[complex, complex]:
    """The places of front and back seam so far down the unbent sleeve."""
    y, inward = share * (f.cap.height - f.corner), f.inward(share)
    return complex(f.cap.front_width - inward, y), complex(-f.cap.back_width + inward, y)


def _by_forearm(f: Forearm) -> tuple[complex, complex] | None:
    """Where both seams pass the forearm, if they are bowed out there."""
    return _across(f, f.fullest_share) if f.bowed(f.step) else None


def sleeve_seams(f: Forearm, bend: float, *, passes_elbow: bool = True) -> SleeveSeams:
    """Return the sleeve below its cap, its forearm turned `bend` degrees, its hem so low that the
    middle line, straight down from the crown, is `f.length` long.

    A hem square to two leaning seams is an arc: its middle lies higher than its corners, or lower
    where the sleeve widens. So the corners are moved until the middle is right, and with bowed seams until
    the arc is as long as it shall be.
    """
    wanted = f.cap.height - f.length
    for _ in range(STEPS):
        drawn = _turned(f, bend)
        over = below_crown(drawn.hem) - wanted
        aslant = _aslant(drawn) if f.bowed(f.step) else f.aslant
        if abs(over) < 1e-7 and (aslant is None or abs(aslant - (f.aslant or 0.0)) < 1e-7):
            break
        f = replace(f, bow=f.bow + over, aslant=aslant)
    leave = drawn.front.leave
    drawn = replace(drawn, lean=math.degrees(math.atan2(-leave.real, -leave.imag)))
    return drawn if passes_elbow else replace(drawn, elbow=None)


def _aslant(drawn: SleeveSeams) -> float:
    """The lean of both seams where they meet the hem, in the mean, radians."""
    return cmath.phase(drawn.back[-1].arrive / drawn.front.arrive) / 2


def _turned(f: Forearm, bend: float) -> SleeveSeams:
    """Return the sleeve with its forearm turned, by half as much where the back seam cannot follow.

    A sleeve that widens to its hem hangs full and is not turned, nor one that ends at the elbow.
    """
    if f.step < 0 or f.elbow_share > LAST_ELBOW:
        return straight_seams(f)
    for _ in range(STEPS):
        if bend <= 0:
            break
        if bent := elbow_seams(f, bend):
            return bent
        bend = bend / 2 if bend > 0.5 else 0.0
    return straight_seams(f)


def below_crown(hem: Path) -> float:
    """Return the height at which the line straight down from the crown, x = 0, meets a hem that runs
    to +x; that of the nearer end where it passes the hem by."""
    (arc,) = hem.segments
    if arc.start.real >= 0 or arc.end.real <= 0:
        return min(arc.start, arc.end, key=lambda p: abs(p.real)).imag
    return arc.point(float(brent_zero(lambda t: arc.point(t).real, 0.0, 1.0, within=1e-12))).imag


def cap_hem(seams: SleeveSeams, height: float) -> SleeveSeams:
    """Return the seams with a hem that rises to `height` mm over the upper-arm line below the crown, square to
    both seams at its ends; as it is where it lies no lower there."""
    hem = seams.hem
    if height <= below_crown(hem):
        return seams
    top = 1j * height
    up = smooth(hem.start, top, hem.leave, 1 + 0j, may_wave=True)
    down = smooth(hem.end, top, -hem.arrive, -1 + 0j, may_wave=True).reversed()
    return replace(seams, hem=Path((up, down)))


def straight_seams(f: Forearm) -> SleeveSeams:
    """Return the sleeve whose seams run straight to the hem, or bowed out for the forearm."""
    tops, lows, by = _across(f, 0.0), _across(f, 1.0), _by_forearm(f)
    down = -1j if f.straight else None
    front, back = (_unbent(tops[i], by[i] if by else None, lows[i], down) for i in (0, 1))
    hem = f.hem(lows[1], lows[0], back.arrive, front.arrive)
    at = f.elbow_share * front.length
    elbow = line(back.at(at), front.at(at)) if f.elbow_share <= LAST_ELBOW else None
    return SleeveSeams(front, (back,), hem, elbow, at)


def _unbent(top: complex, by: complex | None, low: complex, down: complex | None) -> Path:
    """A seam from underarm to hem: straight, or one even bow by the forearm."""
    if by is None:
        return line(top, low)
    first, past = unit(by - top), _past(top, by, low)
    return _run(top, by, low, first * (first / past) ** 0.5, down)


def _past(start: complex, by: complex, end: complex) -> complex:
    """The way in which a seam from `start` to `end` passes `by`."""
    return unit(unit(by - start) + unit(end - by))


def _run(start: complex, by: complex | None, end: complex, leave: complex, down: complex | None) -> Path:
    """The smooth line that leaves in a direction and runs straight out, or bowed `by` a place and on.

    `down` is square to a straight hem: a bowed line ends within `SHARPEST` of it.
    """
    if by is None:
        return Path((smooth(start, end, leave, unit(end - start)),))
    past, last = _past(start, by, end), unit(end - by)
    last *= (last / past) ** 0.5
    if down is not None:
        most = math.radians(SHARPEST)
        last = down * cmath.exp(1j * min(max(cmath.phase(last / down), -most), most))
    return Path((smooth(start, by, leave, past), smooth(by, end, past, last)))


def elbow_seams(f: Forearm, bend: float) -> SleeveSeams | None:
    """Return the sleeve whose forearm is turned `bend` degrees forward about the front elbow point.

    The front seam is one smooth curve. At the back the turn opens a dart on the elbow line, half
    as long as the sleeve is wide there; the seam beside it is bent so that the closed seam is smooth,
    and the back hem end moves along its seam until back and front seam are equal; None where no place
    of it makes them so.
    """
    top_front, top_back = _across(f, 0.0)
    elbow_front, elbow_back = _across(f, f.elbow_share)
    forward = turn(bend)

    def bent(p: complex) -> complex:
        return elbow_front + (p - elbow_front) * forward

    low_front, low_back = map(bent, _across(f, 1.0))
    by = _by_forearm(f)
    by_front, by_back = map(bent, by) if by else (None, None)
    down = unit(elbow_front - top_front)
    middle = down * turn(bend / 2)
    square = forward * -1j if f.straight else None
    below = _run(elbow_front, by_front, low_front, middle, square)
    front = Path((smooth(top_front, elbow_front, down, middle), *below.segments))
    lower_start = bent(elbow_back)
    tip = (elbow_back + lower_start) / 4 + elbow_front / 2
    down_upper = unit(elbow_back - top_back)
    down_lower = unit((low_back if by_back is None else by_back) - lower_start)
    half = _missed(tip, (elbow_back, down_upper), (lower_start, down_lower)) / 2
    upper = Path((smooth(top_back, elbow_back, down_upper, down_upper * turn(-half)),))
    last = unit(low_back - (lower_start if by_back is None else by_back))

    def lower(short: float) -> Path:
        return _run(lower_start, by_back, low_back - last * short, down_lower * turn(half), square)

    reach = 0.3 * abs(low_back - lower_start)

    def over(short: float) -> float:
        return upper.length + lower(short).length - front.length

    if over(-reach) * over(reach) > 0:
        return None
    low = lower(float(brent_zero(over, -reach, reach, within=1e-9)))
    hem = f.hem(low.end, front.end, low.arrive, front.arrive)
    dart = line(elbow_back, tip), line(tip, lower_start)
    return SleeveSeams(front, (upper, low), hem, line(tip, elbow_front), upper.length, dart)


def _missed(tip: complex, upper: tuple[complex, complex], lower: tuple[complex, complex]) -> float:
    """By how many degrees the seam beside a dart bends once that is closed; place and way of both its ends."""
    inside = cmath.phase(-upper[1] / (tip - upper[0])) % (2 * math.pi)
    outside = cmath.phase((tip - lower[0]) / lower[1]) % (2 * math.pi)
    return math.degrees(inside + outside) - 180
