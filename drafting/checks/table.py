"""The findings as a table that a maker reads, worst first."""

from __future__ import annotations

import textwrap
from collections import Counter
from collections.abc import Sequence

from drafting.ground.findings import Finding, Level, worst_first

WIDTH = 100
"""Characters a line: what a terminal and a printed page hold."""


LEVELS: tuple[Level, ...] = ("error", "warning", "note")


def table(findings: Sequence[Finding], *, all_of_them: bool = False) -> str:
    """Return the findings as lines `level  where  message`, worst first, and a closing count.

    Checks that hold are only counted, unless `all_of_them` is asked for.
    """
    shown = [f for f in worst_first(list(findings)) if all_of_them or f.level != "ok"]
    wide = min(30, max((len(f.where) for f in shown), default=0))
    lines = [line for finding in shown for line in _lines(finding, wide)]
    return "\n".join([*lines, summary(findings)])


def summary(findings: Sequence[Finding]) -> str:
    """Return one line: how many findings of each level.

    >>> summary([Finding("area", "ok", "front", None, None, "holds")])
    '1 check holds; no error, no warning.'
    """
    count = Counter(finding.level for finding in findings)
    holds = f"{count['ok']} {'check holds' if count['ok'] == 1 else 'checks hold'}"
    said = [
        f"{count[level] or 'no'} {level}{'s' if count[level] > 1 else ''}"
        for level in LEVELS
        if level != "note" or count[level]
    ]
    return f"{holds}; {', '.join(said)}."


def _lines(finding: Finding, wide: int) -> list[str]:
    head = f"{finding.level:<7}  {finding.where:<{wide}}  "
    room = max(40, WIDTH - len(head))
    first, *rest = textwrap.wrap(finding.message, room) or [""]
    return [head + first, *(" " * len(head) + line for line in rest)]
