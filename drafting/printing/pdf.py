"""Pages as PDF, true to scale, with layers that can be switched. Knows no pieces.

One unit of a PDF is 1/72 in (`Source.ISO_32000`); every page is drawn in mm under that one factor, y up as
the plane is. Each drawing is stored once and shown on every page that it reaches, clipped to the
page's window. No clock is read: the same pages give the same bytes.
"""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

import pikepdf
from pikepdf import Array, Dictionary, Name, String
from reportlab.lib.colors import HexColor
from reportlab.pdfgen.canvas import Canvas

from drafting.geometry import Line, Path
from drafting.geometry.path import Box
from drafting.ground.names import clean_text
from drafting.ground.palette import Colour
from drafting.printing.pdf_text import BOLD, PLAIN, line_as_set, line_width, register_typeface
from drafting.printing.raster import PlaceOnPage
from drafting.sheet import Layer, Stroke, Text, box_around, wider_box
from drafting.sheet.style import STYLES, TEXT_COLOURS, LineStyle

POINTS = 72 / 25.4
"""Units of a PDF for 1 mm."""

DECIMALS = 5
"""A hundred-thousandth of a mm: lengths of many segments read back within a hundredth."""

LAYERS = tuple(Layer)
NAMES = {layer: str(layer).replace("-", " ") for layer in LAYERS}
"""What the layers are called in the file."""

LOOKS = STYLES | {Layer.SCALE: LineStyle(0.15, (), Colour.FAINT), Layer.LABEL: LineStyle(0.3, (), Colour.INK)}
"""On paper the squares lie among the pieces' lines: thinner, and grey. The page map is a label's line."""


@dataclass(frozen=True)
class DrawingOnPage:
    """One drawing on a page: its name, and where it lies on the plane."""

    name: str
    spot: PlaceOnPage


@dataclass(frozen=True)
class Page:
    """One page: its size, the corner of its window on paper and on the plane, and what it shows.

    Only what lies in `window` is drawn. `name` becomes the page's label.
    """

    name: str
    width: float
    height: float
    margin: float
    window: Box
    strokes: tuple[Stroke, ...] = ()
    texts: tuple[Text, ...] = ()
    shown: tuple[DrawingOnPage, ...] = ()


Drawings = Mapping[str, tuple[Sequence[Stroke], Sequence[Text]]]


def pdf_bytes(title: str, subject: str, drawings: Drawings, pages: Sequence[Page]) -> bytes:
    """Return the PDF of these pages; drawings are named in `Page.shown`."""
    register_typeface()
    buffer = io.BytesIO()
    first = (pages[0].width * POINTS, pages[0].height * POINTS)
    canvas = Canvas(buffer, pagesize=first, invariant=1, pageCompression=1, initialFontName=PLAIN)
    canvas.setTitle(clean_text(title))
    canvas.setSubject(clean_text(subject))
    canvas.setAuthor("")
    canvas.setCreator("drafting kit")
    keys = {name: f"piece{n}" for n, name in enumerate(drawings)}
    for name, (strokes, texts) in drawings.items():
        _store(canvas, keys[name], strokes, texts)
    for page in pages:
        _page(canvas, page, keys)
    canvas.save()
    return _layered(buffer.getvalue(), pages)


def _store(canvas: Any, key: str, strokes: Sequence[Stroke], texts: Sequence[Text]) -> None:
    box = wider_box(box_around([s.bounds for s in strokes] + [t.bounds for t in texts]), 10.0)
    canvas.beginForm(key, *box)
    _draw(canvas, strokes, texts)
    canvas.endForm()


def _page(canvas: Any, page: Page, keys: Mapping[str, str]) -> None:
    canvas.setPageSize((page.width * POINTS, page.height * POINTS))
    canvas.saveState()
    canvas.scale(POINTS, POINTS)
    canvas.translate(page.margin - page.window[0], page.margin - page.window[1])
    frame = canvas.beginPath()
    x0, y0, x1, y1 = page.window
    frame.rect(x0, y0, x1 - x0, y1 - y0)
    canvas.clipPath(frame, stroke=0, fill=0)
    _draw(canvas, page.strokes, page.texts)
    for shown in page.shown:
        factor, move = shown.spot.factor, shown.spot.move
        canvas.saveState()
        canvas.transform(factor.real, factor.imag, -factor.imag, factor.real, move.real, move.imag)
        canvas.doForm(keys[shown.name])
        canvas.restoreState()
    canvas.restoreState()
    canvas.showPage()


@contextmanager
def _layer(canvas: Any, layer: Layer) -> Iterator[None]:
    """Mark what is drawn within as content of one layer; graphics state is kept inside."""
    canvas._code.append(f"/OC /L{LAYERS.index(layer)} BDC")
    canvas.saveState()
    yield
    canvas.restoreState()
    canvas._code.append("EMC")


def _draw(canvas: Any, strokes: Sequence[Stroke], texts: Sequence[Text]) -> None:
    for layer in LAYERS:
        lines = [stroke for stroke in strokes if stroke.layer is layer]
        words = [text for text in texts if text.layer is layer]
        if lines or words:
            with _layer(canvas, layer):
                _lines(canvas, lines, LOOKS[layer])
                _words(canvas, words, TEXT_COLOURS.get(layer, Colour.INK))


def _lines(canvas: Any, strokes: Sequence[Stroke], look: LineStyle) -> None:
    canvas.setLineJoin(1)
    canvas.setLineCap(0 if look.dash else 1)
    if look.halo:
        canvas.setStrokeColor(HexColor(Colour.PAPER))
        canvas.setLineWidth(look.width + 2 * look.halo)
        for stroke in strokes:
            _trace(canvas, stroke)
    canvas.setStrokeColor(HexColor(look.colour))
    canvas.setLineWidth(look.width)
    if look.dash:
        canvas.setDash(list(look.dash))
    for stroke in strokes:
        _trace(canvas, stroke)


def _trace(canvas: Any, stroke: Stroke) -> None:
    drawn = canvas.beginPath()
    for path in stroke.paths:
        _add(drawn, path, stroke.closed)
    canvas.drawPath(drawn, stroke=1, fill=0)


def _add(drawn: Any, path: Path, closed: bool) -> None:
    segments = path.segments
    if closed and len(segments) > 1 and isinstance(segments[-1], Line):
        segments = segments[:-1]  # closing draws it
    drawn.moveTo(*_at(path.start))
    for segment in segments:
        numbers = [number for point in segment[1:] for number in _at(point)]
        (drawn.lineTo if isinstance(segment, Line) else drawn.curveTo)(*numbers)
    if closed:
        drawn.close()


def _at(point: complex) -> tuple[float, float]:
    if not abs(point) < 1e7:
        raise ValueError(f"a page holds {point}, which is no place on paper")
    return round(point.real, DECIMALS), round(point.imag, DECIMALS)


def _words(canvas: Any, texts: Sequence[Text], colour: str) -> None:
    canvas.setFillColor(HexColor(colour))
    for text in texts:
        canvas.setFont(BOLD if text.bold else PLAIN, text.size)
        for line, at in zip(text.lines, text.baselines, strict=True):
            words = line_as_set(line, text.bold)
            share = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor]
            canvas.drawString(at.real - share * line_width(words, text.size, text.bold), at.imag, words)


def _layered(data: bytes, pages: Sequence[Page]) -> bytes:
    """Return the file with its layers named, its pages labelled, its language-free metadata kept."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        groups = [pdf.make_indirect(Dictionary(Type=Name.OCG, Name=String(NAMES[layer]))) for layer in LAYERS]
        marks = pdf.make_indirect(Dictionary({f"/L{n}": g for n, g in enumerate(groups)}))
        for page in pdf.pages:
            page.obj.Resources.Properties = marks
            for form in page.obj.Resources.get("/XObject", Dictionary()).values():
                form.Resources.Properties = marks
        shown = Dictionary(Order=Array(groups), ON=Array(groups))
        pdf.Root.OCProperties = Dictionary(OCGs=Array(groups), D=shown)
        labels = [x for n, p in enumerate(pages) for x in (n, Dictionary(P=String(p.name)))]
        pdf.Root.PageLabels = Dictionary(Nums=Array(labels))
        out = io.BytesIO()
        pdf.save(
            out, min_version="1.5", deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.generate
        )
    return out.getvalue()
