"""The cloth as numbers: what its strips said, its layers, and what stiffens it."""

from drafting.worn.cloth.layers import Bond, Layer, PlyRange, Stiffened, ply_of, ply_range, stiffened
from drafting.worn.cloth.treatments import Treatment

__all__ = ["Bond", "Layer", "PlyRange", "Stiffened", "Treatment", "ply_of", "ply_range", "stiffened"]
