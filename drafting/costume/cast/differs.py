"""The costume on one wearer of a cast: what `make --wearer` would read, with what differs for her."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from drafting.blocks import Block
from drafting.costume.cast.model import Cast, CastWearer
from drafting.costume.choices import block_named, choose, garment_choices, sewn_so
from drafting.costume.file import CostumeFile, Garment, on_papers, what_is_read
from drafting.ground.errors import Fault, InputError
from drafting.ground.names import clean_text
from drafting.ground.nearest import meant
from drafting.ground.scale import body_scale
from drafting.ground.units import SHOWN
from drafting.reading.given import Given, Origin

LET_OUT = "let_out"


def costume_for(cast: Cast, wearer: CastWearer) -> CostumeFile:
    """Return the costume on a wearer who could be read; raises `InputError` with what is wrong.

    Lengths of the cast file's choices that say no unit are in the cast file's own.
    """
    if wearer.body is None:
        raise InputError(wearer.faults)
    costume = on_papers(what_is_read(cast.costume, wearer.source, wearer.body).costume(), cast.papers)
    garments = (_changed(cast, wearer, garment) for garment in costume.garments)
    return replace(costume, garments=tuple(garments))


def _changed(cast: Cast, wearer: CastWearer, garment: Garment) -> Garment:
    own = _own_choices(cast, wearer, garment, block_named(garment.block))
    return replace(garment, choices={**garment.choices, **own}) if own else garment


def _own_choices(cast: Cast, wearer: CastWearer, garment: Garment, block: Block) -> dict[str, Given]:
    """Return what differs for one garment, by the names of its choices, every length with its unit."""
    own: dict[str, Given] = dict(wearer.changes.choices.get(garment.name, {}))
    if wearer.changes.let_out is not None:
        own.setdefault(LET_OUT, wearer.changes.let_out)
    lengths = {choice.name for choice in garment_choices(block) if choice.unit == "mm"}
    return {name: _with_unit(given, cast.unit) if name in lengths else given for name, given in own.items()}


def _with_unit(given: Given, unit: str | None) -> Given:
    value = given.value
    if unit and isinstance(value, (int, float)) and not isinstance(value, bool):
        return replace(given, value=f"{value} {unit}")
    return given


def wrong_choices(cast: Cast, wearer: CastWearer, costume: CostumeFile) -> Iterator[Fault]:
    """Yield what is wrong with the choices that differ for a wearer, each with its line of the cast file."""
    head = f"wearer.{clean_text(wearer.name, SHOWN)}"
    names = [garment.name for garment in costume.garments]
    for name in wearer.changes.choices:
        if name not in names:
            what = f"{clean_text(name, SHOWN)} is no garment of the costume"
            yield Fault(what, meant(name, names), f"{head}.choices", cast.path, wearer.changes.line)
    for garment in costume.garments:
        block = block_named(garment.block)
        own = _own_choices(cast, wearer, garment, block)
        if own:
            yield from _refused(cast, wearer, costume, garment, own)


def _refused(
    cast: Cast, wearer: CastWearer, costume: CostumeFile, garment: Garment, own: Mapping[str, Given]
) -> tuple[Fault, ...]:
    body = wearer.body or costume.wearer
    origin = Origin(cast.path, cast.unit, f"wearer.{clean_text(wearer.name, SHOWN)}.choices.{garment.name}")
    sewn = sewn_so(body, costume.fabrics.get(garment.fabric))
    try:
        choose(block_named(garment.block), own, body_scale(body), origin, sewn)
    except InputError as error:
        return error.faults
    return ()
