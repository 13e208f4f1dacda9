"""Contact sheets as pictures: the present one in full, and a small stored one to look at.

`DRAFTING_REWRITE_GOLDEN=1` rewrites the stored ones after a wanted change of shape; without it
nothing is written but the picture of the present draft, into a folder of the test's own.
"""

from __future__ import annotations

import os
from pathlib import Path

from PIL import Image

from drafting.export.figure import overview_png
from drafting.sheet import Sheet

GOLDEN = Path(__file__).resolve().parent.parent / "golden"
REWRITE = os.environ.get("DRAFTING_REWRITE_GOLDEN") == "1"

LONGEST = 900
"""Pixels of a stored picture's longer side: its outlines, marks and titles can be told."""

COLOURS = 16
"""The tints of the pieces, ink, and the steps between."""

LARGEST = 80_000
"""Bytes that a stored picture may have."""


def stored_small(picture: Path, at: Path) -> None:
    """Store a picture with few pixels and colours."""
    with Image.open(picture) as full:
        small = full.convert("RGB")
    small.thumbnail((LONGEST, LONGEST), Image.Resampling.LANCZOS)
    small.quantize(COLOURS, dither=Image.Dither.NONE).save(at, optimize=True)


def drawn_and_stored(sheet: Sheet, name: str, folder: Path, dpi: int, least: int) -> None:
    """Draw the sheet into `folder`: more than `least` bytes, and a small copy of it is stored."""
    picture, stored = folder / name, GOLDEN / name
    overview_png(sheet, picture, dpi=dpi)
    assert picture.stat().st_size > least
    if REWRITE:
        stored_small(picture, stored)
    assert stored.is_file(), "look at it once with DRAFTING_REWRITE_GOLDEN=1"
    assert stored.stat().st_size <= LARGEST
