"""A sheet as a picture in PNG, for looking at; lengths are not to be taken from it.

Curves go to the renderer as cubics, nothing is thinned out, and the file carries no date, so that
one sheet gives one picture.
"""

from __future__ import annotations

import warnings
from pathlib import Path as FilePath
from typing import Any

from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.path import Path as Outline

from drafting.geometry import Line, Path
from drafting.ground.names import clean_text
from drafting.ground.palette import Colour
from drafting.sheet import Layer, Sheet, Stroke, Text
from drafting.sheet.style import STYLES, TEXT_COLOURS

LONGEST = 12.0
"""inches: the longer side of the picture at 100 % (ours: about a screen)."""

LIVELY = 1.9
"""Points of line for each mm of line width: a picture is shrunk, its lines must not be (ours)."""

POINTS_PER_INCH = 72.0


def overview_png(sheet: Sheet, path: FilePath, dpi: int = 130) -> None:
    """Write `sheet` as a PNG whose longer side has 12 x `dpi` pixels."""
    scale = LONGEST / max(sheet.width, sheet.height)
    figure = Figure(figsize=(sheet.width * scale, sheet.height * scale), dpi=dpi)
    figure.set_facecolor(Colour.PAPER)
    canvas = FigureCanvasAgg(figure)
    axes = figure.add_axes((0, 0, 1, 1))
    axes.set(xlim=(0, sheet.width), ylim=(0, sheet.height), aspect="equal")
    axes.axis("off")
    for order, layer in enumerate(Layer):
        for stroke in sheet.on(layer):
            if STYLES[layer].halo:
                axes.add_patch(_halo(stroke, order))
            axes.add_patch(_patch(stroke, order))
    for text in sheet.texts:
        _write(axes, text, scale * POINTS_PER_INCH)
    with warnings.catch_warnings():
        warnings.filterwarnings("ignore", message="Glyph .* missing")  # a script the face lacks
        canvas.print_png(path, metadata={"Software": None})  # type: ignore[no-untyped-call]


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


def _whole(stroke: Stroke) -> Outline:
    whole = Outline.make_compound_path(*(outline(path, stroke.closed) for path in stroke.paths))
    whole.should_simplify = False
    return whole


def _halo(stroke: Stroke, order: int) -> PathPatch:
    style = STYLES[stroke.layer]
    looks: dict[str, Any] = {"fill": False, "edgecolor": Colour.PAPER, "zorder": 1 + order}
    return PathPatch(_whole(stroke), linewidth=(style.width + 2 * style.halo) * LIVELY, **looks)


def _patch(stroke: Stroke, order: int) -> PathPatch:
    style = STYLES[stroke.layer]
    width = style.width * LIVELY
    dash = (0.0, tuple(length * LIVELY * 0.6 for length in style.dash)) if style.dash else "solid"
    return PathPatch(
        _whole(stroke),
        facecolor=stroke.tint or "none",
        fill=stroke.tint is not None,
        edgecolor=style.colour,
        linewidth=width,
        linestyle=dash,
        joinstyle="round",
        capstyle="butt",
        zorder=1 + order,
        snap=False,
        antialiased=True,
    )


def _write(axes: Axes, text: Text, points: float) -> None:
    looks: dict[str, Any] = {
        "fontsize": text.size * points,
        "ha": {"start": "left", "middle": "center", "end": "right"}[text.anchor],
        "va": "baseline",
        "color": TEXT_COLOURS.get(text.layer, Colour.INK),
        "fontfamily": "DejaVu Sans",
        "fontweight": "bold" if text.bold else "normal",
        "parse_math": False,
        "zorder": 50,
    }
    for line, at in zip(text.lines, text.baselines, strict=True):
        axes.text(at.real, at.imag, clean_text(line), **looks)
