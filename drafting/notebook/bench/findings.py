"""The findings in words under the picture: worst first, the rest folded, what is said of both hands said once."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.checks.table import summary
from drafting.checks.words import capital, plain
from drafting.ground.findings import Finding, SaidOnce, said_once
from drafting.ground.templates import Html, macros

IN_SIGHT = 3
"""Errors in sight; of what is less than an error, one is (ours)."""


def findings_html(findings: Sequence[Finding], unit: str | None = "cm") -> Html:
    """Return how many checks hold, then every finding that is more than that.

    >>> one = Finding("cap ease", "warning", "sleeve", 15, 30, "15 mm, not 30 <mm>")
    >>> str(findings_html([one]))[-84:]
    '<li class="warning"><b>Warning</b>, sleeve: 15 mm, not 30 &lt;mm&gt;</li></ul></div>'
    """
    said = said_once(list(findings), unit)
    rows = [(f.level, capital(f.level), _where(f), f.sentence) for f in said]
    shown = min(IN_SIGHT, max(1, sum(f.level == "error" for f in said)))
    counted = summary([*said, *(f for f in findings if f.level == "ok")])
    return Html(macros(__file__).findings(counted, rows[:shown], rows[shown:]))


def _where(finding: SaidOnce) -> str:
    return f", {plain(finding.where).replace('.', ' ')}" if finding.where else ""
