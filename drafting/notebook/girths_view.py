"""The girths on the bench: body, ease, and the garment as drawn, in cm."""

from __future__ import annotations

import html
from collections.abc import Iterator

from drafting.checks.girths import finished
from drafting.checks.words import capital, plain
from drafting.costume import MadeGarment
from drafting.draft import Girth

HEAD = ("level, cm", "body", "ease", "garment")


def girths_html(garment: MadeGarment) -> str:
    """Return the table of a garment's girths; the garment's are read off the drawn level lines."""
    head = "".join(f'<th scope="col">{cell}</th>' for cell in HEAD)
    rows = "".join(f"<tr>{''.join(_cells(garment, girth))}</tr>" for girth in garment.draft.girths)
    return f'<table class="girths"><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>'


def _cells(garment: MadeGarment, girth: Girth) -> Iterator[str]:
    name = capital(f"{girth.side} {plain(girth.level)}".strip())
    yield f'<th scope="row">{html.escape(name)}</th>'
    drawn = finished(garment.draft, girth.level, girth.side)
    for mm in (girth.body, girth.settled_ease, drawn):
        yield f"<td>{'not drawn' if mm is None else f'{mm / 10:.1f}'}</td>"
