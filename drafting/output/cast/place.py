"""The folder of a cast: whose it is, single files put in whole, what an earlier run made."""

from __future__ import annotations

import hashlib
import json
import os
import secrets
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from drafting.costume.cast import Cast
from drafting.ground.errors import Fault, InputError
from drafting.ground.on_disk import to_disk
from drafting.output.folder import CAST, FILES, REPORT, check_out, listed_in

CALL_SHEETS, RECORDS, LAYOUT = "call-sheets", "records", "layout"


def cast_folder(out: Path, cast: Cast) -> Path:
    """Return the real path of a cast's folder, made where it is missing.

    Raises `InputError`, and makes nothing, where it holds what no cast made, or where the folder of a
    wearer holds what no run made or a file that is read.
    """
    place = check_out(out, CAST) if listed_in(out, CAST) is None else out.resolve()
    faults: list[Fault] = []
    inputs = [Path(cast.path), Path(cast.costume), *(Path(one.source) for one in cast.wearers)]
    for wearer in cast.wearers if place.is_dir() else ():
        try:
            check_out(place / wearer.folder, inputs=inputs)
        except InputError as refused:
            faults += refused.faults
    if faults:
        raise InputError(faults)
    for folder in (place, place / CALL_SHEETS, place / RECORDS, place / LAYOUT):
        folder.mkdir(exist_ok=True)
    return place


def put_file(place: Path, data: bytes | str) -> None:
    """Write a file beside its place and put it there whole; one that is the same already is left alone."""
    raw = data.encode() if isinstance(data, str) else data
    if place.is_file() and place.read_bytes() == raw:
        return
    beside = place.with_name(f".{place.name}.new-{secrets.token_hex(4)}")
    try:
        beside.write_bytes(raw)
        to_disk(beside)
        os.replace(beside, place)
    finally:
        beside.unlink(missing_ok=True)


def as_json(data: Any) -> str:
    """Return data as a record has it: the same text for the same data."""
    return json.dumps(data, indent=1, ensure_ascii=False, allow_nan=False) + "\n"


def read_record(place: Path, name: str) -> dict[str, Any] | None:
    """Return the record of a wearer or a lay, None where there is none that can be read."""
    try:
        found = json.loads((place / RECORDS / f"{name}.json").read_bytes())
    except (OSError, ValueError, RecursionError):
        return None
    return found if isinstance(found, dict) else None


def report_key(folder: Path) -> str:
    """Return the key of a wearer's `report.json` without the seconds that the work took; "" without one."""
    try:
        report = json.loads((folder / REPORT).read_bytes())
        report.pop("timings", None)
        return hashlib.sha256(json.dumps(report, sort_keys=True).encode()).hexdigest()
    except (OSError, ValueError, RecursionError, AttributeError):
        return ""


def stands(place: Path, folder: str, key: str) -> dict[str, Any] | None:
    """Return the record of a wearer who was made from the same `key` and whose folder is whole, else None."""
    record = read_record(place, folder)
    if record is None or record.get("key") != key or record.get("report") != report_key(place / folder):
        return None
    files = listed_in(place / folder, REPORT)
    whole = files is not None and all((place / folder / name).is_file() for name in files)
    return record if whole else None


def left_behind(place: Path, folders: Iterable[str]) -> list[str]:
    """Return the folders of wearers that an earlier run made and this cast does not have."""
    kept = {*folders, CALL_SHEETS, RECORDS, LAYOUT}
    return sorted(
        one.name for one in place.iterdir() if one.name not in kept and listed_in(one, REPORT) is not None
    )


def cleared(place: Path, files: Iterable[str]) -> None:
    """Delete the files that the last run listed and this one no longer writes."""
    ours = (listed_in(place, CAST) or frozenset()) - {*files, CAST}
    for name in ours:
        path = place / name
        if path.parent in (place, place / CALL_SHEETS, place / RECORDS, place / LAYOUT):
            path.unlink(missing_ok=True)


__all__ = [
    "CALL_SHEETS",
    "FILES",
    "LAYOUT",
    "RECORDS",
    "as_json",
    "cast_folder",
    "cleared",
    "left_behind",
    "put_file",
    "read_record",
    "report_key",
    "stands",
]
