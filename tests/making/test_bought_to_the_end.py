"""Tape, strips, heads, ends and spare: what a step uses up is its edges off the SVG and what both ends take.

Ends, spare and minutes are common practice, written down here anew; lengths come off the drawn SVG.
"""

from __future__ import annotations

import math
import re
from collections import defaultdict
from functools import cache

import pytest
from svgelements import Matrix

from drafting.export.svg import svg_text
from drafting.making import planned
from drafting.making.model import ShoppingRow
from drafting.making.words import plan_sentence
from drafting.output.sheets import piece_label
from drafting.sheet.piece import piece_sheet
from tests.export.reading import shapes
from tests.making.figures import laid
from tests.making.invented_costumes import COSTUMES, invented
from tests.making.stitched import Record, Sewn, ratio, sewn

NAMES = ("lamplighter", "toll-keeper", "ferrywoman", "impresario", "river mist")


@cache
def plan_of(name: str) -> Sewn:
    return sewn(invented(name) if name in COSTUMES else laid(name))


def taken(name: str, words: str) -> list[tuple[Record, dict[str, float]]]:
    """Return the steps of a plan whose words say so, with the mm of everything that each takes."""
    found = []
    for step in plan_of(name).record["steps"]:
        if words in step["do"]:
            mm: dict[str, float] = defaultdict(float)
            for one in step["takes"]:
                mm[one["what"]] += one["amount"]
            found.append((step, mm))
    assert found, words
    return found


def edges(name: str, step: Record) -> float:
    return math.fsum(plan_of(name).edge(step["garment"], (p, e)) for p, e in step["edges"])


@pytest.mark.parametrize("name", ["lamplighter", "impresario"])
def test_the_tape_of_a_roll_line_reaches_20_mm_beyond_both_its_ends_on_either_front(name: str) -> None:
    for step, mm in taken(name, "Sew a stay tape inside the roll line"):
        fronts = [n for n, p in plan_of(name).pieces(step["garment"]).items() if p["role"] == "front"]
        drawn = {
            k: v for n in fronts for k, v in plan_of(name).lines[step["garment"], n].items() if "roll_line" in k
        }
        assert mm["tape"] == pytest.approx(2 * (max(drawn.values()) + 2 * 20.0), abs=0.5)


@pytest.mark.parametrize(
    ("name", "words"), [("ferrywoman", "Fuse a strip 2 cm wide"), ("river mist", "strip of tape")]
)
def test_the_strip_behind_a_zip_runs_down_both_edges_and_beyond_its_end(name: str, words: str) -> None:
    """20 mm beyond the end of the opening on either side."""
    for step, mm in taken(name, words):
        own = plan_of(name).pieces(step["garment"])
        one = math.fsum(plan_of(name).lines[step["garment"], p][e] for p, e in step["edges"])
        assert all(own[p]["mirrored_pair"] for p, _ in step["edges"])
        assert mm["tape"] == pytest.approx(2 * one + 2 * 20.0, abs=0.5)


def test_the_tape_under_a_turned_edge_is_as_long_as_that_and_both_ends() -> None:
    for step, mm in taken("toll-keeper", "turn it in over a narrow stay tape"):
        assert mm["tape"] == pytest.approx(edges("toll-keeper", step) + 2 * 20.0, abs=0.5)


def test_sequins_have_tape_for_both_raw_edges_of_every_seam() -> None:
    """Both allowances are bound, each by itself: twice the seam."""
    plan = plan_of("mirror dancer")
    bound = [s for s in plan.record["steps"] if s["seams"] and "Bind the raw edges with" in s["how"]]
    assert len(bound) > 3
    for step in bound:
        tape = math.fsum(one["amount"] for one in step["takes"] if "bias tape" in one["kind"])
        assert tape == pytest.approx(2 * math.fsum(plan.seam(step["garment"], s) for s in step["seams"]), abs=0.5)


@pytest.mark.parametrize("name", ["lamplighter", "impresario"])
def test_a_sleeve_head_is_bought_as_long_as_the_words_cut_it(name: str) -> None:
    for step, mm in taken(name, "Sew a sleeve head into each crown"):
        (cm,) = re.findall(r"wadding, ([\d.]+) cm by", step["do"])
        assert mm["sleeve head"] == pytest.approx(2 * 10 * float(cm))
        assert mm["shoulder pad"] == 1  # a pair
        assert 250.0 <= 10 * float(cm) <= 350.0  # notch to notch over a crown


@pytest.mark.parametrize("name", NAMES)
def test_what_is_sold_off_a_roll_is_what_the_steps_take_rounded_up_to_full_10_cm(name: str) -> None:
    plan, wanted = plan_of(name), dict[tuple[str, str], float]()
    for step in plan.record["steps"]:
        for one in step["takes"]:
            if one["unit"] == "mm":
                key = one["what"], one["kind"]
                wanted[key] = wanted.get(key, 0.0) + one["amount"]
    for (what, kind), mm in wanted.items():
        rows = [amount for listed, words, amount in plan.list if listed == what and kind in words]
        assert mm - 1e-6 <= math.fsum(rows) < mm + 100.0 * len(rows)
        assert all(amount == pytest.approx(100.0 * round(amount / 100.0)) for amount in rows)


def rows_of(name: str) -> tuple[ShoppingRow, ...]:
    return planned(invented(name) if name in COSTUMES else laid(name)).shopping


def test_ends_of_bones_and_elastic_are_bought_with_them() -> None:
    """10 mm a bone to file and cap, 20 mm of lap a loop of elastic."""
    record = plan_of("lamplighter").record
    for what, each in (("boning", 10.0), ("elastic", 20.0)):
        count = sum(n["count"] for n in record["notions"] if n["what"] == what)
        ends = math.fsum(
            mm for row in rows_of("lamplighter") if row.what == what for key, mm in row.parts if key == "ends"
        )
        assert count > 1
        assert ends == pytest.approx(each * count)


def test_a_braid_is_bought_with_20_mm_at_both_ends_of_either_hand() -> None:
    plan = plan_of("impresario")
    (step,) = [s for s in plan.record["steps"] if s["verb"] == "trim"]
    ((piece, edge),) = step["along"]
    own = plan.lines["coat", piece][edge]
    (row,) = [r for r in rows_of("impresario") if r.what == "braid"]
    assert math.fsum(mm for _, mm in row.parts) == pytest.approx(2 * (own + 2 * 20.0), abs=0.5)


@pytest.mark.parametrize("name", NAMES)
def test_a_mock_ups_cloth_is_used_by_two_thirds_as_a_lay_by_hand_is(name: str) -> None:
    """Between 55 and 75 % of a cloth 140 cm wide, but for what is longer than that lets it be."""
    plan = plan_of(name)
    own = [
        p for p in plan.record["pieces"] if not p["lies_behind"] and p["fabric"] not in ("interfacing", "lining")
    ]
    area = math.fsum(p["cut_area"] * p["count"] * (2 if p["fold_edge"] else 1) for p in own)
    used = area / (1400.0 * plan.bought("mock-up cloth", ""))
    assert 0.55 < used < 0.75


def test_a_bone_takes_a_quarter_of_an_hour() -> None:
    """Both sides of its casing, both ends filed and capped, one end closed by hand: 10 to 20 minutes."""
    (step,) = [s for s in plan_of("lamplighter").record["steps"] if s["verb"] == "bone"]
    assert step["count"] == 2
    assert 10.0 <= step["minutes"] / step["count"] <= 20.0


def test_each_kind_of_interfacing_is_bought_as_long_as_its_rows_and_50_mm_to_square_the_ends() -> None:
    """Boxes off the SVG's cut lines, laid in rows across the cloth, the tallest first; sold by full 10 cm."""
    made, boxes = laid("lamplighter"), dict[str, list[tuple[float, float]]]()
    kinds = {(g.name, n.piece): n.kind for g in made.garments for n in g.draft.notions if n.what == "interfacing"}
    for garment in made.garments:
        for cut in garment.pattern.pieces:
            if cut.piece.material == "interfacing":
                text = svg_text(piece_sheet(cut, piece_label(made, garment)))
                (ring,) = shapes(text, "cut-line").values()
                turned = ring * Matrix(f"rotate({cut.piece.grain - 90.0})")
                x0, y0, x1, y1 = turned.bbox()
                each = (y1 - y0, (x1 - x0) * (2 if cut.piece.fold_edge else 1))
                boxes.setdefault(kinds[garment.name, cut.piece.name], []).extend([each] * cut.piece.count)
    width = next(lay.cloth.usable_width for lay in made.lays if lay.role == "interfacing")
    bought = {plan_sentence(r.detail): r.amount for r in rows_of("lamplighter") if r.what == "interfacing"}
    assert len(boxes) > 1
    for kind, found in boxes.items():
        (amount,) = [mm for words, mm in bought.items() if words.startswith(f"{kind},")]
        assert amount == pytest.approx(100.0 * math.ceil((in_rows(found, width) + 50.0) / 100.0))


def in_rows(boxes: list[tuple[float, float]], width: float) -> float:
    """Return the length of rows of boxes, the tallest first; a row is as tall as its first."""
    total, left = 0.0, -1.0
    for tall, wide in sorted(boxes, key=lambda box: (-box[0], -box[1])):
        if wide > left:
            total, left = total + tall, width
        left -= wide
    return total


def test_both_puffed_sleeves_of_a_front_on_the_fold_are_gathered_by_two_rows_each() -> None:
    """Two sleeves x two rows of long stitches (5 mm, one ply), as long as the flat edge between the notches."""
    (step,) = [s for s in plan_of("kite").record["steps"] if "Gather the " in s["do"]]
    (drawn,) = re.findall(r"Gather the ([\d.]+) cm", step["do"])
    took = math.fsum(one["mm"] for one in step["thread"] if one["kind"] == "sewing")
    assert took == pytest.approx(2 * 2 * 10 * float(drawn) * ratio("301", 5.0, 0.0, 0.5), rel=0.05)
