"""Ten sorts of cloth, each handled as a cutting room handles it. Common practice, but where a source is named.

The costume is the lamplighter's, its coat and shirt in a cloth of each sort. All figures are invented.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from drafting.costume.lays import laid_out
from drafting.costume.make import Made, make
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import TABLE, gentlest
from drafting.fabric.sorts import SORTS, Sort
from drafting.making import planned
from drafting.making.model import Plan, Step
from drafting.making.rules import unsound
from drafting.making.settings import setting_said
from drafting.making.stages.drawn import sewn_on_paper
from drafting.making.stages.picture import InkMark
from drafting.making.words import plan_sentence, texts
from drafting.output.report import report
from tests.making.figures import made

pytestmark = pytest.mark.xdist_group("cloth sorts")  # what `costume_of` makes is made in one worker

SPOILT_BY_HEAT: tuple[Sort, ...] = ("coated", "sequinned", "foiled")
IN = ("coat", "shirt")
HOT = re.compile(r"\b[Pp]ress (it|the|open)\b|iron at|dots? \d|[Ss]team (it|the)")
"""Words of a step that takes up the iron."""
OF_THE_LINING = "ease pleat"
"""What is basted in such a coat all the same: its lining alone."""


@cache
def costume_of(sort: Sort, lining_pretreated: bool = True, **facts: Any) -> tuple[Made, Plan]:
    """Return the lamplighter with coat and shirt in a cloth of this sort, laid out, and its plan."""
    costume = made("lamplighter").costume
    told = {"sort": sort, "one_way": sort in ("pile", "napped"), "care": "", "fibre": "", "iron_dots": None}
    told |= {"takes_starch": False, "pretreated": False, "weave": "woven"} | facts
    fabrics = {r: replace(c, **told) if r in ("shell", "shirting") else c for r, c in costume.fabrics.items()}  # type: ignore[arg-type]
    fabrics["lining"] = replace(fabrics["lining"], pretreated=lining_pretreated)
    whole = laid_out(make(replace(costume, fabrics=fabrics)), count=10, table=False)
    return whole, planned(whole)


def own(plan: Plan) -> Iterator[Step]:
    """Yield the steps that touch the cloth: making it ready, cutting it, sewing it."""
    for step in plan.steps:
        mock_up = "mock" in step.key or step.verb == "toile"
        if not mock_up and (step.garment in IN or step.key.split("/")[0] in ("shell", "shirting")):
            yield step


def words(steps: Iterator[Step]) -> list[str]:
    return [plan_sentence(one) for step in steps for one in (*step.say, *setting_said(step.setting))]


@pytest.mark.parametrize("sort", SORTS)
def test_the_order_is_sound_and_every_sentence_has_its_words(sort: Sort) -> None:
    whole, plan = costume_of(sort)
    assert unsound(whole, plan.steps) == ()
    assert all(words(iter(plan.steps)))
    assert [f.message for f in whole.findings if f.level == "error"] == []


@pytest.mark.parametrize("sort", SPOILT_BY_HEAT)
def test_no_iron_no_steam_and_no_water_touch_what_they_would_spoil(sort: Sort) -> None:
    _, plan = costume_of(sort)
    steps = list(own(plan))
    assert {step.heat for step in steps} == {None}
    assert not {"soak", "wash", "dry", "steam"} & {s.verb for s in steps if s.stage == "treat"}
    for text in words(iter(steps)):
        assert not HOT.search(text), text
    care = " ".join(plan_sentence(one) for one in plan.keeping)
    assert "coat: not to be washed" in care
    assert "No iron and no steam" in care


@pytest.mark.parametrize("sort", SPOILT_BY_HEAT)
def test_what_keeps_every_hole_is_clipped_and_weighted_in_one_layer(sort: Sort) -> None:
    whole, plan = costume_of(sort)
    assert {lay.lay for lay in whole.lays if lay.role in ("shell", "shirting")} == {"open"}
    assert {step.holds for step in own(plan)} <= {"clips", "weights", None}
    assert {step.holds for step in own(plan) if step.verb == "cut"} == {"weights"}
    for text in words(own(plan)):
        assert OF_THE_LINING in text or not re.match(r"(Pin|Baste) ", text), text


def test_a_row_in_coated_cloth_does_not_perforate_it() -> None:
    """At least 3 mm: common practice of sewing vinyl; at 2.5 mm the row tears like a stamp."""
    costume, plan = costume_of("coated")
    lining = {f"{g.name}.{p.name}" for g in costume.garments for p in g.draft.pieces if p.material == "lining"}
    steps = list(own(plan))
    shell = [s for s in steps if not s.pieces or set(s.pieces) - lining]
    alone = [s for s in steps if s not in shell and s.setting and s.setting.stitch == "301"]
    assert len(alone) == 2  # the lining by itself, body and sleeves
    rows = [
        s.setting for s in shell if s.setting and s.setting.stitch in ("301", "304") and s.verb != "buttonhole"
    ]
    assert len(rows) > 10
    assert min(row.stitch_length for row in rows) >= 3.0


@pytest.mark.parametrize("sort", ["sheer", "lace", *SPOILT_BY_HEAT])
def test_no_fusible_is_cut_bought_or_fused_where_none_holds(sort: Sort) -> None:
    _, plan = costume_of(sort)
    assert not [s for s in own(plan) if any(one.key.startswith("do.fuse") for one in s.say)]
    bought = [plan_sentence(row.detail) for row in plan.shopping if row.what == "interfacing"]
    assert bought
    assert not [text for text in bought if "fusible" in text]
    thin = any("organza" in text for text in bought)
    assert thin == (sort in ("sheer", "lace"))


def test_pile_is_folded_outward_and_never_fused_flat() -> None:
    """Pile on pile locks and creeps: wrong sides together, or one layer (common practice)."""
    _, plan = costume_of("pile")
    for row in plan.docket:
        if row.cloth in ("shell", "shirting"):
            assert row.face in ("right side up", "wrong sides together")
    for step in own(plan):
        if step.verb == "fuse":
            assert "never slid" in " ".join(plan_sentence(one) for one in step.say)


def test_satin_is_not_steamed_like_a_pile() -> None:
    _, plan = costume_of("satin")
    said = " ".join(words(own(plan)))
    assert "needle board" not in said
    assert "Steam the pile" not in said
    assert "no steam" in said


def test_a_label_that_forbids_the_iron_is_believed_of_any_cloth() -> None:
    """A crossed-out iron is a sign of ISO 3758; 0 dots say the same."""
    for facts in ({"care": "wash at 30, do not iron"}, {"iron_dots": 0}):
        _, plan = costume_of("plain", **facts)
        assert {step.heat for step in own(plan)} == {None}
        assert "No iron and no steam" in " ".join(plan_sentence(one) for one in plan.keeping)


def test_silk_and_the_lining_of_a_coat_that_is_never_washed_are_not_soaked() -> None:
    _, plan = costume_of("plain", fibre="silk")
    assert "soak" not in {step.verb for step in own(plan)}
    _, plan = costume_of("plain", care="dry clean", lining_pretreated=False)
    lining = [s.verb for s in plan.steps if s.key.startswith("lining/")]
    assert "steam" in lining
    assert not {"soak", "wash"} & set(lining)


def test_a_cloth_that_may_be_two_sorts_is_handled_as_gently_as_the_tenderest_of_both() -> None:
    vinyl = Fabric("oilcloth, invented", care="wipe clean")
    assert set(vinyl.possible_sorts) == {"coated", "foiled"}
    takes = handling(vinyl)
    assert not takes.water
    assert takes.iron == 0
    assert takes.holds == "clips"
    for one in SORTS:
        for other in SORTS:
            both = gentlest([TABLE[one], TABLE[other]])
            assert both.iron == min(TABLE[one].iron, TABLE[other].iron)
            assert both.water == (TABLE[one].water and TABLE[other].water)
            assert both.fuses == (TABLE[one].fuses and TABLE[other].fuses)


def test_a_machine_reads_what_holds_a_step_and_how_hot_it_may_be() -> None:
    """ISO 3758: one, two, three dots; none where no iron may touch."""
    whole, plan = costume_of("coated")
    rows = report(whole, plan)["steps"]
    coat = [row for row in rows if row["garment"] == "coat"]
    assert {row["heat"] for row in coat} == {None}
    assert {row["holds"] for row in coat} <= {"clips", "weights", None}
    whole, plan = costume_of("plain", fibre="cotton")
    rows = report(whole, plan)["steps"]
    assert {row["heat"] for row in rows if row["garment"] == "shirt"} >= {3}


def test_every_twin_of_a_sentence_takes_the_facts_of_the_one_it_stands_for() -> None:
    fields = re.compile(r"{(\w+)")
    for key, text in texts().items():
        section, _, name = key.partition(".")
        if section in ("cold", "clipped", "unfused", "piled"):
            assert set(fields.findall(text)) <= set(fields.findall(texts()[f"do.{name}"])), key


@pytest.mark.parametrize(("sort", "held"), [("plain", "pin"), ("coated", "clip")])
def test_a_drawing_pins_no_cloth_in_which_every_hole_stays(sort: Sort, held: str) -> None:
    costume, plan = costume_of(sort)
    drawn = [one for step, _, one in sewn_on_paper(costume, plan.steps) if one and step.garment in IN]
    marks = {ink.kind for one in drawn for panel in one.panels for ink in panel.inks if isinstance(ink, InkMark)}
    assert marks & {"pin", "clip"} == {held}
