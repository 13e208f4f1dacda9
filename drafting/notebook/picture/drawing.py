"""A garment drawn for the screen. Pure: the same garment, view and unit give the same text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from drafting.checks.words import plain
from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.draft.landmark import landmarks
from drafting.export.screen import screen_text
from drafting.export.svg_writer import Svg, svg_joined
from drafting.ground.units import LengthUnit
from drafting.notebook.picture.ground import bar, grid
from drafting.notebook.picture.parts import PART, shown_in
from drafting.notebook.picture.seams import edge_lines, seam_groups
from drafting.notebook.picture.view import View, framed
from drafting.sheet import Layer, Stroke
from drafting.sheet.overview import Overview, overview


def garment_svg(
    made: Made,
    garment: str,
    before: Made | None = None,
    view: View | None = None,
    unit: LengthUnit = "cm",
    garments: Sequence[str] = (),
) -> Svg:
    """Return the garment_picture of one garment as SVG; the shapes of `before` lie pale on it.

    `garments` names all of the costume, where `made` holds only some.
    """
    shown, view = made[garment], view or View()
    return garment_picture(page_of(made, garment, view, garments), shown, before, view, unit)


def page_of(made: Made, garment: str, view: View, garments: Sequence[str] = ()) -> Overview:
    """Return the garment's part of the overview that is exported; the screen has its own scale bar.

    Pieces that `view` does not show are left out, and one piece alone has no heading.
    """
    pattern = shown_in(made[garment].pattern, view.piece)
    page = overview([pattern], made.costume.title, bar=False, garments=garments, rows=view.rows)
    return replace(page, texts=()) if page.piece(view.piece) else page


def garment_picture(
    page: Overview, garment: MadeGarment, before: Made | None, view: View, unit: LengthUnit, pointed: bool = True
) -> Svg:
    """Return the SVG of `garment` on its page: pieces, grid, scale bar, and words for the pointer.

    The grid lies on the pieces as a clear ruler does; so do, pale, the shapes of `before`. What only the
    pointer finds is left out where nobody can point yet (`pointed`), unless an edge is looked at.
    """
    frame = framed(page, view)
    over = [grid(frame, page.height, unit), bar(frame, page.height, unit)]
    if pointed or view.edge:
        over.append(seam_groups(garment, page, frame, unit, view.edge))
    earlier = [g for g in before.garments if g.name == garment.name] if before else []
    ghosts = {name: ghost for was in earlier for name, ghost in _ghosts(garment, was)}
    return screen_text(page, frame.box, _said(garment, view, unit), svg_joined(over), ghosts)


def _said(garment: MadeGarment, view: View, unit: LengthUnit) -> str:
    """Return what the picture shows, in words for who cannot see it."""
    words = f"{plain(view.piece.removeprefix(PART)) or 'all pieces'} of the {plain(garment.name)}"
    piece, _, edge = view.edge.partition(".")
    if piece in garment.draft and edge in garment.draft[piece]:
        words = ". ".join((words, *edge_lines(garment.draft, (piece, edge), unit)))
    return words[:1].upper() + words[1:]


def _ghosts(now: MadeGarment, was: MadeGarment) -> Iterator[tuple[str, Stroke]]:
    """Yield the earlier cut line of each piece that changed, by name, a landmark of both in one place."""
    earlier = {cut.piece.name: cut for cut in was.pattern.pieces}
    for cut in now.pattern.pieces:
        name = cut.piece.name
        old = earlier.get(name, cut)
        if old.cut is not cut.cut and old.cut != cut.cut:
            here, there = landmarks(cut.piece, old.piece)
            line, key = old.cut.moved(here - there), f"{now.name}.{name}.cut-line.before"
            yield name, Stroke(Layer.GUIDE, (line,), key, closed=True)
