"""A cloth's file while its strips are tried: read, changed by one test, put back. No widgets."""

from __future__ import annotations

import tempfile
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from drafting.fabric import Fabric, read_fabric
from drafting.ground.errors import DraftError
from drafting.ground.shipped import INSTALLED
from drafting.notebook.whole_files import decoded, put_whole
from drafting.reading.rewriting import Plain, rewritten


@dataclass(frozen=True)
class ClothFile:
    """A cloth's file as it was read: its bytes say later whether somebody else has changed a test."""

    path: Path
    raw: bytes
    cloth: Fabric


def begin_cloth(path: Path | str) -> ClothFile:
    """Return a cloth's file as it stands; raises `InputError` for one that cannot be used."""
    path = Path(path)
    cloth = read_fabric(path)
    return ClothFile(path=path, raw=path.resolve().read_bytes(), cloth=cloth)


def with_test(file: ClothFile, key: str, test: Mapping[str, Plain]) -> ClothFile:
    """Write a test under its `key`, comments and all other lines kept; what a test does not say stays.

    Raises `DraftError` where this test has changed since the file was read, the file belongs to the
    kit or would not be read again, `OSError` where it is gone; nothing is written then.
    """
    place = file.path.resolve()
    if INSTALLED in place.parents:
        raise DraftError(
            f"{file.path.name} belongs to the kit and is never changed",
            turn="copy it to measurements/fabrics beside the notebooks, and name your copy here",
        )
    raw = place.read_bytes()
    (text, writing), (before, _) = decoded(raw), decoded(file.raw)
    stood = tomllib.loads(text).get(key)
    if stood != tomllib.loads(before).get(key):
        raise DraftError(
            f"{key} of {file.path.name} has changed since this page read it, so nothing was written",
            turn="run the page again",
        )
    whole = {**stood, **test} if isinstance(stood, dict) else dict(test)
    data = writing.raw(rewritten(text, {(key,): whole}))
    _must_be_read(data, place.name)
    put_whole(place, data)
    return begin_cloth(file.path)


def _must_be_read(data: bytes, name: str) -> None:
    """Read what would be written, before it is; raises `InputError`."""
    with tempfile.TemporaryDirectory() as folder:
        trial = Path(folder) / name
        trial.write_bytes(data)
        read_fabric(trial)
