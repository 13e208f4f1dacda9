"""The girths on the bench: body, layers, ease and the garment as drawn, with a picture of the ease."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.body import Body
from drafting.checks.girths import finished_girth
from drafting.checks.words import capital, plain
from drafting.costume.make import MadeGarment
from drafting.draft.draft import Girth
from drafting.export.svg_writer import Svg, element, number
from drafting.ground.templates import Html, macros
from drafting.ground.units import LengthUnit
from drafting.notebook.bench.figures import length

WIDE, HIGH = 120.0, 12.0
"""px of the strip beside a level (ours)."""

NOTE = (
    "In the strips the filled bar is the body and the outline the garment; a dashed outline is a "
    "garment smaller than the body, which the cloth has to stretch over."
)


def girths_html(garment: MadeGarment, body: Body, unit: LengthUnit = "cm") -> Html:
    """Return the table of a garment's girths; the garment's are read off the drawn level lines.

    Ease is what the garment has over body and layers; on cloth that stretches it may be less than
    nothing, and then the stretch that this uses is told.
    """
    heads = (f"level, {unit}", "picture", "body", "layers", "ease", "stretch used", "garment")
    girths = garment.draft.girths
    most = max((g.body + max(0.0, g.settled_ease) for g in girths), default=1.0)
    rows = [(_name(g), list(_cells(garment, g, body, unit, most))) for g in girths]
    return Html(macros(__file__).table(heads, rows, NOTE))


def _name(girth: Girth) -> str:
    return capital(f"{girth.side} {plain(girth.level)}".strip())


def _cells(garment: MadeGarment, girth: Girth, body: Body, unit: LengthUnit, most: float) -> Iterator[str]:
    yield Html(strip(girth.body / most, girth.settled_ease / most))
    layers = body.layer(f"{girth.level}_girth")
    drawn = finished_girth(garment.draft, girth.level, girth.side)
    for mm in (girth.body, layers, girth.settled_ease - layers):
        yield length(mm, unit)
    yield f"{100 * girth.stretch_used:.0f} %" if girth.stretch_used else ""
    yield "not drawn" if drawn is None else length(drawn, unit)


def strip(body: float, ease: float) -> Svg:
    """Return a strip of SVG: the body filled, the garment outlined; shares of the widest garment.

    The page's own colour of text draws it, so that it reads on a dark page too.

    >>> strip(0.9, 0.1).count("<rect"), strip(0.9, -0.1).count("dasharray")
    (2, 1)
    """
    wide, garment = WIDE * body, WIDE * (body + ease)
    inner = element(
        "rect",
        x=number(1 + (WIDE - wide) / 2, 1),
        y="3",
        width=number(wide, 1),
        height=number(HIGH - 4),
        fill="currentColor",
        fill_opacity="0.4",
    )
    outer = element(
        "rect",
        x=number(1 + (WIDE - garment) / 2, 1),
        y="1",
        width=number(garment, 1),
        height=number(HIGH),
        fill="none",
        stroke="currentColor",
        stroke_width="1.4",
        stroke_dasharray="3 2" if ease < 0 else None,
    )
    return element(
        "svg", inner, outer, class_="strip", width=number(WIDE + 2), height=number(HIGH + 2), aria_hidden="true"
    )
