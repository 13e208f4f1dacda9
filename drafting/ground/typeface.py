"""Where the typeface of pictures and printed sheets lies: DejaVu Sans, which comes with matplotlib."""

from __future__ import annotations

from functools import cache
from importlib.util import find_spec
from pathlib import Path

FILES = {False: "DejaVuSans.ttf", True: "DejaVuSans-Bold.ttf"}


@cache
def typeface(bold: bool = False) -> Path:
    """Return the typeface's file. The package is not loaded for it, unless its data lie elsewhere.

    >>> typeface(bold=True).name
    'DejaVuSans-Bold.ttf'
    """
    found = find_spec("matplotlib")
    beside = Path(found.origin).parent / "mpl-data" if found and found.origin else Path()
    if not (beside / "fonts").is_dir():
        from matplotlib import get_data_path

        beside = Path(get_data_path())
    return beside / "fonts" / "ttf" / FILES[bold]
