"""What a block from outside has to have, asked before anything is drafted from it."""

from __future__ import annotations

import ast
import inspect
import re
from collections.abc import Iterator, Mapping
from dataclasses import fields
from types import FunctionType
from typing import Any, get_args

from drafting.blocks._own import OwnFile
from drafting.ground.choices import Choice, Unit, choices_of
from drafting.ground.errors import Fault
from drafting.ground.nearest import meant, nearest

SOURCE = re.compile(r"^\s*Source: *\S", re.MULTILINE)
"""The line of a block's docstring that says where its method comes from."""


def own_faults(own: OwnFile, taken: Mapping[str, str]) -> Iterator[Fault]:
    """Yield what keeps a file from being a block; `taken` says who has a name already."""
    if own.name in taken:
        right = "give the file, and its function, another name"
        yield own.fault(f"there is a block {own.name} already: {taken[own.name]}", right)
    yield from _about(own)
    if hasattr(own.module, "PARTS"):
        return  # what its parts are is asked once all blocks are known
    if hasattr(own.module, "Choices"):
        yield from _choices(own, own.module.Choices)
    else:
        right = "write a frozen dataclass Choices, its fields made by choice(...); or PARTS"
        yield own.fault("states no Choices", right)
    yield from _function(own)


def _about(own: OwnFile) -> Iterator[Fault]:
    text = own.module.__doc__ or ""
    if not text.strip():
        yield own.fault("has no docstring", "say in its first line what is drafted")
    elif not hasattr(own.module, "PARTS") and not SOURCE.search(text):
        right = 'add a line "Source: " and a published work, common practice, from memory or ours'
        yield own.fault("does not say where its method comes from", right)


def _choices(own: OwnFile, cls: Any) -> Iterator[Fault]:
    if not getattr(getattr(cls, "__dataclass_params__", None), "frozen", False):
        right = "write @dataclass(frozen=True) above class Choices"
        yield own.fault("Choices is no frozen dataclass", right, own.line("Choices"))
        return
    bare = [field.name for field in fields(cls) if "choice" not in field.metadata]
    for name in bare:
        right = f'write {name}: float = choice(10.0, "mm", "what it means", low=0, high=100, source="ours")'
        yield own.fault("is not made by choice(...)", right, own.line("Choices", name), name)
    if not bare:
        for one in choices_of(cls):
            for what, right in _unclear(one):
                yield own.fault(what, right, own.line("Choices", one.name), one.name)


def _unclear(one: Choice) -> Iterator[tuple[str, str]]:
    if not one.meaning.strip():
        yield "has no meaning", "say in words what is chosen"
    if not any(cited.work.name for cited in one.source):
        yield "has no source", "name a published work, common practice, from memory or ours"
    if one.unit not in get_args(Unit):
        yield f"has the unit {one.unit!r}", f"units are {', '.join(get_args(Unit))}"
    elif one.unit == "word":
        if one.default not in one.words:
            yield f"{one.default!r} is none of its words", "list it in words=(...)"
    elif one.unit == "yes/no":
        if not isinstance(one.default, bool):
            yield f"its default {one.default!r} is neither True nor False", "write one of the two"
    elif one.default is not None:
        yield from _out_of_range(one)


def _out_of_range(one: Choice) -> Iterator[tuple[str, str]]:
    if isinstance(one.default, bool) or not isinstance(one.default, int | float):
        yield f"its default {one.default!r} is no number", f"write a number of {one.unit}"
    elif one.low is not None and not one.default >= one.low:
        yield (f"its default {one.default:g} lies below {one.low:g}", "lower low, or raise the default")
    elif one.high is not None and not one.default <= one.high:
        yield (f"its default {one.default:g} lies above {one.high:g}", "raise high, or lower the default")


def _function(own: OwnFile) -> Iterator[Fault]:
    """Yield what is wrong with the function of the block's own name, or with `NEEDS`."""
    name = own.name.replace("-", "_")
    function = getattr(own.module, name, None)
    needs = getattr(own.module, "NEEDS", ())
    right = f"write def {name}(body, fabric, choices) that returns a Draft"
    if not isinstance(function, FunctionType):
        others = [node.name for node in own.tree.body if isinstance(node, ast.FunctionDef)]
        if near := nearest(name, others):
            yield own.fault(f"is drafted by no {name}(), but by {near[0]}()", right, own.line(near[0]))
        else:
            yield own.fault(f"has no function {name}", right)
    elif not isinstance(needs, tuple) or not all(isinstance(need, str) for need in needs):
        wanted = 'write the names of chains, as in NEEDS = ("back_neck",)'
        yield own.fault("NEEDS is no tuple of names", wanted, own.line("NEEDS"))
    elif not _takes(function, needs):
        handed = ", ".join((*_handed(function), *(("*", *needs) if needs else ())))
        what = f"cannot take what a block is given: ({handed})"
        yield own.fault(what, f"write def {name}({handed})", own.line(name))


def is_alteration(function: Any) -> bool:
    """Return whether a function takes the whole draft first, and so alters what stands already."""
    return next(iter(inspect.signature(function).parameters), "") == "draft"


def _handed(function: FunctionType) -> tuple[str, ...]:
    asked = ("body", "fabric", "choices")
    return ("draft", *asked) if is_alteration(function) else asked


def _takes(function: FunctionType, needs: tuple[str, ...]) -> bool:
    try:
        inspect.signature(function).bind(*_handed(function), **dict.fromkeys(needs))
    except TypeError:
        return False
    return True


def part_faults(own: OwnFile, parts: Mapping[str, Mapping[str, Any]]) -> Iterator[Fault]:
    """Yield what is wrong with the parts of a garment; `parts` are all that can be one, by name."""
    at = own.line("PARTS")
    asked = own.module.PARTS
    if not isinstance(asked, dict) or not all(isinstance(own, dict) for own in asked.values()):
        right = 'write PARTS = {"bodice": {"bust_ease": 90.0}, "sleeve": {}}'
        yield own.fault("PARTS is no table of blocks and their defaults", right, at)
        return
    for part, defaults in asked.items():
        if part not in parts:
            right = meant(str(part), parts, "`drafting blocks NAME` lists them")
            yield own.fault(f"there is no single block '{part}' to be a part", right, at)
            continue
        for name in defaults:
            if name not in parts[part]:
                right = meant(str(name), parts[part], "`drafting blocks NAME` lists them")
                yield own.fault(f"{part} has no choice '{name}'", right, at)
