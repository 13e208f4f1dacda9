"""The findings counted by level, in one line."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from drafting.ground.findings import Finding, SaidOnce, Severity

LEVELS: tuple[Severity, ...] = ("error", "warning", "note")


def summary(findings: Sequence[Finding | SaidOnce]) -> str:
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
