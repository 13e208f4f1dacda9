"""What each seam of a garment is, read from its edges and pieces.

dart        both edges are legs of one dart
set in      a sleeve's cap meets an armhole
limb        closes a sleeve into a tube
unit        inside a small thing made up flat: cuff, band, collar, stand
attach      joins such a thing to what it belongs to
facing      a facing to its edge
flare       between panels that hang on the bias
body        every other seam
"""

from __future__ import annotations

from typing import Literal

from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import EdgeKind, Piece
from drafting.making.one_hand import stem
from drafting.making.settings.lengthening import on_bias

SeamKind = Literal["dart", "fly", "set in", "limb", "unit", "attach", "facing", "flare", "body"]

UNITS = ("collar-stand", "collar", "under-collar", "top-collar", "cuff", "waistband", "casing")
"""Pieces that are made up by themselves before they are joined on."""


def is_sleeve(piece: Piece) -> bool:
    """Return whether a piece is a sleeve: it has a cap."""
    return any("cap" in edge.name.split("_") for edge in piece.edges)


def is_facing(name: str) -> bool:
    return "facing" in stem(name)


def is_unit(name: str) -> bool:
    return stem(name) in UNITS


def kind_of(draft: Draft, seam: Seam) -> SeamKind:
    """Return what a seam is."""
    names = {piece for piece, _ in (*seam.a, *seam.b)}
    if all(draft.edge(ref).kind is EdgeKind.DART for ref in (*seam.a, *seam.b)):
        return "dart"
    units = {name for name in names if is_unit(name)}
    if any(stem(name).startswith("fly-") for name in names):
        return "attach" if units else "fly"
    if units:
        inside = units == names or all(is_facing(name) for name in names - units)
        return "unit" if inside else "attach"
    if any(is_facing(name) for name in names):
        return "facing"
    sleeves = {name for name in names if is_sleeve(draft[name])}
    if sleeves:
        return "limb" if sleeves == names else "set in"
    if on_bias(draft, seam):
        return "flare"
    return "body"


def unit_of(seam: Seam) -> str:
    """Return which small thing a seam belongs to: `collar`, `cuff`, `waistband` ..."""
    units = [stem(piece) for piece, _ in (*seam.a, *seam.b) if is_unit(piece)]
    return "collar" if any("collar" in unit for unit in units) else units[0]
