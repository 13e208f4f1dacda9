"""Short ways for the trouser tests: bodies, cloths, and a draft with its notches. Figures invented."""

from __future__ import annotations

from typing import Any

from drafting.blocks.trouser import Choices, trouser
from drafting.body import Body, wearer
from drafting.checks import check_draft
from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, Piece
from drafting.draft.walk import notched
from drafting.fabric import Fabric

KNIT = Fabric(
    title="knit of 50 %, invented",
    weave="knit",
    stretch_across=0.50,
    stretch_along=0.25,
    recovery=0.95,
    thickness=0.8,
)

LEGGINGS = {"stretch_share": 0.4, "waist_finish": "casing", "leg": "tapered"}

STYLES: dict[str, tuple[dict[str, Any], Fabric | None]] = {
    "woven straight": ({}, None),
    "woven tapered": ({"leg": "tapered"}, None),
    "woven flared": ({"leg": "flared"}, None),
    "woven casing": ({"waist_finish": "casing"}, None),
    "stretch tapered": (LEGGINGS, KNIT),
    "stretch flared": ({**LEGGINGS, "leg": "flared", "hem_width": 760.0}, KNIT),
}

LEGS = {
    "height": 1750.0,
    "bust_girth": 1000.0,
    "waist_girth": 850.0,
    "hip_girth": 1000.0,
    "outside_leg_length": 1025.0,
    "waist_to_hip": 160.0,
    "inside_leg_length": 810.0,
    "thigh_girth": 610.0,
    "knee_girth": 375.0,
    "calf_girth": 385.0,
    "ankle_girth": 225.0,
    "heel_girth": 330.0,
    "knee_height": 465.0,
    "total_crotch_length": 625.0,
    "back_crotch_length": 355.0,
}
"""A body worked by other code of ours, its height and bust invented."""


def legs(**changes: float) -> Body:
    """Return the worked body with some measures changed (mm)."""
    return wearer({**LEGS, **changes}, waist_level="navel")


def draft(body: Body, fabric: Fabric | None = None, **choices: Any) -> Draft:
    """Return a trouser with its notches marked."""
    return notched(trouser(body, fabric, Choices(**choices)))


def errors(body: Body, found: Draft) -> list[str]:
    """Return what the checks call an error."""
    return [f.message for f in check_draft(found, body) if f.level == "error"]


def part(piece: Piece, *words: str) -> list[Edge]:
    """Return the edges of a piece whose names start with one of `words`, dart legs left out."""
    return [e for e in piece.edges if e.name.split("_")[0] in words and not e.name.endswith(("_in", "_out"))]


def length(piece: Piece, *words: str) -> float:
    """Return the length of those edges together, mm."""
    return sum(e.length for e in part(piece, *words))


def width(piece: Piece, level: str) -> float:
    """Return the width of a piece at a level, mm."""
    return next(v.length for v in piece.levels if v.name == level)
