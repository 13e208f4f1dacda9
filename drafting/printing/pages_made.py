"""From finished pieces to printable pages: placed on paper, cut into pages, told on a first page."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from drafting.geometry import Path
from drafting.geometry.area import overlaps
from drafting.ground.names import clean_text
from drafting.printing.columns import wrapped
from drafting.printing.cover import FirstPages, ListedPiece, cover_paper, covers
from drafting.printing.imposed import Imposed
from drafting.printing.page_marks import STAMPED, Marks, Stamp, page_marks, quiet_corner, square_box
from drafting.printing.pages import Place, Tiling, all_pages, page_name
from drafting.printing.paper import Paper
from drafting.printing.pdf import DrawingOnPage, Page, pdf_bytes
from drafting.printing.pdf_text import has_unjoined_letters, missing_letters
from drafting.printing.piece_on_paper import PieceOnPaper
from drafting.printing.placing import TURNS, Placing, places_on_pages
from drafting.printing.raster import PlaceOnPage
from drafting.printing.roll import places_on_roll
from drafting.sheet import Layer, Sheet, Stroke, Text, box_path, moved_box, text_width, wider_box

HOW = "how to print"
"""What the first pages are called in the file."""

STAMP_WIDTH, STAMP_LINES = 90.0, 4
"""mm, and lines: room for the names of a page's pieces in its square (ours)."""


def imposed(title: str, drawings: Sequence[PieceOnPaper], paper: Paper) -> Imposed:
    """Return drawings placed on paper so that few pages are printed; blank pages are left out.

    Words stand upright on the paper, and clear of the squares.
    """
    half = paper.overlap / 2 * (1 + 1j)
    placing, tiling = _places(drawings, paper)
    lying = tuple(d.turned(s.turn) for d, s in zip(drawings, placing.spots, strict=True))
    spots = tuple(PlaceOnPage(0, s.move + half) for s in placing.spots)
    found = Imposed(title, lying, tiling, spots)
    printed = tuple(place for place in tiling.used if _is_printed(found, place))
    found = replace(found, tiling=replace(tiling, used=printed))
    corners = {place: _corner(found, place) for place in printed}
    found = replace(found, corners=corners)
    for n, (drawing, spot) in enumerate(zip(drawings, placing.spots, strict=True)):
        squares = [moved_box(square_box(corner), -spots[n].move) for corner in corners.values()]
        others = drawing.clear_of(spot.turn, squares)
        found = next((new for other in others if (new := _with_words(found, n, other))), found)
    return found


def _places(drawings: Sequence[PieceOnPaper], paper: Paper) -> tuple[Placing, Tiling]:
    """Return where drawings go and the pages under them.

    Words that have room in a piece are taken to have it however it is turned; where one then finds none,
    all turns of its piece are drawn and everything is placed again.
    """
    beside = {n for n, drawing in enumerate(drawings) if drawing.beside}
    rings = [drawing.ring for drawing in drawings]
    while True:
        turned = [d.rings if n in beside else (d.ring,) * len(TURNS) for n, d in enumerate(drawings)]
        if paper.height is None:
            placing, length = places_on_roll(rings, paper.step, turned=turned)
            wide = placing.columns * paper.step[0] + paper.overlap
            tiling = all_pages(wide, length + paper.overlap, paper)
        else:
            placing = places_on_pages(rings, paper.step, turned=turned)
            tiling = Tiling(paper, placing.rows, placing.columns, placing.used)
        lying = [d.turned(s.turn) for d, s in zip(drawings, placing.spots, strict=True)]
        found = {n for n, drawing in enumerate(lying) if drawing.beside} - beside
        if not found:
            return placing, tiling
        beside |= found


def _with_words(found: Imposed, n: int, other: PieceOnPaper) -> Imposed | None:
    """Return the pages with another drawing of piece `n`; None where words beside it meet another piece."""
    drawings = tuple(other if k == n else drawing for k, drawing in enumerate(found.drawings))
    rings = [[p + s.move for p in d.ring] for d, s in zip(drawings, found.spots, strict=True)]
    met = other.beside and any(n in pair for *pair, _ in overlaps(rings))
    return None if met else replace(found, drawings=drawings)


def _corner(found: Imposed, place: Place) -> complex:
    """Return where the squares of a page go: off all words if they can, and where few lines lie."""
    on = found.on(place)
    ink = np.concatenate([found.ink[n] for n in on]) if on else np.zeros(0, dtype=complex)
    words = [moved_box(text.bounds, found.spots[n].move) for n in on for text in found.drawings[n].texts]
    return quiet_corner(found.tiling.cell(place), ink, words)


def _is_printed(found: Imposed, place: Place) -> bool:
    """Say whether a page shows ink once it is cut, or the inside of a piece."""
    cell = found.tiling.cell(place)
    if found.marked(wider_box(cell, 1.0)):
        return True
    middle = complex(cell[0] + cell[2], cell[1] + cell[3]) / 2
    return any(_inside(middle, outline) for outline in found.outlines)


def _inside(point: complex, outline: Path) -> bool:
    ring = np.append(outline.points(0.5), outline.start) - point
    turned = np.angle(ring[1:] * ring[:-1].conjugate()).sum()
    return bool(abs(turned) > math.pi)


@dataclass(frozen=True)
class SheetPdf:
    """A sheet as PDF; `first` counts the pages before the pieces, `said` is what to say of its text."""

    data: bytes
    first: int
    said: tuple[str, ...]


def sheet_pdf(work: Imposed, about: str = "") -> SheetPdf:
    """Return the PDF of these pages."""
    said = text_warnings(work)
    listed = _listed(work)
    first = _covers(work, listed, about, said)
    pages = [*first, *(_page(work, listed, n, len(first)) for n in range(len(work.tiling.used)))]
    stored = {d.name: (d.strokes, d.texts) for d in work.drawings}
    marks = [(first[0].name.capitalize(), first[0].name)]
    marks += [(piece.title, page_name(piece.places[0])) for piece in listed if piece.places]
    data = pdf_bytes(f"{work.title}, {work.tiling.paper.title}", about, stored, pages, marks)
    return SheetPdf(data, len(first), said)


def _listed(work: Imposed) -> tuple[ListedPiece, ...]:
    """Return the pieces with the pages that they lie on once these are cut."""
    lying = {place: set(work.marked(work.tiling.cell(place))) for place in work.tiling.used}
    return tuple(
        ListedPiece(
            title=drawing.title,
            about=drawing.about,
            places=tuple(place for place, there in lying.items() if n in there),
            outline=outline,
        )
        for n, (drawing, outline) in enumerate(zip(work.drawings, work.outlines, strict=True))
    )


def text_warnings(work: Imposed) -> tuple[str, ...]:
    """Return what the embedded typeface cannot write of the labels, as sentences."""
    lines = [line for d in work.drawings for text in d.texts for line in text.lines]
    lines.append(work.title)
    said = []
    if lost := missing_letters(lines):
        said.append(f"The typeface of the printed sheets has no letters for {lost[:20]}: a box stands instead.")
    if has_unjoined_letters(lines):
        said.append("Letters that join with their neighbours are printed one by one.")
    return tuple(said)


def _covers(work: Imposed, listed: tuple[ListedPiece, ...], about: str, said: tuple[str, ...]) -> list[Page]:
    paper = cover_paper(work.tiling.paper)
    assert paper.height is not None
    return [
        Page(
            name=HOW if n == 1 else f"{HOW}, {n}",
            width=paper.width,
            height=paper.height,
            margin=paper.margin,
            window=(0.0, 0.0, *paper.net),
            strokes=strokes,
            texts=texts,
        )
        for n, (strokes, texts) in enumerate(covers(FirstPages(work.title, about, listed, said), work.tiling), 1)
    ]


def _page(work: Imposed, listed: Sequence[ListedPiece], number: int, first: int) -> Page:
    tiling, place = work.tiling, work.tiling.used[number]
    marks = _marks(work, place, _stamp(work, listed, number, first))
    shown = tuple(DrawingOnPage(work.drawings[n].name, work.spots[n]) for n in work.on(place))
    paper = tiling.paper
    assert paper.height is not None
    return Page(
        name=page_name(place),
        width=paper.width,
        height=paper.height,
        margin=paper.margin,
        window=tiling.window(place),
        strokes=marks[0],
        texts=marks[1],
        shown=shown,
    )


def _stamp(work: Imposed, listed: Sequence[ListedPiece], number: int, first: int) -> Stamp:
    """Return what a page says of itself: its name, the pieces on it, what it belongs to."""
    place = work.tiling.used[number]
    on = [piece for piece in listed if place in piece.places]
    titles = ", ".join(clean_text(piece.title, 40) for piece in on)
    names = wrapped(f"pieces: {titles}", STAMPED, False, STAMP_WIDTH)
    if len(names) > STAMP_LINES:
        names = wrapped(f"pieces: {', '.join(piece.number for piece in on)}", STAMPED, False, STAMP_WIDTH)
    whole = len(work.tiling.used) + first
    which = f"page {number + 1 + first} of {whole}, {work.tiling.paper.title}"
    return Stamp(page_name(place), (*(names if on else ()), clean_text(work.title, 44), which))


def _marks(work: Imposed, place: Place, stamp: Stamp) -> Marks:
    words = [moved_box(text.bounds, work.spots[n].move) for n in work.on(place) for text in work.drawings[n].texts]
    return page_marks(work.tiling, place, stamp, work.corners[place], words)


def preview(work: Imposed) -> Sheet:
    """Return a picture of all pages side by side: their cells, their names, the pieces on them."""
    wide, high = work.tiling.size
    size = max(8.0, min(wide, high) / 40)
    strokes: list[Stroke] = []
    texts: list[Text] = []
    for drawing, spot, outline in zip(work.drawings, work.spots, work.outlines, strict=True):
        strokes += [
            Stroke(s.layer, tuple(p.mapped(spot.of) for p in s.paths), s.id, s.closed, s.tint)
            for s in drawing.strokes
            if s.layer in (Layer.CUT, Layer.STITCH, Layer.GRAIN)
        ]
        x0, y0, x1, y1 = outline.bounds
        at = complex(x0 + x1, y0 + y1) / 2 - 0.35j * size
        text = Text(at, size, (drawing.title,), "middle")
        narrow = text_width(text) > x1 - x0
        texts.append(replace(text, lines=(drawing.title.partition(" ")[0],)) if narrow else text)
    for place in work.tiling.used:
        cell = work.tiling.cell(place)
        strokes.append(Stroke(Layer.PAGE, (box_path(cell),), f"page.{page_name(place)}", closed=True))
        at = complex(cell[0] + 0.4 * size, cell[3] - 1.6 * size)
        texts.append(Text(at, 1.5 * size, (page_name(place),), bold=True, layer=Layer.PAGE))
    return Sheet(work.title, wide, high, tuple(strokes), tuple(texts))
