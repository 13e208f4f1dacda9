"""The two engines: repeatable by count, quick to a first layout, stopped when asked, checked always."""

from __future__ import annotations

import math
import time

import pytest

from drafting.layout import Copy, Job, Kind, Packing, Part, Pose, Spot, Strip, broken_rules, lay_out
from drafting.layout.jobs import job_from
from drafting.layout.outlines import outline_of
from drafting.layout.packing.clean import checked_job
from drafting.layout.packing.pack import pack
from tests.layout.figures import COAT, breaks, cloth

FOLDED = checked_job(job_from(tuple(outline_of(p, "folded") for p in COAT), cloth(), "folded")[0])
OPEN = checked_job(job_from(tuple(outline_of(p, "open") for p in COAT), cloth(lay="open"), "open")[0])


@pytest.mark.parametrize("job", [FOLDED, OPEN], ids=["folded", "open"])
def test_the_same_count_gives_the_same_layout(job: Job) -> None:
    assert pack(job, count=300) == pack(job, count=300)


def test_another_seed_looks_elsewhere_and_a_longer_search_is_never_longer() -> None:
    lengths = [pack(FOLDED, count=count).length for count in (20, 400)]
    assert lengths[1] <= lengths[0]
    assert pack(FOLDED, count=400, seed=1).spots != pack(FOLDED, count=400, seed=2).spots


def test_the_first_valid_layout_is_there_within_half_a_second() -> None:
    heard: list[tuple[float, Packing]] = []
    start = time.perf_counter()
    pack(FOLDED, count=50, said=lambda packing: heard.append((time.perf_counter(), packing)))
    assert heard[0][0] - start < 0.5
    assert broken_rules(FOLDED, heard[0][1]) == []


@pytest.mark.slow
@pytest.mark.parametrize("job", [FOLDED, OPEN], ids=["folded", "open"])
def test_both_engines_together_keep_every_rule_and_are_not_longer(job: Job) -> None:
    heard: list[Packing] = []
    best = pack(job, seconds=6, said=heard.append)
    assert broken_rules(job, best) == []
    assert [p.length for p in heard] == sorted((p.length for p in heard), reverse=True)
    assert best.length == min(p.length for p in heard)
    assert best.length <= heard[0].length


@pytest.mark.slow
def test_the_library_alone_gives_layouts_with_the_fold_kept() -> None:
    """A comb: its lay is asked for, run, and checked by shapely."""
    from drafting.layout.packing.child_process import Child
    from drafting.layout.packing.job import Kit
    from drafting.layout.packing.library import Problem

    first = pack(FOLDED, count=20)
    folds = [s for s in first.spots if FOLDED.kinds[FOLDED.copies[s.copy].kind].fold]
    problem = Problem(Kit(FOLDED), first, tuple(folds))
    child = Child(problem.asked(2, 1, 0))
    while not child.ended:
        time.sleep(0.05)
    child.stop()
    assert child.code == 0
    for line in child.lines:
        assert broken_rules(FOLDED, problem.packing(line["placed"])) == []


def test_a_search_ends_soon_after_it_is_told_to() -> None:
    start = time.monotonic()
    best = pack(FOLDED, seconds=60, halted=lambda: time.monotonic() - start > 1.0)
    assert time.monotonic() - start < 8
    assert broken_rules(FOLDED, best) == []


@pytest.mark.parametrize(
    ("spoil", "said"),
    [
        (lambda s: Spot(s.copy, s.pose, s.x, s.y + 7), "off the fold"),
        (lambda s: Spot(s.copy, s.pose, s.x + 300, s.y), "overlap|off the cloth"),
        (lambda s: Spot(s.copy, s.pose, -50, s.y), "off the cloth"),
        (lambda s: Spot(s.copy, Pose(90), s.x, s.y), "not allowed"),
        (lambda s: Spot(1, s.pose, s.x, s.y), "lie there once"),
    ],
)
def test_a_spoilt_layout_is_found_out(spoil: object, said: str) -> None:
    import re

    packing = pack(FOLDED, count=20)
    (fold,) = (s for s in packing.spots if FOLDED.kinds[FOLDED.copies[s.copy].kind].fold)
    spots = tuple(spoil(s) if s is fold else s for s in packing.spots)  # type: ignore[operator]
    found = broken_rules(FOLDED, Packing(packing.length, spots))
    assert any(re.search(said, fault) for fault in found), found


def test_squares_are_packed_as_tightly_as_squares_can_be() -> None:
    kind = Kind("square", (0j, 100 + 0j, 100 + 100j, 100j))
    job = Job((kind,), tuple(Copy(0, (Pose(),)) for _ in range(12)), Strip(300.0))
    assert pack(job, count=40).length == pytest.approx(400, abs=0.01)


def test_the_gap_is_kept_between_pieces_and_not_at_the_selvedge() -> None:
    kind = Kind("square", (0j, 100 + 0j, 100 + 100j, 100j))
    job = Job((kind,), tuple(Copy(0, (Pose(),)) for _ in range(4)), Strip(206.0, 5.0))
    packing = pack(job, count=40)
    assert packing.length == pytest.approx(205, abs=0.5)
    assert min(spot.y for spot in packing.spots) == 0


def test_a_turned_piece_nests_where_the_cloth_allows_it() -> None:
    wedge = Kind("wedge", (0j, 300 + 0j, 300 + 20j, 0 + 100j))
    free = tuple(Copy(0, (Pose(), Pose(180))) for _ in range(2))
    one_way = tuple(Copy(0, (Pose(),)) for _ in range(2))
    plain = pack(Job((wedge,), free, Strip(125.0)), count=60).length
    nap = pack(Job((wedge,), one_way, Strip(125.0)), count=60).length
    assert plain == pytest.approx(300, abs=1)
    assert nap > plain + 100


def test_a_lay_of_a_coat_is_the_same_twice() -> None:
    first, again = (lay_out(COAT, cloth(), count=200, table=False) for _ in range(2))
    assert first == again
    assert breaks(first, COAT) == []


def test_every_copy_of_many_is_laid() -> None:
    many = (*COAT, *(Part("vest", p.cut) for p in COAT))
    lay = lay_out(many, cloth(), count=200, table=False)
    assert breaks(lay, many) == []
    assert math.isfinite(lay.length)
