"""What a wearer's folder was made from, in one short key: where it is the same, she need not be made again."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from enum import Enum
from functools import cache
from pathlib import Path
from typing import Any

from drafting.costume.file import CostumeFile
from drafting.ground.shipped import PACKAGE
from drafting.output.report import made_with

READ = frozenset({".py", ".toml", ".json", ".jinja", ".css", ".js"})
"""Endings of the kit's files that say what is made."""


def key_of(costume: CostumeFile, blocks: Path | None = None) -> str:
    """Return the key of a costume on its wearer: all that was read for it, this kit, and a maker's `blocks`.

    The day it is made on is not in it.
    """
    parts = [kit_key(), *(files_key(blocks) if blocks else ()), *_told(costume)]
    return hashlib.sha256("\n".join(parts).encode()).hexdigest()


@cache
def kit_key() -> str:
    """Return the key of the kit's own files and of the libraries it reckons with."""
    whole = hashlib.sha256(repr(sorted(made_with().items())).encode())
    for part in files_key(PACKAGE):
        whole.update(part.encode())
    return whole.hexdigest()


def files_key(folder: Path) -> Iterator[str]:
    """Yield the path and the content's key of each file of a folder that says what is made."""
    for path in sorted(folder.rglob("*")):
        if path.suffix in READ and path.is_file():
            yield f"{path.relative_to(folder).as_posix()} {hashlib.sha256(path.read_bytes()).hexdigest()}"


def _told(value: Any, name: str = "") -> Iterator[str]:
    """Yield lines that tell a value whole, the same in every run: sets and mappings in order."""
    if is_dataclass(value) and not isinstance(value, type):
        yield f"{name} {type(value).__name__}"
        for one in fields(value):
            yield from _told(getattr(value, one.name), f"{name}.{one.name}")
    elif isinstance(value, Mapping):
        for key in sorted(value, key=str):
            yield from _told(value[key], f"{name}[{key!r}]")
    elif isinstance(value, (tuple, list)):
        for n, one in enumerate(value):
            yield from _told(one, f"{name}[{n}]")
    elif isinstance(value, (set, frozenset)):
        yield f"{name} {sorted(map(repr, value))}"
    elif value is None or isinstance(value, (str, int, float, complex, date, Enum)):
        yield f"{name} {value!r}"
    else:
        raise TypeError(f"{name} holds a {type(value).__name__}, which has no lines of its own")
