"""The front longer or shorter above the bust, against the back: what a coat's balance is altered by."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.altered import Altered, carried_out
from drafting.fitting.lines.places import BEHIND, INSIDE, at_height, body_pieces, height, middle, needed
from drafting.fitting.lines.shift import Shift


def front_balance(draft: Draft, raised: float) -> Altered:
    """Return a body whose front is longer by `raised` mm from the bust to the shoulder, against its back.

    Neck and shoulder of the front go up as they are; the lower half of the armhole stays, and the side.
    """
    return carried_out(
        draft, list(_raised(draft, raised)), f"front {'lengthened' if raised > 0 else 'shortened'} above"
    )


def _raised(draft: Draft, raised: float) -> Iterator[Shift]:
    body = [piece for piece in body_pieces(draft) if piece.role not in BEHIND]
    bust = needed(height(body_pieces(draft), LevelKind.BUST), "bust")
    for piece in body:
        places = [p for e in piece.edges if e.role in NECKLINE for p in (e.path.start, e.path.end)]
        if not places:
            continue
        moved = [e.name for e in piece.edges if any(abs(e.path.start - p) < INSIDE for p in places)]
        corners = dict.fromkeys(moved, 1j * raised)
        knots: dict[str, tuple[Knot, ...]] = {}
        for edge in piece.edges:
            at = at_height(edge.path, bust) if edge.role not in {EdgeRole.ARMHOLE, EdgeRole.SIDE} else None
            if edge.role is EdgeRole.ARMHOLE:
                at = next(iter(middle(edge)), None)
            if at is not None and INSIDE < at < edge.length - INSIDE:
                knots[edge.name] = (Knot(at, 0j),)

        def inside(place: complex) -> complex:
            return 1j * raised * min(1.0, max(0.0, (place.imag - bust) / -bust))

        yield Shift(piece.name, corners, knots, inside=inside)


NECKLINE = frozenset(
    {EdgeRole.NECK, EdgeRole.SHOULDER, EdgeRole.STAND_NECK, EdgeRole.GORGE, EdgeRole.LAPEL, EdgeRole.FACING_NECK}
)
"""Edges of a front that go up as they are where it is made longer above the bust."""
