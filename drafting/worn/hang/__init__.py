"""What hangs or stands by itself: a free edge, a flare, a puff between two seams, the folds of a hem."""

from drafting.worn.hang.flare import FoldCount, FreeFlare, fold_count, free_flare
from drafting.worn.hang.puff import Puff, puff
from drafting.worn.hang.strip import FreeEdge, Standing, bending_length_of, free_edge, upright_limit

__all__ = [
    "FoldCount",
    "FreeEdge",
    "FreeFlare",
    "Puff",
    "Standing",
    "bending_length_of",
    "fold_count",
    "free_edge",
    "free_flare",
    "puff",
    "upright_limit",
]
