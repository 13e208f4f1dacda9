"""Pictures of the worn costume as PNG: views side by side, and below them what their colours tell."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Any

import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.image import imsave

from drafting.ground.names import clean_text
from drafting.ground.palette import Colour
from drafting.worn.picture.draw import Image

UNDATED: Any = {"Software": None}
"""Keeps the writer from putting a version in."""

DPI = 100
NAMES, SCALE, LINE, EDGE = 30, 100, 22, 30
"""Pixels under the views for their names, for a scale with its words, for each line, and left free beside."""

BAR = 24
"""Pixels: the height of a scale of colours."""

LETTER = 7.6
"""Pixels that a letter takes, on the wide side."""


def image_png(image: Image) -> bytes:
    """Return a picture (H, W, 3) as the bytes of a PNG, without a date."""
    file = BytesIO()
    imsave(file, image, format="png", metadata=UNDATED)
    return file.getvalue()


@dataclass(frozen=True)
class Scale:
    """What colours tell: a heading, `shades` from the lowest to the highest, and words at even places below."""

    heading: str
    shades: tuple[str, ...]
    ends: tuple[str, ...]


def views_png(views: Sequence[tuple[str, Image]], words: Sequence[str], scale: Scale | None = None) -> bytes:
    """Return named views side by side as a PNG; below them a scale of colours, if there is one, and sentences."""
    image = np.hstack([view for _, view in views])
    high, wide = image.shape[:2]
    rows = [row for sentence in words for row in textwrap.wrap(sentence, int(wide / LETTER))]
    foot = NAMES + LINE * len(rows) + (SCALE if scale else 0)
    figure = Figure(figsize=(wide / DPI, (high + foot) / DPI), dpi=DPI)
    figure.set_facecolor(Colour.PAPER)
    canvas = FigureCanvasAgg(figure)
    figure.figimage(image, 0, foot)
    write = _Writer(figure, wide, high + foot)
    left = 0.0
    for name, view in views:
        write.at(left + view.shape[1] / 2, foot - 14, name, ha="center", color=Colour.SOFT)
        left += view.shape[1]
    if scale:
        _draw_scale(figure, write, scale, foot - NAMES)
    for number, row in enumerate(rows):
        write.at(EDGE, LINE * (len(rows) - number) - 10, row)
    file = BytesIO()
    canvas.print_png(file, metadata=UNDATED)  # type: ignore[no-untyped-call]
    return file.getvalue()


def _draw_scale(figure: Figure, write: _Writer, scale: Scale, top: int) -> None:
    """Draw a scale with its heading below `top` (pixels from the foot)."""
    write.at(EDGE, top - 14, scale.heading, fontweight="bold")
    low, length, count = top - 24 - BAR, write.wide - 2 * EDGE, len(scale.shades)
    axes = figure.add_axes((EDGE / write.wide, low / write.high, length / write.wide, BAR / write.high))
    axes.bar(range(count), 1.0, 1.0, color=list(scale.shades), align="edge")
    axes.set(xlim=(0, count), ylim=(0, 1), xticks=[], yticks=[])
    last = len(scale.ends) - 1
    for number, words in enumerate(scale.ends):
        side = "left" if number == 0 else "right" if number == last else "center"
        write.at(EDGE + number / last * length, low - 18, words, ha=side, color=Colour.SOFT)


class _Writer:
    """Writes words at pixels of a figure, from its lower left corner."""

    def __init__(self, figure: Figure, wide: int, high: int) -> None:
        self.figure, self.wide, self.high = figure, wide, high

    def at(self, x: float, y: float, words: str, **looks: Any) -> None:
        own: dict[str, Any] = {
            "fontsize": 10,
            "fontfamily": "DejaVu Sans",
            "color": Colour.INK,
            "parse_math": False,
        } | looks
        self.figure.text(x / self.wide, y / self.high, clean_text(words), **own)
