"""The wearer's measures on the bench: measured or estimated, and how far off an estimate may be."""

from __future__ import annotations

import html
from collections.abc import Iterator

from drafting.body import Body, Measure
from drafting.checks.words import capital, plain

HEAD = ("measure, cm", "", "taken", "19 of 20 people")


def measures_html(body: Body) -> str:
    """Return the table of a wearer's measures; estimates carry twice their spread, in cm."""
    head = "".join(f'<th scope="col">{cell}</th>' for cell in HEAD)
    rows = "".join(f"<tr>{''.join(_cells(*row))}</tr>" for row in body.measures.items())
    return f'<table class="measures"><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>'


def _cells(name: str, measure: Measure) -> Iterator[str]:
    yield f'<th scope="row">{html.escape(capital(plain(name)))}</th>'
    yield f"<td>{measure.mm / 10:.1f}</td>"
    yield f'<td title="{html.escape(measure.rule)}">{measure.source}</td>'
    yield f"<td>{_off(measure)}</td>"


def _off(measure: Measure) -> str:
    if measure.source == "measured":
        return ""
    return "not known" if measure.sd is None else f"± {2 * measure.sd / 10:.1f}"
