"""The cloth as numbers: what its strips said, its layers, and what stiffens it."""

from drafting.worn.cloth.layers import Bond, ClothLayer, PlyRange, Stiffened, ply_of, ply_range, stiffened
from drafting.worn.cloth.treatments import Treatment
from drafting.worn.cloth.words import ply_said

__all__ = [
    "Bond",
    "ClothLayer",
    "PlyRange",
    "Stiffened",
    "Treatment",
    "ply_of",
    "ply_range",
    "ply_said",
    "stiffened",
]
