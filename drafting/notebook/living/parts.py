"""A garment of a costume and its choices, by name."""

from __future__ import annotations

from drafting.costume.choices import block_named, garment_choices
from drafting.costume.file import CostumeFile, Garment
from drafting.ground.choices import Choice
from drafting.ground.errors import InputError
from drafting.reading.choices import ALL_CHOICES
from drafting.reading.given import Faults, FilePlace


def garment_of(costume: CostumeFile, name: str) -> Garment:
    """Return a garment of the costume by its name."""
    for garment in costume.garments:
        if garment.name == name:
            return garment
    raise _unknown(costume, name, [g.name for g in costume.garments], "garments")


def choices_in(costume: CostumeFile, garment: str) -> dict[str, Choice]:
    """Return every choice of a garment by name: unit, range, meaning."""
    block = block_named(garment_of(costume, garment).block)
    return {c.name: c for c in garment_choices(block)}


def choice_of(costume: CostumeFile, garment: str, name: str) -> Choice:
    """Return what a choice of a garment is: unit, range, meaning."""
    known = choices_in(costume, garment)
    if name not in known:
        raise _unknown(costume, name, list(known), f"choices of {garment}")
    return known[name]


def _unknown(costume: CostumeFile, name: str, known: list[str], where: str) -> InputError:
    faults = Faults(costume.path)
    faults.unknown(FilePlace(costume.path, f"{where}: {name}"), name, known, ALL_CHOICES)
    return InputError(faults.found)
