"""What hangs or stands by itself: a free edge, a flare, a puff between two seams, the folds of a hem."""

from drafting.worn.hang.flare import FoldCount, FreeFlare, fold_count, free_flare
from drafting.worn.hang.puff import Puff, puff
from drafting.worn.hang.strip import (
    COLLAPSES_FROM,
    HOLDS_TO,
    UPRIGHT,
    EdgeStanding,
    FreeEdge,
    bending_length_of,
    free_edge,
    upright_limit,
)
from drafting.worn.hang.words import what_it_holds

__all__ = [
    "COLLAPSES_FROM",
    "HOLDS_TO",
    "UPRIGHT",
    "EdgeStanding",
    "FoldCount",
    "FreeEdge",
    "FreeFlare",
    "Puff",
    "bending_length_of",
    "fold_count",
    "free_edge",
    "free_flare",
    "puff",
    "upright_limit",
    "what_it_holds",
]
