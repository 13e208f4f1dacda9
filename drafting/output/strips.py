"""Strips to paste over a paper pattern that is cut already, as a PDF true to scale."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.costume.make import Made, MadeGarment, finished
from drafting.costume.refitted import refitted
from drafting.finish.label import Label, spoken
from drafting.fitting.strip import has_changed, is_cut_anew, strips_between
from drafting.ground.errors import DraftError
from drafting.ground.units import ShownUnit
from drafting.output.sheets import piece_label
from drafting.printing.pages_made import imposed, sheet_pdf
from drafting.printing.paper import PAPERS, Paper
from drafting.printing.piece_on_paper import PieceOnPaper, piece_on_paper
from drafting.printing.strip_on_paper import strip_on_paper


def strips_pdf(
    before: MadeGarment, after: MadeGarment, paper: Paper = PAPERS["a4-or-letter"], unit: ShownUnit = "cm"
) -> bytes | None:
    """Return the strips between two drafts of a garment on pages, None where no line moved as far as one sees.

    Each shows the new line, the old one to lay it by, and how far it moved. A piece of which too much changed
    has none; its name stands in the PDF's first page, to be printed again.

    >>> from drafting.body import wearer
    >>> from drafting.costume.garment import draft_garment
    >>> body = wearer({"height": 1700, "bust_girth": 900, "waist_girth": 720, "hip_girth": 970})
    >>> one, two = (draft_garment(body, None, "shirt", {"bust_ease": ease}) for ease in (100.0, 112.0))
    >>> strips_pdf(one, two)[:5], strips_pdf(one, one)
    (b'%PDF-', None)
    """
    drawings = tuple(_drawings(before, after, unit))
    anew = pieces_anew(before, after)
    if not drawings:
        return None
    again = f"Print again whole: {', '.join(map(spoken, anew))}." if anew else ""
    how = "Cut round the strip, lay old line on old line, paste, and cut along the new line."
    work = imposed(f"{spoken(after.name)}, strips to paste over", drawings, paper)
    return sheet_pdf(work, f"{how} {again}".strip()).data


def changed_pieces_pdf(
    before: MadeGarment, after: MadeGarment, label: Label, paper: Paper = PAPERS["a4-or-letter"]
) -> bytes | None:
    """Return the pieces whole that changed between two drafts of a garment, or are new; None for none."""
    old = {cut.piece.name: cut for cut in before.pattern.pieces}
    changed = [
        piece_on_paper(cut, label)
        for cut in after.pattern.pieces
        if cut.piece.name not in old or has_changed(old[cut.piece.name], cut)
    ]
    if not changed:
        return None
    work = imposed(f"{spoken(after.name)}, pieces that changed", changed, paper)
    return sheet_pdf(
        work, "Only these pieces changed at the last fitting: print them in place of the old ones."
    ).data


def strips_of_last_fitting(made: Made) -> Iterator[tuple[str, bytes]]:
    """Yield by name the strips for what the last fitting moved, a garment each, and its changed pieces whole.

    There are none where no fitting was held, nor for another wearer than the one fitted, who has no paper
    pattern yet. Where the draft before it cannot be told any more, there is
    nothing to paste over.
    """
    costume = made.costume
    fittings = costume.fittings
    if not fittings.held or fittings.taped is None or not fittings.fitted_on_her:
        return
    try:
        before = finished(refitted(costume, fittings.held[:-1]))
    except DraftError:
        return
    earlier = {garment.name: garment for garment in before.garments}
    for garment in made.garments:
        if garment.name in earlier:
            old = earlier[garment.name]
            strips = strips_pdf(old, garment, unit=costume.told_in)
            pieces = changed_pieces_pdf(old, garment, piece_label(made, garment))
            found = {garment.name: strips, f"{garment.name}-changed": pieces}
            yield from ((name, pdf) for name, pdf in found.items() if pdf is not None)


def pieces_anew(before: MadeGarment, after: MadeGarment) -> tuple[str, ...]:
    """Return the pieces that changed too much for a strip, or that were not there before."""
    old = {cut.piece.name: cut for cut in before.pattern.pieces}
    return tuple(
        cut.piece.name
        for cut in after.pattern.pieces
        if cut.piece.name not in old or is_cut_anew(old[cut.piece.name], cut)
    )


def _drawings(before: MadeGarment, after: MadeGarment, unit: ShownUnit) -> Iterator[PieceOnPaper]:
    old = {cut.piece.name: cut for cut in before.pattern.pieces}
    for cut in after.pattern.pieces:
        if cut.piece.name in old:
            for number, strip in enumerate(strips_between(old[cut.piece.name], cut), 1):
                yield strip_on_paper(strip, cut, number, unit)
