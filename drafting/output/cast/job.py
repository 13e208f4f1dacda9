"""The work of one wearer, wherever it is done: in this process, in another, on another machine."""

from __future__ import annotations

import io
import tempfile
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from drafting.costume.file import CostumeFile
from drafting.costume.lays import laid_out
from drafting.costume.make import make
from drafting.ground.errors import DraftError, Fault, InputError
from drafting.ground.frozen import freeze
from drafting.output.cast.place import report_key
from drafting.output.cast.told import MADE, told_of, told_why
from drafting.output.folder import swap_in
from drafting.output.write import write_output


@dataclass(frozen=True)
class WearerJob:
    """One wearer to be made: the name of her folder, her costume, and the key of both."""

    folder: str
    costume: CostumeFile
    key: str


@dataclass(frozen=True)
class Outcome:
    """What came of a job: the record of the wearer, and her folder `packed` where it was made elsewhere."""

    folder: str
    record: Mapping[str, Any] = field(hash=False)
    packed: bytes = b""

    def __post_init__(self) -> None:
        freeze(self, "record")


def done(job: WearerJob, place: Path) -> Outcome:
    """Make a wearer and write her folder in the folder of the cast, whole; what cannot be drafted is told.

    Raises `OSError` where the disk will not have it.
    """
    try:
        made = laid_out(make(job.costume))
        printed = write_output(made, place / job.folder)
        record = told_of(made, (*made.findings, *printed), job.key)
    except InputError as refused:
        return refused_outcome(job.folder, refused.faults, job.key)
    except DraftError as error:
        fault = Fault(error.said(job.costume.told_in), file=job.costume.path)
        return refused_outcome(job.folder, (fault,), job.key)
    except OSError:
        raise
    except Exception as error:  # a fault of the kit at one wearer stops nobody else
        what = f"a fault of the kit, please report it: {type(error).__name__}: {error}"
        return refused_outcome(job.folder, (Fault(what, file=job.costume.path),), job.key)
    return Outcome(job.folder, record | {"report": report_key(place / job.folder)})


def refused_outcome(folder: str, faults: tuple[Fault, ...], key: str = "") -> Outcome:
    """Return what came of a wearer who cannot be made."""
    return Outcome(folder, told_why(faults, key) | {"report": ""})


def done_elsewhere(job: WearerJob) -> Outcome:
    """Make a wearer where the folder of the cast is out of reach, and bring hers along, packed."""
    with tempfile.TemporaryDirectory() as folder:
        outcome = done(job, Path(folder))
        if outcome.record["status"] != MADE:
            return outcome
        return Outcome(job.folder, outcome.record, _packed(Path(folder) / job.folder))


def unpacked(outcome: Outcome, place: Path) -> None:
    """Put a folder that was made elsewhere into the folder of the cast, whole."""

    def fill(folder: Path) -> None:
        with zipfile.ZipFile(io.BytesIO(outcome.packed)) as packed:
            packed.extractall(folder)

    if outcome.packed:
        swap_in(place / outcome.folder, fill)


def _packed(folder: Path) -> bytes:
    whole = io.BytesIO()
    with zipfile.ZipFile(whole, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as packed:
        for path in sorted(folder.rglob("*")):
            packed.write(path, path.relative_to(folder).as_posix())
    return whole.getvalue()
