"""The two-piece sleeve: a one-piece sleeve parted along forearm and hind-arm lines, and bent.

The cap is fitted to the armhole as that of a one-piece sleeve. Its outer parts are folded under along
two upright lines, front and back, until the underarm points meet: they make the under sleeve's cap.
So both caps together are the fitted cap, and the width at the upper arm stays exact. Below, both fold
lines bend at the elbow; the seams run beside them, the forearm seam turned under the arm.

Frame: upper-arm line on y = 0, crown at x = 0, front at +x, the under sleeve seen from the inside.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from drafting.geometry import Cubic, Line, Path, smooth, solve
from drafting.geometry.solve import zero_between
from drafting.ground.errors import DraftError
from drafting.shaping.sleeve.cap import Cap

FORE_AT = 0.26
"""Height of the forearm seam's top as a share of the cap's height (ours)."""

FORE_UNDER = 20.0
"""mm at adult scale: how far the forearm seam lies under the arm (ours)."""

HIND_UNDER = 22.0
"""mm at adult scale: how far the top sleeve reaches over the hind-arm line; 0 at the cuff."""

PAST_NOTCH = 3.0
"""mm at adult scale: the sleeve's seams meet the cap at least so far past its underarm notches."""

FORE_HOLLOW, CUFF_FORWARD = 15.0, 12.0
"""mm at adult scale: the fore fold's hollow at the elbow, and how far forward the cuff lies, at the
usual bend of 7 degrees (ours)."""


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
class TwoPiece:
    """The curves of both sleeves: caps from back to front, seams from the cap down, cuffs back to
    front. `under` ones in the frame seen from inside."""

    top_front: Path
    top_back: Path
    under_front: Path
    under_back: Path
    fore: tuple[Path, Path]
    hind: tuple[Path, Path]
    cuffs: tuple[Path, Path]
    folds: tuple[float, float]


def two_piece(cap: Cap, arm: ArmLines, scale: float, notches: tuple[float, float] = (0.0, 0.0)) -> TwoPiece:
    """Return both sleeves for a fitted cap, whose first `notches` mm (front, back) stay whole.

    Raises `DraftError` where the arm is too short for it.
    """
    if arm.elbow > -20 * scale or arm.cuff > arm.elbow - 40 * scale:
        raise DraftError(
            "the sleeve has no room for an elbow below its cap",
            value=f"elbow {-arm.elbow:.0f} mm and cuff {-arm.cuff:.0f} mm below the upper-arm line",
            turn="make the sleeve longer, or measure the upper arm length again",
        )
    clear = PAST_NOTCH * scale
    front_at = max(_place(cap.front, FORE_AT * cap.height), notches[0] + clear)
    under_front, top_front = cap.front.split(front_at)
    fold_front = top_front.start.real - FORE_UNDER * scale
    fold_back = fold_front - (cap.front_width + cap.back_width) / 2
    back_at = max(_place_x(cap.back, fold_back - HIND_UNDER * scale), notches[1] + clear)
    under_back, top_back = cap.back.split(back_at)
    fore, hind = _seams(arm, scale, (fold_front, fold_back), (top_front.start, top_back.start))

    def under(path: Path, fold: float) -> Path:
        return path.mapped(lambda p: 2 * fold - p.conjugate())

    cuffs = tuple(_cuff(h, f) for h, f in zip(hind, fore, strict=True))
    return TwoPiece(
        top_front=top_front,
        top_back=top_back,
        under_front=under(under_front, fold_front),
        under_back=under(under_back, fold_back),
        fore=fore,
        hind=hind,
        cuffs=(cuffs[0], cuffs[1]),
        folds=(fold_front, fold_back),
    )


def _place(path: Path, height: float) -> float:
    """Return how far along a half cap (upwards) a height is reached, mm."""
    ends = path.start.imag - height, path.end.imag - height
    return zero_between(lambda d: path.at(d).imag - height, (0.0, path.length), ends, 1e-9)


def _place_x(path: Path, x: float) -> float:
    """Return how far along the back half cap the place x is reached; it runs towards +x."""
    low, high = 0.15 * path.length, 0.90 * path.length
    ends = path.at(low).real - x, path.at(high).real - x
    if ends[0] * ends[1] >= 0:
        return low if ends[0] > 0 else high
    return zero_between(lambda d: path.at(d).real - x, (low, high), ends, 1e-9)


def _seams(
    arm: ArmLines, scale: float, folds: tuple[float, float], tops: tuple[complex, complex]
) -> tuple[tuple[Path, Path], tuple[Path, Path]]:
    """Return fore seams and hind seams, each (top sleeve, under sleeve), from the cap down.

    The fore seams are one curve, shifted. The hind seam of the under sleeve ends a little higher or
    lower at the cuff, so that it is as long as the top's.
    """
    ys = (0.0, arm.elbow, arm.cuff)
    front, back = folds
    in_front = (front, front - arm.bend * FORE_HOLLOW * scale, front + arm.bend * CUFF_FORWARD * scale)
    behind = (back, in_front[1] - arm.elbow_half, in_front[2] - arm.cuff_half)
    beside, wide = tops[0].real - front, back - tops[1].real
    fades = (1.0, 1 - arm.elbow / arm.cuff, 0.0)
    fore = _graph(tops[0].imag, ys, [x + beside for x in in_front])
    hind = _graph(tops[1].imag, ys, [x - wide * f**2 for x, f in zip(behind, fades, strict=True)])
    under_xs = [x + wide * f**2 for x, f in zip(behind, fades, strict=True)]

    def under_hind(lower: float) -> Path:
        return _graph(tops[1].imag, (ys[0], ys[1], ys[2] - lower), under_xs)

    reach = 0.3 * (arm.elbow - arm.cuff)
    lower = solve(
        lambda d: under_hind(d).length,
        hind.length,
        (-reach, reach),
        what="hind-arm seam",
        turn="choose less elbow bend",
        guess=0.0,
    )
    return (fore, fore.moved(-2 * beside)), (hind, under_hind(lower))


def _graph(top: float, ys: tuple[float, ...], xs: list[float]) -> Path:
    """Return x as a smooth function of y, downwards: straight from `top` to the first y, cubics on.

    At the elbow it leans as the chords on either side do, weighted; at the cuff as the lower chord.
    """
    chords = [(b - a) / (q - p) for (a, b), (p, q) in zip(pairwise(xs), pairwise(ys), strict=True)]
    slopes = [0.0, 0.62 * chords[1] + 0.38 * chords[0], 0.9 * chords[1]]
    parts: list[Line | Cubic] = [Line(complex(xs[0], top), complex(xs[0], ys[0]))]
    for i in range(2):
        a, d = complex(xs[i], ys[i]), complex(xs[i + 1], ys[i + 1])
        third = (ys[i + 1] - ys[i]) / 3
        parts.append(Cubic(a, a + complex(slopes[i], 1) * third, d - complex(slopes[i + 1], 1) * third, d))
    return Path(tuple(parts))


def _cuff(hind: Path, fore: Path) -> Path:
    """Return the cuff from hind to fore seam, square to both."""
    return Path((smooth(hind.end, fore.end, hind.arrive * 1j, fore.arrive * 1j, may_wave=True),))
