"""Which estimated measures the lines of each piece lean on: what its label warns of."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from drafting.body import Body
from drafting.body.body import SIDES, Side
from drafting.body.sides import differing_measures, one_side
from drafting.costume.choices import block_named
from drafting.costume.file import CostumeFile
from drafting.costume.garment import drafted
from drafting.costume.make import Made, chosen_for
from drafting.costume.watched import watched
from drafting.draft.draft import Draft
from drafting.draft.named import handed_name
from drafting.draft.piece import Piece
from drafting.ground.errors import DraftError
from drafting.ground.frozen import FrozenDict
from drafting.ground.remembered import remembered

MOVED = 5.0
"""mm by which each estimate is moved, up or else down (ours: far less than any may be off)."""

SEEN = 0.5
"""mm that an edge of a piece which leans on it then grows or shrinks at least: a tenth (ours)."""


Leans = dict[str, list[str]]


def leaning(made: Made, garment: str) -> Mapping[str, tuple[str, ...]]:
    """Return by piece of a garment the estimated measures that move one of its edges.

    Each estimate that a draft reads is moved alone and the garment drafted again; one that cannot be
    drafted either way is taken for one that every piece leans on. Where a wearer's sides differ, each
    hand is drafted for itself. What is drawn of no measure, as a shape sewn on, leans on none. Empty
    where the garment cannot be drafted.
    """
    return _leaning(made.costume, garment, tuple(piece.name for piece in made[garment].draft.pieces))


@remembered(16)
def _leaning(costume: CostumeFile, garment: str, pieces: tuple[str, ...]) -> Mapping[str, tuple[str, ...]]:
    body = costume.wearer
    asked = next(one for one in costume.garments if one.name == garment)
    chosen = chosen_for(costume, asked, [])
    if chosen is None:
        return FrozenDict({})
    fabric, block = costume.fabrics.get(asked.fabric), block_named(asked.block)
    uneven = bool(differing_measures(body))
    found: Leans = {}
    try:
        for side in SIDES if uneven else SIDES[:1]:
            hand = _only(body, side) if uneven else body
            for piece, names in _leans(hand, lambda body: drafted(body, fabric, block, chosen)).items():
                for name in (piece, handed_name(piece, side)) if uneven else (piece,):
                    found[name] = [*dict.fromkeys([*found.get(name, ()), *names])]
    except DraftError:
        return FrozenDict({})
    return FrozenDict({piece: tuple(found.get(piece, ())) for piece in pieces})


def _only(body: Body, side: Side) -> Body:
    """Return the body with both its sides as this one."""
    one = one_side(body, side)
    same = {name: replace(one.measures[name], left=None, right=None) for name in differing_measures(body)}
    return replace(one, measures={**one.measures, **same})


def _leans(body: Body, draft: Callable[[Body], Draft]) -> Leans:
    """Return by piece the estimates that move it; raises `DraftError` where nothing can be drafted."""
    read: set[str] = set()
    usual = draft(watched(body, read))
    found: Leans = {piece.name: [] for piece in usual.pieces}
    for name in (name for name in body.measures if name in read and body.measures[name].source == "estimated"):
        other = _moved(body, name, draft)
        for piece in found if other is None else _changed(usual, other):
            found[piece].append(name)
    return found


def _moved(body: Body, name: str, draft: Callable[[Body], Draft]) -> Draft | None:
    for by in (MOVED, -MOVED):
        try:
            return draft(_with(body, name, by))
        except DraftError:
            continue
    return None


def _with(body: Body, name: str, by: float) -> Body:
    measure = body.measures[name]
    return replace(body, measures={**body.measures, name: replace(measure, mm=measure.mm + by)})


def _changed(usual: Draft, other: Draft) -> list[str]:
    """Return the pieces that have another edge, or one of another length."""
    lengths = {piece.name: _lengths(piece) for piece in other.pieces}
    return [piece.name for piece in usual.pieces if _apart(_lengths(piece), lengths.get(piece.name, {})) > SEEN]


def _lengths(piece: Piece) -> dict[str, float]:
    return {edge.name: edge.length for edge in piece.edges}


def _apart(a: Mapping[str, float], b: Mapping[str, float]) -> float:
    """Return how far two lists of lengths are apart; without end where they name other edges."""
    return max((abs(a[name] - b[name]) for name in a), default=0.0) if a.keys() == b.keys() else float("inf")
