"""Which part of the page is shown, and how large: a value of its own, apart from the draft."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.geometry.path import Box
from drafting.sheet import box_around, moved_box, wider_box
from drafting.sheet.overview import Overview, Rows

PIXELS = (960.0, 640.0)
"""Width and height of the picture's place until the page has said how large it is."""

FOOT = 58.0
"""Pixels at the foot of the picture that are kept for the scale bar and the words of an edge."""

LETTERS = 12.5
"""Pixels: the text at the foot (common practice: a page's body text is 13 to 16)."""

STEP = 1.5
"""One press of Closer or Farther."""

CLOSEST = STEP**8

AROUND = 15.0
"""mm shown round a single piece."""


@dataclass(frozen=True)
class View:
    """How the picture is looked at: `zoom` times as large as fits, all pieces, a part or one `piece`.

    `edge` ("front.armhole") is looked at: its words are shown and a closer view is centred on it.
    `place` is how many pixels wide and high the picture is on the page, `rows` how the pieces are set
    in it (None: as in the overview that is exported).
    `least` is the box (mm, from `fitted_box`) shown at least before zooming: kept from one picture to
    the next it keeps the pieces from jumping while a slider is moved.
    """

    zoom: float = 1.0
    piece: str = ""
    edge: str = ""
    least: Box | None = None
    place: tuple[float, float] = PIXELS
    rows: Rows | None = None

    def closer(self) -> View:
        return replace(self, zoom=min(CLOSEST, self.zoom * STEP))

    def farther(self) -> View:
        return replace(self, zoom=max(1.0, self.zoom / STEP))

    def fit(self) -> View:
        """Return the view that shows the whole again, no larger than it now has to be."""
        return replace(self, zoom=1.0, least=None, rows=None)

    def of(self, piece: str) -> View:
        """Return the view of another piece, or ("") of all."""
        if piece == self.piece:
            return self
        edge = self.edge if self.edge.startswith(f"{piece}.") or not piece else ""
        return View(piece=piece, edge=edge, place=self.place)

    def placed(self, place: tuple[float, float]) -> View:
        """Return the view in a place of another size, px."""
        return replace(self, place=place, least=None, rows=None)

    def at(self, edge: str) -> View:
        return replace(self, edge=edge)


@dataclass(frozen=True)
class Frame:
    """What is shown: `box` of the page (mm, y up), its `foot` included; `pixel` is mm a pixel."""

    box: Box
    pixel: float

    @property
    def foot(self) -> float:
        """Height of the strip at the foot, mm."""
        return FOOT * self.pixel

    @property
    def em(self) -> float:
        """Size of the letters at the foot, mm."""
        return LETTERS * self.pixel

    @property
    def width(self) -> float:
        return self.box[2] - self.box[0]


def fitted_box(page: Overview, view: View) -> Box:
    """Return the box that fits the picture before zooming, counted from the page's upper left corner or
    from the middle of the piece shown.

    What was shown last (`View.least`) stays as it is while the pieces fit into it.
    """
    piece = page.piece(view.piece)
    if piece is None:
        whole = (0.0, -page.height, page.width, 0.0)
    else:
        x0, y0, x1, y1 = wider_box(piece.bounds, AROUND)
        whole = _about(0.0, 0.0, x1 - x0, y1 - y0)
    return _shaped(box_around([whole, view.least] if view.least else [whole]), view.place)


def framed(page: Overview, view: View) -> Frame:
    """Return what is shown: the fitted box, nearer by the zoom, and the foot below it."""
    home = _anchor(page, view)
    x0, y0, x1, y1 = moved_box(fitted_box(page, view), home)
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    if view.zoom > 1 and (middle := _edge_middle(page, view.edge)):
        x, y = middle.real, middle.imag
    wide, high = (x1 - x0) / view.zoom, (y1 - y0) / view.zoom
    left, low, right, top = _about(x, y, wide, high)
    pixel = wide / view.place[0]
    return Frame((left, low - FOOT * pixel, right, top), pixel)


def _anchor(page: Overview, view: View) -> complex:
    """Return the middle of the piece shown, or the upper left corner of the page."""
    piece = page.piece(view.piece)
    if piece is None:
        return 1j * page.height
    x0, y0, x1, y1 = piece.bounds
    return complex(x0 + x1, y0 + y1) / 2


def _shaped(box: Box, place: tuple[float, float]) -> Box:
    """Return the least box round `box`, about its middle, in the shape of the place."""
    x0, y0, x1, y1 = box
    across, up = place[0], max(place[1] - FOOT, FOOT)
    pixel = max((x1 - x0) / across, (y1 - y0) / up)
    return _about((x0 + x1) / 2, (y0 + y1) / 2, across * pixel, up * pixel)


def _about(x: float, y: float, wide: float, high: float) -> Box:
    return x - wide / 2, y - high / 2, x + wide / 2, y + high / 2


def _edge_middle(page: Overview, ref: str) -> complex | None:
    name, _, edge = ref.partition(".")
    laid = page.piece(name)
    if laid is None or edge not in laid.cut_piece.piece:
        return None
    path = laid.cut_piece.piece[edge].path
    return path.at(path.length / 2) + laid.by
