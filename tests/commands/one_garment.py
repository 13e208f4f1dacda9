"""A costume of one garment, in a folder of its own, for the tests of commands."""

from __future__ import annotations

import shutil
from pathlib import Path

from drafting.ground.shipped import shipped


def costume_in(folder: Path, text: str) -> Path:
    """Write a costume file beside the lamplighter's body and velveteen; return its path."""
    for name in ("bodies/lamplighter.toml", "fabrics/velveteen.toml"):
        shutil.copy(shipped("measurements") / name, folder)
    file = folder / "bodice.toml"
    file.write_text(text)
    return file
