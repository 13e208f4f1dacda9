"""The order of work: sound on every block, body and cloth, and what a tailor expects of it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import settings as hypothesis_settings
from hypothesis import strategies as st

from drafting.blocks import all_blocks
from drafting.costume import Made
from drafting.fabric import Fabric
from drafting.garment import MadeGarment, draft_garment
from drafting.making import planned, work_order
from drafting.making.model import Step
from drafting.making.order import placed, sewing_steps, unsound
from drafting.making.settings import settings
from drafting.making.words import text
from tests.bodies import bdims
from tests.making.figures import laid, made, with_cloth

WOVEN = Fabric(
    "Twill, invented",
    usable_width=1480.0,
    fibre="cotton",
    mass=210.0,
    thickness=0.5,
    takes_starch=True,
)
KNIT = Fabric(
    "Jersey, invented", usable_width=1500.0, weave="knit", fibre="viscose, elastane", mass=220.0,
    thickness=0.7, stretch_along=0.5, stretch_across=0.6, recovery=0.97, takes_fusible=False,
)  # fmt: skip
GARMENTS = [
    ("shirt", {}, WOVEN), ("shirt", {"collar": "stand"}, WOVEN), ("tailcoat", {}, WOVEN),
    ("tailcoat", {"hem_bone": "none"}, WOVEN), ("trouser", {}, WOVEN), ("breeches", {}, KNIT),
    ("trouser", {"waist_finish": "casing"}, KNIT), ("puffed-top", {}, KNIT), ("close-top", {}, KNIT),
    ("bodice", {"bust_dart": "shoulder-princess"}, WOVEN),
]  # fmt: skip


def costume_of(garment: MadeGarment, fabric: Fabric) -> Made:
    base = made("kite")
    return replace(
        base, garments=(garment,), costume=replace(base.costume, fabrics={garment.fabric: fabric})
    )


def order_of(costume: Made) -> tuple[Step, ...]:
    sewn = settings(costume)
    return placed([
        step for g in costume.garments
        for step in sewing_steps(g, costume.costume.fabrics.get(g.fabric), sewn)
    ])  # fmt: skip


def first(steps: tuple[Step, ...], garment: str, verb: str) -> int:
    return next(s.n for s in steps if s.garment == garment and s.verb == verb)


@hypothesis_settings(max_examples=40, deadline=None)
@given(st.sampled_from(GARMENTS), st.integers(0, 506))
def test_the_order_is_sound_on_any_body(kind: tuple[str, dict[str, str], Fabric], n: int) -> None:
    """Trouble MA4: each step uses only parts already made; every piece, seam and notion used once."""
    block, choices, fabric = kind
    known = {c.name for part in [all_blocks()[block]] for c in part.choices}
    asked = {name: value for name, value in choices.items() if name in known or block != "bodice"}
    garment = draft_garment(bdims()[n], fabric, block, asked if block != "bodice" else {})
    costume = costume_of(garment, fabric)
    assert unsound(costume, order_of(costume)) == ()


@pytest.mark.parametrize("name", ["lamplighter", "kite"])
def test_the_whole_plan_is_sound_from_the_bolt(name: str) -> None:
    plan = planned(laid(name))
    assert unsound(laid(name), plan.steps) == ()
    assert [step.n for step in plan.steps] == list(range(1, len(plan.steps) + 1))


def test_a_wrong_order_is_found_out() -> None:
    """The check itself: a step dropped, doubled, or moved before what it needs."""
    costume = laid("kite")
    steps = planned(costume).steps
    seam = next(s for s in steps if s.seams)
    assert unsound(costume, [s for s in steps if s is not seam])
    assert unsound(costume, [*steps, seam])
    assert unsound(costume, list(reversed(steps)))


def test_shaping_comes_before_joining_flat_before_round_and_hems_last() -> None:
    """Row K24 (common practice)."""
    steps = planned(laid("lamplighter")).steps
    shirt = [s for s in steps if s.garment == "shirt"]
    verbs = [s.verb for s in shirt]
    assert verbs.index("fuse") < verbs.index("dart") < verbs.index("join") < verbs.index("set in")
    assert verbs.index("set in") < verbs.index("hem") < verbs.index("button") < verbs.index("try")
    bind = next(s.n for s in shirt if s.verb == "bind" and "sleeve" in s.makes)
    assert bind < next(s.n for s in shirt if "sleeve underarm" in s.seams)


def test_bias_panels_hang_a_day_before_their_hem_and_bones_follow_the_hem() -> None:
    """Troubles FL4 and MA4: hang at least 24 h, level from the floor, then hem; not on straight hems."""
    steps = planned(laid("lamplighter")).steps
    hang, hem, bone = (first(steps, "coat", verb) for verb in ("hang", "hem", "bone"))
    coat_hem = next(
        s.n
        for s in steps
        if s.garment == "coat" and s.verb == "hem" and ("tail-1", "hem") in s.edges
    )
    assert hang < coat_hem < bone
    assert hem <= coat_hem
    assert next(s for s in steps if s.verb == "hang").wait >= 24
    assert not [s for s in steps if s.verb == "hang" and s.garment in ("shirt", "breeches")]
    assert "level from the floor" in " ".join(
        text(x) for x in next(s for s in steps if s.verb == "hang").say
    )


def test_elastic_goes_in_before_its_casing_is_closed_and_is_marked_in_quarters() -> None:
    """Troubles MA4 and GA2."""
    steps = [s for s in planned(laid("kite")).steps if s.verb == "casing"]
    assert len(steps) == 2
    for step in steps:
        keys = [x.key for x in step.say]
        assert (
            keys.index("do.loop")
            < keys.index("do.quarters_elastic")
            < keys.index("do.casing_close")
        )
        assert step.notions


def test_work_is_put_into_the_waiting_time() -> None:
    """While the ponte soaks and dries, other steps are done; the order stays sound."""
    steps = planned(laid("lamplighter")).steps
    soak = next(s for s in steps if s.verb == "soak")
    wash = next(s for s in steps if s.verb == "wash")
    assert wash.n > soak.n + 1
    hang = next(s for s in steps if s.verb == "hang")
    hem = next(s for s in steps if s.garment == "coat" and ("tail-1", "hem") in s.edges)
    assert hem.n > hang.n + 1


def test_starch_is_only_used_where_the_cloth_takes_it() -> None:
    """The velveteen takes none; a cotton that does is starched after its bias seams are pressed."""
    assert "starch" not in [s.verb for s in planned(laid("lamplighter")).steps]
    costume = with_cloth("lamplighter", "shell", takes_starch=True, one_way=False)
    steps = order_of(costume)
    starch = first(steps, "coat", "starch")
    assert all(s.n < starch for s in steps if "tail-1 to tail-2" in s.seams)
    assert starch < first(steps, "coat", "hang")


def test_a_cloth_that_takes_no_fusible_has_its_interfacing_basted() -> None:
    costume = with_cloth("lamplighter", "shirting", takes_fusible=False)
    shirt = [s for s in order_of(costume) if s.garment == "shirt" and s.verb == "fuse"]
    assert shirt
    assert all("takes no fusible" in text(s.say[0]) and not s.cautions for s in shirt)


def test_fittings_stop_the_work_while_something_can_still_be_changed() -> None:
    steps = planned(laid("lamplighter")).steps
    for garment in ("coat", "shirt", "breeches"):
        fits = [s.n for s in steps if s.garment == garment and s.verb == "fit"]
        assert fits
        assert fits[0] < min(
            s.n for s in steps if s.garment == garment and s.verb in ("hem", "casing", "set in")
        )


def test_both_sleeves_of_an_uneven_body_are_set_in_by_hand() -> None:
    """Trouble ME6: two shoulders that differ give pieces named by hand; the order uses each once."""
    body = made("lamplighter").costume.wearer
    drop = body.measures["shoulder_drop"]
    uneven = replace(body, measures={**body.measures, "shoulder_drop": replace(
        drop, left=drop.mm - 8, right=drop.mm + 8)})  # fmt: skip
    garment = draft_garment(uneven, WOVEN, "shirt")
    assert any(p.name.endswith("-left") for p in garment.draft.pieces)
    costume = costume_of(garment, WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    assert len([s for s in steps if s.verb == "set in"]) == 2


def test_the_two_demos_differ_where_cloth_and_cut_differ() -> None:
    lamp, kite = (planned(laid(name)) for name in ("lamplighter", "kite"))
    needles = [{s.needle.point for s in plan.settings.values()} for plan in (lamp, kite)]
    assert needles == [{"sharp", "stretch"}, {"stretch"}]
    verbs = [{s.verb for s in plan.steps} for plan in (lamp, kite)]
    assert verbs[0] - verbs[1] >= {"bone", "hang", "fuse", "button", "steam"}


def test_the_record_holds_the_steps() -> None:
    from drafting.report import report

    plan = planned(laid("kite"))
    record = report(laid("kite"), plan)
    assert [row["n"] for row in record["steps"]] == [s.n for s in plan.steps]
    assert all(row["stitch"] for row in record["seams"])
    assert {"n", "do", "uses", "makes", "stitch", "needle", "heat", "caution"} <= set(
        record["steps"][0]
    )


def test_work_order_needs_no_settings() -> None:
    assert all(s.setting is None for s in work_order(laid("kite"), {}))
