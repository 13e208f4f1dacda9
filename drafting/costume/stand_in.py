"""Invented bodies and a cloth, for drafts that are made only to know the names of their pieces."""

from __future__ import annotations

from drafting.body import Body, wearer
from drafting.fabric import Fabric

STRETCHY = Fabric(title="stand-in", weave="knit", usable_width=1500.0, stretch_along=0.5, stretch_across=0.5)
"""A cloth that every block can be cut from."""


def stand_ins() -> tuple[Body, Body]:
    """Return an adult, and one whose sides differ: her pieces are named by hand."""
    even = {"height": 1700.0, "bust_girth": 940.0, "waist_girth": 780.0, "hip_girth": 1000.0}
    return wearer(even), wearer({**even, "shoulder_length": (120.0, 132.0)})
