"""Steps of style in the maker's costume file: one more at its end, the last one out again. No widgets."""

from __future__ import annotations

import tomllib
from pathlib import Path

from drafting.ground.errors import Fault, InputError
from drafting.ground.shipped import INSTALLED
from drafting.notebook.whole_files import decoded, put_whole


def keep_step(file: Path, step: str) -> None:
    """Put a step's table at the end of a costume file; what stands in it stays. Raises `InputError`, `OSError`."""
    text, writing = decoded(_raw(file))
    put_whole(file, writing.raw(f"{text.rstrip()}\n\n{step}"))


def take_back_step(file: Path, garment: str) -> str:
    """Take the last step of a garment, or its last pocket, out of its file, and return it as it stood.

    Raises `InputError` where it has none that begins with a line of its own, or something stands behind it.
    """
    text, writing = decoded(_raw(file))
    rows = text.splitlines(keepends=True)
    known = {f"[[garments.{garment}.{table}]]" for table in ("style", "pockets")}
    heads = [n for n, row in enumerate(rows) if row.split("#")[0].strip() in known]
    if not heads:
        raise InputError([Fault(f"the {garment} has no step to take back", "", "style", str(file))])
    ends = [n for n, row in enumerate(rows) if n > heads[-1] and row.lstrip().startswith("[")]
    end = ends[0] if ends else len(rows)
    left = "".join([*rows[: heads[-1]], *rows[end:]]).rstrip() + "\n"
    tomllib.loads(left)
    put_whole(file, writing.raw(left))
    return "".join(rows[heads[-1] : end]).rstrip() + "\n"


def _raw(file: Path) -> bytes:
    if INSTALLED in file.resolve().parents:
        what, right = "this costume belongs to the kit and is never changed", "save a copy of it on a bench first"
        raise InputError([Fault(what, right, "", str(file))])
    return file.read_bytes()
