"""What stands on the bench, as plain data: what is asked for, what was made of it. No widgets."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

from drafting.choices import Choice
from drafting.chosen import Origin, block_named, choose, garment_choices
from drafting.costume import Made, MadeGarment, make
from drafting.costume_file import CostumeFile, Garment
from drafting.errors import DraftError, InputError
from drafting.notebook.plainly import sentence
from drafting.reading.given import Faults, Given
from drafting.scale import body_scale


@dataclass(frozen=True)
class Standing:
    """One state of the bench; every change gives a new one.

    `asked` is the costume as the controls say; `made` the garment on the bench as it could last be
    drafted; `before` what stood when the choice `moving` was first touched (a whole drag is one
    change); `refusal` says why `asked` cannot be drafted, and is empty where `made` is made of it.
    """

    asked: CostumeFile
    made: Made
    before: Made | None = None
    moving: tuple[str, str] | None = None
    refusal: str = ""


def begin(costume: CostumeFile, garment: str) -> Standing:
    """Return a garment as its file has it; raises `InputError` where that cannot be drafted."""
    return Standing(costume, make(only(costume, garment)))


def only(costume: CostumeFile, garment: str) -> CostumeFile:
    """Return the costume with this garment alone."""
    return replace(costume, garments=(garment_of(costume, garment),))


def asked_for(standing: Standing, garment: str, choice: str, value: Any) -> Standing:
    """Return what stands once `choice` of `garment` is `value` (mm, degrees, a word, a yes or no).

    A garment that cannot be drafted leaves `made` as it was and fills `refusal`. Raises
    `InputError` for a garment or choice that there is not.
    """
    asked = with_choice(standing.asked, garment, choice, value)
    moving = (garment, choice)
    before = standing.before if moving == standing.moving else standing.made
    try:
        return Standing(asked, make(only(asked, garment)), before, moving)
    except DraftError as error:
        return Standing(asked, standing.made, before, moving, sentence(error))


def with_choice(costume: CostumeFile, garment: str, choice: str, value: Any) -> CostumeFile:
    """Return the costume with one choice changed; all others stay as they were written."""
    worn = garment_of(costume, garment)
    kind = choice_of(costume, garment, choice)
    new = replace(worn, choices={**worn.choices, choice: _given(kind, value)})
    return replace(costume, garments=tuple(new if g is worn else g for g in costume.garments))


def garment_of(costume: CostumeFile, name: str) -> Garment:
    """Return a garment of the costume by its name."""
    for garment in costume.garments:
        if garment.name == name:
            return garment
    raise _unknown(costume, name, [g.name for g in costume.garments], "garments")


def choice_of(costume: CostumeFile, garment: str, name: str) -> Choice:
    """Return what a choice of a garment is: unit, range, meaning."""
    known = {c.name: c for c in garment_choices(block_named(garment_of(costume, garment).block))}
    if name not in known:
        raise _unknown(costume, name, list(known), f"choices of {garment}")
    return known[name]


def values_of(made: Made, garment: str) -> dict[str, Any]:
    """Return the value in use of every choice of a garment (mm, degrees, words)."""
    return {name: value for name, (value, _) in made_garment(made, garment).choices.items()}


def usual_values(costume: CostumeFile, garment: str) -> Mapping[str, Any]:
    """Return what every choice of a garment is on this body where the maker says nothing."""
    block = block_named(garment_of(costume, garment).block)
    chosen = choose(block, {}, body_scale(costume.wearer), Origin())
    return {name: value for name, (value, _) in chosen.values.items()}


def made_garment(made: Made, name: str) -> MadeGarment:
    """Return a garment of what was made by its name."""
    return next(garment for garment in made.garments if garment.name == name)


def _given(choice: Choice, value: Any) -> Given:
    """Return a value as a costume file would give it, every digit kept and its unit beside it."""
    exact = f"{Decimal(repr(float(value))):f} mm" if choice.unit == "mm" else value
    return Given(exact)


def _unknown(costume: CostumeFile, name: str, known: list[str], where: str) -> InputError:
    faults = Faults(costume.path)
    faults.unknown(name, known, f"{where}: {name}", None)
    return InputError(faults.found)
