"""Which estimated measures the lines of each piece lean on: what its label warns of."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from drafting.body import Body
from drafting.costume.choices import block_named
from drafting.costume.garment import drafted
from drafting.costume.make import Made, chosen_for
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.ground.errors import DraftError
from drafting.ground.frozen import FrozenDict
from drafting.ground.remembered import remembered

MOVED = 5.0
"""mm by which each estimate is moved, up or else down (ours: far less than any may be off)."""

SEEN = 0.5
"""mm that an edge of a piece which leans on it then grows or shrinks at least: a tenth (ours)."""


@remembered(16)
def leaning(made: Made, garment: str) -> Mapping[str, tuple[str, ...]]:
    """Return by piece of a garment the estimated measures that move one of its edges.

    Each estimate is moved alone and the garment drafted again; one that cannot be drafted either way
    is taken for one that every piece leans on.
    """
    costume, body = made.costume, made.costume.wearer
    asked = next(one for one in costume.garments if one.name == garment)
    chosen = chosen_for(costume, asked, [])
    if chosen is None:
        return FrozenDict({})
    fabric, block = costume.fabrics.get(asked.fabric), block_named(asked.block)
    usual = drafted(body, fabric, block, chosen)
    found: dict[str, list[str]] = {piece.name: [] for piece in usual.pieces}

    def moved(name: str) -> Draft | None:
        for by in (MOVED, -MOVED):
            try:
                return drafted(_with(body, name, by), fabric, block, chosen)
            except DraftError:
                continue
        return None

    for name in (name for name, measure in body.measures.items() if measure.source == "estimated"):
        other = moved(name)
        for piece in found if other is None else _changed(usual, other):
            found[piece].append(name)
    return FrozenDict({piece: tuple(names) for piece, names in found.items()})


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
