"""Whatever is asked: a draft or a sentence that says why not; no outline crosses itself; in time."""

from __future__ import annotations

from collections import Counter

import pytest

from drafting.blocks import names
from tests.random_drafts import LONGEST, Answer, answer, asked

FEW, MANY = 150, 3_000


def judged(count: int) -> list[Answer]:
    """Return the answers to `count` drafts, all of them sound."""
    answers = [answer(one) for one in asked(7, count)]
    broken = [(a.asked, a.trace) for a in answers if a.trace]
    assert not broken, broken[0]
    crossed = [(a.asked, a.crossed) for a in answers if a.crossed]
    assert not crossed, crossed[0]
    slow = [(a.asked, a.seconds) for a in answers if a.seconds > LONGEST]
    assert not slow, slow[0]
    return answers


def test_what_nobody_foresaw_is_drafted_or_refused_in_words() -> None:
    answers = judged(FEW)
    drafted = Counter(a.asked.block for a in answers if not a.refused)
    assert set(drafted) == set(names(alone=True))
    assert any(isinstance(v, tuple) for a in answers if not a.refused for v in a.asked.measures.values())


@pytest.mark.population
def test_so_are_three_thousand_of_them() -> None:
    answers = judged(MANY)
    drafted = Counter(a.asked.block for a in answers if not a.refused)
    print("drafted, of those asked for:", dict(drafted), f"slowest {max(a.seconds for a in answers):.2f} s")
    assert sum(drafted.values()) > MANY / 4
