"""A maker's file read and put back byte for byte, whole or not at all."""

from __future__ import annotations

import codecs
import os
import tempfile
from pathlib import Path


def decoded(raw: bytes) -> tuple[str, str]:
    """Return the text of a file, line ends as they are, and the encoding that gives the same bytes."""
    if raw.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return raw.decode("utf-16"), "utf-16"
    code = "utf-8-sig" if raw.startswith(codecs.BOM_UTF8) else "utf-8"
    return raw.decode(code), code


def put_whole(place: Path, data: bytes) -> None:
    """Write a file beside its place and swap it in whole; raises `OSError`, and leaves nothing behind."""
    handle, name = tempfile.mkstemp(prefix=f".{place.name}.", dir=place.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(name, place.stat().st_mode & 0o777 if place.exists() else 0o644)
        os.replace(name, place)
    except OSError:
        Path(name).unlink(missing_ok=True)
        raise
