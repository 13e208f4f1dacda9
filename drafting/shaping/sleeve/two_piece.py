"""The two-piece sleeve: a one-piece sleeve parted along forearm and hind-arm lines, and bent.

The cap is fitted to the armhole as that of a one-piece sleeve. Its outer parts are folded under along
two upright lines, front and back, until the underarm points meet: they make the under sleeve's cap.
So both caps together are the fitted cap, and the width at the upper arm stays exact. Below, both fold
lines bend at the elbow; the seams run beside them, the forearm seam turned under the arm.

Frame: upper-arm line on y = 0, crown at x = 0, front at +x, the under sleeve seen from the inside.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass
from itertools import pairwise

from drafting.geometry import Cubic, Line, Path, line, solve
from drafting.geometry.solve import zero_between
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.sleeve.cap import Cap

FORE_AT, FORE_HIGHEST = 0.26, 0.5
"""Height of the forearm seam's top as a share of the cap's height, and the highest it may be (ours)."""

FORE_UNDER = 20.0
"""mm at adult scale: how far the forearm seam lies under the arm (ours)."""

HIND_UNDER = 22.0
"""mm at adult scale: how far the top sleeve reaches over the hind-arm line; 0 at the cuff."""

PAST_NOTCH = 3.0
"""mm at adult scale: the sleeve's seams meet the cap at least so far past its underarm notches."""

UPRIGHT = 8.0
"""degrees off upright at which the back cap takes no seam: the under sleeve, upright there, would lie over
its own cap (ours; people's caps lean by 28 and more)."""

FORE_HOLLOW, CUFF_FORWARD = 15.0, 12.0
"""mm at adult scale: the fore fold's hollow at the elbow, and how far forward the cuff lies, at the
usual bend of 7 degrees (ours)."""


MOST_FORWARD = (0.06, 0.04)
"""How far forward of the crown the cuff's middle may lie, of the sleeve's length: without a bend, and
how much more at the usual one (ours: a hanging arm bends forward by some 5 degrees)."""


CROWN_OVER_CUFF = 5.0
"""mm at adult scale: the crown stands at least so far in front of the cuff's hind end (ours)."""


@dataclass(frozen=True)
class ArmLines:
    """What the lower sleeve must be: y of elbow and cuff, half widths there, and how much it bends
    (1: as usual). mm."""

    elbow: float
    cuff: float
    elbow_half: float
    cuff_half: float
    bend: float


@dataclass(frozen=True)
class Pitch:
    """Where the seams may meet the cap, mm along each half from the underarm: `notches` (front, back)
    stay whole below, and the hind-arm seam begins within `back`."""

    notches: tuple[float, float]
    back: tuple[float, float]


@dataclass(frozen=True)
class TwoPiece:
    """The curves of both sleeves: caps from back to front, seams from the cap down, cuffs back to
    front. `under` ones in the frame seen from inside. `elbows` says how far from the cap the elbow lies
    on the fore seams, and how far from the cuff on the hind seams."""

    top_front: Path
    top_back: Path
    under_front: Path
    under_back: Path
    fore: tuple[Path, Path]
    hind: tuple[Path, Path]
    cuffs: tuple[Path, Path]
    folds: tuple[float, float]
    elbows: tuple[float, float]


def two_piece(cap: Cap, arm: ArmLines, scale: float, pitch: Pitch) -> TwoPiece:
    """Return both sleeves for a fitted cap, their seams at the `pitch` of its armhole.

    Raises `DraftError` where the arm is too short for it.
    """
    if arm.elbow > -20 * scale or arm.cuff > arm.elbow - 40 * scale:
        raise DraftError(
            "the sleeve has no room for an elbow below its cap",
            value=f"elbow {told(-arm.elbow)} and cuff {told(-arm.cuff)} below the upper-arm line",
            turn="make the sleeve longer, or measure the upper arm length again",
        )
    (under_front, top_front), (under_back, top_back), folds = _parted(cap, pitch, scale)
    fore, hind = _seams(arm, scale, folds, (top_front.start, top_back.start), cap.height)

    def under(path: Path, fold: float) -> Path:
        return path.mapped(lambda p: 2 * fold - p.conjugate())

    return TwoPiece(
        top_front=top_front,
        top_back=top_back,
        under_front=under(under_front, folds[0]),
        under_back=under(under_back, folds[1]),
        fore=fore,
        hind=hind,
        cuffs=(line(hind[0].end, fore[0].end), line(hind[1].end, fore[1].end)),
        folds=folds,
        elbows=(sum(part.length for part in fore[0].segments[:2]), hind[0].segments[-1].length),
    )


Parts = tuple[Path, Path]


def _parted(cap: Cap, pitch: Pitch, scale: float) -> tuple[Parts, Parts, tuple[float, float]]:
    """Return front and back half cap, each (under, top), and the x of the front and the back fold.

    Both folds lie half the sleeve's width apart. The fore seam would lie at its usual height; the hind
    seam that follows from it is drawn into its pitch, the fore seam after it as far as it may go, and
    what is still too much or too little is shared out between how far the seams lie under the arm.
    """
    half, clear = (cap.front_width + cap.back_width) / 2, PAST_NOTCH * scale
    usual = (FORE_UNDER + HIND_UNDER) * scale

    front = pitch.notches[0] + clear, max(_place(cap.front, FORE_HIGHEST * cap.height), pitch.notches[0] + clear)
    wanted = cap.front.at(max(_place(cap.front, FORE_AT * cap.height), front[0])).real
    steep = _upright(cap.back, pitch.notches[1] + clear, pitch.back[1])
    low, high = (min(max(at, pitch.notches[1] + clear), steep) for at in pitch.back)
    back_at = _drawn_into(low, high, _place_x(cap.back, wanted - half - usual))
    behind = cap.back.at(back_at).real
    ends = cap.front.at(front[0]).real, cap.front.at(front[1]).real
    before = min(max(behind + half + usual, min(ends)), max(ends))
    front_at = _place_x(cap.front, before, front)
    spare = cap.front.at(front_at).real - behind - half
    fold = cap.front.at(front_at).real - spare * FORE_UNDER / (FORE_UNDER + HIND_UNDER)
    return cap.front.split(front_at), cap.back.split(back_at), (fold, fold - half)


def _upright(back: Path, low: float, high: float) -> float:
    """Return how far along the back half cap (mm, `low`..`high`) it is still no upright line."""

    def leans(at: float) -> float:
        return math.degrees(cmath.phase(back.tangent(at) / 1j)) + UPRIGHT

    steps = [low + (high - low) * i / 20 for i in range(21)]
    for before, at in pairwise(steps):
        if leans(at) > 0:
            ends = leans(before), leans(at)
            return zero_between(leans, (before, at), ends, 1e-6) if ends[0] < 0 else before
    return high


def _drawn_into(low: float, high: float, at: float) -> float:
    """Return a place between the bounds, the nearer to one the farther `at` lies to its side; it moves
    at most half as fast as `at`, so that no body stands at an edge."""
    middle, reach = (low + high) / 2, (high - low) / 2
    return middle + reach * math.tanh((at - middle) / (2 * reach)) if reach > 0 else low


def _place(path: Path, height: float) -> float:
    """Return how far along a half cap (upwards) a height is reached, mm."""
    ends = path.start.imag - height, path.end.imag - height
    return zero_between(lambda d: path.at(d).imag - height, (0.0, path.length), ends, 1e-9)


def _place_x(path: Path, x: float, within: tuple[float, float] | None = None) -> float:
    """Return how far along a half cap the place x is reached, or the nearer of the bounds `within`."""
    low, high = within or (0.15 * path.length, 0.90 * path.length)
    ends = path.at(low).real - x, path.at(high).real - x
    if ends[0] * ends[1] >= 0:
        return low if abs(ends[0]) < abs(ends[1]) else high
    return zero_between(lambda d: path.at(d).real - x, (low, high), ends, 1e-9)


def _seams(
    arm: ArmLines, scale: float, folds: tuple[float, float], tops: tuple[complex, complex], crown: float
) -> tuple[Parts, Parts]:
    """Return fore seams and hind seams, each (top sleeve, under sleeve), from the cap down.

    The fore seams are one curve, shifted. Both cuffs are straight. The top's is square to the line from
    the crown to its middle, so that the sleeve is as long straight down from the crown as along the
    middle of its bent arm; the under's tilts by so much more that the hind seams are equally long. All
    seams end at the mean of both, so that the cuff runs on straight over them.
    """
    front, back = folds
    beside, wide = tops[0].real - front, back - tops[1].real
    in_front = _fore_fold(arm, scale, front, beside, crown)
    behind = (back, in_front[1] - arm.elbow_half, in_front[2] - arm.cuff_half)
    forward = (in_front[2] + beside + behind[2]) / 2 / (crown - arm.cuff)
    fades = (1.0, 1 - arm.elbow / arm.cuff, 0.0)
    fore_xs = [x + beside for x in in_front]
    top_xs = [x - wide * f**2 for x, f in zip(behind, fades, strict=True)]
    under_xs = [x + wide * f**2 for x, f in zip(behind, fades, strict=True)]

    at_fore, at_hind = arm.cuff + forward * fore_xs[2], arm.cuff + forward * behind[2]

    def drawn(more: float) -> tuple[Path, Path, Path]:
        at_under = at_fore - (forward + 2 * more) * (fore_xs[2] - 2 * beside - behind[2])
        return (
            _graph(tops[0].imag, (0.0, arm.elbow, at_fore), fore_xs, forward + more),
            _graph(tops[1].imag, (0.0, arm.elbow, at_hind), top_xs, forward + more),
            _graph(tops[1].imag, (0.0, arm.elbow, at_under), under_xs, forward + more),
        )

    def longer(more: float) -> float:
        _, hind, under = drawn(more)
        return under.length - hind.length

    more = solve(longer, 0.0, (-0.3, 0.3), what="hind-arm seam", turn="choose less elbow bend", guess=0.03)
    fore, hind, under = drawn(more)
    return (fore, fore.moved(-2 * beside)), (hind, under)


def _fore_fold(
    arm: ArmLines, scale: float, front: float, beside: float, crown: float
) -> tuple[float, float, float]:
    """Return x of the fore fold at the cap, the elbow and the cuff.

    A cuff much narrower than the sleeve would lie all in front: its middle keeps within what a bent arm
    reaches forward, and the fold goes back as much, half of it at the elbow.
    """
    elbow, cuff = front - arm.bend * FORE_HOLLOW * scale, front + arm.bend * CUFF_FORWARD * scale
    most = (MOST_FORWARD[0] + arm.bend * MOST_FORWARD[1]) * (crown - arm.cuff)
    most = min(most, (arm.cuff_half + beside) / 2 - CROWN_OVER_CUFF * scale)
    over = max(0.0, cuff + (beside - arm.cuff_half) / 2 - most)
    return front, elbow - over / 2, cuff - over


def _graph(top: float, ys: tuple[float, ...], xs: list[float], forward: float) -> Path:
    """Return x as a smooth function of y, downwards: straight from `top` to the first y, cubics on.

    At the elbow it leans as the chords on either side do, weighted; at the cuff `forward` mm a mm down.
    """
    chords = [(b - a) / (q - p) for (a, b), (p, q) in zip(pairwise(xs), pairwise(ys), strict=True)]
    slopes = [0.0, 0.62 * chords[1] + 0.38 * chords[0], -forward]
    parts: list[Line | Cubic] = [Line(complex(xs[0], top), complex(xs[0], ys[0]))]
    for i in range(2):
        a, d = complex(xs[i], ys[i]), complex(xs[i + 1], ys[i + 1])
        third = (ys[i + 1] - ys[i]) / 3
        parts.append(Cubic(a, a + complex(slopes[i], 1) * third, d - complex(slopes[i + 1], 1) * third, d))
    return Path(tuple(parts))
