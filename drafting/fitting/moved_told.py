"""What a note moved, in words: the girths, or else the edges that moved most."""

from __future__ import annotations

from collections.abc import Iterable

from drafting.fitting.note import Moved
from drafting.ground.lengths import told

TOLD_FROM = 2.0
"""mm: a length that changed by less is not told, as in eighths of an inch it may read as it did (ours)."""

TOLD_EDGES = 3
"""Edges that a sentence tells of a note, those that moved most (ours); the record has them all."""


def girths_moved(moved: Iterable[Moved]) -> list[str]:
    """Return the girths that were moved, from and to."""
    return [_from_to(one.edge.replace("_", " "), one) for one in moved if not one.piece and _is_told(one)]


def edges_moved(edges: Iterable[Moved]) -> list[str]:
    """Return the edges that moved most, from and to; of both hands' the one that moved more."""
    most = sorted(edges, key=_far)
    named = {f"{one.piece.replace('-', ' ')} {one.edge.replace('_', ' ')}": one for one in most}
    farthest = sorted(named.items(), key=lambda pair: -_far(pair[1]))[:TOLD_EDGES]
    return [_from_to(name, one) for name, one in farthest if _is_told(one)]


def _far(one: Moved) -> float:
    return abs(one.after - one.before)


def _is_told(one: Moved) -> bool:
    return _far(one) > TOLD_FROM


def _from_to(name: str, one: Moved) -> str:
    return f"{name} {told(one.before)} to {told(one.after)}"
