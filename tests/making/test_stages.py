"""Each step of the work is drawn from draft and order: what the drawings hold, and what they may cost."""

from __future__ import annotations

import re
from functools import cache

import pytest

from drafting.making.model import Step
from drafting.making.stages import drawings
from drafting.making.stages.inked import Inked
from tests.making.figures import made
from tests.making.orders import order_of

COSTUMES = ("lamplighter", "kite")


@cache
def drawn(name: str) -> tuple[tuple[Step, ...], dict[str, Inked]]:
    steps = order_of(made(name))
    return steps, drawings(made(name), steps)


@pytest.mark.parametrize("name", COSTUMES)
def test_every_seam_that_is_sewn_is_drawn_with_what_is_in_work_heavy(name: str) -> None:
    steps, found = drawn(name)
    for step in steps:
        if step.seams or step.edges:
            assert re.search(r'class="[nN]"', found[step.key].svg), step.key


@pytest.mark.parametrize("name", COSTUMES)
def test_a_plan_of_drawings_is_small_and_written_in_whole_numbers(name: str) -> None:
    """400 kB a plan and 6 kB a drawing are what a page bears; no filter, pattern or halo, which prints soften."""
    _, found = drawn(name)
    assert sum(len(one.svg) for one in found.values()) <= 400_000
    for key, one in found.items():
        assert len(one.svg) <= 6_000, key
        assert not re.search(r"<pattern|<filter|paint-order|nan", one.svg), key
        assert not re.search(r'\bd="[^"]*\.', one.svg), key
