"""What waits for a resting hand: once after many askings, never lost, at once where no loop runs."""

from __future__ import annotations

import asyncio

from drafting.notebook.when_resting import Later


def test_many_askings_in_one_stroke_run_it_once_after_the_last() -> None:
    ran: list[str] = []

    async def stroke() -> None:
        later = Later(lambda: ran.append("now"), seconds=0.05)
        for _ in range(5):
            later.ask()
            await asyncio.sleep(0.01)
            assert ran == []
        await asyncio.sleep(0.2)

    asyncio.run(stroke())
    assert ran == ["now"]


def test_each_rest_has_its_own_run() -> None:
    ran: list[str] = []

    async def strokes() -> None:
        later = Later(lambda: ran.append("now"), seconds=0.01)
        for _ in range(2):
            later.ask()
            await asyncio.sleep(0.1)

    asyncio.run(strokes())
    assert ran == ["now", "now"]


def test_in_a_plain_script_nothing_waits() -> None:
    ran: list[str] = []
    Later(lambda: ran.append("now")).ask()
    assert ran == ["now"]
