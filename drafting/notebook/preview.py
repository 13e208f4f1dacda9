"""The picture on the bench: the overview that is exported, drawn for the screen."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from drafting.costume import Made
from drafting.export.svg import svg_text
from drafting.pattern import CutPiece
from drafting.sheet import Layer, Sheet, Stroke
from drafting.sheet.overview import overview_sheet

Size = tuple[float, float]
"""Width and height of a page, mm."""


def overview(made: Made) -> Sheet:
    """Return the sheet that `overview.png` is drawn from."""
    return overview_sheet([garment.pattern for garment in made.garments], made.costume.title)


def shown_sheet(made: Made, before: Made | None = None, least: Size = (0.0, 0.0)) -> Sheet:
    """Return the overview, the shapes of `before` under it, on a page of at least that size.

    A page that only grows keeps the picture from jumping while a slider is moved.
    """
    sheet = overview(made)
    if before is not None:
        ghosts = tuple(_ghosts(sheet, made, before))
        sheet = replace(sheet, strokes=(*ghosts, *sheet.strokes))
    return at_least(sheet, least)


def at_least(sheet: Sheet, least: Size) -> Sheet:
    """Return the sheet on a page not smaller than `least`, its upper left corner where it was."""
    width, height = max(sheet.width, least[0]), max(sheet.height, least[1])
    up = 1j * (height - sheet.height)
    if (width, height) == (sheet.width, sheet.height):
        return sheet
    return replace(
        sheet, width=width, height=height,
        strokes=tuple(stroke.moved(up) for stroke in sheet.strokes),
        texts=tuple(text.moved(up) for text in sheet.texts),
    )  # fmt: skip


def picture(sheet: Sheet) -> str:
    """Return a sheet as SVG for `ipywidgets.HTML`."""
    return svg_text(sheet, fit=True)


def _ghosts(sheet: Sheet, made: Made, before: Made) -> Iterator[Stroke]:
    """Yield the earlier cut line of each piece that changed, where the piece lies now."""
    lying = {stroke.id: stroke for stroke in sheet.on(Layer.CUT)}
    earlier = _cuts(before)
    for key, now in _cuts(made).items():
        if key in earlier and key in lying and earlier[key].cut != now.cut:
            by = lying[key].paths[0].start - now.cut.start
            yield Stroke(Layer.GUIDE, (earlier[key].cut.moved(by),), f"{key}.before", closed=True)


def _cuts(made: Made) -> dict[str, CutPiece]:
    """Return every piece by the id of its cut line on the overview."""
    return {
        f"{garment.name}.{cut.piece.name}.cut-line": cut
        for garment in made.garments
        for cut in garment.pattern.pieces
    }
