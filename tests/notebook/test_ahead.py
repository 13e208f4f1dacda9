"""The step that was drafted ahead is shown only where it is asked for, and is what a fresh draft gives."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from typing import Any

import pytest

from drafting.costume.file import CostumeFile, read_costume
from drafting.costume.make import finished
from drafting.ground.shipped import demo_costume
from drafting.notebook import Bench
from drafting.notebook.bench import ahead
from drafting.notebook.bench import state as st
from drafting.notebook.bench.ahead import HandStep, step_of
from drafting.notebook.bench.bench import AHEAD, HELD
from drafting.notebook.when_resting import REST

LONG = 3 * (REST + AHEAD) + 0.5
"""Seconds in which a hand has rested for sure."""


@pytest.mark.parametrize(
    ("before", "value", "wanted"),
    [
        (80.0, 81.0, HandStep("ease", 81.0, 82.0)),
        (81.0, 80.5, HandStep("ease", 80.5, 80.0)),
        (0.1, 0.3, HandStep("ease", 0.3, 0.5)),
        (80.0, 80.0, None),
        ("side", "waist", None),
        (False, True, None),
        (None, 80.0, None),
    ],
)
def test_a_step_goes_on_the_same_way_by_the_same_amount(before: Any, value: Any, wanted: HandStep | None) -> None:
    assert step_of("ease", before, value) == wanted


@pytest.fixture
def drafts(monkeypatch: pytest.MonkeyPatch) -> list[Any]:
    """What was drafted from now on by a bench: the value of the shirt's bust ease, mm."""
    found: list[Any] = []

    def counted(costume: CostumeFile) -> Any:
        found.append(float(str(costume.garments[0].choices["bust_ease"].value).split()[0]))
        return finished(costume)

    monkeypatch.setattr(ahead, "finished", counted)
    return found


def in_a_notebook(do: Callable[[Bench], Any]) -> None:
    """Run `do` with a bench in a loop that runs on, as a kernel's does."""

    async def ran() -> None:
        await do(Bench(read_costume(demo_costume()), "shirt", ["bust_ease"]))

    asyncio.run(ran())


def test_one_more_step_the_same_way_is_there_already(drafts: list[Any]) -> None:
    async def hand(bench: Bench) -> None:
        for value in (101.0, 102.0):
            bench.ask("bust_ease", value)
        assert drafts == [101.0, 102.0]  # nothing is drafted ahead while the hand moves
        await asyncio.sleep(LONG)
        assert drafts == [101.0, 102.0, 103.0]
        bench.ask("bust_ease", 103.0)
        assert drafts == [101.0, 102.0, 103.0]
        fresh = st.asked_for(st.begin_standing(bench.costume, "shirt"), "shirt", "bust_ease", 103.0)
        assert bench.standing.made == fresh.made

    in_a_notebook(hand)


def test_a_turn_of_the_hand_is_drafted_anew(drafts: list[Any]) -> None:
    async def hand(bench: Bench) -> None:
        bench.ask("bust_ease", 101.0)
        await asyncio.sleep(LONG)
        bench.ask("bust_ease", 99.0)
        assert drafts[-1] == 99.0
        assert st.values_of(bench.made, "shirt")["bust_ease"] == 99.0
        bench.undo()
        before = list(drafts)
        await asyncio.sleep(LONG)
        assert drafts == before  # what was taken back leads nowhere

    in_a_notebook(hand)


def test_at_a_control_that_the_hand_came_to_a_step_either_way_is_there_already(drafts: list[Any]) -> None:
    async def hand(bench: Bench) -> None:
        value = st.asked_values(bench.standing)["bust_ease"]
        step = bench.controls["bust_ease"].step
        bench.knobs.held = "bust_ease"
        assert drafts == []  # Tab may go on at once
        await asyncio.sleep(HELD + LONG)
        assert drafts == [value + step, value - step]
        bench.ask("bust_ease", value - step)
        assert drafts == [value + step, value - step]
        fresh = st.asked_for(st.begin_standing(bench.costume, "shirt"), "shirt", "bust_ease", value - step)
        assert bench.standing.made == fresh.made

    in_a_notebook(hand)


def test_a_step_that_leads_to_a_refusal_is_let_go_without_a_word(drafts: list[Any]) -> None:
    async def hand(bench: Bench) -> None:
        most = bench.controls["bust_ease"].high
        assert most is not None
        bench.ask("bust_ease", most - 1)
        bench.ask("bust_ease", most)
        await asyncio.sleep(LONG)
        assert drafts[-1] == most + 1
        assert bench.standing.refusal == ""
        assert "Not possible" not in bench.widgets.said.value

    in_a_notebook(hand)
