"""Where front and back waist meet at the side, the one that notes have bent to and fro takes of the other's turn.

The two corners at the side make a straight together. How that is shared between them is free, and a cutter shares
it so that both waists bend one way, their darts closed.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from drafting.checks.trouser import waist_waves
from drafting.draft.by_role import edge_as
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.altered import carried_out
from drafting.fitting.lines.places import INSIDE, at_height, height, leg_pieces
from drafting.fitting.lines.redrawn import with_followers
from drafting.fitting.lines.shift import Reshaped, Shift, reshaped
from drafting.fitting.lines.true import corners_that_meet
from drafting.ground.errors import DraftError
from drafting.ground.frozen import freeze

STEP, STEPS = 0.5, 10
"""degrees: the turn at the side is shared otherwise by so much at a time, at most so often (ours)."""

RISES = (1.0, 2.0, 3.0, 4.5, 6.0, 8.0)
"""mm: so far the waist is moved at the side, the least that helps (ours)."""

WHY = "the waist runs on past the side seam in one line"

MeetingCorners = tuple[EdgeRef, EdgeRef]
"""Two corners, each by the edge that starts there."""

AT_SIDE = {EdgeRole.WAIST, EdgeRole.SIDE}


@dataclass(frozen=True)
class SidesFollowed:
    """A draft whose trouser waists run on past the side seams, and by how much (mm) each side went up for it."""

    draft: Draft
    risen: Mapping[EdgeRef, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        freeze(self, "risen")


def sides_following(before: Draft, draft: Draft) -> SidesFollowed:
    """Return trousers whose waists, where notes bent them to and fro, bend one way; as they are where none does.

    `before` is the draft as the notes found it: a waist that was an S then is none of theirs.

    The turn at the side is shared otherwise; where that is not enough the side goes up or down a little, too: what
    was taken at the centre runs out beyond the side seam.
    """
    risen = dict[EdgeRef, float]()
    for corners in _sides(draft):
        if any(_waved(before, draft[name]) for name, _ in corners):
            draft, rise = next(_unwaved(draft, corners), (draft, 0.0))
            risen |= {corners[0]: rise} if rise else {}
    return SidesFollowed(draft, risen)


def _unwaved(draft: Draft, corners: MeetingCorners) -> Iterator[tuple[Draft, float]]:
    """Yield the draft with neither waist an S, and by how much its side went up, the least first."""
    for rise in (0.0, *(sign * mm for mm in RISES for sign in (-1.0, 1.0))):
        try:
            moved = _raised(draft, corners, rise) if rise else draft
        except DraftError:
            continue
        yield from ((found, rise) for found in _shared(moved, corners))


def _raised(draft: Draft, corners: MeetingCorners, rise: float) -> Draft:
    """Return the draft with the waist at the side higher by `rise` mm, along each side seam; the hip stays."""
    hip = height(leg_pieces(draft), LevelKind.HIP)
    return carried_out(draft, [_risen(draft[name], corner, rise, hip) for name, corner in corners], WHY).draft


def _risen(piece: Piece, corner: str, rise: float, hip: float | None) -> Shift:
    at = piece.index(corner)
    before, starting = piece.edges[at - 1], piece.edges[at]
    side = starting if starting.role is EdgeRole.SIDE else before
    up = -side.path.leave if side is starting else side.path.arrive
    place = None if hip is None else at_height(side.path, hip)
    inside = place is not None and INSIDE < place < side.length - INSIDE
    knots = {side.name: (Knot(place, 0j),)} if inside and place is not None else {}
    return Shift(piece.name, {corner: up * rise}, knots)


def _sides(draft: Draft) -> Iterator[MeetingCorners]:
    """Yield the two corners, by the edge that starts there, at which waists of trouser pieces meet."""
    for seam in draft.seams:
        for corners in corners_that_meet(draft, seam):
            if len(corners) == 2 and all(_is_side(draft, ref) for ref in corners):
                yield corners[0], corners[1]


def _is_side(draft: Draft, ref: EdgeRef) -> bool:
    piece = draft[ref[0]]
    at = piece.index(ref[1])
    roles = {piece.edges[at - 1].role, piece.edges[at].role}
    return roles == AT_SIDE and edge_as(piece, EdgeRole.CROTCH) is not None


def _waved(before: Draft, piece: Piece) -> bool:
    """Return whether a waist is an S now that was none."""
    return waist_waves(piece) > 0 and not (piece.name in before and waist_waves(before[piece.name]))


def _shared(draft: Draft, corners: MeetingCorners) -> Iterator[Draft]:
    """Yield the draft with the turn at the side shared so that neither waist is an S, the least change first."""
    for number in range(STEPS + 1):
        for opened in (number * STEP, -number * STEP)[: 2 if number else 1]:
            both = [_opened(draft[ref[0]], ref[1], by) for ref, by in zip(corners, (opened, -opened), strict=True)]
            if not any(waist_waves(one.after) for one in both):
                yield with_followers(draft, {one.before.name: one for one in both}) if number else draft


def _opened(piece: Piece, corner: str, degrees: float) -> Reshaped:
    """Return the piece with the corner where an edge starts opened by so much, its waist turned."""
    at = piece.index(corner)
    into, out = piece.edges[at - 1], piece.edges[at]
    by = math.radians(degrees)
    turn = ((into.name, "end"), by) if into.role is EdgeRole.WAIST else ((out.name, "start"), -by)
    return reshaped(piece, (Shift(piece.name, turns=dict([turn])),))
