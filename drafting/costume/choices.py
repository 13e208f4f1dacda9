"""The choices of one garment: one flat set of names over all its parts and the finish.

The same name in two parts is one value. Where a whole garment gives a part other defaults (its
`PARTS`), those stand; what a maker typed beats both.
"""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from dataclasses import dataclass, field, fields, make_dataclass, replace
from functools import lru_cache
from typing import Any

from drafting.blocks import Block, all_blocks
from drafting.body import Body
from drafting.fabric import Fabric
from drafting.finish import FinishChoices
from drafting.finish.choices import proposed
from drafting.ground.choices import Choice, choices_of
from drafting.ground.errors import Fault, InputError
from drafting.ground.frozen import freeze
from drafting.reading.choices import ChosenBy, read_choices
from drafting.reading.given import Faults, Given


@dataclass(frozen=True)
class Chosen:
    """Filled choices: `parts` by block in drafting order, `finish`, and each value's source."""

    parts: Mapping[str, Any]
    finish: FinishChoices
    values: Mapping[str, tuple[Any, ChosenBy]]

    def __post_init__(self) -> None:
        freeze(self, "parts", "values")


@dataclass(frozen=True, slots=True)
class Origin:
    """Where raw choices come from: the file, its unit of length, and what heads their names."""

    file: str = ""
    unit: str | None = "mm"
    where: str = ""

    def field(self, name: str) -> str:
        return f"{self.where}.{name}" if self.where else name


def block_named(name: str, fault_field: str = "block", file: str = "", line: int | None = None) -> Block:
    """Return a block; an `InputError` offers the nearest name."""
    known = all_blocks()
    if name in known:
        return known[name]
    near = difflib.get_close_matches(name, known, n=1, cutoff=0.5)
    right = f"did you mean {near[0]}?" if near else f"blocks are {', '.join(known)}"
    right += " (a block of your own wants --blocks DIR)"
    raise InputError([Fault(f"there is no block '{name[:40]}'", right, fault_field, file, line)])


def parts_of(block: Block) -> Mapping[str, Mapping[str, Any]]:
    """Return the blocks to draft in order, each with the defaults that differ."""
    return block.parts or {block.name: {}}


def garment_choices(block: Block) -> tuple[Choice, ...]:
    """Return every choice a garment of this block has, those of the finish last."""
    return (*block.choices, *choices_of(FinishChoices))


def choose(
    block: Block, given: Mapping[str, Given], scale: float, origin: Origin, height: float | None = None
) -> Chosen:
    """Return the choices of a garment from raw values; `scale` shrinks adult defaults.

    Whoever has the `height` (mm) of a child gets allowances to grow into (`growing_height`).

    Raises `InputError` with every fault: a name no part knows, a value out of its range.
    """
    faults = Faults(origin.file)
    known = [choice.name for choice in garment_choices(block)]
    for name, raw in given.items():
        if name not in known:
            faults.unknown(name, known, origin.field(name), raw.line)
    values: dict[str, tuple[Any, ChosenBy]] = {}
    blocks = all_blocks()
    parts = {
        part: _read(blocks[part].choices_class, defaults, given, scale, origin, values, faults)
        for part, defaults in parts_of(block).items()
    }
    finish = _read(FinishChoices, proposed(scale, height), given, 1.0, origin, values, faults)
    if faults.found:
        raise InputError(list(dict.fromkeys(faults.found)))
    return Chosen(parts, finish, values)


def _read(
    cls: type | None,
    defaults: Mapping[str, Any],
    given: Mapping[str, Given],
    scale: float,
    origin: Origin,
    values: dict[str, tuple[Any, ChosenBy]],
    faults: Faults,
) -> Any:
    """Return one part's choices; a name an earlier part has read keeps that part's value."""
    assert cls is not None
    names = [f.name for f in fields(cls)]
    own = {name: given[name] for name in names if name in given}
    try:
        chosen: Any
        chosen, sources = read_choices(
            _with_defaults(cls, tuple(defaults.items())),
            own,
            origin.unit,
            origin.file,
            scale=scale,
            where=origin.where,
        )
    except InputError as error:
        faults.found.extend(error.faults)
        return None
    shared = {name: values[name][0] for name in names if name in values}
    chosen = replace(chosen, **shared)
    values.update({n: (getattr(chosen, n), sources[n]) for n in names if n not in values})
    return chosen


@lru_cache(maxsize=256)
def _with_defaults(cls: type, other: tuple[tuple[str, Any], ...]) -> type:
    """Return the choices class with some defaults changed; it is a kind of the same class."""
    defaults = dict(other)
    own = [
        (
            f.name,
            f.type,
            field(
                default=defaults[f.name],
                metadata={"choice": {**f.metadata["choice"], "default": defaults[f.name]}},
            ),
        )
        for f in fields(cls)
        if f.name in defaults
    ]
    return make_dataclass(cls.__name__, own, bases=(cls,), frozen=True) if own else cls


def growing_height(body: Body, fabric: Fabric | None) -> float | None:
    """Return the height (mm) that tells whether allowances are to grow into; None for a knit, which gives."""
    return None if fabric and fabric.weave == "knit" else body["height"]
