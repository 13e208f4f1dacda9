"""Thread, counted stitch by stitch by a stranger, is the plan's: step by step, and on the list kind by kind."""

from __future__ import annotations

import math
from collections import defaultdict
from functools import cache

import pytest

from tests.making.figures import laid
from tests.making.invented_costumes import COSTUMES, invented
from tests.making.recounted import rows
from tests.making.stitched import Record, Sewn, ratio, sewn

SHIPPED = ("lamplighter", "kite", "toll-keeper", "ferrywoman", "bell-ringer", "clock-mender")

LISTED = {
    "sewing": "polyester in the colour of {}",
    "overlock": "overlock cones in the colour of {}",
    "basting": "soft basting cotton",
    "buttonhole": "a strong thread in the colour of {}",
    "mock-up": "any old thread for the mock-up",
}
"""How each kind of thread is told on the list."""


@cache
def plan_of(name: str) -> Sewn:
    return sewn(invented(name) if name in COSTUMES else laid(name))


def cloth_of(plan: Sewn, step: Record) -> str:
    """Return the cloth that a step's thread matches: the lining's where it is made up or felled in."""
    if step["verb"] == "fell" or (step["verb"] == "join" and step["stage"] == "finish"):
        return "lining"
    own = (p for p in plan.pieces(step["garment"]).values() if not p["lies_behind"])
    return next(p["fabric"] for p in own if p["fabric"] not in ("interfacing", "lining"))


def counted(plan: Sewn, step: Record) -> dict[tuple[str, str], float]:
    """Return the mm of thread of a step by its kind and the cloth that it matches."""
    found: dict[tuple[str, str], float] = defaultdict(float)
    cloth = cloth_of(plan, step)
    for kind, stitch, mm, long, wide, plies in rows(plan, step):
        named = "sewing" if kind == "lining" else kind
        role = "" if named in ("basting", "mock-up") else cloth
        found[named, role] += mm * ratio(stitch, long, wide, plies * plan.thick.get(cloth, 0.5))
    return {key: mm for key, mm in found.items() if mm}


@pytest.mark.parametrize("name", [*SHIPPED, *COSTUMES])
def test_each_step_takes_the_thread_of_what_its_words_and_its_stitch_sew(name: str) -> None:
    """Within 3 % (a trim's ends and a bone's: 6), or 50 mm; nothing is forgotten, and nothing counted twice."""
    plan = plan_of(name)
    for step in plan.record["steps"]:
        if not step["garment"]:
            continue
        mine, own = counted(plan, step), {(t["kind"], t["fabric"]): t["mm"] for t in step["thread"]}
        near = 0.06 if step["verb"] in ("trim", "bone") else 0.03
        for key in {*mine, *own}:
            assert own.get(key, 0.0) == pytest.approx(mine.get(key, 0.0), rel=near, abs=50.0), (step["makes"], key)


@pytest.mark.parametrize("name", [*SHIPPED, *COSTUMES])
def test_the_list_holds_that_thread_and_a_quarter_for_ends_kind_by_kind_and_cloth_by_cloth(name: str) -> None:
    """A quarter for ends, trials and unpicking is common practice; it is told, and it is bought."""
    plan, wanted = plan_of(name), dict[tuple[str, str], float]()
    for step in plan.record["steps"]:
        if step["garment"]:
            for key, mm in counted(plan, step).items():
                wanted[key] = wanted.get(key, 0.0) + 1.25 * mm
    assert {kind for kind, _ in wanted} >= {"sewing", "mock-up"}
    for (kind, role), mm in wanted.items():
        words = LISTED[kind].format(plan.titles.get(role, ""))
        stayed = 1.25 * stayed_necks(plan, role) if kind == "sewing" else 0.0
        assert plan.bought("thread", words) == pytest.approx(mm + stayed, rel=0.02), (kind, role)
    told = [words for what, words, _ in plan.list if what == "thread"]
    assert told
    assert all("25 %" in words for words in told)


def stayed_necks(plan: Sewn, role: str) -> float:
    """Return the mm of thread that holds the necks of a cloth as soon as it is cut: one ply, short stitches."""
    total = 0.0
    told = [
        s for s in plan.record["steps"] if not s["garment"] and any(t["kind"] == "sewing" for t in s["thread"])
    ]
    for garment in {p["garment"] for p in plan.record["pieces"]} if told else set[str]():
        for name, piece in plan.pieces(garment).items():
            plain = not piece["lies_behind"] and not any(w in piece["role"] for w in ("collar", "facing"))
            if plain and piece["fabric"] == role:
                necks = [e["edge"] for e in piece["edges"] if e["role"] == "neck"]
                mm = math.fsum(plan.edge(garment, (name, edge)) for edge in necks)
                total += mm * ratio("301", 2.2, 0.0, 0.5)
    return total
