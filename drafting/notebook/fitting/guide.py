"""What stands beside the notes: the fit chart of a garment, and the signs it can show with what to try. Pure."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.costume.make import Made, MadeGarment
from drafting.export.svg_writer import SPACE, Pen, Svg, element, path_data
from drafting.finish.label import spoken
from drafting.fitting.bands import sort_of_garment
from drafting.fitting.note import Note, NoteKind
from drafting.fitting.performer import to_try
from drafting.fitting.signs import FitSign
from drafting.fitting.to_try import note_to_try, signs_of
from drafting.ground.lengths import in_unit
from drafting.ground.templates import Html, macros
from drafting.ground.units import ShownUnit, show_length
from drafting.making.fit.told import fit_tables
from drafting.making.words import text
from drafting.sheet.wearer import draw_wearer, figure_build
from drafting.sheet.wearer.folds import SignDrawn, sign_drawn
from drafting.sheet.wearer.small import small_figures


def chart_html(made: Made, garment: MadeGarment) -> Html:
    """Return ease by level, movement, and what the performer tries, of a garment as it stands."""
    unit = made.costume.told_in
    tables = [
        (
            text(table.key),
            [text(head) for head in table.heads],
            [[in_unit(str(cell), unit) for cell in row] for row in table.rows],
        )
        for table in fit_tables(made, (garment,), named=False)
    ]
    seated = made.costume.wearer.posture == "seated"
    checks = [in_unit(said, unit) for said in to_try(sort_of_garment(garment.draft), seated=seated)]
    found: Html = macros(__file__).chart(tables, checks)
    return found


def signs_html(made: Made, garment: MadeGarment) -> Html:
    """Return each sign that a garment can show, drawn on its wearer, its causes and what is tried for each."""
    body = made.costume.wearer
    figures, form = small_figures(draw_wearer(body)), figure_build(body)
    rows = []
    for sign in signs_of(garment.draft):
        drawing = _svg(sign, sign_drawn(sign, figures, body, form))
        rows.append((sign.seen, Html(drawing), list(_causes(sign, garment, made.costume.told_in))))
    found: Html = macros(__file__).signs(rows)
    return found


def _causes(sign: FitSign, garment: MadeGarment, unit: ShownUnit) -> Iterator[str]:
    """Yield each cause with what is tried for it, the likeliest first."""
    for cause in sign.causes:
        note = note_to_try(cause.attempt, garment.draft, garment.name)
        yield f"{cause.why}: {_tried(note, unit)}" if note else cause.why


def _tried(note: Note, unit: ShownUnit) -> str:
    where = spoken(str(note.where)) if note.kind is NoteKind.BODY else str(note.where)
    return f"{note.verb} {where} {show_length(note.amount, unit)}"


def _svg(sign: FitSign, drawn: SignDrawn) -> Svg:
    x0, y0, x1, y1 = drawn.box
    pen = Pen(places=1, height=y1, short=False)
    parts = [
        element("path", d=path_data(path.moved(-x0), pen), class_=kind)
        for kind, paths in (("figure", drawn.outlines), ("fold", drawn.lines))
        for path in paths
    ]
    return element(
        "svg", *parts, xmlns=SPACE, role="img", aria_label=sign.seen, viewBox=f"0 0 {x1 - x0:.0f} {y1 - y0:.0f}"
    )
