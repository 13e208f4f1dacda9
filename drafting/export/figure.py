"""A sheet as a picture in PNG, for looking at; lengths are not to be taken from it.

Curves go to the painter as cubics, nothing is thinned out, and the file carries no date, so that
one sheet gives one picture. Lines are painted by matplotlib's own painter, which is asked without the rest of
that library: half a second of loading would be spent on axes and figures that no sheet has. What it asks of a
look and an outline is stated here, and tests hold it. Words are set by Pillow.
"""

from __future__ import annotations

import struct
import zlib
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Any

import numpy as np
from matplotlib.backends import _backend_agg
from numpy.typing import NDArray
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

START, LINE, CUBIC, CLOSE = 1, 2, 4, 79
"""What the painter calls the kinds of points in an outline."""


_painter: Any = vars(_backend_agg)["RendererAgg"]
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
    paper = Image.frombuffer("RGBA", size, canvas.pen, "raw", "RGBA", 0, 1).convert("RGB")
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


@dataclass(frozen=True)
class PaintedOutline:
    """Lines and cubics as the painter reads them: places [n, 2], and of what kind each is."""

    vertices: NDArray[np.float64]
    codes: NDArray[np.uint8]
    should_simplify: bool = False
    simplify_threshold: float = 0.0


def painted_outline(paths: tuple[Path, ...], closed: bool) -> PaintedOutline:
    """Return paths as one outline, cubics as cubics."""
    points: list[complex] = []
    codes: list[int] = []
    for path in paths:
        points.append(path.start)
        codes.append(START)
        for segment in path.segments:
            points += segment[1:]
            codes += [LINE if isinstance(segment, Line) else CUBIC] * (len(segment) - 1)
        if closed:
            points.append(path.start)
            codes.append(CLOSE)
    places = np.array(points, dtype=np.complex128).view(np.float64).reshape(-1, 2)
    return PaintedOutline(places, np.array(codes, dtype=np.uint8))


class PaintedLook:
    """How a line looks, as the painter asks for it: red, green and blue, 0 to 1; width and dashes in points."""

    _alpha, _forced_alpha, _antialiased = 1.0, False, True
    _capstyle, _joinstyle = "butt", "round"
    _cliprect = None

    def __init__(self, colour: str, width: float, dashes: tuple[float, ...] = ()) -> None:
        self._rgb, self._linewidth = (*_shares(colour), 1.0), width
        self.dashes = dashes

    def _broken(self) -> tuple[float, tuple[float, ...] | None]:
        """Return where the dashes begin, and how long lines and gaps are."""
        return 0.0, self.dashes or None

    def _uncut(self) -> tuple[None, None]:
        """Return nothing: all of the picture is painted on."""
        return None, None

    def _nothing(self) -> None:
        return None

    def _no(self) -> bool:
        return False

    def _own_colour(self) -> tuple[float, ...]:
        return self._rgb

    def _one(self) -> float:
        return 1.0

    # What the painter calls. No line is moved onto whole pixels, and nothing is hatched.
    get_dashes, get_clip_path, get_snap = _broken, _uncut, _no
    get_hatch_path = get_sketch_params = _nothing
    get_hatch_color, get_hatch_linewidth = _own_colour, _one


@dataclass(frozen=True)
class _Canvas:
    """What is drawn on: the painter, its pixels across and down, and for each mm of the sheet."""

    pen: Any
    size: tuple[int, int]
    pixels: float

    def cover(self, colour: str) -> None:
        """Paint all of the picture."""
        wide, high = self.size
        whole = np.array([(0, 0), (wide, 0), (wide, high), (0, high), (0, 0)], dtype=np.float64)
        codes = np.array([START, LINE, LINE, LINE, CLOSE], dtype=np.uint8)
        self.pen.draw_path(
            PaintedLook(colour, 2.0), PaintedOutline(whole, codes), np.eye(3), (*_shares(colour), 1.0)
        )

    def draw(self, stroke: Stroke) -> None:
        """Draw the lines of one stroke, over their halo and its tint."""
        style = STYLES[stroke.layer]
        whole, flat = painted_outline(stroke.paths, stroke.closed), np.diag((self.pixels, self.pixels, 1.0))
        if style.halo:
            self.pen.draw_path(
                PaintedLook(Colour.PAPER, (style.width + 2 * style.halo) * LIVELY), whole, flat, None
            )
        width = style.width * LIVELY
        look = PaintedLook(
            style.colour, width, tuple(length * LIVELY * 0.6 * width for length in style.dash or ())
        )
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
