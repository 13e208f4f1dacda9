"""A sheet as SVG, one user unit = 1 mm. The only place where y is turned down for SVG.

Width and height stand in mm and the viewBox in mm (SVG 1.1, section 7: a unit is then one
millimetre whatever dots per inch a reader assumes). Nothing is transformed, no clock is read, and
every text passes `clean_text` and the XML writer's escaping.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

import svgwrite

from drafting.geometry import Line, Path
from drafting.ground.names import clean_text, safe_id
from drafting.ground.palette import Colour
from drafting.sheet import Layer, Sheet, Stroke, Text
from drafting.sheet.style import STYLES, TEXT_COLOURS

DECIMALS = 4
"""A ten-thousandth of a millimetre: lengths read back stay within a hundredth."""

DESCRIPTION_LIMIT = 2000
"""Characters kept of a sheet's description (ours)."""

SCREEN = 2.2
"""Screen pixels for each mm of line width where a drawing is fitted to its place (ours)."""

FONT = "DejaVu Sans, Verdana, Arial, sans-serif"
"""Wide faces first, as text widths are estimated on the wide side."""


def svg_text(sheet: Sheet, fit: bool = False, check: bool = False) -> str:
    """Return `sheet` as the text of an SVG file; the same sheet gives the same text.

    `fit` gives a drawing for the screen instead: as wide as its place allows, lines of a steady
    width, no XML head. `check` has every attribute validated (slow; meant for tests).
    """
    drawing = svgwrite.Drawing(
        size=(f"{_n(sheet.width)}mm", f"{_n(sheet.height)}mm"),
        viewBox=f"0 0 {_n(sheet.width)} {_n(sheet.height)}",
        profile="full",
        debug=check,
    )
    drawing.set_desc(clean_text(sheet.title), clean_text(sheet.description, DESCRIPTION_LIMIT))
    if fit:
        drawing.attribs.update(width="100%", style="height:auto;background:#fff")
        del drawing.attribs["height"]
    for layer in Layer:
        for group in _groups(drawing, sheet, layer, fit):
            drawing.add(group)
    head = "" if fit else '<?xml version="1.0" encoding="utf-8"?>\n'
    return f"{head}{drawing.tostring()}\n"


def _groups(drawing: Any, sheet: Sheet, layer: Layer, fit: bool) -> Iterator[Any]:
    """Yield the group of one layer; before it what clears the ground below, behind it its texts."""
    strokes = sheet.on(layer)
    style = STYLES[layer]
    if strokes and style.halo:
        halo = drawing.g(class_="halo", stroke=Colour.PAPER, fill="none")
        halo["stroke-width"] = _n((style.width + 2 * style.halo) * (SCREEN if fit else 1))
        for stroke in strokes:
            halo.add(_path(drawing, stroke, "halo", fit, name=False, height=sheet.height))
        yield halo
    if strokes:
        group = drawing.g(class_=str(layer), id=str(layer), stroke=style.colour, fill="none")
        group["stroke-width"] = _n(style.width * (SCREEN if fit else 1))
        group["stroke-linecap"] = "butt" if style.dash else "round"
        group["stroke-linejoin"] = "round"
        if style.dash:
            group["stroke-dasharray"] = _pairs(v * (SCREEN if fit else 1) for v in style.dash)
        for stroke in strokes:
            group.add(_path(drawing, stroke, str(layer), fit, name=True, height=sheet.height))
        yield group
    texts = [text for text in sheet.texts if text.layer is layer]
    if texts:
        words = drawing.g(class_="text", fill=TEXT_COLOURS.get(layer, Colour.INK), stroke="none")
        words["font-family"] = FONT
        for text in texts:
            for line in _text(drawing, text, sheet.height):
                words.add(line)
        yield words


def _path(drawing: Any, stroke: Stroke, kind: str, fit: bool, *, name: bool, height: float) -> Any:
    d = " ".join(path_data(path, height, stroke.closed) for path in stroke.paths)
    path = drawing.path(d=d, class_=kind)
    if name:
        path["id"] = safe_id(stroke.id)
        if stroke.tint:
            path["fill"] = str(stroke.tint)
    if fit:
        path["vector-effect"] = "non-scaling-stroke"
    return path


def path_data(path: Path, height: float, closed: bool = False) -> str:
    """Return the path commands of `path`, y turned down from `height`; cubics stay cubics."""
    segments = path.segments
    if closed and len(segments) > 1 and isinstance(segments[-1], Line):
        segments = segments[:-1]  # Z draws it
    parts = ["M", _at(path.start, height)]
    for segment in segments:
        parts.append("L" if isinstance(segment, Line) else "C")
        parts += [_at(point, height) for point in segment[1:]]
    return " ".join([*parts, "Z"] if closed else parts)


def _text(drawing: Any, text: Text, height: float) -> Iterator[Any]:
    for line, at in zip(text.lines, text.baselines, strict=True):
        element = drawing.text(clean_text(line), x=[_n(at.real)], y=[_n(height - at.imag)])
        element["font-size"] = _n(text.size)
        if text.bold:
            element["font-weight"] = "bold"
        if text.anchor != "start":
            element["text-anchor"] = text.anchor
        yield element


def _at(point: complex, height: float) -> str:
    return f"{_n(point.real)},{_n(height - point.imag)}"


def _pairs(values: Iterable[float]) -> str:
    return " ".join(map(_n, values))


def _n(value: float) -> str:
    """Return a number for the file, without needless noughts; not-a-numbers are refused."""
    if not abs(value) < 1e9:
        raise ValueError(f"a sheet holds {value}, which is no place on paper")
    text = f"{value:.{DECIMALS}f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
