"""The text of a file, or the fault that keeps it from being read."""

from __future__ import annotations

import codecs
import errno
from pathlib import Path

from drafting.ground.errors import Fault, InputError
from drafting.ground.names import clean_text

ENCODE = "save it as text, encoding UTF-8"
LARGEST = 2_000_000  # bytes; a file of measures is a few thousand


def read_text(path: Path, *, fallback: str | None = None, most: int = LARGEST) -> str:
    """Return the text of `path` without byte-order mark, line ends as `\\n`.

    UTF-8, or UTF-16 where the mark says so, or `fallback` where UTF-8 fails. Raises `InputError`
    for a file that is missing, larger than `most` bytes or not text.
    """
    raw = looked_at(path, most=most)
    return _decoded(path, raw, fallback).replace("\r\n", "\n").replace("\r", "\n")


def looked_at(path: Path, *, most: int) -> bytes:
    """Return the bytes of a file; raises `InputError` for one that is missing or larger than `most`."""
    try:
        if path.exists() and not path.is_file() and not path.is_dir():
            raise _refused(path, "is no file of text", "name a file")
        with path.open("rb") as file:
            raw = file.read(most + 1)  # a file may grow, or not know its size
    except (OSError, ValueError) as trouble:
        raise _refused(path, *_explained(path, trouble)) from None
    if len(raw) > most:
        raise _refused(path, "is too large for a file of measures", "it should be a few pages")
    return raw


def _decoded(path: Path, raw: bytes, fallback: str | None) -> str:
    marked = raw.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))
    try:
        text = raw.decode("utf-16" if marked else "utf-8-sig")
    except UnicodeDecodeError as trouble:
        if fallback and not marked:
            return raw.decode(fallback, errors="replace")
        line = raw[: trouble.start].count(b"\n") + 1
        raise _refused(path, "is not plain text", ENCODE, line) from None
    if "\0" in text:
        what = "is not plain text: it holds a character that no text has"
        raise _refused(path, what, ENCODE, text[: text.index("\0")].count("\n") + 1)
    return text


def _explained(path: Path, trouble: Exception) -> tuple[str, str]:
    if isinstance(trouble, FileNotFoundError):
        return "there is no such file", "check the name and the folder"
    if isinstance(trouble, (IsADirectoryError, PermissionError)) and path.is_dir():
        return "is a folder", "name a file in it"
    if isinstance(trouble, NotADirectoryError):
        file = next((above for above in path.parents if above.is_file()), path.parent)
        return f"cannot be there: {clean_text(str(file))} is a file and no folder", "check the name and the folder"
    number = getattr(trouble, "errno", None)
    if number == errno.ELOOP:
        return "is a link that leads round to itself", "name the file itself"
    if number == errno.ENAMETOOLONG:
        return "is too long for the name of a file", "check the name"
    return f"cannot be opened ({type(trouble).__name__})", "check the name and your rights to it"


def _refused(path: Path, what: str, right: str, line: int | None = None) -> InputError:
    return InputError([Fault(what, right, "", str(path), line)])
