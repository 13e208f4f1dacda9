"""The wearer's measures on the bench: measured or estimated, and how far off an estimate may be."""

from __future__ import annotations

from drafting.body import Body, Measure
from drafting.checks.words import capital, plain
from drafting.ground.templates import Html, macros
from drafting.ground.units import LengthUnit
from drafting.notebook.bench.figures import length


def measures_html(body: Body, unit: LengthUnit = "cm") -> Html:
    """Return the table of a wearer's measures; estimates carry twice their spread."""
    heads = ("measure", unit, "taken", "19 of 20 people")
    rows = [
        (capital(plain(name)), length(m.mm, unit), m.rule, m.source, _off(m, unit))
        for name, m in body.measures.items()
    ]
    return Html(macros(__file__).table(heads, rows))


def folded_html(title: str, table: Html) -> Html:
    """Return a table folded away under its title."""
    return Html(macros(__file__).folded(title, table))


def _off(measure: Measure, unit: LengthUnit) -> str:
    if measure.source == "measured":
        return ""
    return "not known" if measure.sd is None else f"± {length(2 * measure.sd, unit)}"
