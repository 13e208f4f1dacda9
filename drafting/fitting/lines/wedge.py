"""Wedges from the middle to the side: a round or a hollow back, a front that is longer over a belly.

Nothing is opened at the side seam and all of it at the centre line, which stays straight: what a turned
centre line would need as a dart is left out (common practice for up to some 2 cm).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fitting.lines.altered import Altered, carried_out
from drafting.fitting.lines.lengths import clear
from drafting.fitting.lines.longer import Zone, refused, sheared
from drafting.fitting.lines.places import BEHIND, WIDE, body_pieces, height, needed
from drafting.fitting.lines.shift import Shift
from drafting.geometry import line
from drafting.ground.errors import DraftError

LONG_BELOW = 60.0
"""mm: a piece that hangs farther below the waist has its hem put back (ours)."""


NARROW = 40.0
"""mm: a piece no wider at its waist takes no wedge (ours)."""


@dataclass(frozen=True)
class CentreWedge:
    """A wedge of `more` mm at the centre, nothing at the side, opened from the height `top` to the waist.

    `centre` and `side` are the ends of the waist (x + yj, mm), before.
    """

    top: float
    centre: complex
    side: complex
    more: float

    def share(self, place: complex) -> float:
        """Return how much of the wedge a place gets."""
        part = (self.side.real - place.real) / (self.side.real - self.centre.real)
        return min(1.0, max(0.0, part))

    def waist(self, place: complex) -> float:
        """Return the height of the waist above or below a place."""
        return self.side.imag + (self.centre.imag - self.side.imag) * self.share(place)

    def drop(self, place: complex) -> complex:
        """Return by how much a place sinks."""
        part = (self.top - place.imag) / (self.top - self.waist(place))
        return -1j * self.more * self.share(place) * min(1.0, max(0.0, part))


def waist_wedge(draft: Draft, behind: bool, longer: float) -> Altered:
    """Return a body longer by `longer` mm at the centre between bust and waist, and as before at the side.

    A waist edge or a seam in the middle takes it; a hem below the waist stays where it was. Raises
    `DraftError` where there is neither.
    """
    body = body_pieces(draft)
    pieces = [p for p in body if (p.role in BEHIND) == behind and _ends_of_waist([p])]
    if not any(e.role in {EdgeRole.WAIST, EdgeRole.CENTRE_SEAM} for p in pieces for e in p.edges):
        raise DraftError(
            "a wedge from the centre to the side needs a seam at the waist or in the middle, and there is none",
            turn="cut the piece at the waist, or give it a seam at the centre",
        )
    ends = _ends_of_waist(pieces)
    seams = [
        p
        for piece in pieces
        for e in piece.edges
        if e.role in {EdgeRole.SIDE, EdgeRole.PANEL}
        for p in (e.path.start, e.path.end)
    ]
    centre, far = min(ends, key=lambda p: abs(p.real)), max(ends, key=lambda p: abs(p.real))
    side = complex(min((p.real for p in seams), key=abs, default=far.real), far.imag)
    if abs(side.real - centre.real) < NARROW:
        raise DraftError("the piece is too narrow at the waist for a wedge", turn="take it at the seams instead")
    zone = clear(pieces, needed(height(body, LevelKind.BUST), "bust"), max(centre.imag, far.imag), longer)
    refused([zone])
    wedge = CentreWedge(zone.top, centre, side, longer)
    fact = "back_waist_length" if behind else "front_waist_length"
    what = f"{'back' if behind else 'front'} waist {'lengthened' if longer > 0 else 'shortened'} at the centre"
    return carried_out(draft, [_wedged(p, wedge) for p in pieces], what, {fact: longer})


def _ends_of_waist(pieces: Sequence[Piece]) -> list[complex]:
    """Return both ends of each part of the waist level on these pieces."""
    levels = [level for p in pieces for level in p.levels if level.kind is LevelKind.WAIST]
    return [p for level in levels for path in level.paths for p in (path.start, path.end)]


def _wedged(piece: Piece, wedge: CentreWedge) -> Shift:
    low = min(edge.path.start.imag for edge in piece.edges)
    hangs = low < min(wedge.centre.imag, wedge.side.imag) - LONG_BELOW

    def drop(place: complex) -> complex:
        back = Zone(wedge.waist(place) - 1.0, low + 1.0, wedge.more * wedge.share(place)) if hangs else None
        return wedge.drop(place) + (1j * back.drop(place.imag) if back else 0j)

    bends = [line(complex(-WIDE, wedge.top), complex(WIDE, wedge.top))]
    if hangs:
        way = wedge.centre - wedge.side
        bends.append(line(wedge.centre, wedge.centre + way / abs(way) * WIDE))
        bends.append(line(wedge.centre, wedge.side))
    return sheared(piece, drop, bends)


def blades_wedge(draft: Draft, longer: float) -> Altered:
    """Return a body whose back is longer by `longer` mm over the blades at the centre, not at the armhole.

    Neck and shoulder go up; below the bust all stays.
    """
    body = body_pieces(draft)
    bust = needed(height(body, LevelKind.BUST), "bust")
    pieces = [p for p in body if p.role in BEHIND and any(e.role is EdgeRole.NECK for e in p.edges)]
    if not pieces:
        raise DraftError("there is no back up to the neck", turn="note it at an edge (`piece.edge`) instead")
    what = f"back {'rounded' if longer > 0 else 'flattened'} over the blades"
    found = Altered(draft)
    for _ in range(AGAIN):
        shifts = [_rounded(p, (_hinge(p) + _hinge(found.draft[p.name])) / 2, bust, longer) for p in pieces]
        found = carried_out(draft, shifts, what)
    return found


AGAIN = 3
"""How often a back is rounded to find where its armhole lies on the mean of before and after, as trueing moves the
shoulder's tip: so the reverse finds the same place."""


def _hinge(piece: Piece) -> float:
    """Return how far out (x, mm) a back begins to be rounded: at the end of its armhole nearer to the middle."""
    arms = [p.real for e in piece.edges if e.role is EdgeRole.ARMHOLE for p in (e.path.start, e.path.end)]
    return min(arms, key=abs)


def _rounded(piece: Piece, hinge: float, bust: float, longer: float) -> Shift:
    low, high = bust, BLADES * bust

    def share(place: complex) -> float:
        return min(1.0, max(0.0, 1.0 - place.real / hinge))

    def rise(place: complex) -> complex:
        top = high - longer / 2 * share(place)
        return 1j * longer * share(place) * min(1.0, max(0.0, (place.imag - low) / (top - low)))

    middle, side = complex(0.0, high - longer / 2), complex(hinge, high)
    bends = [line(complex(-WIDE, low), complex(WIDE, low)), line(middle, side)]
    return sheared(piece, rise, [*bends, line(middle, middle - WIDE * hinge / abs(hinge))])


BLADES = 0.55
"""Of the way from the nape to the bust: above it the back goes up as a whole (ours: half way, at the blades).

The line there is as far below this height before as it is above it afterwards, so that the reverse finds it again.
"""
