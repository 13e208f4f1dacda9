"""The one writer of a maker's files: whole or not at all, and everything but the text as it was.

A link stays a link, a mode a mode; encoding, byte-order mark and line ends are those of the file;
what is read-only is refused. What a killed run left beside a file is cleared by the next write.
"""

from __future__ import annotations

import codecs
import errno
import os
import re
import secrets
import stat
import time
from dataclasses import dataclass
from pathlib import Path

from drafting.ground.on_disk import to_disk

MARKS = {codecs.BOM_UTF16_LE: "utf-16-le", codecs.BOM_UTF16_BE: "utf-16-be", codecs.BOM_UTF8: "utf-8"}
"""How a text is written, by the mark at its head."""

LEFT_BEHIND = 60.0
"""Seconds after which a file half written is a killed run's (ours; a write takes a blink)."""

LONGEST_START = 40
"""Letters of a file's name in that of the file beside it (ours: names have 255 bytes at most)."""


@dataclass(frozen=True, slots=True)
class TextWriting:
    """How a file is written: the `mark` at its head, its encoding, and whether lines end in `\\r` alone."""

    mark: bytes
    encoding: str
    old_ends: bool = False

    def raw(self, text: str) -> bytes:
        """Return a text as this file holds it."""
        return self.mark + (text.replace("\n", "\r") if self.old_ends else text).encode(self.encoding)


def decoded(raw: bytes) -> tuple[str, TextWriting]:
    """Return the text of a file and the writing that gives the same bytes again.

    Line ends stay as they are, but for `\\r` alone, which no reader of today takes for one.
    """
    mark = next((mark for mark in MARKS if raw.startswith(mark)), b"")
    encoding = MARKS.get(mark, "utf-8")
    text = raw[len(mark) :].decode(encoding)
    old = "\r" in text and "\n" not in text
    return text.replace("\r", "\n") if old else text, TextWriting(mark, encoding, old)


def put_whole(place: Path, data: bytes) -> None:
    """Write a file beside its place and swap it in whole; raises `OSError`, and leaves nothing behind.

    A link is followed. Raises `PermissionError` for a file that is read-only.
    """
    place = _followed(place)
    mode = _mode(place)
    _tidy(place)
    beside = place.with_name(f"{_start(place)}{secrets.token_hex(8)}.new")
    handle = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666 if mode is None else mode)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            os.chmod(beside, mode)
        os.replace(beside, place)
        to_disk(place.parent)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise


def _followed(place: Path) -> Path:
    try:
        return place.resolve()
    except RuntimeError:  # a link that leads back to itself, as Python before 3.13 says it
        raise OSError(errno.ELOOP, os.strerror(errno.ELOOP), str(place)) from None


def _mode(place: Path) -> int | None:
    """Return the mode of a file that may be written over, None where there is none yet."""
    try:
        mode = place.stat().st_mode
    except FileNotFoundError:
        return None
    if not stat.S_ISREG(mode):
        raise OSError(errno.EINVAL, "it is no file", str(place))
    if not mode & 0o222 or not os.access(place, os.W_OK):
        raise PermissionError(errno.EACCES, "it is read-only", str(place))
    return stat.S_IMODE(mode)


def _start(place: Path) -> str:
    return f".{place.name[:LONGEST_START]}."


def _tidy(place: Path) -> None:
    """Clear what killed runs left beside this file."""
    ours = re.compile(re.escape(_start(place)) + r"[0-9a-f]{16}\.new")
    for path in place.parent.iterdir():
        if ours.fullmatch(path.name) and _old(path):
            path.unlink(missing_ok=True)


def _old(path: Path) -> bool:
    try:
        return time.time() - path.lstat().st_mtime > LEFT_BEHIND
    except OSError:
        return False
