"""A finding: what a check, or a rule that settled a conflict, has to say."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

Severity = Literal["ok", "note", "warning", "error"]
RANK: dict[str, int] = {"ok": 0, "note": 1, "warning": 2, "error": 3}

LESS_THAN_NOTHING = re.compile(r"(?<![\w.])-(?=0(?:\.0+)?(?!\.?\d))")
"""The minus that a tiny negative number keeps when it is rounded to 0 for a sentence."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One answer to one question.

    `check` is the question's short name, `where` the piece, seam or level it is about, `value` what
    was found and `wanted` what was asked for (mm or degrees, or words), `message` the sentence that
    a maker reads, whole: it names what of these numbers she needs, and nothing in it is "-0".

    >>> Finding("cap ease", "note", "sleeve", -1e-9, None, f"{-1e-9:.0f} mm ({-1e-9:.1f} %)").message
    '0 mm (0.0 %)'
    """

    check: str
    level: Severity
    where: str
    value: float | str | None
    wanted: float | str | None
    message: str

    def __post_init__(self) -> None:
        object.__setattr__(self, "message", LESS_THAN_NOTHING.sub("", self.message))


def worst(findings: tuple[Finding, ...] | list[Finding]) -> Severity:
    """Return the worst level among `findings` ("ok" when there are none).

    >>> worst([Finding("walk", "note", "side", 0.4, 0.5, "it walks")])
    'note'
    """
    return max((f.level for f in findings), key=RANK.__getitem__, default="ok")


def worst_first(findings: tuple[Finding, ...] | list[Finding]) -> list[Finding]:
    """Return `findings` ordered from error to ok, each level in the order it was found."""
    return sorted(findings, key=lambda f: -RANK[f.level])
