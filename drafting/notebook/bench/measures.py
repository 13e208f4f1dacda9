"""The wearer's measures on the bench: measured or estimated, and how far off an estimate may be."""

from __future__ import annotations

import html
from collections.abc import Iterator

from drafting.body import Body, Measure
from drafting.checks.words import capital, plain
from drafting.notebook.bench.controls import LengthUnit
from drafting.notebook.bench.figures import length


def measures_html(body: Body, unit: LengthUnit = "cm") -> str:
    """Return the table of a wearer's measures; estimates carry twice their spread."""
    heads = (f"measure, {unit}", "", "taken", "19 of 20 people")
    head = "".join(f'<th scope="col">{cell}</th>' for cell in heads)
    rows = "".join(f"<tr>{''.join(_cells(*row, unit))}</tr>" for row in body.measures.items())
    return f'<table class="measures"><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>'


def _cells(name: str, measure: Measure, unit: LengthUnit) -> Iterator[str]:
    yield f'<th scope="row">{html.escape(capital(plain(name)))}</th>'
    yield f"<td>{length(measure.mm, unit)}</td>"
    yield f'<td title="{html.escape(measure.rule)}">{measure.source}</td>'
    yield f"<td>{_off(measure, unit)}</td>"


def _off(measure: Measure, unit: LengthUnit) -> str:
    if measure.source == "measured":
        return ""
    return "not known" if measure.sd is None else f"± {length(2 * measure.sd, unit)}"
