"""The blocks: one file each, found by listing the folder.

A block's file holds its `Choices` and one function of the block's own name that returns a `Draft`.
`NEEDS` names the chains of what was drafted before it that the function also takes, as arguments of
the same names (`("front_armhole", "back_armhole")`). A file that stands for a whole garment has
`PARTS`, the blocks it is made of in drafting order, each with the defaults that differ for this
garment. `SHARED` names choices of which both hands of a wearer need one value, and the fact that says
what a hand made of it. The files of `drafting/alter` are parts too: their function takes the whole
draft first and returns it altered.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any

from drafting.draft.draft import Draft
from drafting.ground.choices import Choice, choices_of

ALTERATIONS = "drafting.alter"
"""The package of alterations: found by name, as blocks know none of them."""


@dataclass(frozen=True)
class Block:
    """One block: its name, what it is, its choices, and how to draft it.

    A garment block has `parts` instead of a `draft` of its own, and the choices of all its parts.
    """

    name: str
    summary: str
    choices: tuple[Choice, ...]
    choices_class: type | None
    draft: Callable[..., Draft] | None
    needs: tuple[str, ...]
    parts: Mapping[str, Mapping[str, Any]]
    alters: bool = False
    shared: Mapping[str, str] = field(default_factory=dict)


@cache
def all_blocks() -> dict[str, Block]:
    """Return every block and alteration by its name (underscores become `-`)."""
    modules = {m.__name__.rpartition(".")[2].replace("_", "-"): m for m in _modules()}
    plain = {name: _plain(name, m) for name, m in modules.items() if hasattr(m, "Choices")}
    whole = {name: _whole(name, m, plain) for name, m in modules.items() if hasattr(m, "PARTS")}
    return dict(sorted((plain | whole).items()))


def _modules() -> Iterator[Any]:
    for package in (__name__, ALTERATIONS):
        folder = importlib.import_module(package)
        for info in pkgutil.iter_modules(folder.__path__):
            if not info.name.startswith("_"):
                yield importlib.import_module(f"{package}.{info.name}")


def _summary(module: Any) -> str:
    return str(module.__doc__ or "").strip().splitlines()[0]


def _plain(name: str, module: Any) -> Block:
    cls = module.Choices
    draft = getattr(module, name.replace("-", "_"))
    needs = tuple(getattr(module, "NEEDS", ()))
    alters = module.__name__.startswith(ALTERATIONS)
    return Block(
        name, _summary(module), choices_of(cls), cls, draft, needs, {}, alters, getattr(module, "SHARED", {})
    )


def _whole(name: str, module: Any, plain: Mapping[str, Block]) -> Block:
    found: dict[str, Choice] = {}
    for part, defaults in module.PARTS.items():
        for choice in plain[part].choices:
            value = defaults.get(choice.name, choice.default)
            found.setdefault(choice.name, replace(choice, default=value))
    return Block(name, _summary(module), tuple(found.values()), None, None, (), module.PARTS)
