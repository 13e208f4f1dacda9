"""Pictures of the worn costume as PNG: views side by side, and below them what their colours tell."""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO
from typing import Any

import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.image import imsave
from numpy.typing import NDArray

from drafting.ground.names import clean_text
from drafting.ground.palette import Colour

Image = NDArray[np.uint8]

DPI = 100
FOOT, LINE = 150, 24
"""Pixels under the views for the scale with its words, and more for each further line."""

BAR = 26
"""Pixels: the height of a scale of colours."""


def image_png(image: Image) -> bytes:
    """Return a picture (H, W, 3) as the bytes of a PNG, without a date."""
    file = BytesIO()
    imsave(file, image, format="png", metadata={"Software": None})
    return file.getvalue()


def told_png(
    views: Sequence[tuple[str, Image]],
    shades: Sequence[str],
    ends: Sequence[str],
    heading: str,
    words: Sequence[str],
) -> bytes:
    """Return named views side by side over a scale of `shades` with words at its `ends`, and sentences."""
    image = np.hstack([view for _, view in views])
    high, wide = image.shape[:2]
    foot = FOOT + LINE * len(words)
    figure = Figure(figsize=(wide / DPI, (high + foot) / DPI), dpi=DPI)
    figure.set_facecolor(Colour.PAPER)
    canvas = FigureCanvasAgg(figure)
    figure.figimage(image, 0, foot)
    write = _Writer(figure, wide, high + foot)
    left = 0.0
    for name, view in views:
        write.at(left + view.shape[1] / 2, foot + 8, name, ha="center")
        left += view.shape[1]
    _scale(figure, write, shades, ends, wide, foot)
    write.at(40, foot - 32, heading, fontweight="bold")
    for number, sentence in enumerate(words):
        write.at(40, LINE * (len(words) - number) - 6, sentence)
    file = BytesIO()
    canvas.print_png(file, metadata={"Software": None})  # type: ignore[no-untyped-call]
    return file.getvalue()


def _scale(
    figure: Figure, write: _Writer, shades: Sequence[str], ends: Sequence[str], wide: int, foot: int
) -> None:
    low, length = foot - 74, wide - 80
    axes = figure.add_axes((40 / wide, low / write.high, length / wide, BAR / write.high))
    axes.bar(range(len(shades)), 1.0, 1.0, color=list(shades), align="edge")
    axes.set(xlim=(0, len(shades)), ylim=(0, 1), xticks=[], yticks=[])
    for number, words in enumerate(ends):
        share = number / (len(ends) - 1)
        side = "left" if number == 0 else "right" if number == len(ends) - 1 else "center"
        write.at(40 + share * length, low - 22, words, ha=side, color=Colour.SOFT)


class _Writer:
    """Writes words at pixels of a figure, from its lower left corner."""

    def __init__(self, figure: Figure, wide: int, high: int) -> None:
        self.figure, self.wide, self.high = figure, wide, high

    def at(self, x: float, y: float, words: str, **looks: Any) -> None:
        own = {"fontsize": 10, "fontfamily": "DejaVu Sans", "color": Colour.INK, "parse_math": False} | looks
        self.figure.text(x / self.wide, y / self.high, clean_text(words), **own)
