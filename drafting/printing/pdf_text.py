"""The typeface that is embedded in every PDF, and what it cannot write.

DejaVu Sans comes with matplotlib: Latin, Greek, Cyrillic, Hebrew, Arabic and many signs, no Chinese,
Japanese or Korean. Lines that run from right to left are set in the order in which they are seen.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from functools import cache
from itertools import groupby

from reportlab import rl_config
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from drafting.ground.names import clean_text
from drafting.ground.typeface import typeface

PLAIN, BOLD = "drafting-sans", "drafting-sans-bold"
INSTEAD = "□"
"""What stands for a character that the typeface lacks."""

_JOINED = ("ARABIC LETTER", "SYRIAC LETTER", "DEVANAGARI", "BENGALI", "TAMIL", "MYANMAR", "KHMER")
"""Scripts whose letters change with their neighbours; here each stands by itself."""


@cache
def register_typeface() -> None:
    """Make the typeface known to the writer; once is enough."""
    rl_config.useA85 = 0  # streams as they are: half the size before squeezing, and none of the time
    for name in (PLAIN, BOLD):
        pdfmetrics.registerFont(TTFont(name, str(typeface(name == BOLD))))


def line_as_set(line: str, bold: bool = False) -> str:
    """Return a line as it is set: clean, lacking characters replaced, in the order seen."""
    register_typeface()
    known = pdfmetrics.getFont(BOLD if bold else PLAIN).face.charToGlyph
    text = clean_text(line)
    if text.isascii():
        return text  # all of it is known, and runs from left to right
    return _as_seen("".join(c if ord(c) in known else INSTEAD for c in text))


def line_width(line: str, size: float, bold: bool = False) -> float:
    """Return how wide a line as set comes out, in the unit of `size`."""
    register_typeface()
    return float(pdfmetrics.stringWidth(line, BOLD if bold else PLAIN, size))


def missing_letters(lines: Iterable[str]) -> str:
    """Return the characters that the typeface does not have, each once, in order."""
    register_typeface()
    known = pdfmetrics.getFont(PLAIN).face.charToGlyph
    letters = set().union(*map(clean_text, set(lines)))
    return "".join(sorted(c for c in letters if ord(c) not in known))


def has_unjoined_letters(lines: Iterable[str]) -> bool:
    """Say whether letters occur that should join with their neighbours and here do not."""
    return any(unicodedata.name(c, "").startswith(_JOINED) for c in set().union(*lines))


def _as_seen(line: str) -> str:
    """Return a line in the order seen from left to right.

    A short form of the Unicode bidirectional rules: runs of one direction, numbers left to right,
    signs between with the run before them; the first letter decides the order of the runs.
    """
    if not any(_leftward(c) for c in line):
        return line
    ways: list[bool] = []
    for c in line:
        strong = unicodedata.bidirectional(c) in ("L", "R", "AL", "EN", "AN")
        ways.append(_leftward(c) if strong or not ways else ways[-1])
    runs = [
        (way, "".join(c for _, c in run))
        for way, run in groupby(zip(ways, line, strict=True), key=lambda pair: pair[0])
    ]
    seen = [text[::-1] if way else text for way, text in runs]
    return "".join(reversed(seen) if ways[0] else seen)


def _leftward(c: str) -> bool:
    return unicodedata.bidirectional(c) in ("R", "AL")
