r"""Pockets whose mouth lies at an edge: a slant trouser pocket, and a pocket in a seam. Mm.

A slant pocket's front is cut whole. Its bag is sewn to it along the marked mouth, the corner is cut off beyond,
the bag turned inside; behind it lies the back of the pocket, of the garment's own cloth, which fills the corner
and is caught in waist and side (common practice). So waist, side and girths stay as they were drafted.

    corner .--width--.-------      side |
           |back   .'              top -|--.
           |     .' mouth               |   '.   bag
    height |   .'                 mouth |     |
           | .'      |                  |     |
    side   |'   bag  |           bottom-|     |
           |'-.____.-'                  '-.__.'
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from drafting.draft.piece import Piece
from drafting.geometry import Path, line
from drafting.geometry.area import is_simple, outside
from drafting.geometry.construct import smooth
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words

BAG_WIDE, BAG_DEEP = 150.0, 120.0
"""mm: how far a bag reaches in from its seam, and below a slant mouth (common practice: a hand and a wrist deep,
140 to 160 wide)."""

PAST, INTO = 25.0, 90.0
"""mm: how far a bag runs on past the mouth along its seam, and a slant one along the waist (common practice)."""

MOUTH_ENDS = PAST / 2
"""mm: a mouth in a seam keeps so far off either end of its edge, on both pieces (ours)."""

SHARES = (1.0, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4)
"""How far a bag is drawn in, across or in its depth, until it lies inside its piece (ours)."""

NARROW = (0.3, 0.2, 0.1)
"""Further shares at which a bag is marked on a partner that is narrower than it (ours)."""

Shares = tuple[float, float]
"""How far a bag is drawn in across, and in its depth."""

WHOLE: Shares = (1.0, 1.0)

FROM_EDGE = 6.0
"""mm: a bag keeps so far off the stitching line beyond its own seam (ours)."""


@dataclass(frozen=True)
class EdgePocket:
    """A pocket at an edge: its `mouth` from its upper end down as it lies on the piece, `low` what the bag runs on
    along the piece's own edge below it, `round` its free line back up, `top` what closes the ring above.

    A slant pocket has the `corner` beyond its mouth: along the upper edge to the corner, and down beside it.
    `drawn` is how far the bag had to be drawn in.
    """

    mouth: Path
    low: Path
    round: Path
    top: Path
    corner: tuple[Path, ...] = ()
    drawn: Shares = WHOLE

    @property
    def deep(self) -> float:
        """How far the bag hangs below the lower end of its mouth, mm."""
        return self.mouth.end.imag - self.round.bounds[1]

    @property
    def bag(self) -> Path:
        """The bag as it lies behind the piece."""
        return Path.joined([self.mouth, self.low, self.round, self.top])

    @property
    def whole(self) -> Path:
        """The bag with the corner beyond the mouth, where there is one."""
        return Path.joined([*(self.corner or (self.mouth,)), self.low, self.round, self.top])


def in_seam(piece: Piece, edge: str, middle: float, width: float, height: float) -> EdgePocket:
    """Return a pocket in a seam, its mouth `width` mm long about `middle` mm along the edge, its bag `height` deep
    below the mouth; raises `DraftError` where it finds no room."""
    path = piece[edge].path
    way = path.end - path.start
    if min(middle, path.length - middle) < width / 2 + MOUTH_ENDS or abs(way.imag) < abs(way.real):
        raise DraftError(
            f"the mouth of the pocket finds no room along the {name_in_words(f'{piece.name}.{edge}')}",
            value=told(width),
            turn="make it shorter, move it along the edge, or name an upright seam",
        )
    return _fitting(piece, lambda drawn: seam_pocket(piece, edge, middle, width, height, drawn), width)


def seam_pocket(piece: Piece, edge: str, middle: float, width: float, height: float, drawn: Shares) -> EdgePocket:
    """Return a pocket in a seam with its bag drawn in so far, wherever that lies."""
    path = piece[edge].path
    rises = path.end.imag > path.start.imag
    down = path.reversed() if rises else path
    at = path.length - middle if rises else middle
    top, bottom = at - width / 2, at + width / 2
    first, last = max(0.0, top - PAST), min(path.length, bottom + PAST)
    mouth, low, above = down.part(top, bottom), down.part(bottom, last), down.part(first, top)
    in_ = (-1.0 if rises else 1.0) * BAG_WIDE * drawn[0]
    round_ = _round(low, above.start, in_, mouth.end.imag - height * drawn[1], complex(-in_, 0))
    return EdgePocket(mouth=mouth, low=low, round=round_, top=above, drawn=drawn)


def marked_on_partner(
    partner: Piece, edge: str, middle: float, width: float, height: float, drawn: Shares
) -> EdgePocket:
    """Return a seam pocket as it is marked on the partner of its seam: no wider than the partner has room for.

    The bags lie behind the piece itself, so a narrow partner draws in the mark alone, never the bag.
    """
    tries = _largest_first([one for one in (*SHARES, *NARROW) if one <= drawn[0]], drawn[1])
    return _fitting(partner, lambda one: seam_pocket(partner, edge, middle, width, height, one), width, tries)


def slant(piece: Piece, edge: str, beside: str, width: float, height: float) -> EdgePocket:
    """Return a slant pocket from `width` mm along an upper edge to `height` mm down the edge beside it.

    Raises `DraftError` where the two are too short.
    """
    upper, side = piece[edge].path, piece[beside].path
    after = piece.index(beside) == (piece.index(edge) + 1) % len(piece.edges)
    out, down = (upper.reversed(), side) if after else (upper, side.reversed())  # away from the corner
    for path, much, past, named in ((out, width, FROM_EDGE, edge), (down, height, PAST, beside)):
        if much + past > path.length:
            raise DraftError(
                f"the {name_in_words(f'{piece.name}.{named}')} is too short for the mouth of the pocket",
                value=told(much),
                reach=f"up to {told(max(path.length - past, 0.0), 'most')}",
                turn="make the pocket smaller, or name another edge",
            )
    reach = min(width + INTO, out.length - FROM_EDGE / 2)
    mouth = line(out.at(width), down.at(height))
    low, top = down.part(height, height + PAST), out.part(width, reach).reversed()
    in_ = BAG_WIDE if (mouth.start - out.start).real > 0 else -BAG_WIDE  # the side may slope in under a belly

    def pocket(drawn: Shares) -> EdgePocket:
        round_ = _round(low, top.start, in_ * drawn[0], mouth.end.imag - BAG_DEEP * drawn[1], 1j)
        corner = out.part(0.0, width).reversed(), down.part(0.0, height)
        return EdgePocket(mouth=mouth, low=low, round=round_, top=top, corner=corner, drawn=drawn)

    return _fitting(piece, pocket, width)


def _round(along: Path, high: complex, in_: float, deep: float, arrive: complex) -> Path:
    """Return the bag's line from the lower end of what it has `along` its seam round to `high`, `in_` mm wide (+
    to the right). It leaves the seam inwards, also where that slopes in under a belly."""
    way, low = complex(in_ / abs(in_), 0), along.end
    under = complex(low.real + 0.55 * in_, deep)
    far = complex(low.real + in_, min(deep + 0.75 * abs(in_), (deep + high.imag) / 2))
    leave = 0.45 * way + along.arrive / abs(along.arrive)
    return Path((smooth(low, under, leave, way), smooth(under, far, way, 1j), smooth(far, high, 1j, arrive)))


def _largest_first(across: Sequence[float], deepest: float) -> list[Shares]:
    """Return how far bags may be drawn in, the largest first; of two as large the wider, for a hand."""
    found = [(wide, deep) for wide in across for deep in SHARES if deep <= deepest]
    return sorted(found, key=lambda one: (-one[0] * one[1], -one[0]))


def _fitting(
    piece: Piece, drawn: Callable[[Shares], EdgePocket], width: float, tries: Sequence[Shares] = ()
) -> EdgePocket:
    """Return the largest of these bags that lies inside its piece; raises `DraftError` where none does."""
    for one in tries or _largest_first(SHARES, 1.0):
        pocket = drawn(one)
        if is_simple(pocket.bag) and _lies_inside(piece, pocket):
            return pocket
    raise DraftError(
        f"the bag of the pocket finds no room on the {name_in_words(piece.name)}",
        value=told(width),
        turn="make the mouth shorter, or move it",
    )


def _lies_inside(piece: Piece, pocket: EdgePocket) -> bool:
    """Say whether a bag stays on its piece: its round line `FROM_EDGE` out, closed along its own seam."""
    points = pocket.round.evenly(40)
    middle = sum(points) / len(points)
    grown = [p + FROM_EDGE * (p - middle) / abs(p - middle) for p in points[7:-7]]
    free = line(points[0], *grown, points[-1])
    return outside(Path.joined([free, pocket.top, pocket.mouth, pocket.low]), piece.outline) <= 1.0
