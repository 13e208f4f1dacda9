"""Which files a costume stands on, and what they were at the last look."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from pathlib import Path

FileMarks = tuple[tuple[str, int, int], ...]
"""Name, time of the last change (ns) and size of each file; zeros for one that is not there."""


def named_files(costume: Path) -> tuple[Path, ...]:
    """Return the costume file and the files of wearer, cloths, workroom and fittings that it names."""
    try:
        data = tomllib.loads(costume.read_text("utf-8-sig"))
    except (OSError, ValueError):
        return (costume,)
    fabrics = data.get("fabrics")
    named = [data.get("wearer"), data.get("workroom")]
    named += list(fabrics.values()) if isinstance(fabrics, dict) else []
    fittings = data.get("fittings")
    named += fittings if isinstance(fittings, list) else []
    texts = [text.partition("#")[0] for text in named if isinstance(text, str)]
    return (costume, *(costume.parent / text for text in texts))


def marks_of(files: Iterable[Path]) -> FileMarks:
    """Return what tells whether a file has been written since."""
    return tuple(_mark(file) for file in files)


def _mark(file: Path) -> tuple[str, int, int]:
    try:
        stood = file.stat()
    except OSError:
        return str(file), 0, 0
    return str(file), stood.st_mtime_ns, stood.st_size
