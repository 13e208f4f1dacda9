"""The cloth: what swatch tests gave, and the arithmetic of stretch and shrinkage."""

from drafting.fabric.cloth import (
    Fabric,
    cut_for,
    cut_girth,
    dimensional_change,
    must_reach,
    needed_stretch,
    recovery_of,
    stretch_of,
)
from drafting.fabric.handling import Handling, handling
from drafting.fabric.reader import read_fabric

__all__ = [
    "Fabric",
    "Handling",
    "cut_for",
    "cut_girth",
    "dimensional_change",
    "handling",
    "must_reach",
    "needed_stretch",
    "read_fabric",
    "recovery_of",
    "stretch_of",
]
