"""What a cloth's file comes to: its numbers, each measured or a guess, and what such a cloth holds."""

from __future__ import annotations

from pathlib import Path

from drafting.fabric import read_fabric
from drafting.ground.lengths import in_unit
from drafting.worn.cloth import ply_of, ply_said
from drafting.worn.hang import what_it_holds


def cloth_numbers(file: Path | str, unit: str | None = None) -> tuple[str, ...]:
    """Return the numbers that a cloth is taken for, a sentence each; raises `InputError`."""
    return _in(unit, ply_said(ply_of(read_fabric(file))))


def cloth_holds(file: Path | str, unit: str | None = None) -> tuple[str, ...]:
    """Return what becomes of a free edge, a puff and a flare in this cloth, plain and stiffened."""
    return _in(unit, what_it_holds(read_fabric(file)))


def _in(unit: str | None, said: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(in_unit(sentence, unit) for sentence in said)
