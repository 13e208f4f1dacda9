"""A finding: what a check, or a rule that settled a conflict, has to say."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from drafting.ground.lengths import in_unit

Severity = Literal["ok", "note", "warning", "error"]
RANK: dict[str, int] = {"ok": 0, "note": 1, "warning": 2, "error": 3}

LESS_THAN_NOTHING = re.compile(r"(?<![\w.])-(?=0(?:\.0+)?(?!\.?\d))")
"""The minus that a tiny negative number keeps when it is rounded to 0 for a sentence."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One answer to one question.

    `check` is the question's short name, `where` the piece, seam or level it is about, `value` what
    was found and `wanted` what was asked for (mm or degrees, or words), `sentence` what is said of it,
    whole, its lengths as `ground.lengths.told` writes them. A maker reads it `said` in her unit.

    >>> from drafting.ground.lengths import told
    >>> found = Finding("cap ease", "note", "sleeve", 12.7, None, f"{told(12.7)} ({-1e-9:.1f} %)")
    >>> found.said("in"), found.said("cm")
    ('1/2 in (0.0 %)', '1.3 cm (0.0 %)')
    """

    check: str
    level: Severity
    where: str
    value: float | str | None
    wanted: float | str | None
    sentence: str

    def said(self, unit: str | None) -> str:
        """Return the sentence with its lengths in `unit` (None: cm), and no "-0" in it."""
        return LESS_THAN_NOTHING.sub("", in_unit(self.sentence, unit))

    @property
    def message(self) -> str:
        """The sentence in mm, in which the values are."""
        return self.said("mm")


def worst(findings: tuple[Finding, ...] | list[Finding]) -> Severity:
    """Return the worst level among `findings` ("ok" when there are none).

    >>> worst([Finding("walk", "note", "side", 0.4, 0.5, "it walks")])
    'note'
    """
    return max((f.level for f in findings), key=RANK.__getitem__, default="ok")


def worst_first(findings: tuple[Finding, ...] | list[Finding]) -> list[Finding]:
    """Return `findings` ordered from error to ok, each level in the order it was found."""
    return sorted(findings, key=lambda f: -RANK[f.level])
