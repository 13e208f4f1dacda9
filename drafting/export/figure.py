"""A sheet as a picture in PNG, for looking at; lengths are not to be taken from it.

Curves go to the renderer as cubics, nothing is thinned out, and the file carries no date, so that
one sheet gives one picture.
"""

from __future__ import annotations

import warnings
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Any

from matplotlib.backends.backend_agg import RendererAgg
from matplotlib.colors import to_rgba
from matplotlib.font_manager import FontProperties
from matplotlib.path import Path as Outline
from matplotlib.transforms import Affine2D
from PIL import Image

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

SQUEEZED = 4
"""How hard a PNG is squeezed, of 9: the last tenth of its size would take as long as all the drawing (ours)."""


def overview_png(sheet: Sheet, path: FilePath, dpi: int = 130) -> None:
    """Write `sheet` as a PNG whose longer side has 12 x `dpi` pixels."""
    pixels = LONGEST * dpi / max(sheet.width, sheet.height)
    size = max(1, int(sheet.width * pixels)), max(1, int(sheet.height * pixels))
    canvas = _Canvas(_renderer(*size, dpi), pixels)
    for layer in Layer:
        for stroke in sheet.on(layer):
            canvas.draw(stroke)
    with warnings.catch_warnings():
        warnings.filterwarnings("ignore", message="Glyph .* missing")  # a script the face lacks
        for text in sheet.texts:
            canvas.write(text)
    painted = Image.frombuffer("RGBA", size, canvas.pen.buffer_rgba(), "raw", "RGBA", 0, 1)
    paper = Image.new("RGB", size, Colour.PAPER)
    paper.paste(painted, mask=painted.getchannel("A"))
    paper.save(path, format="png", compress_level=SQUEEZED)


def outline(path: Path, closed: bool) -> Outline:
    """Return `path` in the renderer's own kind, cubics as cubics."""
    points, codes = [path.start], [Outline.MOVETO]
    for segment in path.segments:
        kind = Outline.LINETO if isinstance(segment, Line) else Outline.CURVE4
        points += segment[1:]
        codes += [kind] * (len(segment) - 1)
    if closed:
        points.append(path.start)
        codes.append(Outline.CLOSEPOLY)
    drawn = Outline([(p.real, p.imag) for p in points], codes)
    drawn.should_simplify = False
    return drawn


_renderer: Any = RendererAgg
"""The renderer's own calls are not typed."""


@dataclass(frozen=True)
class _Canvas:
    """What is drawn on: the renderer, and its pixels for each mm of the sheet."""

    pen: Any
    pixels: float

    def draw(self, stroke: Stroke) -> None:
        """Draw the lines of one stroke, over their halo and its tint."""
        style = STYLES[stroke.layer]
        whole = Outline.make_compound_path(*(outline(path, stroke.closed) for path in stroke.paths))
        whole.should_simplify = False
        flat, width = Affine2D().scale(self.pixels), style.width * LIVELY
        if style.halo:
            look = self._look(Colour.PAPER, (style.width + 2 * style.halo) * LIVELY)
            self.pen.draw_path(look, whole, flat)
        look = self._look(style.colour, width)
        if style.dash:
            look.set_dashes(0.0, [length * LIVELY * 0.6 * width for length in style.dash])
        tint = to_rgba(stroke.tint) if stroke.tint else None
        self.pen.draw_path(look, whole, flat, tint)

    def write(self, text: Text) -> None:
        """Write the lines of a text, each along its baseline."""
        look = self._look(TEXT_COLOURS.get(text.layer, Colour.INK), 1.0)
        face = _face(text.bold, text.size * self.pixels / self.pen.points_to_pixels(1.0))
        share = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor]
        for line, at in zip(text.lines, text.baselines, strict=True):
            words = clean_text(line)
            wide = self.pen.get_text_width_height_descent(words, face, False)[0] if share and words else 0.0
            x, y = at.real * self.pixels - share * wide, self.pen.height - at.imag * self.pixels
            if words:
                self.pen.draw_text(look, x, y, words, face, 0.0)

    def _look(self, colour: str, width: float) -> Any:
        look = self.pen.new_gc()
        look.set_foreground(colour)
        look.set_linewidth(width)
        look.set_joinstyle("round")
        look.set_capstyle("butt")
        look.set_antialiased(True)
        look.set_snap(False)
        return look


def _face(bold: bool, size: float) -> FontProperties:
    """Return the typeface, `size` in points."""
    return FontProperties(fname=str(typeface(bold)), size=size)
