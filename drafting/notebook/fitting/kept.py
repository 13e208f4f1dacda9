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
from drafting.notebook.whole_files import TextWriting, decoded, put_whole
from drafting.reading.rewriting import rewritten
from drafting.reading.toml import parse_toml

NEW = TextWriting(b"", "utf-8")
"""How a file is written that nobody has written yet."""


def keep_note(place: Path, note: Note, unit: ShownUnit, title: str = "Fitting", on: date | None = None) -> None:
    """Put a note behind those of a fitting file, which is begun where it is not there; raises `OSError`.

    The file is read again first, so that what another hand has written into it stays. Raises `InputError`, and
    leaves the file as it was, where no note can be put behind those it holds.
    """
    text, writing = _text(place) if place.exists() else (begun(title, on, unit), NEW)
    put_whole(place, writing.raw(_held(place, text, with_note(text, note, unit), 1)))


def take_back(place: Path) -> None:
    """Take the last note of a fitting file out of it; raises as `keep_note` does."""
    text, writing = _text(place)
    put_whole(place, writing.raw(_held(place, text, without_last(text), -1)))


def _held(place: Path, text: str, new: str, more: int) -> str:
    """Return the new text of a fitting, which holds so many notes more; raises `InputError` where it does not."""
    before: Any = parse_toml(text, str(place)).data.get("notes", [])
    if more < 0 and not before:
        return text
    right = "begin each note with a line [[notes]] of its own"
    try:
        after: Any = parse_toml(new, str(place)).data.get("notes", [])
    except InputError:
        after = None
    if not isinstance(before, list) or not isinstance(after, list) or len(after) != len(before) + more:
        what = (
            "no note can be put behind those it holds"
            if more > 0
            else "its last note cannot be told from the rest"
        )
        raise InputError([Fault(what, right, "notes", str(place))])
    return new


def name_in(file: Path, fitting: Path) -> None:
    """Name a fitting in a costume's or a wearer's file, where it is not named yet; its remarks stay.

    Raises `InputError` where the file cannot be rewritten, `OSError` where it cannot be written.
    """
    text, writing = _text(file)
    named: Any = parse_toml(text, str(file)).data.get("fittings", [])
    if not isinstance(named, Sequence) or isinstance(named, str):
        right = 'write it like fittings = ["first-fitting.toml"]'
        raise InputError([Fault("is no list of files", right, "fittings", str(file))])
    if any(os.path.realpath(file.parent / str(one)) == os.path.realpath(fitting) for one in named):
        return
    own = os.path.relpath(fitting, file.parent).replace(os.sep, "/")
    put_whole(file, writing.raw(rewritten(text, {("fittings",): [*named, own]})))


def tell_cloth(costume: Path, garment: str, said: str) -> Path | None:
    """Put what was noted of a garment's cloth into that cloth's own file, once; return the file.

    None where the costume names none. Raises as `name_in` does.
    """
    data: Any = parse_toml(_text(costume)[0], str(costume)).data
    role = data.get("garments", {}).get(garment, {}).get("fabric", "")
    named = data.get("fabrics", {}).get(role)
    if not isinstance(named, str):
        return None
    file = costume.parent / named
    text, writing = _text(file)
    noted: Any = parse_toml(text, str(file)).data.get("noted", [])
    if said not in noted:
        put_whole(file, writing.raw(rewritten(text, {("noted",): [*noted, said]})))
    return file


def new_place(costume: Path) -> Path:
    """Return where a costume's next fitting goes: beside it, under a name that is free."""
    number = 1
    while (place := costume.with_name(f"{costume.stem}-fitting-{number}.toml")).exists():
        number += 1
    return place


def _text(file: Path) -> tuple[str, TextWriting]:
    return decoded(file.read_bytes())
