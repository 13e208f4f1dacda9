"""Whatever is asked: a draft or a sentence that says why not; no outline crosses itself; in time."""

from __future__ import annotations

from collections import Counter

import pytest

from drafting.blocks import names
from tests.random_drafts import LONGEST, Answer, answer, asked

FEW, MANY = 240, 3_000

SEED, OTHER_SEEDS = 7, (101, 20_260, 314_159)
"""What the drafts are drawn from: one that was mended by, and three nobody looked at while mending."""


def judged(count: int, seed: int = SEED) -> list[Answer]:
    """Return the answers to `count` drafts, all of them sound."""
    answers = [answer(one) for one in asked(seed, count)]
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


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("seed", OTHER_SEEDS)
def test_so_are_a_thousand_each_of_others(seed: int) -> None:
    assert any(not a.refused for a in judged(MANY // 3, seed))
