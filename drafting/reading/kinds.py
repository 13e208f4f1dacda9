"""Which kind of file it is, told by what stands in it: one in another's place is named as what it is."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from typing import Any

from drafting.ground.errors import Fault

FIRST = 16
"""Bytes that are looked at of a file that is no text."""

LOOKED_AT = 100_000
"""Bytes that are looked at of a file in a folder: no file that a maker writes is longer (ours)."""

NOTES = "notes"
"""Holds the notes of a fitting, each a table; as a plain text it may stand in any file, and tells no kind."""

OFFERED = 3
"""Files that are named of a folder (ours)."""


@dataclass(frozen=True, slots=True)
class _Kind:
    """What a kind of file is called, the keys that only it has, and who asks for it."""

    words: str
    keys: frozenset[str]
    use: str


class FileKind(Enum):
    """The kinds of file that a maker writes."""

    CAST = _Kind("a cast file", frozenset({"wearers", "lay_together"}), "`drafting cast` makes it")
    COSTUME = _Kind("a costume file", frozenset({"garments", "fabrics"}), "`drafting make` makes it")
    FITTING = _Kind(
        "a fitting file", frozenset({NOTES}), "a costume or a body file names it under fittings = [...]"
    )
    BODY = _Kind(
        "a body file",
        frozenset({"measures", "layers", "waist_level", "taken_over"}),
        "a costume names it as its wearer, and `drafting body` tells of it",
    )
    CLOTH = _Kind(
        "a cloth's file",
        frozenset({"weave", "width", "selvedge", "pretreated", "stretch_along", "stretch_across"}),
        "a costume names it under [fabrics]",
    )
    WORKROOM = _Kind(
        "a workroom's file",
        frozenset({"stitches", "feet", "blade", "iron_dots", "needles"}),
        "a costume names it as its workroom",
    )


OTHERS = {
    "a table": 'it may hold wearers: wearer = "cast.csv#Ann" in a costume, wearers = "cast.csv" in a cast',
    "the whole file of a spreadsheet": "with the ending .xlsx, .xls or .ods it may hold wearers, for a cast",
    "a picture": "",
    "a PDF": "",
    "a page or a drawing": "",
    "data of another program": "",
}
"""What else is taken for a file of a maker's, and what it may be good for."""

_BEGINS = (
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"RIFF", "a picture"),
    (b"%PDF", "a PDF"),
    (b"PK\x03\x04", "the whole file of a spreadsheet"),
    (b"\xd0\xcf\x11\xe0", "the whole file of a spreadsheet"),
    (b"<", "a page or a drawing"),
    (b"{", "data of another program"),
)
_ENDS = {
    **dict.fromkeys((".csv", ".tsv"), "a table"),
    **dict.fromkeys((".xlsx", ".xlsm", ".xls", ".ods"), "the whole file of a spreadsheet"),
    **dict.fromkeys((".png", ".jpg", ".jpeg", ".gif", ".webp"), "a picture"),
    ".pdf": "a PDF",
    **dict.fromkeys((".svg", ".html"), "a page or a drawing"),
    ".json": "data of another program",
}


def told_kind(data: Mapping[str, Any], wanted: FileKind) -> FileKind:
    """Return the kind of a file by its keys: the one `wanted`, unless it has none of that one's and another's."""
    keys = {key for key, value in data.items() if key != NOTES or not isinstance(value, str)}
    if not keys.isdisjoint(wanted.value.keys):
        return wanted
    return next((kind for kind in FileKind if not keys.isdisjoint(kind.value.keys)), wanted)


def wrong_kind(path: Path, found: FileKind, wanted: FileKind) -> Fault:
    """Return the fault of one kind of file in another's place."""
    what = f"is {found.value.words}, and {wanted.value.words} is wanted here"
    return Fault(what, found.value.use, "", str(path), 1)


def no_file_of_ours(path: Path, wanted: FileKind) -> Fault | None:
    """Return the fault of a path that holds no file that a maker could have written, None where it may."""
    want = f"and {wanted.value.words} is wanted here"
    if _is_folder(path):
        held = sorted(one.name for one in path.glob("*.toml") if _may_be(one, wanted))[:OFFERED]
        right = f"name a file in it, as {' or '.join(held)}" if held else "name a file in it"
        return Fault(f"is a folder, {want}", right, "", str(path))
    begins = _beginning(path)
    if begins is None:  # why it cannot be opened is told by who opens it
        return None
    sort = next((words for mark, words in _BEGINS if begins.startswith(mark)), _ENDS.get(path.suffix.lower()))
    return Fault(f"is {sort}, {want}", OTHERS[sort] or _written_as(wanted), "", str(path), 1) if sort else None


def _may_be(path: Path, wanted: FileKind) -> bool:
    """Return whether a file in a folder looks like one of the kind, by how its lines begin."""
    rows = (_beginning(path, LOOKED_AT) or b"").decode("utf-8", errors="replace").splitlines()
    return any(re.split(r"[\s.=\]]", row.lstrip("[ "), maxsplit=1)[0] in wanted.value.keys for row in rows)


def _is_folder(path: Path) -> bool:
    try:
        return path.is_dir()
    except (OSError, ValueError):  # a name that no system takes
        return False


def _beginning(path: Path, most: int = FIRST) -> bytes | None:
    """Return how a file begins; None where it cannot be opened, as a pipe that nobody fills must not be."""
    try:
        if not path.is_file():
            return None
        with path.open("rb") as file:
            return file.read(most).lstrip()
    except (OSError, ValueError):
        return None


def _written_as(wanted: FileKind) -> str:
    return f"{wanted.value.words} is a text of lines, as `drafting new` writes one"
