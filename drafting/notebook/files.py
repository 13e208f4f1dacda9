"""Where a notebook finds the maker's files."""

from __future__ import annotations

import os
from pathlib import Path

from drafting.blocks import use_blocks
from drafting.ground.shipped import OWN_BLOCKS, shipped


def costume_path(name: str) -> Path:
    """Return the costume file `name`: the maker's beside the notebooks, else the shipped one.

    Jupyter runs a notebook in its own folder, so `measurements/` is the next folder over, in a
    checkout and in the copy that `drafting lab` makes alike.
    """
    file = Path("costumes") / f"{name}.toml"
    own = Path.cwd().parent / "measurements" / file
    return own if own.is_file() else shipped("measurements") / file


def take_own_blocks() -> None:
    """Draft with the maker's own blocks where the lab was opened with `--blocks DIR`.

    Raises `InputError` for what cannot be a block (any more).
    """
    folder = os.environ.get(OWN_BLOCKS)
    if folder:
        use_blocks(folder)
