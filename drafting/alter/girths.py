"""What a piece that was opened adds to the girths across it."""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.draft import Girth
from drafting.draft.piece import Piece


def fuller_girth(girth: Girth, old: Piece, new: Piece) -> Girth:
    """Return the girth with what the piece gained at its level, asked for as it was."""
    gained = sum(b.length - a.length for a, b in zip(old.levels, new.levels, strict=True) if a.name == girth.level)
    times = 2.0 if old.pair or old.fold_edge is not None else 1.0
    gained *= times / 2 if girth.limb and old.pair else times
    return replace(girth, asked_ease=girth.asked_ease + gained, settled_ease=girth.settled_ease + gained)
