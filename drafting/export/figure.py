"""A sheet as a picture in PNG, for looking at; lengths are not to be taken from it.

Curves go to the painter as cubics, nothing is thinned out, and the file carries no date, so that
one sheet gives one picture. Lines are painted by matplotlib's own painter, which is asked without axes and
figures, that no sheet has. Words are set by Pillow.
"""

from __future__ import annotations

import struct
import zlib
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Any

import numpy as np
from matplotlib.backend_bases import GraphicsContextBase
from matplotlib.backends.backend_agg import RendererAgg
from matplotlib.path import Path as Outline
from matplotlib.transforms import Affine2D, IdentityTransform
from PIL import Image, ImageColor, ImageDraw, ImageFont

from drafting.geometry import Line, Path
from drafting.ground.names import clean_text
from drafting.ground.palette import Colour
from drafting.ground.typeface import typeface
from drafting.sheet import Layer, Sheet, Stroke, Text
from drafting.sheet.style import STYLES, TEXT_COLOURS

LONGEST = 12.0
"""inches: the longer side of the picture at 100 % (ours: about a screen)."""

LIVELY = 1.9
"""Points of line for each mm of line width: a picture is shrunk, its lines must not be (ours)."""

SQUEEZED = 2
"""How hard a PNG is squeezed, of 9: the last twentieth of its size would take three times as long (ours)."""

SEEN = 0.5
"""Pixels: words that are smaller are a speck that nobody reads, and no typeface is set so small."""

_painter: Any = RendererAgg
"""The painter's own calls are not typed."""


def overview_png(sheet: Sheet, path: FilePath, dpi: int = 130) -> None:
    """Write `sheet` as a PNG whose longer side has 12 x `dpi` pixels."""
    pixels = LONGEST * dpi / max(sheet.width, sheet.height)
    size = max(1, int(sheet.width * pixels)), max(1, int(sheet.height * pixels))
    canvas = _Canvas(_painter(*size, dpi), size, pixels)
    canvas.cover(Colour.PAPER)
    for layer in Layer:
        for stroke in sheet.on(layer):
            canvas.draw(stroke)
    paper = Image.frombuffer("RGBA", size, canvas.pen.buffer_rgba(), "raw", "RGBA", 0, 1).convert("RGB")
    pencil = ImageDraw.Draw(paper)
    for text in sheet.texts:
        canvas.write(text, pencil)
    path.write_bytes(png_bytes(paper))


def png_bytes(picture: Image.Image) -> bytes:
    """Return a picture in red, green and blue as PNG (ISO/IEC 15948, from memory), no row foretold by another.

    Drawings are flat: what foretells rows takes three times as long and makes the file no smaller.
    """
    wide, high = picture.size
    rows = np.zeros((high, 1 + 3 * wide), dtype=np.uint8)
    rows[:, 1:] = np.frombuffer(picture.tobytes(), dtype=np.uint8).reshape(high, 3 * wide)
    head = struct.pack(">IIBBBBB", wide, high, 8, 2, 0, 0, 0)
    parts = ((b"IHDR", head), (b"IDAT", zlib.compress(rows.tobytes(), SQUEEZED)), (b"IEND", b""))
    chunks = (
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        for name, data in parts
    )
    return b"\x89PNG\r\n\x1a\n" + b"".join(chunks)


def _outline(paths: tuple[Path, ...], closed: bool) -> Outline:
    """Return paths as one outline, cubics as cubics."""
    points: list[complex] = []
    codes: list[np.uint8] = []
    for path in paths:
        points.append(path.start)
        codes.append(Outline.MOVETO)
        for segment in path.segments:
            points += segment[1:]
            codes += [Outline.LINETO if isinstance(segment, Line) else Outline.CURVE4] * (len(segment) - 1)
        if closed:
            points.append(path.start)
            codes.append(Outline.CLOSEPOLY)
    found = Outline(np.array(points, dtype=np.complex128).view(np.float64).reshape(-1, 2), codes)
    found.should_simplify = False
    return found


def _look(colour: str, width: float, dashes: tuple[float, ...] = ()) -> GraphicsContextBase:
    """Return how a line looks; width and dashes in points."""
    look = GraphicsContextBase()
    look.set_foreground(colour)
    look.set_linewidth(width)
    look.set_capstyle("butt")
    look.set_joinstyle("round")
    look.set_snap(False)
    if dashes:
        look.set_dashes(0.0, dashes)
    return look


@dataclass(frozen=True)
class _Canvas:
    """What is drawn on: the painter, its pixels across and down, and for each mm of the sheet."""

    pen: Any
    size: tuple[int, int]
    pixels: float

    def cover(self, colour: str) -> None:
        """Paint all of the picture."""
        wide, high = self.size
        whole = Outline([(0, 0), (wide, 0), (wide, high), (0, high), (0, 0)], closed=True)
        self.pen.draw_path(_look(colour, 2.0), whole, IdentityTransform(), (*_shares(colour), 1.0))

    def draw(self, stroke: Stroke) -> None:
        """Draw the lines of one stroke, over their halo and its tint."""
        style = STYLES[stroke.layer]
        whole, flat = _outline(stroke.paths, stroke.closed), Affine2D().scale(self.pixels)
        if style.halo:
            self.pen.draw_path(_look(Colour.PAPER, (style.width + 2 * style.halo) * LIVELY), whole, flat)
        width = style.width * LIVELY
        look = _look(style.colour, width, tuple(length * LIVELY * 0.6 * width for length in style.dash or ()))
        self.pen.draw_path(look, whole, flat, (*_shares(stroke.tint), 1.0) if stroke.tint else None)

    def write(self, text: Text, pencil: ImageDraw.ImageDraw) -> None:
        """Write the lines of a text, each along its baseline."""
        size = text.size * self.pixels
        if size < SEEN:
            return
        face = _face(text.bold, size)
        colour, anchor = TEXT_COLOURS.get(text.layer, Colour.INK), ANCHORS[text.anchor]
        for line, at in zip(text.lines, text.baselines, strict=True):
            if words := clean_text(line):
                where = at.real * self.pixels, self.size[1] - at.imag * self.pixels
                pencil.text(where, words, fill=colour, font=face, anchor=anchor)


ANCHORS = {"start": "ls", "middle": "ms", "end": "rs"}
"""Pillow's words for where a text begins on its baseline."""


@lru_cache(maxsize=100)
def _face(bold: bool, size: float) -> ImageFont.FreeTypeFont:
    """Return the typeface, `size` in pixels."""
    return ImageFont.truetype(str(typeface(bold)), size, layout_engine=ImageFont.Layout.BASIC)


@lru_cache(maxsize=100)
def _shares(colour: str) -> tuple[float, ...]:
    """Return red, green and blue, each 0 to 1."""
    return tuple(part / 255 for part in ImageColor.getrgb(colour)[:3])
