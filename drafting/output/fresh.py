"""A new folder of a maker's own files, which never touches what exists."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from drafting.ground.errors import Fault, InputError
from drafting.output.folder import swap_in


def write_fresh(folder: Path, texts: Mapping[str, str]) -> None:
    """Write `texts` by their file names into `folder`, whole or not at all.

    Raises `InputError` where the folder is there already and not empty, or cannot be made.
    """
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        what = "holds files already" if folder.is_dir() else "is a file"
        raise InputError(
            [Fault(what, "name a folder that is new or empty; nothing was touched", file=str(folder))]
        )

    def fill(place: Path) -> None:
        for name, text in texts.items():
            (place / name).write_text(text, "utf-8", newline="\n")

    swap_in(folder, fill)
