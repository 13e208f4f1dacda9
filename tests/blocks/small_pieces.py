"""Shirts, bands and facings made on many bodies, and short ways to look at their marks.

Bodies: `bdims` (tests/bodies.py), drawn and far ones (tests/drawn_bodies.py). Choices are invented.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from typing import Any

import shapely

from drafting.blocks import Block, all_blocks
from drafting.body import Body
from drafting.costume.choices import choose
from drafting.costume.garment import MadeGarment, make_garment
from drafting.draft.piece import Piece, Placement
from drafting.fabric import Fabric
from drafting.geometry import Path
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin
from tests.bodies import bdims
from tests.drawn_bodies import drawn, far

Parts = Mapping[str, Mapping[str, Any]]

SHIRT: Parts = {
    "bodice": {"opening": "front"},
    "sleeve": {"cap_ease": 10.0, "elbow_bend": 0.0, "wrist_ease": 40.0, "cuff_depth": 60.0},
    "shirt-front": {},
    "cuff": {},
    "collar": {},
}
BANDED: Parts = {**SHIRT, "waistband": {}}


def garment_of(parts: Parts) -> Block:
    """Return a garment of these parts, each with the defaults that differ."""
    blocks = all_blocks()
    known = {choice.name: choice for part in parts for choice in blocks[part].choices}
    return replace(blocks["shirt"], name="parts", choices=tuple(known.values()), parts=parts)


def made(body: Body, parts: Parts = SHIRT, fabric: Fabric | None = None, **choices: Any) -> MadeGarment:
    block = garment_of(parts)
    given = {name: Given(value) for name, value in choices.items()}
    chosen = choose(block, given, body_scale(body), Origin())
    return make_garment(body, fabric, block, chosen, name="parts", role="shell")


@cache
def people() -> tuple[Body, ...]:
    """30 bodies: measured, drawn, and far from the usual."""
    return (*bdims(15), *drawn(9), *far()[::7])


@cache
def many() -> tuple[MadeGarment, ...]:
    """Shirts with a waistband on `people()`."""
    return tuple(made(body, BANDED) for body in people())


def marks(piece: Piece, what: str) -> list[Placement]:
    return [mark for mark in piece.placements if mark.what == what]


def middle(path: Path) -> complex:
    x0, y0, x1, y1 = path.bounds
    return complex(x0 + x1, y0 + y1) / 2


def ruled(path: Path) -> float:
    """Return the length of a path as a fine polyline, by shapely and not by our own rule."""
    return float(shapely.LineString([(p.real, p.imag) for p in path.flattened(1e-5)]).length)
