"""A garment drawn for the screen. Pure: the same garment, view and unit give the same text."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from drafting.checks.words import plain
from drafting.costume import Made
from drafting.export.screen import screen_text
from drafting.garment import MadeGarment
from drafting.notebook.controls import Shown
from drafting.notebook.picture.ground import bar, grid
from drafting.notebook.picture.seams import edge_lines, seam_groups
from drafting.notebook.picture.view import View, framed
from drafting.pattern import CutPiece
from drafting.sheet import Layer, Sheet, Stroke
from drafting.sheet.overview import overview_sheet


def drawn(
    made: Made, garment: str, before: Made | None = None, view: View | None = None,
    unit: Shown = "cm",
) -> str:  # fmt: skip
    """Return the picture of one garment as SVG; the shapes of `before` lie pale under it."""
    shown = garment_of(made, garment)
    return picture(shown_sheet(made, garment, before), shown, view or View(), unit)


def shown_sheet(made: Made, garment: str, before: Made | None = None) -> Sheet:
    """Return the garment's part of the overview that is exported, earlier shapes under it.

    The screen draws a scale bar of its own.
    """
    now = garment_of(made, garment)
    sheet = overview_sheet([now.pattern], made.costume.title, bar=False)
    earlier = [g for g in before.garments if g.name == garment] if before else []
    ghosts = tuple(ghost for was in earlier for ghost in _ghosts(sheet, now, was))
    return replace(sheet, strokes=(*ghosts, *sheet.strokes))


def picture(sheet: Sheet, garment: MadeGarment, view: View, unit: Shown) -> str:
    """Return the SVG of a sheet of `garment`: grid, lines, scale bar, and words for the pointer."""
    frame = framed(sheet, garment.name, view)
    over = bar(frame, sheet.height, unit) + seam_groups(garment, sheet, frame, unit, view.edge)
    under = grid(frame, sheet.height, unit)
    return screen_text(sheet, frame.box, _said(garment, view, unit), under, over)


def garment_of(made: Made, name: str) -> MadeGarment:
    return next(garment for garment in made.garments if garment.name == name)


def _said(garment: MadeGarment, view: View, unit: Shown) -> str:
    """Return what the picture shows, in words for who cannot see it."""
    words = f"{plain(view.piece) or 'all pieces'} of the {plain(garment.name)}"
    piece, _, edge = view.edge.partition(".")
    if piece in garment.draft and edge in garment.draft[piece]:
        words = ". ".join((words, *edge_lines(garment.draft, (piece, edge), unit)))
    return words[:1].upper() + words[1:]


def _ghosts(sheet: Sheet, now: MadeGarment, was: MadeGarment) -> Iterator[Stroke]:
    """Yield the earlier cut line of each piece that changed, where the piece lies now."""
    lying = {stroke.id: stroke for stroke in sheet.on(Layer.CUT)}
    earlier = _cuts(was)
    for key, cut in _cuts(now).items():
        if key in earlier and key in lying and earlier[key].cut != cut.cut:
            by = lying[key].paths[0].start - cut.cut.start
            yield Stroke(Layer.GUIDE, (earlier[key].cut.moved(by),), f"{key}.before", closed=True)


def _cuts(garment: MadeGarment) -> dict[str, CutPiece]:
    """Return every piece by the id of its cut line on the overview."""
    return {f"{garment.name}.{cut.piece.name}.cut-line": cut for cut in garment.pattern.pieces}
