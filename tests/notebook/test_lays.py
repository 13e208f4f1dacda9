"""The lay table as plain data: moved, turned, undone; lengths by an independent sum."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.ground.errors import DraftError
from drafting.layout import lay_out, lay_row
from drafting.notebook.lay_table import state as ls
from drafting.notebook.lay_table.faults import pressed_fault, with_fault
from tests.layout.figures import COAT, breaks, cloth

LAY = lay_out(COAT, cloth(lay="folded"), count=60, table=False)


def corner(lay: object, name: str) -> tuple[float, float]:
    return next((s.x, s.y) for s in lay.packing.spots if lay.id(s) == name)  # type: ignore[attr-defined]


def test_a_piece_dragged_off_the_end_makes_the_lay_longer_and_undo_brings_it_back() -> None:
    table = ls.lays_of((LAY,))
    x, _ = corner(LAY, "coat.cuff.both.1")
    far = ls.shifted(LAY, "coat.cuff.both.1", LAY.length + 100 - x, 50.0)
    table = table.with_lay(far)
    assert table.now["shell"].length > LAY.length + 100
    assert "longer than the lay that was found" in ls.lay_words(table.now["shell"], table.found["shell"])
    back = table.undone("shell")
    assert back.now["shell"] == LAY
    assert back.redone("shell").now["shell"] == far
    assert back.undone("shell") is back
    assert breaks(far, COAT) == []


@pytest.mark.parametrize("step", [(1.0, 0.0), (10.0, 0.0)])
def test_an_arrow_key_moves_a_free_piece_by_just_its_step(step: tuple[float, float]) -> None:
    x, _ = corner(LAY, "coat.cuff.both.1")
    free = ls.shifted(LAY, "coat.cuff.both.1", LAY.length + 100 - x, 60.0)
    before = corner(free, "coat.cuff.both.1")
    after = corner(ls.shifted(free, "coat.cuff.both.1", *step), "coat.cuff.both.1")
    assert after == pytest.approx((before[0] + step[0], before[1] + step[1]), abs=0.01)


def test_a_piece_turns_only_as_its_nap_allows() -> None:
    turned = ls.shifted(LAY, "coat.cuff.both.1", LAY.length + 300, 0.0, turn=True)
    row = next(r for r in lay_row(turned)["placed"] if r["piece"] == "cuff")
    before = next(r for r in lay_row(LAY)["placed"] if r["piece"] == "cuff")
    assert (row["rotation_deg"] - before["rotation_deg"]) % 360 in (0, 180)
    assert (row["rotation_deg"], row["mirrored"]) != (before["rotation_deg"], before["mirrored"])
    nap = lay_out(COAT, cloth(lay="folded", one_way=True), count=20, table=False)
    kept = ls.shifted(nap, "coat.cuff.both.1", nap.length + 300, 0.0, turn=True)
    assert {r["rotation_deg"] for r in lay_row(kept)["placed"]} == {0}


def test_what_may_not_lie_there_is_refused_in_words_and_nothing_changes() -> None:
    x, y = corner(LAY, "coat.front.both.1")
    a, b = corner(LAY, "coat.cuff.both.1")
    with pytest.raises(DraftError, match="cannot lie there"):
        ls.shifted(LAY, "coat.cuff.both.1", x + 250 - a, y + 100 - b)
    with pytest.raises(DraftError, match="no outline"):
        ls.shifted(LAY, "coat.hood", 1.0, 1.0)


def test_the_shorter_lay_is_kept() -> None:
    x, _ = corner(LAY, "coat.cuff.both.1")
    far = ls.shifted(LAY, "coat.cuff.both.1", LAY.length + 100 - x, 50.0)
    assert ls.better_lay(LAY, far) is LAY
    assert ls.better_lay(far, LAY).length == LAY.length


def test_a_lay_found_in_the_background_leaves_what_a_hand_has_done() -> None:
    short = lay_out(COAT, cloth(lay="folded"), count=600, table=False)
    assert short.length < LAY.length
    untouched = ls.lays_of((LAY,)).bettered(short, ask=False)
    assert untouched.now["shell"] == untouched.found["shell"]
    assert untouched.now["shell"].length == short.length
    assert not untouched.before.get("shell")
    x, _ = corner(LAY, "coat.cuff.both.1")
    far = ls.shifted(LAY, "coat.cuff.both.1", LAY.length + 100 - x, 50.0)
    touched = ls.lays_of((LAY,)).with_lay(far).bettered(short, ask=False)
    assert touched.now["shell"] == far
    assert touched.found["shell"].length == short.length
    asked = ls.lays_of((LAY,)).with_lay(far).bettered(short, ask=True)
    assert asked.now["shell"].length == short.length
    assert asked.undone("shell").now["shell"] == far


def test_the_row_of_the_table_for_this_width_is_never_longer_than_the_lay() -> None:
    whole = lay_out(COAT, cloth(lay="folded"), count=20)
    short = lay_out(COAT, cloth(lay="folded"), count=600, table=False)
    best = ls.better_lay(whole, short)
    own = next(o for o in best.others if (o.width, o.lay) == (best.cloth.width, "folded"))
    assert own.length == pytest.approx(short.length, abs=1e-6)
    assert own.length < next(o.length for o in whole.others if (o.width, o.lay) == (own.width, own.lay))


def test_on_cloth_with_a_repeat_an_arrow_key_goes_a_whole_repeat() -> None:
    bolt = replace(cloth(lay="open"), repeat_along=75.0)
    lay = lay_out(COAT, bolt, count=20, table=False)
    name = "coat.cuff.left.1"
    far = ls.shifted(lay, name, lay.length + 150, 0.0)
    after = ls.shifted(far, name, 1.0, 0.0)
    assert corner(after, name)[0] - corner(far, name)[0] == pytest.approx(75.0, abs=0.01)


@pytest.mark.parametrize("sizes", [(-1, 0, 50, 50), (0, 0, 0, 50), (0, 1450, 50, 50)])
def test_a_faulty_place_that_is_not_on_the_cloth_is_refused(sizes: tuple[float, ...]) -> None:
    with pytest.raises(DraftError, match="faulty place"):
        with_fault(cloth(1480), *sizes)
    assert with_fault(cloth(1480), 10, 20, 50, 60).faults == ((10, 20, 60, 80),)


def test_a_place_pressed_on_the_drawing_is_a_place_on_the_opened_cloth() -> None:
    folded, half = LAY, LAY.cloth.usable_width / 2
    # A press is a place of 5 cm about it; on folded cloth the upper layer lies above the fold.
    assert pressed_fault(folded, 300.0, 100.0, 302.0, 101.0) == pytest.approx((276.0, half + 75.5, 50.0, 50.0))
    # Drawn out either way it is the rectangle between the two ends.
    for ends in ((300.0, 100.0, 420.0, 160.0), (420.0, 160.0, 300.0, 100.0)):
        assert pressed_fault(folded, *ends) == pytest.approx((300.0, half + 100.0, 120.0, 60.0))
    # What hangs over an edge is cut off there, so that it can always be marked.
    along, across, length, width = pressed_fault(folded, -20.0, half - 10.0, -20.0, half - 10.0)
    assert (along, length) == (0.0, pytest.approx(5.0))
    assert across + width == pytest.approx(folded.cloth.usable_width)
    flat = lay_out(COAT, cloth(lay="open"), count=5, table=False)
    assert pressed_fault(flat, 300.0, 100.0, 420.0, 160.0) == pytest.approx((300.0, 100.0, 120.0, 60.0))
    assert with_fault(flat.cloth, *pressed_fault(flat, 0.0, 0.0, 0.0, 0.0)).faults
