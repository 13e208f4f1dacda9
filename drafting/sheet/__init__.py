"""A `Sheet`: strokes and texts on named layers, neutral between pieces and file formats.

mm, y up, the lower left corner of the page at 0. Exporters draw a sheet and know nothing of pieces;
what the screen shows and what the printer prints come from the same sheet.
"""

from __future__ import annotations

import math
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, field
from enum import StrEnum
from functools import lru_cache
from typing import Literal

from drafting.geometry import Path
from drafting.geometry.path import Box
from drafting.ground.palette import Colour

LEADING = 1.32
"""Distance of two baselines, as a share of the text size (common practice: 1.2 to 1.45)."""

Anchor = Literal["start", "middle", "end"]

SHARES: dict[Anchor, float] = {"start": 0.0, "middle": 0.5, "end": 1.0}
"""The share of its width that a text lies to the left of where it stands."""


class Layer(StrEnum):
    """What a line or text means. Files carry these names."""

    CLOTH = "cloth"
    CUT = "cut-line"
    STITCH = "stitch-line"
    FOLD = "fold-line"
    DART = "dart"
    LEVEL = "level"
    GRAIN = "grainline"
    STRETCH = "stretch-arrow"
    NOTCH = "notch"
    PLACEMENT = "placement"
    GUIDE = "guide"
    SCALE = "scale-check"
    JOIN = "join-mark"
    PAGE = "page"
    LABEL = "label"


@dataclass(frozen=True, slots=True)
class Stroke:
    """One line on one layer: one or more paths under one `id`, each closed or each open.

    `tint` fills it.
    """

    layer: Layer
    paths: tuple[Path, ...]
    id: str
    closed: bool = False
    tint: Colour | None = None

    def moved(self, by: complex) -> Stroke:
        paths = tuple([path.moved(by) for path in self.paths])
        return Stroke(self.layer, paths, self.id, self.closed, self.tint)

    @property
    def bounds(self) -> Box:
        return box_around(path.bounds for path in self.paths)


@dataclass(frozen=True, slots=True)
class Text:
    """Upright lines of text, `size` mm (the em).

    `at` is where the first baseline starts, has its middle, or ends, as `anchor` says; each further
    line lies `LEADING` sizes below.
    """

    at: complex
    size: float
    lines: tuple[str, ...]
    anchor: Anchor = "start"
    bold: bool = False
    layer: Layer = Layer.LABEL

    def moved(self, by: complex) -> Text:
        return Text(self.at + by, self.size, self.lines, self.anchor, self.bold, self.layer)

    @property
    def baselines(self) -> tuple[complex, ...]:
        return tuple(self.at - 1j * LEADING * self.size * i for i in range(len(self.lines)))

    @property
    def bounds(self) -> Box:
        """The room the text takes, by estimate (no font is opened): on the wide side."""
        width, size = text_width(self), self.size
        left = self.at.real - width * SHARES[self.anchor]
        low = self.at.imag - LEADING * size * (len(self.lines) - 1) - 0.25 * size
        return left, low, left + width, self.at.imag + 0.8 * size


@dataclass(frozen=True)
class Sheet:
    """A page of `width` x `height` mm with everything that is drawn on it."""

    title: str
    width: float
    height: float
    strokes: tuple[Stroke, ...] = ()
    texts: tuple[Text, ...] = field(default=())
    description: str = ""

    def on(self, layer: Layer) -> tuple[Stroke, ...]:
        """Return the strokes of one layer, in the order drawn."""
        return tuple(stroke for stroke in self.strokes if stroke.layer is layer)


def box_around(boxes: Iterable[Box]) -> Box:
    """Return the box round `boxes` (at least one)."""
    lows_x, lows_y, highs_x, highs_y = zip(*boxes, strict=True)
    return min(lows_x), min(lows_y), max(highs_x), max(highs_y)


def wider_box(box: Box, by: float) -> Box:
    """Return `box` with `by` mm more on every side."""
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def moved_box(box: Box, by: complex) -> Box:
    """Return `box` moved."""
    return box[0] + by.real, box[1] + by.imag, box[2] + by.real, box[3] + by.imag


def box_path(box: Box) -> Path:
    """Return the closed outline of `box`, anticlockwise."""
    x0, y0, x1, y1 = box
    return Path.polygon(complex(x0, y0), complex(x1, y0), complex(x1, y1), complex(x0, y1))


def text_width(text: Text) -> float:
    """Return the estimated width of the longest line, mm."""
    widest = max(map(_line_width, text.lines), default=0.0)
    return widest * text.size * (1.1 if text.bold else 1.0)


@lru_cache(maxsize=8192)
def _line_width(line: str) -> float:
    return math.fsum(map(_advance, line))


def _advance(character: str) -> float:
    """Width of one character in ems, read off common sans-serif faces and rounded up."""
    if unicodedata.combining(character):
        return 0.0
    if unicodedata.east_asian_width(character) in "WF":
        return 1.0
    if character in " .,:;'|!ijl()":
        return 0.37
    return 0.78 if character.isupper() or character in "mw%&@" else 0.61


def page_round(box: Box, margin: float) -> tuple[complex, float, float]:
    """Return the move (whole mm) onto a page with `margin` mm round `box`, and its width and height."""
    x0, y0, x1, y1 = box
    by = -complex(math.floor(x0 - margin), math.floor(y0 - margin))
    width, height = math.ceil(x1 + by.real + margin), math.ceil(y1 + by.imag + margin)
    return by, float(width), float(height)


def assembled(
    title: str, strokes: Iterable[Stroke], texts: Iterable[Text], margin: float, description: str = ""
) -> Sheet:
    """Return the sheet that holds everything, `margin` mm around, moved by whole millimetres."""
    strokes, texts = tuple(strokes), tuple(texts)
    boxes = [stroke.bounds for stroke in strokes] + [text.bounds for text in texts]
    by, width, height = page_round(box_around(boxes), margin)
    return Sheet(
        title,
        width,
        height,
        strokes=tuple(stroke.moved(by) for stroke in strokes),
        texts=tuple(text.moved(by) for text in texts),
        description=description,
    )
