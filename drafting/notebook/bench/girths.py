"""The girths on the bench: body, layers, ease and the garment as drawn, with a picture of the ease."""

from __future__ import annotations

import html
from collections.abc import Iterator

from drafting.body import Body
from drafting.checks.girths import finished_girth
from drafting.checks.words import capital, plain
from drafting.costume.make import MadeGarment
from drafting.draft.draft import Girth
from drafting.ground.units import LengthUnit
from drafting.notebook.bench.figures import length

WIDE, HIGH = 120.0, 12.0
"""px of the strip beside a level (ours)."""

NOTE = (
    "In the strips the filled bar is the body and the outline the garment; a dashed outline is a "
    "garment smaller than the body, which the cloth has to stretch over."
)


def girths_html(garment: MadeGarment, body: Body, unit: LengthUnit = "cm") -> str:
    """Return the table of a garment's girths; the garment's are read off the drawn level lines.

    Ease is what the garment has over body and layers; on cloth that stretches it may be less than
    nothing, and then the stretch that this uses is told.
    """
    heads = (f"level, {unit}", "", "body", "layers", "ease", "stretch used", "garment")
    head = "".join(f'<th scope="col">{cell}</th>' for cell in heads)
    girths = garment.draft.girths
    most = max((g.body + max(0.0, g.settled_ease) for g in girths), default=1.0)
    rows = "".join(f"<tr>{''.join(_cells(garment, g, body, unit, most))}</tr>" for g in girths)
    return (
        f'<table class="girths"><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>'
        f'<p class="note">{NOTE}</p>'
    )


def _cells(garment: MadeGarment, girth: Girth, body: Body, unit: LengthUnit, most: float) -> Iterator[str]:
    name = capital(f"{girth.side} {plain(girth.level)}".strip())
    yield f'<th scope="row">{html.escape(name)}</th>'
    yield f"<td>{strip(girth.body / most, girth.settled_ease / most)}</td>"
    layers = body.layer(f"{girth.level}_girth")
    drawn = finished_girth(garment.draft, girth.level, girth.side)
    for mm in (girth.body, layers, girth.settled_ease - layers):
        yield f"<td>{length(mm, unit)}</td>"
    yield f"<td>{f'{100 * girth.stretch_used:.0f} %' if girth.stretch_used else ''}</td>"
    yield f"<td>{'not drawn' if drawn is None else length(drawn, unit)}</td>"


def strip(body: float, ease: float) -> str:
    """Return a strip of SVG: the body filled, the garment outlined; shares of the widest garment.

    The page's own colour of text draws it, so that it reads on a dark page too.

    >>> strip(0.9, 0.1).count("<rect"), strip(0.9, -0.1).count("dasharray")
    (2, 1)
    """
    wide, garment = WIDE * body, WIDE * (body + ease)
    less = ' stroke-dasharray="3 2"' if ease < 0 else ""
    return (
        f'<svg class="strip" width="{WIDE + 2:g}" height="{HIGH + 2:g}" aria-hidden="true">'
        f'<rect x="{1 + (WIDE - wide) / 2:.1f}" y="3" width="{wide:.1f}" height="{HIGH - 4:g}" '
        'fill="currentColor" fill-opacity="0.4"/>'
        f'<rect x="{1 + (WIDE - garment) / 2:.1f}" y="1" width="{garment:.1f}" height="{HIGH:g}" '
        f'fill="none" stroke="currentColor" stroke-width="1.4"{less}/></svg>'
    )
