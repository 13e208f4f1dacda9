"""What waits for a resting hand: once after many askings, never lost, at once where no loop runs."""

from __future__ import annotations

import asyncio
import re

from drafting.costume.file import read_costume
from drafting.notebook import Bench, costume_path
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


def test_what_only_the_pointer_finds_is_drawn_once_the_hand_rests() -> None:
    async def pressed() -> tuple[str, str]:
        bench = Bench(read_costume(costume_path("kite")), "trouser", ["hem_width"])
        bench.ask("hem_width", 300.0)
        moving = bench.picture.value
        for _ in range(100):
            if "data-edge" in bench.picture.value:
                break
            await asyncio.sleep(0.05)
        return moving, bench.picture.value

    moving, rested = asyncio.run(pressed())
    assert "data-edge" not in moving
    assert "data-edge" in rested
    assert re.sub(r'<g class="seams".*?</g></svg>', "</svg>", rested, flags=re.DOTALL) == moving
