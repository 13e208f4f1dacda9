"""Outlines that are none end in a plain refusal; what kills the packing library kills a child only.

The list is ours: each of these made the library panic,
hang or pack wrongly.
"""

from __future__ import annotations

import math
import time

import pytest

from drafting.ground.errors import DraftError
from drafting.layout import Copy, Job, Kind, Pose, Strip, broken_rules
from drafting.layout.packing.child_process import Child
from drafting.layout.packing.pack import pack

SQUARE = (0j, 2 + 0j, 2 + 2j, 2j)
NAN, INF = float("nan"), float("inf")


def job(
    *rings: tuple[complex, ...], width: float = 10.0, gap: float = 0.0, turns: tuple[int, ...] = (0, 180)
) -> Job:
    kinds = tuple(Kind(f"piece {n}", ring) for n, ring in enumerate(rings))
    poses = tuple(Pose(turn) for turn in turns)
    return Job(kinds, tuple(Copy(n, poses) for n in range(len(rings))), Strip(width, gap))


@pytest.mark.parametrize(
    ("ring", "said"),
    [
        ((0j, 2 + 2j, 2 + 0j, 2j), "crosses or touches itself"),  # bow tie
        ((0j, 4 + 0j, 4 + 3j, 1.9 + 3j, 2.1 + 3.2j, 2.1 + 2.9j, 1.9 + 3.1j, 3j), "crosses"),
        ((0j, 1 + 0j), "needs three"),
        ((), "needs three"),
        ((0j, 1 + 0j, 2 + 0j), "no area"),
        ((0j, complex(NAN, 0), 2 + 2j), "no place"),
        ((0j, complex(INF, 0), 2 + 2j), "no place"),
        ((0j, 2e9 + 0j, 2e9 + 2e9j), "unit mistaken"),
        ((0j, 4 + 0j, 2 + 0j, 2 + 3j), "crosses or touches itself"),  # a spike of no width
        ((0j, 2 + 0j, 2 + 12j, 12j), "wider than the cloth"),
    ],
)
@pytest.mark.parametrize("seconds", [0.0, 2.0])
def test_an_outline_that_is_none_is_refused_by_name(ring: tuple[complex, ...], said: str, seconds: float) -> None:
    with pytest.raises(DraftError, match=f"piece 1.*{said}"):
        pack(job(SQUARE, ring), seconds=seconds)


@pytest.mark.parametrize(
    ("width", "gap", "said"),
    [
        (0.0, 0.0, "no width"),
        (-5.0, 0.0, "no width"),
        (NAN, 0.0, "no width"),
        (10.0, -0.5, "less than none"),
        (10.0, NAN, "less than none"),
    ],
)
def test_cloth_that_nothing_can_be_laid_on_is_refused(width: float, gap: float, said: str) -> None:
    with pytest.raises(DraftError, match=said):
        pack(job(SQUARE, width=width, gap=gap))


def test_a_piece_that_may_lie_no_way_up_is_refused() -> None:
    with pytest.raises(DraftError, match="any way up"):
        pack(job(SQUARE, turns=()))


@pytest.mark.parametrize(
    "ring",
    [
        (0j, 2 + 0j, 2 + 0j, 2 + 0j, 2 + 2j, 2j, 2j),  # corners twice
        (0j, 2 + 0j, 2 + 1e-7 + 1e-7j, 2 + 2j, 2j),
        (0j, 1 + 0j, 2 + 0j, 2 + 1j, 2 + 2j, 1 + 2j, 2j),  # corners on a line
        (*SQUARE, 0j),
        SQUARE[::-1],
        tuple(p + 1e7 + 1e7j for p in SQUARE),
        (0j, 2 + 0j, 2 + 10j, 10j),  # exactly as wide as the cloth
        tuple(0.001 * p for p in SQUARE),
        tuple(
            complex(3 * math.cos(math.tau * k / 2000) + 3, 3 * math.sin(math.tau * k / 2000) + 3)
            for k in range(2000)
        ),
        (0j, 5 + 0j, 5 + 0.001j, 2.5 + 0.001j, 2.5 + 9.9j, 2.499 + 9.9j, 2.499 + 0.001j, 0.001j),
    ],
)
@pytest.mark.parametrize("seconds", [0.0, 1.0])
def test_an_odd_but_sound_outline_is_laid(ring: tuple[complex, ...], seconds: float) -> None:
    packing = pack(job(ring, SQUARE, SQUARE), count=20, seconds=seconds)
    assert [spot.copy for spot in packing.spots] == [0, 1, 2]
    assert packing.length < 20


def test_nothing_to_lay_takes_no_cloth() -> None:
    assert pack(job()).length == 0


@pytest.mark.parametrize(
    "asked",
    [
        {"points": [(0, 0), (2, 2), (2, 0), (0, 2)], "height": 10.0, "workers": 1},
        {"points": [(0, 0), (1, 0)], "height": 10.0, "workers": 1},
        {"points": [(0, 0), (2, 0), (2, 12), (0, 12)], "height": 10.0, "workers": 1},
        {"points": [(0, 0), (2, 0), (2, 2), (0, 2)], "height": -5.0, "workers": 1},
        {"points": [(0, 0), (2, 0), (2, 2), (0, 2)], "height": 10.0, "workers": 0},
    ],
)
def test_a_library_that_dies_takes_nothing_with_it(asked: dict[str, object]) -> None:
    item = {"points": asked["points"], "demand": 3, "turns": [0]}
    child = Child(
        {"height": asked["height"], "items": [item], "seconds": 1, "workers": asked["workers"], "seed": 0}
    )
    end = time.monotonic() + 20
    while not child.ended and time.monotonic() < end:
        time.sleep(0.02)
    assert child.code not in (0, None)
    assert not any(line["final"] for line in child.lines)


def test_a_lay_is_found_even_where_the_library_always_dies(
    monkeypatch: pytest.MonkeyPatch, tmp_path: object
) -> None:
    from pathlib import Path

    from drafting.layout.packing import child_process as process

    broken = Path(str(tmp_path)) / "child.py"
    broken.write_text("import os\nos.abort()\n")
    monkeypatch.setattr(process, "CHILD", broken)
    wanted = job(SQUARE, SQUARE, SQUARE)
    packing = pack(wanted, seconds=1.0)
    assert packing.length == pytest.approx(2, rel=1e-6)
    assert broken_rules(wanted, packing) == []
