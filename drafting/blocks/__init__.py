"""The blocks: one file each, found by listing the folder, loaded when one is asked for by its name.

A block's file holds its `Choices` and one function of the block's own name that returns a `Draft`.
`NEEDS` names the chains of what was drafted before it that the function also takes, as arguments of
the same names (`("front_armhole", "back_armhole")`). A file that stands for a whole garment has
`PARTS`, the blocks it is made of in drafting order, each with the defaults that differ for this
garment. `SHARED` names choices of which both hands of a wearer need one value, each with the rule
(`draft/one_value`) that finds it. The files of `drafting/alter` are parts too: their function takes the whole
draft first and returns it altered.

A block of a maker's own is written the same way, in a folder of her own, with what it uses taken
from `drafting` itself. `measurements/blocks/pelerine.py` is one to begin from: it runs as it stands.

1. Its docstring says what is drafted, and draws it with the names of its edges. A line `Source:` says
   where the method comes from: a published work, common practice, from memory, or ours.
2. `Choices`, a frozen dataclass: each field is made by `choice(...)` with its usual value, unit,
   meaning, range and source. Sliders and `drafting blocks` come from it.
3. `def pelerine(body, fabric, choices)`, named like the file, returns a `Draft`: `pieces` as rings of
   named edges, anticlockwise, as the wearer's left hand seen from outside; the `seams` that join
   edges; a `Girth` for each level that has to come out right, and the `Level` line on the pieces
   where it is read off. With `NEEDS = ("back_neck",)` it also takes `*, back_neck`, a `Chain` that a
   block before it offers in `Draft.chains`. A function whose first argument is `draft` is handed
   what stands already, and returns it altered.
4. What cannot be drafted is a `DraftError`: what, the value, the reach, what to turn.

`use_blocks` takes the blocks of a folder (`--blocks DIR`); an installed package offers one by an
entry point of the group `drafting.blocks`, whose name is the block's and whose value is its module.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path
from typing import Any

from drafting.blocks._own import OwnFile, guarded, read_folder, read_installed
from drafting.draft.draft import Draft
from drafting.draft.one_value import OneValue
from drafting.ground.choices import Choice, choices_of
from drafting.ground.errors import Fault, InputError
from drafting.ground.frozen import freeze

ALTERATIONS = "drafting.alter"
"""The package of alterations: found by name, as blocks know none of them."""


@dataclass(frozen=True)
class Block:
    """One block: its name, what it is, its choices, and how to draft it.

    A garment block has `parts` instead of a `draft` of its own, and the choices of all its parts.
    `file` is where a block from outside is written ("" for the kit's own).
    """

    name: str
    summary: str
    choices: tuple[Choice, ...]
    choices_class: type | None
    draft: Callable[..., Draft] | None
    needs: tuple[str, ...]
    parts: Mapping[str, Mapping[str, Any]]
    alters: bool = False
    file: str = ""
    shared: Mapping[str, OneValue] = field(default_factory=dict)

    @property
    def alone(self) -> bool:
        """Whether it is drafted by itself: a garment, or a block that fits onto nothing else."""
        return bool(self.parts) or not (self.alters or self.needs)

    def __post_init__(self) -> None:
        freeze(self, "parts", "shared")


class _Known(Mapping[str, Block]):
    """Every block and alteration by its name; one of the kit's is loaded when it is asked for, all by a list."""

    def __init__(self, own: Mapping[str, Block]) -> None:
        self._own = own

    def __getitem__(self, name: str) -> Block:
        if name not in self:
            raise KeyError(name)
        return self._own[name] if name in self._own else _kit(name)

    def __contains__(self, name: object) -> bool:
        return name in self._own or (name in _files() and _is_block(_module(str(name))))

    def __iter__(self) -> Iterator[str]:
        return iter(sorted(name for name in (*_files(), *self._own) if name in self))

    def __len__(self) -> int:
        return sum(1 for _ in self)


@cache
def all_blocks() -> Mapping[str, Block]:
    """Return every block and alteration by its name: the kit's, those of installed packages, and
    those of the folder in use (`use_blocks`).

    Raises `InputError` where an installed package offers what cannot be a block.

    >>> all_blocks()["cuff"].needs
    ('sleeve_hem',)
    """
    return _Known(_installed() | _IN_USE)


def names(alone: bool = False) -> tuple[str, ...]:
    """Return the names of all blocks, or of those that are drafted by themselves.

    >>> "cuff" in names(), "cuff" in names(alone=True), "shirt" in names(alone=True)
    (True, False, True)
    """
    return tuple(name for name, block in all_blocks().items() if block.alone or not alone)


def use_blocks(folder: Path | str | None) -> tuple[str, ...]:
    """From now on draft with the blocks of this folder too, read anew; None takes none from outside.

    Returns their names. Raises `InputError` with the file and line of everything that keeps a file
    from being a block; then what was in use stays so.

    >>> use_blocks(None)
    ()
    """
    found = {} if folder is None else _own(read_folder(Path(folder)), _Known(_installed()))
    _IN_USE.clear()
    _IN_USE.update(found)
    all_blocks.cache_clear()
    return tuple(found)


_IN_USE: dict[str, Block] = {}
"""The blocks of the folder in use: one of the process, as the folder is named on the command line."""


@cache
def _installed() -> dict[str, Block]:
    return _own(files, _Known({})) if (files := read_installed()) else {}


def _own(files: list[OwnFile], known: Mapping[str, Block]) -> dict[str, Block]:
    """Return the blocks of files from outside, beside those known. Raises `InputError`."""
    from drafting.blocks._demands import own_faults, part_faults

    faults: list[Fault] = []
    taken = {name: block.file or "it comes with the kit" for name, block in known.items()}
    for file in files:
        faults += own_faults(file, taken)
        taken[file.name] = file.file
    if faults:
        raise InputError(faults)
    single = [file for file in files if not hasattr(file.module, "PARTS")]
    plain = {file.name: _own_plain(file) for file in single}
    parts = {n: b for n, b in {**known, **plain}.items() if not b.parts}
    choices = {name: {c.name: c for c in block.choices} for name, block in parts.items()}
    whole = [file for file in files if file not in single]
    faults = [fault for file in whole for fault in part_faults(file, choices)]
    if faults:
        raise InputError(faults)
    made = {file.name: _whole(file.name, file.module, parts) for file in whole}
    return plain | {file.name: replace(made[file.name], file=file.file) for file in whole}


def _own_plain(own: OwnFile) -> Block:
    from drafting.blocks._demands import is_alteration

    found = _plain(own.name, own.module)
    assert found.draft is not None
    draft, alters = guarded(found.draft, own), is_alteration(found.draft)
    return replace(found, draft=draft, alters=alters, file=own.file)


@cache
def _files() -> Mapping[str, str]:
    """Return the modules that may be blocks or alterations of the kit, by name (underscores become `-`)."""
    found = {}
    for package in (__name__, ALTERATIONS):
        folder = importlib.import_module(package)
        for _, module, _ in pkgutil.iter_modules(folder.__path__):
            if not module.startswith("_"):
                found[module.replace("_", "-")] = f"{package}.{module}"
    return found


def _module(name: str) -> Any:
    return importlib.import_module(_files()[name])


def _is_block(module: Any) -> bool:
    return hasattr(module, "Choices") or hasattr(module, "PARTS")


@cache
def _kit(name: str) -> Block:
    """Return one of the kit's blocks and alterations, and with it those that it is made of."""
    module = _module(name)
    if hasattr(module, "PARTS"):
        return _whole(name, module, {part: _kit(part) for part in module.PARTS})
    return _plain(name, module)


def _summary(module: Any) -> str:
    return str(module.__doc__ or "").strip().splitlines()[0]


def _plain(name: str, module: Any) -> Block:
    cls = module.Choices
    draft = getattr(module, name.replace("-", "_"))
    needs = tuple(getattr(module, "NEEDS", ()))
    alters = module.__name__.startswith(ALTERATIONS)
    return Block(
        name=name,
        summary=_summary(module),
        choices=choices_of(cls),
        choices_class=cls,
        draft=draft,
        needs=needs,
        parts={},
        alters=alters,
        shared=getattr(module, "SHARED", {}),
    )


def _whole(name: str, module: Any, plain: Mapping[str, Block]) -> Block:
    found: dict[str, Choice] = {}
    for part, defaults in module.PARTS.items():
        for choice in plain[part].choices:
            value = defaults.get(choice.name, choice.default)
            found.setdefault(choice.name, replace(choice, default=value))
    return Block(
        name=name,
        summary=_summary(module),
        choices=tuple(found.values()),
        choices_class=None,
        draft=None,
        needs=(),
        parts=module.PARTS,
    )
