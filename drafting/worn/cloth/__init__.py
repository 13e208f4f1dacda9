"""The cloth as numbers: what its strips said, its layers, and what stiffens it."""

from drafting.worn.cloth.layers import Bond, ClothLayer, PlyRange, Stiffened, ply_of, ply_range, stiffened
from drafting.worn.cloth.treatments import Treatment

__all__ = ["Bond", "ClothLayer", "PlyRange", "Stiffened", "Treatment", "ply_of", "ply_range", "stiffened"]
