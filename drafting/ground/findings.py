"""A finding: what a check, or a rule that settled a conflict, has to say."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Container, Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

from drafting.ground.lengths import in_unit, tells_no_change

Severity = Literal["ok", "note", "warning", "error"]
RANK: dict[str, int] = {"ok": 0, "note": 1, "warning": 2, "error": 3}

ANSWERS = "fitting"
"""The check that answers what was noted at a fitting: what is carried out is told, however little it moves."""

LESS_THAN_NOTHING = re.compile(r"(?<![\w.])-(?=0(?:\.0+)?(?!\.?\d))")
"""The minus that a tiny negative number keeps when it is rounded to 0 for a sentence."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One answer to one question.

    `check` is the question's short name, `where` the piece, seam or level it is about, `value` what
    was found and `wanted` what was asked for (mm or degrees, or words), `sentence` what is said of it,
    whole, its lengths as `ground.lengths.told` writes them; `hand` whose draft it is about where each
    hand has its own (then `where` ends in it). A maker reads it `said` in her unit.

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
    hand: Literal["", "left", "right"] = ""

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


@dataclass(frozen=True, slots=True)
class SaidOnce:
    """What a maker reads of a finding: how grave, where, and the sentence in her unit."""

    level: Severity
    where: str
    sentence: str


def of_whole(findings: Iterable[Finding], names: Container[str]) -> Iterator[Finding]:
    """Yield findings of two hands; what both say of a thing of this name, whole over the middle, is told once.

    >>> both = [Finding("yoke", "note", f"back {hand}", 2, None, "double", hand) for hand in ("left", "right")]
    >>> [one.where for one in of_whole(both, {"back"})], len(list(of_whole(both, ())))
    (['back'], 2)
    """
    given = list(findings)
    known, told = Counter(_of_either(one) for one in given), set[Finding]()
    for one in given:
        bare = _of_either(one)
        if not one.hand or bare.where not in names or known[bare] < len(BOTH):
            yield one
        elif bare not in told:
            told.add(bare)
            yield bare


BOTH = ("left", "right")


def _of_either(one: Finding) -> Finding:
    return replace(one, where=one.where.removesuffix(f" {one.hand}"), hand="") if one.hand else one


def said_once(findings: tuple[Finding, ...] | list[Finding], unit: str | None) -> list[SaidOnce]:
    """Return what is to be read of `findings`, worst first, nothing twice and nothing that holds.

    A note of a change that reads alike before and after is left out, unless it answers one of a fitting. What is
    the same of both hands is said once, of both; a sentence that begins with its own place, as it has to where it
    stands alone, goes on from it.

    >>> from drafting.ground.lengths import told
    >>> hands = [
    ...     Finding("cap", "note", f"sleeve {hand}", 12.7, None, told(12.7), hand) for hand in ("left", "right")
    ... ]
    >>> said_once(hands, "in")
    [SaidOnce(level='note', where='sleeve left and right', sentence='1/2 in')]
    """
    places: dict[tuple[str, Severity, str, str], list[str]] = {}
    for finding in worst_first(findings):
        settled = finding.level == "note" and finding.check != ANSWERS and tells_no_change(finding.sentence, unit)
        if finding.level != "ok" and not settled:
            where = _of_either(finding).where
            said = _beside(finding.where, finding.said(unit))
            hands = places.setdefault((finding.check, finding.level, where, said), [])
            hands += [finding.hand] if finding.hand and finding.hand not in hands else []
    return [
        SaidOnce(level, " ".join(filter(None, (where, " and ".join(hands)))), sentence)
        for (_, level, where, sentence), hands in places.items()
    ]


def _beside(where: str, sentence: str) -> str:
    """Return a sentence to be read after `where`, which is not said again."""
    if not where or not sentence.startswith(f"{where} "):
        return sentence
    rest = sentence[len(where) + 1 :]
    return rest[:1].upper() + rest[1:]
