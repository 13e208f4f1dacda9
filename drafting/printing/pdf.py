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

from reportlab.lib.colors import HexColor
from reportlab.pdfbase import pdfdoc
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

LANGUAGE = "en"
"""What the kit's own words are written in."""

DECIMALS = 4
"""A ten-thousandth of a mm: lengths of many segments read back within a hundredth."""

LAYERS = tuple(Layer)
NAMES = {layer: str(layer).replace("-", " ") for layer in LAYERS}
"""What the layers are called in the file."""

LOOKS = STYLES | {Layer.SCALE: LineStyle(0.15, (), Colour.FAINT), Layer.LABEL: LineStyle(0.3, (), Colour.INK)}
"""On paper the squares lie among the pieces' lines: thinner, and grey. The page map is a label's line."""

WORDS = TEXT_COLOURS | {Layer.SCALE: Colour.FAINT}
"""What is only paper is grey, its words as well."""


@dataclass(frozen=True)
class DrawingOnPage:
    """One drawing on a page: its name, and where it lies on the plane."""

    name: str
    spot: PlaceOnPage


@dataclass(frozen=True)
class Page:
    """One page: its size, the corner of its window on paper and on the plane, and what it shows.

    Only what lies in `window` is drawn. `name` becomes the page's label; no two pages share one.
    """

    name: str
    width: float
    height: float
    margin: float
    window: Box
    strokes: tuple[Stroke, ...] = ()
    texts: tuple[Text, ...] = ()
    shown: tuple[DrawingOnPage, ...] = ()


Bookmarks = Sequence[tuple[str, str]]
"""What a reader lists beside the pages: words, and the name of the page they lead to."""

Drawings = Mapping[str, tuple[Sequence[Stroke], Sequence[Text]]]


def pdf_bytes(
    title: str, subject: str, drawings: Drawings, pages: Sequence[Page], bookmarks: Bookmarks = ()
) -> bytes:
    """Return the PDF of these pages; drawings are named in `Page.shown`.

    It asks the printer for no scaling, says its language, and opens with its `bookmarks`.
    """
    register_typeface()
    buffer = io.BytesIO()
    first = (pages[0].width * POINTS, pages[0].height * POINTS)
    canvas = Canvas(
        buffer,
        pagesize=first,
        invariant=1,
        pageCompression=1,
        initialFontName=PLAIN,
        pdfVersion=(1, 5),
        lang=LANGUAGE,
    )
    _say(canvas, clean_text(title), clean_text(subject))
    layers = _layers(canvas)
    keys = {name: f"piece{n}" for n, name in enumerate(drawings)}
    for name, (strokes, texts) in drawings.items():
        _store(canvas, keys[name], strokes, texts, layers)
    for number, page in enumerate(pages):
        for n in (n for n, (_, name) in enumerate(bookmarks) if name == page.name):
            canvas.bookmarkPage(f"mark{n}")
        _page(canvas, page, keys)
        _name_layers(canvas, layers)
        canvas.addPageLabel(number, prefix=page.name)
    for n, (words, _) in enumerate(bookmarks):
        canvas.addOutlineEntry(clean_text(words), f"mark{n}")
    canvas.save()
    return buffer.getvalue()


def _say(canvas: Any, title: str, subject: str) -> None:
    canvas.setTitle(title)
    canvas.setSubject(subject)
    canvas.setAuthor("")
    canvas.setCreator("drafting kit")
    canvas.setViewerPreference("PrintScaling", "None")  # `Source.ISO_32000`, table 147
    canvas.setViewerPreference("DisplayDocTitle", "true")


def _layers(canvas: Any) -> Any:
    """Return the marks of all layers for whatever is drawn on them, the layers named in the file."""
    document = canvas._doc
    groups = [
        document.Reference(
            pdfdoc.PDFDictionary({"Type": pdfdoc.PDFName("OCG"), "Name": pdfdoc.PDFString(NAMES[layer])})
        )
        for layer in LAYERS
    ]
    shown = pdfdoc.PDFDictionary({"Order": pdfdoc.PDFArray(groups), "ON": pdfdoc.PDFArray(groups)})
    kept = pdfdoc.PDFDictionary({"OCGs": pdfdoc.PDFArray(groups), "D": shown})
    document.Catalog.__NoDefault__ = [*document.Catalog.__NoDefault__, "OCProperties"]
    canvas.setCatalogEntry("OCProperties", kept)
    return document.Reference(pdfdoc.PDFDictionary({f"L{n}": group for n, group in enumerate(groups)}))


def _resources(layers: Any, forms: Any = None) -> Any:
    found = pdfdoc.PDFResourceDictionary(Properties=layers)
    found.basicFonts()
    if forms:
        found.XObject = forms
    return found


def _name_layers(canvas: Any, layers: Any) -> None:
    """Give the page that was shown last the layers by which its marks are switched."""
    page = canvas._doc.Pages.pages[-1]
    page.Resources = _resources(layers, page.XObjects)


def _store(canvas: Any, key: str, strokes: Sequence[Stroke], texts: Sequence[Text], layers: Any) -> None:
    box = wider_box(box_around([s.bounds for s in strokes] + [t.bounds for t in texts]), 10.0)
    canvas.beginForm(key, *box)
    _draw(canvas, strokes, texts)
    canvas.endForm(Resources=_resources(layers))


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
                _words(canvas, words, WORDS.get(layer, Colour.INK))


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
    """Draw the paths of a stroke, in the words of the format (`Source.ISO_32000`, tables 59 and 60).

    The library's own writer of numbers takes longer than all the rest of a page.
    """
    canvas._code.append(f"n {' '.join(_drawn(path, stroke.closed) for path in stroke.paths)} S")


def _drawn(path: Path, closed: bool) -> str:
    segments = path.segments
    if closed and len(segments) > 1 and isinstance(segments[-1], Line):
        segments = segments[:-1]  # closing draws it
    steps = [f"{_at(path.start)} m"]
    for segment in segments:
        places = [_at(point) for point in segment[1:]]
        steps.append(f"{' '.join(places)} {'l' if isinstance(segment, Line) else 'c'}")
    if closed:
        steps.append("h")
    return " ".join(steps)


def _at(point: complex) -> str:
    if not abs(point) < 1e7:
        raise ValueError(f"a page holds {point}, which is no place on paper")
    return f"{round(point.real, DECIMALS)!r} {round(point.imag, DECIMALS)!r}"


def _words(canvas: Any, texts: Sequence[Text], colour: str) -> None:
    canvas.setFillColor(HexColor(colour))
    for text in texts:
        canvas.setFont(BOLD if text.bold else PLAIN, text.size)
        for line, at in zip(text.lines, text.baselines, strict=True):
            words = line_as_set(line, text.bold)
            share = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor]
            canvas.drawString(at.real - share * line_width(words, text.size, text.bold), at.imag, words)
