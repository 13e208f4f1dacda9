"""The findings in words under the picture: worst first, the rest folded, what is said of both hands said once."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from drafting.checks.table import summary
from drafting.checks.words import capital, plain
from drafting.ground.findings import Finding, worst_first
from drafting.ground.templates import Html, macros

IN_SIGHT = 3
"""Errors in sight; of what is less than an error, one is (ours)."""

_Row = tuple[str, str, str, str]


def findings_html(findings: Sequence[Finding]) -> Html:
    """Return how many checks hold, then every finding that is more than that.

    >>> one = Finding("cap ease", "warning", "sleeve", 15, 30, "15 mm, not 30 <mm>")
    >>> str(findings_html([one]))[-84:]
    '<li class="warning"><b>Warning</b>, sleeve: 15 mm, not 30 &lt;mm&gt;</li></ul></div>'
    """
    said = [finding for finding in worst_first(list(findings)) if finding.level != "ok"]
    rows = list(_once(said))
    errors = sum(level == "error" for level, *_ in rows)
    shown = min(IN_SIGHT, max(1, errors))
    return Html(macros(__file__).findings(summary(findings), rows[:shown], rows[shown:]))


def _once(findings: Iterable[Finding]) -> Iterator[_Row]:
    """Yield each sentence once, with every place that it is said of."""
    places: dict[tuple[str, str], list[str]] = {}
    for f in findings:
        places.setdefault((f.level, f.message), []).append(plain(f.where))
    for (level, words), where in places.items():
        named = " and ".join(dict.fromkeys(filter(None, where)))
        yield level, capital(level), f", {named}" if named else "", words
