"""Tucks as they are worn: stitched down all their length, so that what they take up is no cloth to spread."""

from __future__ import annotations

from dataclasses import replace

from drafting.costume.file import CostumeFile
from drafting.costume.garment import MadeGarment
from drafting.costume.make import chosen_for, made_garment
from drafting.ground.errors import Fault
from drafting.reading.style import PleatWish, StyleWish


def tucks_sewn(costume: CostumeFile, garment: MadeGarment) -> MadeGarment:
    """Return the garment drafted as its tucks leave it; as it is, where a later step is of what a tuck made.

    The cloth that lies double in a tuck weighs nothing then, and does not stiffen.
    """
    asked = next((one for one in costume.garments if one.name == garment.name), None)
    if asked is None or not any(map(_is_tuck, asked.style)):
        return garment
    flat = tuple(wish for wish in asked.style if not _is_tuck(wish))
    faults: list[Fault] = []
    chosen = chosen_for(costume, asked, faults)
    plain = made_garment(costume, replace(asked, style=flat), chosen, faults) if chosen else None
    return replace(garment, draft=plain.draft) if plain else garment


def _is_tuck(wish: StyleWish) -> bool:
    return isinstance(wish, PleatWish) and wish.kind == "tuck"
