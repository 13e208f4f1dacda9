"""The folder that a costume is written into from a page: one a costume, named after its file, never shared.

A small file beside the folder, `.out-NAME.costume`, says whose it is. A name that another costume has, or a
folder that stands there and is nobody's, is passed by: what lies there stays.
"""

from __future__ import annotations

import os
from itertools import count
from pathlib import Path

from drafting.ground.names import safe_name

BEGUN_AS = "costume"
"""What `drafting new` calls a costume file: the folder it stands in says which costume that is."""


def own_folder(costume: Path, root: Path = Path("..")) -> Path:
    """Return the folder in `root` that this costume file is written into, now and ever after.

    The first that is free of `out-shirt`, `out-shirt-2`, ... for `shirt.toml`. Raises `OSError` where
    nothing can be written into `root`.
    """
    owner, name = _owner(costume, root), folder_name(costume)
    for turn in count(1):
        folder = root / (name if turn == 1 else f"{name}-{turn}")
        if _is_of(folder, owner):
            return folder
    raise AssertionError


def folder_name(costume: Path) -> str:
    """Return the name of its folder.

    >>> folder_name(Path("measurements/costumes/kite.toml")), folder_name(Path("rosa-shirt/costume.toml"))
    ('out-kite', 'out-rosa-shirt')
    """
    stem = costume.stem if costume.stem != BEGUN_AS else costume.resolve().parent.name
    return f"out-{safe_name(stem)}"


def _is_of(folder: Path, owner: str) -> bool:
    """Return whether a folder is this costume's, or is from now on as it was nobody's."""
    mark = folder.with_name(f".{folder.name}.costume")
    if not mark.exists():
        if folder.exists() and not (folder.is_dir() and not any(folder.iterdir())):
            return False
        try:
            with mark.open("x", encoding="utf-8", newline="\n") as file:
                file.write(f"{owner}\n")
        except FileExistsError:
            pass  # another page was quicker
    return mark.read_text("utf-8", errors="replace").strip() == owner


def _owner(costume: Path, root: Path) -> str:
    try:
        return Path(os.path.relpath(costume.resolve(), root.resolve())).as_posix()
    except ValueError:  # on another drive
        return costume.resolve().as_posix()
