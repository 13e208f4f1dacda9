"""A costume as it would be with other notes: before a fitting, or with one note more."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from drafting.costume.file import CostumeFile
from drafting.costume.fittings import sorted_out
from drafting.fitting.file import FittingFile


def refitted(costume: CostumeFile, held: Sequence[FittingFile]) -> CostumeFile:
    """Return the costume with these fittings in place of all it has, on the body that the tape gave.

    Raises `InputError` where a note makes a measure that nobody has.
    """
    fittings = costume.fittings
    taped = fittings.taped or costume.wearer
    body, sorted_notes = sorted_out(taped, (), held, fitted_on_her=fittings.fitted_on_her)
    return replace(costume, wearer=body, fittings=sorted_notes)
