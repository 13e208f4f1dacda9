"""Docket, shopping list, thread and tables, against handbook rules; sources beside each check."""

from __future__ import annotations

import csv
import io
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.ground.lengths import in_unit
from drafting.ground.prices import parse_price
from drafting.making.docket import docket, interfaced
from drafting.making.model import Needle, Setting
from drafting.making.seam_lengths import seam_lengths
from drafting.making.shopping import shopping, shopping_csv, total_cost
from drafting.making.supplies import shelves
from drafting.making.tables import cloth_for_strip, quarters_of, shank, tables
from drafting.making.thread import thread_ratio
from tests.blocks.figures import chart_woman
from tests.blocks.wardrobe import asked
from tests.making.figures import laid, made


@pytest.mark.parametrize(("stitch", "ratio"), [("101", 5.0), ("103", 4.5), ("301", 2.5), ("304", 5.5)])
def test_thread_per_seam_is_the_handbooks(stitch: str, ratio: float) -> None:
    """A thread maker's stitch guide: 10 m of 301 take 25 m."""
    assert thread_ratio(stitch) * 10 == pytest.approx(10 * ratio, rel=0.10)


def test_an_unknown_stitch_never_buys_too_little_thread() -> None:
    assert thread_ratio("no such") >= max(thread_ratio(s) for s in ("301", "304", "504", "514"))


def test_a_seam_of_a_pair_counts_for_both_hands_and_a_centre_seam_once() -> None:
    """Against the edges themselves: the coat's shoulder twice, its centre back once."""
    coat = made("lamplighter").garments[0]
    lengths = seam_lengths(coat)
    shoulder = coat.draft["front"]["shoulder"].length
    assert lengths["shoulder"] == pytest.approx(2 * shoulder, abs=0.01)
    assert lengths["centre back"] == pytest.approx(coat.draft["back"]["centre_back"].length)
    shirt = made("lamplighter").garments[1]  # its back is a half on the fold
    front = shirt.draft["front"]["shoulder"].length
    assert seam_lengths(shirt)["shoulder"] == pytest.approx(2 * front, abs=0.01)
    collar = 2 * shirt.draft["collar"]["outer"].length
    assert seam_lengths(shirt)["collar edge"] == pytest.approx(collar)


@pytest.mark.parametrize("name", ["lamplighter", "kite"])
def test_the_shopping_list_is_the_sum_of_its_parts(name: str) -> None:
    costume = laid(name)
    for row in shopping(costume, {}):
        whole = math.fsum(amount for _, amount in row.parts)
        if row.unit == "piece":
            assert row.amount == whole
        elif row.what == "thread":
            assert row.amount == pytest.approx(whole * 1.25)  # common practice: a quarter
        elif row.what in ("elastic", "boning", "tape", "braid"):
            assert whole <= row.amount < whole + 100.0  # sold by full 10 cm
            assert row.amount % 100.0 == pytest.approx(0.0)


@pytest.mark.parametrize("name", ["lamplighter", "kite"])
def test_every_notion_and_every_cloth_is_on_the_list(name: str) -> None:
    costume = laid(name)
    rows = shopping(costume, {})
    for lay in costume.lays:
        if lay.role != "interfacing":
            assert [row.amount for row in rows if row.what == lay.role] == [lay.buy_length]
    for what in ("button", "elastic", "boning"):
        count = sum(n.count for g in costume.garments for n in g.draft.notions if n.what == what)
        bought = sum(
            amount if row.unit == "piece" else 0
            for row in rows
            if row.what == what
            for name, amount in row.parts
            if name != "spare"
        )
        assert bool(count) == any(row.what == what for row in rows)
        if what == "button":
            assert bought == count


def test_one_button_more_of_each_kind_is_bought_than_is_sewn_on() -> None:
    """Common practice: one is kept in reserve, for it is lost before the costume is worn out."""
    costume = laid("lamplighter")
    sewn_on = sum(n.count for g in costume.garments for n in g.draft.notions if n.what == "button")
    kinds = [row for row in shopping(costume, {}) if row.what == "button"]
    assert kinds
    assert sum(row.amount for row in kinds) == sewn_on + len(kinds)


def test_each_interfacing_has_a_lay_of_its_own_that_holds_all_its_pieces() -> None:
    """From memory: no heavier than the shell; the coat's canvas and the shirt's fusible are two cloths."""
    costume = laid("lamplighter")
    rows = [row for row in shopping(costume, {}) if row.what == "interfacing"]
    assert len(rows) == 4
    lay = next(lay for lay in costume.lays if lay.role == "interfacing")
    pieces = {f"{g.name}.{c.piece.name}": c for g in costume.garments for c in g.pattern.pieces}
    for row in rows:
        cut = [pieces[name] for name, _ in row.parts]
        area = sum(c.cut.area * c.piece.count * (2 if c.piece.fold_edge else 1) for c in cut)
        assert row.amount * lay.cloth.usable_width >= area
        assert row.amount >= max(
            (c.cut.bounds[3] - c.cut.bounds[1] for c in cut if c.piece.grain == 90.0), default=0
        )
        assert [amount for _, amount in row.parts] == pytest.approx(
            [c.cut.area * c.piece.count * (2 if c.piece.fold_edge else 1) for c in cut]
        )
    assert {name for row in rows for name, _ in row.parts} == {o.part.name for o in lay.outlines}


@given(st.lists(st.tuples(st.floats(10, 900), st.floats(10, 890)), min_size=1, max_size=12))
def test_boxes_laid_in_rows_fit_their_cloth(boxes: list[tuple[float, float]]) -> None:
    """A second packing of the same boxes, in the same rows, never runs over the width or the length."""
    length = shelves(boxes, 900.0)
    assert length * 900.0 >= sum(a * b for a, b in boxes) - 1e-6
    assert max(a for a, _ in boxes) <= length <= sum(a for a, _ in boxes) + 1e-6


def test_costs_add_up_and_what_has_no_price_is_counted() -> None:
    costume = laid("lamplighter")
    rows = shopping(costume, {}, {"button": 0.5, "elastic": 2.0})
    cost, unknown = total_cost(rows)
    buttons = sum(row.amount for row in rows if row.what == "button")
    elastic = sum(row.amount for row in rows if row.what == "elastic") / 1000
    assert cost == pytest.approx(0.5 * buttons + 2.0 * elastic)
    assert unknown == sum(row.cost is None for row in rows) > 0
    assert parse_price("18,50 a metre") == 18.5


def test_the_csv_reads_back_with_the_standard_library() -> None:
    rows = shopping(laid("kite"), {("top", "side"): SETTING})
    read = list(csv.DictReader(io.StringIO(shopping_csv(rows))))
    assert len(read) == len(rows)
    lengths = [float(line["amount"]) for line in read if line["unit"] == "m"]
    assert lengths == pytest.approx([r.amount / 1000 for r in rows if r.unit == "mm"], abs=0.006)
    assert any(line["what"] == "needle" and "ball point 75" in line["detail"] for line in read)


SETTING = Setting("304", 1, 2.5, Needle("ball point", 75), "all-purpose")


def test_gathers_are_marked_in_quarters_on_both_sides() -> None:
    """Common practice: band 32 at 2.5 to 1; marks at 20, 40, 60 facing 8, 16, 24."""
    assert quarters_of(800.0) == (200.0, 400.0, 600.0)
    assert quarters_of(320.0) == (80.0, 160.0, 240.0)


def test_a_puffed_cap_is_gathered_between_its_notches_only() -> None:
    """The stretch is read off the sleeve that is cut: from the crown to the notch that meets the armhole's."""
    made = laid("kite")
    (table,) = [t for t in tables(made) if t.key == "table.gathers"]
    sleeve = next(g for g in made.garments if g.name == "top").draft["sleeve"]
    for half in ("front", "back"):
        edge = sleeve[f"cap_{half}"]
        (low,) = [n.at for n in edge.notches if n.name == half]
        puffed = low if half == "front" else edge.length - low
        (row,) = [row for row in table.rows if dict(row[0].facts)["place"] == f"{half} armhole"]
        assert row[0].key == "table.where_between"
        assert dict(row[1].facts)["length"] == pytest.approx(puffed, abs=0.01)
        assert puffed < 0.85 * edge.length  # the rest lies flat


def test_the_square_for_a_bias_strip_is_its_area_and_the_joins() -> None:
    """Plane geometry: 50 x 50 cm, 4 cm wide, 625 cm; with joins the square is a little larger."""
    assert 500.0 < cloth_for_strip(6250.0, 40.0) < 540.0


def test_buttons_stand_in_the_table_where_the_piece_has_them() -> None:
    table = next(t for t in tables(made("lamplighter")) if t.key == "table.buttons")
    shirt = made("lamplighter").garments[1].draft
    marks = [m for m in shirt["front"].placements if m.what == "button"]
    row = next(
        r
        for r in table.rows
        if dict(getattr(r[0], "facts", ())).get("place") == "front"
        and dict(getattr(r[0], "facts", ())).get("garment") == "shirt"
    )
    assert row[1] == len(marks)
    places = dict(row[3].facts)["places"].split(", ")  # type: ignore[union-attr]
    assert len(places) == len(marks)
    heights = sorted((m.path.bounds[1] + m.path.bounds[3]) / 2 for m in marks)
    assert float(in_unit(places[-1], "cm").removesuffix(" cm")) == pytest.approx(
        (heights[-1] - heights[0]) / 10, abs=0.06
    )


@pytest.mark.parametrize("name", ["lamplighter", "kite"])
def test_the_docket_counts_what_the_report_and_the_lay_count(name: str) -> None:
    costume = laid(name)
    rows = docket(costume)
    assert {(r.garment, r.piece) for r in rows} == {
        (g.name, c.piece.name) for g in costume.garments for c in g.pattern.pieces
    }
    for lay in costume.lays:
        laid_count = sum(2 if copy.hand == "both" else 1 for copy in lay.job.copies)
        assert sum(r.count for r in rows if r.cloth == lay.role) == laid_count


def test_every_interfacing_knows_what_it_stiffens() -> None:
    coat, shirt = made("lamplighter").garments[:2]
    pairs = {stiff.piece.name: shell.piece.name for g in (coat, shirt) for shell, stiff in interfaced(g)}
    assert pairs["collar-stand-interfacing"] == "collar-stand"
    assert pairs["tail-1-band"] == "tail-1"
    assert pairs["front-facing-interfacing"] == "front"  # that facing is cut on
    stiffened = [c for g in (coat, shirt) for c in g.pattern.pieces if c.piece.material == "interfacing"]
    assert len(pairs) == len(stiffened)


def test_a_thread_shank_is_as_high_as_what_it_closes_is_thick() -> None:
    """From memory, tailoring: 2 to 4 mm."""
    costume = made("lamplighter").costume
    assert shank(costume.fabrics["shirting"]) == 2.0
    assert shank(costume.fabrics["shell"]) == pytest.approx(2.2)  # two layers of 1.1 mm
    assert shank(None) == 2.0
    assert all(2.0 <= shank(fabric) <= 4.0 for fabric in costume.fabrics.values())


def test_allowances_lie_in_the_trades_bands() -> None:
    """Common practice: plain 1.0-1.5 cm, tight curve from 0.6; zip 1.9; flared hem 1-1.5, others 3-5 cm."""
    shirt, coat = made("lamplighter").garments[1], made("lamplighter").garments[0]
    widths = {e: w for c in shirt.pattern.pieces if not c.piece.material for e, w in c.allowances.items()}
    assert 10.0 <= widths["side_lower"] <= 15.0
    assert 6.0 <= widths["armhole"] <= 15.0
    tails = [c for c in coat.pattern.pieces if c.piece.name.startswith("tail-") and not c.piece.material]
    assert all(10.0 <= c.allowances["hem"] <= 30.0 for c in tails)
    (back,) = (c for c in asked("skirt, lined", chart_woman()).pattern.pieces if c.piece.name == "back")
    assert back.allowances["centre"] == pytest.approx(19.0, abs=1.0)


def test_a_trim_is_bought_for_every_hand_and_a_bias_strip_comes_from_a_square() -> None:
    """Common practice: ends are turned under; plane geometry for the strip."""
    from dataclasses import replace

    from drafting.making.shopping import shopping as listed
    from drafting.making.trim_lengths import TRIM_ENDS, laid_trims
    from drafting.reading.trimming import TrimWish

    base = laid("lamplighter")
    braid = TrimWish("front", "lapel", "braid", 12.0)
    piping = TrimWish("under-collar", "fall", "piping", 40.0, bias=True)
    coat = replace(base.garments[0], trims=(braid, piping))
    costume = replace(base, garments=(coat, *base.garments[1:]))
    lapel = coat.draft["front"]["lapel"].length
    on_lapel, on_fall = laid_trims(coat)
    assert (on_lapel.count, on_lapel.cuts[0].each) == (2, pytest.approx(lapel + TRIM_ENDS))
    row = next(r for r in listed(costume, {}) if r.what == "braid")
    assert 2 * (lapel + TRIM_ENDS) <= row.amount < 2 * (lapel + TRIM_ENDS) + 100.0
    table = next(t for t in tables(costume) if t.key == "table.trims")
    assert len(table.rows) == 2
    side = dict(table.rows[1][5].facts)["side"]  # type: ignore[union-attr]
    assert side**2 / 40.0 >= on_fall.total  # the area of a strip is its cloth's


def test_a_flys_seams_are_sewn_once_and_not_on_both_hands() -> None:
    """A facing lies on one front only, a shield on the other: the length is the edge's own."""
    from drafting.costume.garment import draft_garment

    base = made("lamplighter").costume
    garment = draft_garment(base.wearer, base.fabrics["shirting"], "trousers")
    lengths = seam_lengths(garment)
    fly = garment.draft["front"]["fly"].length
    assert lengths["fly facing"] == pytest.approx(fly, abs=0.01)
    assert lengths["fly shield"] == pytest.approx(fly, abs=0.01)
