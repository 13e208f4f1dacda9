"""All that is wrong with a costume, in one refusal: its files, its choices, the names in its wishes.

Pieces and edges are known only once a garment is drafted. Where its wearer, its cloth or a choice is
at fault, it is drafted on stand-ins, and a name is refused only when no draft has it: not on an even
body or an uneven one, not with any value of the choices at fault.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice, product
from pathlib import Path
from typing import Any

from drafting.blocks import Block
from drafting.body import Body
from drafting.costume.choices import Chosen, block_named, choose, garment_choices
from drafting.costume.file import CostumeFile, Garment, Reading, what_is_read
from drafting.costume.garment import wished
from drafting.costume.make import chosen_for, made_garment
from drafting.costume.proportion import in_proportion
from drafting.costume.stand_in import STRETCHY, stand_ins
from drafting.costume.wishes import Misfit
from drafting.draft.draft import Draft
from drafting.draft.named import called
from drafting.fabric import Fabric
from drafting.ground.choices import Choice
from drafting.ground.errors import DraftError, Fault, InputError, UnknownNameError
from drafting.ground.nearest import nearest
from drafting.ground.scale import body_scale
from drafting.printing.wishes import unprinted
from drafting.reading.given import Given, Origin

MOST_DRAFTS = 24
"""Drafts of one garment tried before a name is taken for unknown (ours: a fraction of a second)."""

MOST_COUNTED = 6
"""Values tried of a count at fault (ours)."""


def read_whole_costume(path: Path | str, other: Path | str | None = None, body: Body | None = None) -> CostumeFile:
    """Return the costume in `path`, on the body file `other` if given instead of its own (`body`: read already).

    Raises `InputError` with all that is wrong with its files, its choices and the pieces and edges
    it names, each once. What then cannot be drafted on this body is said by `costume.make`.
    """
    reading = what_is_read(path, other, body)
    costume = reading.on(reading.wearer or stand_ins()[0])
    faults = list(reading.faults)
    known = [garment for garment in costume.garments if garment.block]
    chosen = {garment.name: chosen_for(costume, garment, faults) for garment in known}
    if not faults:
        return reading.costume()
    raise InputError([*faults, *_unknown_names(_Case(reading, costume, tuple(known)), chosen)])


@dataclass(frozen=True)
class _Case:
    """A costume that is refused: what was read, on its wearer or a stand-in, its garments with a block."""

    reading: Reading
    costume: CostumeFile
    garments: tuple[Garment, ...]

    def sound(self, garment: Garment) -> bool:
        """Return whether the body and the cloth of a garment are as the maker wants them."""
        return self.reading.wearer is not None and garment.fabric in self.costume.fabrics


def _unknown_names(case: _Case, chosen: dict[str, Chosen | None]) -> list[Fault]:
    """Return a fault for each name that no draft has, and what sound garments cannot be."""
    faults: list[Fault] = []
    first: dict[str, list[str]] = {}
    any_of: dict[str, list[str]] = {}
    for garment in case.garments:
        choices = chosen[garment.name]
        if choices and case.sound(garment):
            made = made_garment(case.costume, garment, choices, faults)
            drafts = [made.draft] if made else []
        else:
            drafts = list(_tried(case, garment, faults))
        if drafts:
            first[garment.name] = [name for piece in drafts[0].pieces for name in called(piece)]
            any_of[garment.name] = [name for draft in drafts for piece in draft.pieces for name in called(piece)]
    lost = {fault.what for fault in unprinted(case.costume.prints, any_of)}
    return [*faults, *(f for f in unprinted(case.costume.prints, first) if f.what in lost)]


def _tried(case: _Case, garment: Garment, faults: list[Fault]) -> Iterator[Draft]:
    """Yield each draft of a garment on stand-ins; a wish that fits none goes to the faults."""
    try:
        block = block_named(garment.block)
    except InputError:
        return  # told already
    lost: list[Misfit] | None = None
    for body, cloth, choices in islice(_ways(case, garment, block), MOST_DRAFTS):
        try:
            draft, misfits, _ = wished(body, cloth, block, choices, garment.wishes)
        except DraftError:
            continue
        yield draft
        unknown = [one for one in misfits if isinstance(one[1], UnknownNameError)]
        spots = {spot for spot, _ in unknown}
        lost = unknown if lost is None else [one for one in lost if one[0] in spots]
    faults += [spot.fault(error.said(case.costume.told_in)) for spot, error in lost or ()]


def _ways(case: _Case, garment: Garment, block: Block) -> Iterator[tuple[Body, Fabric | None, Chosen]]:
    """Yield the ways to draft a garment: its own body, cloth and choices where they are sound."""
    own = case.reading.wearer
    bodies = stand_ins() if own is None else (own,)
    cloth = case.costume.fabrics.get(garment.fabric)
    cloths = (None, STRETCHY) if cloth is None else (cloth,)
    for given in _choices(block, garment):
        for body, fabric in product(bodies, cloths):
            try:
                sized = in_proportion(garment_choices(block), given, body, Origin())
                yield body, fabric, choose(block, sized, body_scale(body), Origin())
            except InputError:
                continue


def _choices(block: Block, garment: Garment) -> Iterator[dict[str, Given]]:
    """Yield a garment's choices: those at fault left out, then with each value they might have had."""
    known = {choice.name: choice for choice in garment_choices(block)}
    sound = {name: given for name, given in garment.choices.items() if _fits(block, name, given)}
    faulty = [name for name in garment.choices if name not in sound]
    meant = dict.fromkeys(
        other for name in faulty for other in ((name,) if name in known else nearest(name, known))
    )
    open_ones = [known[name] for name in meant if name not in sound]
    yield sound
    for values in product(*(_values(choice) for choice in open_ones)):
        named = zip(open_ones, values, strict=True)
        yield sound | {choice.name: Given(value) for choice, value in named}


def _fits(block: Block, name: str, given: Given) -> bool:
    try:
        choose(
            block, in_proportion(garment_choices(block), {name: given}, stand_ins()[0], Origin()), 1.0, Origin()
        )
    except InputError:
        return False
    return True


def _values(choice: Choice) -> list[Any]:
    """Return values of a choice that between them may give every piece it can give."""
    if choice.unit == "word":
        return list(choice.words)
    if choice.unit == "yes/no":
        return [True, False]
    ends = [end for end in (choice.low, choice.high) if end is not None]
    if choice.unit == "count" and len(ends) == 2:
        return list(range(int(ends[0]), int(ends[1]) + 1))[:MOST_COUNTED]
    usual = [] if choice.default is None else [choice.default]
    return [f"{value} mm" if choice.unit == "mm" else value for value in (*usual, *ends)] or [0]
