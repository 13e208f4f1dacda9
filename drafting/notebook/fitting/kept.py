"""Notes on disk: each is in its file, whole, before anything else is said of it. No widgets."""

from __future__ import annotations

import os
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Any

from drafting.fitting.note import Note
from drafting.fitting.writing import begun, with_note, without_last
from drafting.ground.errors import Fault, InputError
from drafting.ground.units import ShownUnit
from drafting.notebook.whole_files import decoded, put_whole
from drafting.reading.rewriting import rewritten
from drafting.reading.toml import parse_toml


def keep_note(place: Path, note: Note, unit: ShownUnit, title: str = "Fitting", on: date | None = None) -> None:
    """Put a note behind those of a fitting file, which is begun where it is not there; raises `OSError`.

    The file is read again first, so that what another hand has written into it stays.
    """
    text, code = _text(place) if place.exists() else (begun(title, on, unit), "utf-8")
    put_whole(place, with_note(text, note, unit).encode(code))


def take_back(place: Path) -> None:
    """Take the last note of a fitting file out of it; raises `OSError`."""
    text, code = _text(place)
    put_whole(place, without_last(text).encode(code))


def name_in(file: Path, fitting: Path) -> None:
    """Name a fitting in a costume's or a wearer's file, where it is not named yet; its remarks stay.

    Raises `InputError` where the file cannot be rewritten, `OSError` where it cannot be written.
    """
    text, code = _text(file)
    named: Any = parse_toml(text, str(file)).data.get("fittings", [])
    if not isinstance(named, Sequence) or isinstance(named, str):
        right = 'write it like fittings = ["first-fitting.toml"]'
        raise InputError([Fault("is no list of files", right, "fittings", str(file))])
    if any(os.path.realpath(file.parent / str(one)) == os.path.realpath(fitting) for one in named):
        return
    own = os.path.relpath(fitting, file.parent).replace(os.sep, "/")
    put_whole(file, rewritten(text, {("fittings",): [*named, own]}).encode(code))


def new_place(costume: Path) -> Path:
    """Return where a costume's next fitting goes: beside it, under a name that is free."""
    number = 1
    while (place := costume.with_name(f"{costume.stem}-fitting-{number}.toml")).exists():
        number += 1
    return place


def _text(file: Path) -> tuple[str, str]:
    return decoded(file.read_bytes())
