"""The sleeve below the upper-arm line: leaning seams, a hem square to both or straight, the elbow's bend.

Frame: upper-arm line on y = 0, crown above x = 0, front on +x (the block mirrors it afterwards).
Both seams lean in by the same angle, so they are equal however the cap divides the width.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass, replace

from scipy.optimize import brentq

from drafting.geometry import Path, line, smooth, turn, unit
from drafting.shaping.sleeve.cap import Cap

STEPS = 12
"""Each step of the hem leaves a small share of what was amiss; so many settle any sleeve."""


LAST_ELBOW = 0.92
"""Of a seam's length: an elbow nearer to the hem is not marked and not bent (ours)."""


SHARPEST = 27.0
"""Degrees by which a straight hem's corners may miss a right angle (ours: at 31 a slit loses its allowance)."""


BESIDE_SLIT = 15.0
"""mm: the seam allowance usual along a slit. Where it meets the hem's, turned up aslant, it is lost for so
far times the tangent of that angle; a slit keeps it beside its middle."""


@dataclass(frozen=True)
class Forearm:
    """What the lower sleeve must be: width, wrist (hem length), length on the middle line and elbow
    depth, both from the crown, mm. The hem's corners lie `bow` lower than where the middle line ends. A
    hem that a straight cuff is sewn to is straight; its seams end in a slit of `slit` mm, so nothing meets in
    an angle."""

    cap: Cap
    width: float
    wrist: float
    length: float
    elbow: float
    bow: float = 0.0
    straight_hem: bool = False
    slit: float = 0.0

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
        sharpest = min(math.tan(math.radians(SHARPEST)), self.slit / 2 / BESIDE_SLIT)
        return self.straight_hem and aside <= down * sharpest

    @property
    def lean(self) -> float:
        """Lean of both seams, radians."""
        return math.radians(self.cap.lean)

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


def _corners(f: Forearm) -> tuple[complex, complex, complex, complex]:
    """Underarm front, underarm back, hem front, hem back of the unbent sleeve."""
    y = f.cap.height - f.corner
    wf, wb = f.cap.front_width, f.cap.back_width
    return complex(wf), complex(-wb), complex(wf - f.step, y), complex(-wb + f.step, y)


def sleeve_seams(f: Forearm, bend: float, *, passes_elbow: bool = True) -> SleeveSeams:
    """Return the sleeve below its cap, its forearm turned `bend` degrees, its hem so low that the
    middle line, straight down from the crown, is `f.length` long.

    A hem square to two leaning seams is an arc: its middle lies higher than its corners, or lower
    where the sleeve widens. So the corners are moved until the middle is right.
    """
    wanted = f.cap.height - f.length
    for _ in range(STEPS):
        drawn = _turned(f, bend)
        over = below_crown(drawn.hem) - wanted
        if abs(over) < 1e-7:
            break
        f = replace(f, bow=f.bow + over)
    lean = math.degrees(math.atan2(f.step, f.corner - f.cap.height))
    drawn = replace(drawn, lean=lean)
    return drawn if passes_elbow else replace(drawn, elbow=None)


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
    return arc.point(float(brentq(lambda t: arc.point(t).real, 0.0, 1.0, xtol=1e-12))).imag


def straight_seams(f: Forearm) -> SleeveSeams:
    """Return the sleeve whose seams run straight to the hem."""
    top_front, top_back, low_front, low_back = _corners(f)
    hem = f.hem(low_back, low_front, unit(low_back - top_back), unit(low_front - top_front))
    front, back = line(top_front, low_front), line(top_back, low_back)
    at = f.elbow_share * front.length
    elbow = line(back.at(at), front.at(at)) if f.elbow_share <= LAST_ELBOW else None
    return SleeveSeams(front, (back,), hem, elbow, at)


def elbow_seams(f: Forearm, bend: float) -> SleeveSeams | None:
    """Return the sleeve whose forearm is turned `bend` degrees forward about the front elbow point.

    The front seam is one smooth curve. At the back the turn opens a dart on the elbow line, half
    as long as the sleeve is wide there; the seam beside it is bent so that the closed seam is smooth,
    and the back hem end moves along its seam until back and front seam are equal; None where no place
    of it makes them so.
    """
    top_front, top_back, low_front, low_back = _corners(f)
    share = f.elbow_share
    elbow_front = top_front + (low_front - top_front) * share
    elbow_back = top_back + (low_back - top_back) * share
    forward = turn(bend)

    def bent(p: complex) -> complex:
        return elbow_front + (p - elbow_front) * forward

    down = unit(elbow_front - top_front)
    middle = down * turn(bend / 2)
    front = Path(
        (
            smooth(top_front, elbow_front, down, middle),
            smooth(elbow_front, bent(low_front), middle, unit(bent(low_front) - elbow_front)),
        )
    )
    upper_end, lower_start = elbow_back, bent(elbow_back)
    halfway = (upper_end + lower_start) / 2
    tip = halfway + (elbow_front - halfway) / 2
    down_upper, down_lower = unit(elbow_back - top_back), unit(bent(low_back) - lower_start)
    inside = cmath.phase(-down_upper / (tip - upper_end)) % (2 * math.pi)
    outside = cmath.phase((tip - lower_start) / down_lower) % (2 * math.pi)
    miss = math.degrees(inside + outside) - 180
    half = miss / 2
    upper = Path((smooth(top_back, upper_end, down_upper, down_upper * turn(-half)),))

    def lower(short: float) -> Path:
        end = bent(low_back) - down_lower * short
        return Path((smooth(lower_start, end, down_lower * turn(half), down_lower),))

    reach = 0.3 * abs(bent(low_back) - lower_start)

    def over(short: float) -> float:
        return upper.length + lower(short).length - front.length

    if over(-reach) * over(reach) > 0:
        return None
    low = lower(float(brentq(over, -reach, reach, xtol=1e-9)))
    hem = f.hem(low.end, front.end, low.arrive, front.arrive)
    dart, at = (line(upper_end, tip), line(tip, lower_start)), upper.length
    return SleeveSeams(front, (upper, low), hem, line(tip, elbow_front), at, dart)
