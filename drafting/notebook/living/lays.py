"""Lays that a hand has made, kept beside the costume file. No widgets."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from drafting.costume.lays import materials
from drafting.costume.make import Made
from drafting.layout import Lay, laid_by_hand
from drafting.notebook.whole_files import put_whole

ENDING = ".lays"


def lays_place(costume: Path | str) -> Path:
    """Return where the lays of a costume file are kept.

    >>> lays_place("costumes/kite.toml").as_posix()
    'costumes/kite.lays'
    """
    return Path(costume).with_suffix(ENDING)


def kept_lays(file: Path) -> dict[str, Any]:
    """Return the rows of lays made by hand, by cloth; nothing where none is kept."""
    try:
        rows = json.loads(file.read_text("utf-8"))
    except (OSError, ValueError):
        return {}
    return rows if isinstance(rows, dict) else {}


def keep_lays(file: Path, rows: Mapping[str, Any]) -> None:
    """Keep these rows, whole; raises `OSError`."""
    if rows:
        put_whole(file, (json.dumps(dict(rows), indent=1) + "\n").encode())
    else:
        file.unlink(missing_ok=True)


def standing_lays(made: Made, rows: Mapping[str, Any], found: Mapping[str, Lay]) -> dict[str, Lay]:
    """Return the lays of these very pieces: a hand's where it still fits, else one found before."""
    lays = {}
    for cloth, parts in materials(made):
        row = rows.get(cloth.role)
        lay = laid_by_hand(parts, cloth, row) if isinstance(row, dict) else None
        old = found.get(cloth.role)
        if lay is None and old is not None and old.cloth == cloth and same_pieces(old, parts):
            lay = old
        if lay is not None:
            lays[cloth.role] = lay
    return lays


def same_pieces(lay: Lay, parts: tuple[Any, ...]) -> bool:
    """Say whether a lay is of these very pieces: each is remembered, so that it is the same thing."""
    cut = {outline.part.name: outline.part.cut for outline in (*lay.outlines, *lay.left_out)}
    return len(cut) == len(parts) and all(cut.get(part.name) is part.cut for part in parts)
