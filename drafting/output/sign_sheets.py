"""The signs that a garment can show, drawn on its wearer, with what to try for each cause."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.costume.make import Made, MadeGarment
from drafting.finish.label import spoken
from drafting.fitting.note import AmountAs, Note, NoteKind
from drafting.fitting.signs import FitSign
from drafting.fitting.to_try import note_to_try, signs_of
from drafting.ground.units import ShownUnit, show_length
from drafting.sheet import Sheet
from drafting.sheet.figures import SmallFigure
from drafting.sheet.sign_page import SignCell, sign_pages
from drafting.sheet.wearer import figure_build
from drafting.sheet.wearer.folds import sign_drawn

HEAD = (
    "The likeliest cause stands first. Folds point at their cause. Try one thing, look again, then pin; "
    "amounts are a beginning (from memory)."
)


def sign_sheets(made: Made, garment: MadeGarment, figures: Sequence[SmallFigure]) -> Iterator[Sheet]:
    """Yield the pages of signs of one garment, on the figure of its wearer."""
    body, unit = made.costume.wearer, made.costume.told_in
    form = figure_build(body)
    cells = []
    for sign in signs_of(garment.draft):
        drawn = sign_drawn(sign, figures, body, form)
        cells.append(
            SignCell(
                seen=sign.seen,
                outlines=drawn.outlines,
                lines=drawn.lines,
                box=drawn.box,
                said=tuple(_said(sign, garment, unit)),
            )
        )
    if cells:
        yield from sign_pages(f"What it shows: {spoken(garment.name)}", HEAD, cells)


def _said(sign: FitSign, garment: MadeGarment, unit: ShownUnit) -> Iterator[str]:
    """Yield each cause with what is tried for it, the likeliest first."""
    for number, cause in enumerate(sign.causes, 1):
        note = note_to_try(cause.attempt, garment.draft, garment.name)
        attempt = f": {_note(note, unit)}" if note else ""
        yield f"{number} {cause.why}{attempt}"


def _note(note: Note, unit: ShownUnit) -> str:
    counted = "" if note.counted is AmountAs.SEAM else f", {note.counted}"
    where = spoken(str(note.where)) if note.kind is NoteKind.BODY else str(note.where)
    return f"{note.verb} {where} {show_length(note.amount, unit)}{counted}"
