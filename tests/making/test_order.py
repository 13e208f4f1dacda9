"""The order of work: what a tailor expects of it."""

from __future__ import annotations

import pytest

from drafting.costume.garment import draft_garment
from drafting.making import planned, work_order
from drafting.making.rules import unsound
from drafting.making.words import plan_sentence as text
from tests.bodies import bdims
from tests.making.figures import laid, made, on_the_bias, with_cloth
from tests.making.orders import WOVEN, costume_of, first, order_of, uneven


def test_shaping_comes_before_joining_flat_before_round_and_hems_last() -> None:
    """Common practice."""
    steps = planned(laid("lamplighter")).steps
    shirt = [s for s in steps if s.garment == "shirt"]
    verbs = [s.verb for s in shirt]
    assert verbs.index("fuse") < verbs.index("dart") < verbs.index("join") < verbs.index("set in")
    assert verbs.index("set in") < verbs.index("hem") < verbs.index("button") < verbs.index("try")
    bind = next(s.n for s in shirt if s.verb == "bind" and "sleeve" in s.makes)
    assert bind < next(s.n for s in shirt if "sleeve underarm" in s.seams)


def test_bias_panels_hang_a_day_before_their_hem_and_bones_follow_the_hem() -> None:
    """Common practice: hang at least 24 h, level from the floor, then hem; not on straight hems."""
    steps = planned(on_the_bias()).steps
    hang, hem, bone = (first(steps, "coat", verb) for verb in ("hang", "hem", "bone"))
    coat_hem = next(s.n for s in steps if s.garment == "coat" and s.verb == "hem" and ("tail-1", "hem") in s.edges)
    assert hang < coat_hem < bone
    bands = [s.n for s in steps if s.verb == "fuse" and "coat.tail-1" in s.pieces]
    assert bands
    assert hang < min(bands) <= max(bands) < coat_hem
    assert hem <= coat_hem
    assert next(s for s in steps if s.verb == "hang").wait >= 24
    assert not [s for s in steps if s.verb == "hang" and s.garment in ("shirt", "breeches")]
    assert "level from the floor" in " ".join(text(x) for x in next(s for s in steps if s.verb == "hang").say)


def test_elastic_goes_in_before_its_casing_is_closed_and_is_marked_in_quarters() -> None:
    """Common practice: elastic before its casing is closed; quarters on quarters."""
    steps = [s for s in planned(laid("kite")).steps if s.verb == "casing"]
    assert len(steps) == 2
    for step in steps:
        keys = [x.key for x in step.say]
        assert keys.index("do.loop") < keys.index("do.quarters_elastic") < keys.index("do.casing_close")
        assert step.notions


def test_work_is_put_into_the_waiting_time() -> None:
    """While the ponte soaks and dries, other steps are done; the order stays sound."""
    steps = planned(on_the_bias()).steps
    soak = next(s for s in steps if s.verb == "soak")
    wash = next(s for s in steps if s.verb == "wash")
    assert wash.n > soak.n + 1
    hang = next(s for s in steps if s.verb == "hang")
    hem = next(s for s in steps if s.garment == "coat" and ("tail-1", "hem") in s.edges)
    assert hem.n > hang.n + 1


def test_starch_is_only_used_where_the_cloth_takes_it() -> None:
    """The velveteen takes none; a cotton that does is starched after its bias seams are pressed, a shirt last."""
    starched = {s.garment for s in planned(laid("lamplighter")).steps if s.verb == "starch"}
    assert starched == {"shirt"}
    costume = with_cloth("lamplighter", "shell", takes_starch=True, one_way=False, sort="plain")
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
        assert fits[0] < min(s.n for s in steps if s.garment == garment and s.verb in ("hem", "casing", "set in"))


def test_both_sleeves_of_an_uneven_body_are_set_in_by_hand() -> None:
    """Two shoulders that differ give pieces named by hand; the order uses each once."""
    garment = draft_garment(uneven(made("lamplighter").costume.wearer), WOVEN, "shirt")
    assert any(p.name.endswith("-left") for p in garment.draft.pieces)
    costume = costume_of(garment, WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    assert len([s for s in steps if s.verb == "set in"]) == 2


def test_a_toile_is_tried_on_before_good_cloth_is_cut() -> None:
    """Common practice."""
    steps = planned(laid("lamplighter")).steps
    toiles = [s.n for s in steps if s.verb == "toile"]
    assert len(toiles) == 3
    assert max(toiles) < min(s.n for s in steps if s.stage == "cut")


@pytest.mark.parametrize("name", ["lamplighter", "kite"])
def test_sleeves_are_basted_in_and_tried_on_before_they_are_sewn_and_ended(name: str) -> None:
    """Common practice: set-in sleeves after the side seams; their length can still be changed."""
    for garment in {s.garment for s in planned(laid(name)).steps if s.verb == "set in"}:
        steps = [s for s in planned(laid(name)).steps if s.garment == garment]
        side = next((s.n for s in steps if {"side", "front panel"} & set(s.seams)), 0)
        sewn = first(tuple(steps), garment, "set in")
        baste = max(s.n for s in steps if s.verb == "baste")
        fit = next(s.n for s in steps if s.verb == "fit" and s.n > baste)
        ends = [
            s.n for s in steps if any("sleeve" in piece for piece, _ in s.edges) and s.verb in ("hem", "casing")
        ] + [s.n for s in steps if "cuff" in s.seams]
        assert side < baste < fit < sewn < min(ends)


def test_a_coats_collar_is_closed_only_when_both_its_layers_are_on() -> None:
    """Trade: under collar to the neck, top collar to the facings, then one line round the edge."""
    steps = [s for s in planned(laid("lamplighter")).steps if s.garment == "coat"]
    neck, gorge, edge = (
        next(s for s in steps if seam in s.seams) for seam in ("collar", "facing to top collar", "collar edge")
    )
    assert max(neck.n, gorge.n) < edge.n
    assert "front edge" in edge.seams


def test_gathers_are_held_at_quarter_marks_before_they_are_sewn() -> None:
    """Common practice: gathers are spread by their quarters."""
    for name, seam in (("lamplighter", "cuff"), ("kite", "front armhole")):
        steps = planned(laid(name)).steps
        sewn = next(s for s in steps if seam in s.seams)
        held = next(s for s in steps if any(x.key == "do.quarters" for x in s.say))
        keys = [x.key for x in held.say]
        joined = next(key for key in ("do.attach", "do.baste_in") if key in keys)
        gathered = "do.gather_between" if seam == "front armhole" else "do.gather"
        assert keys.index(gathered) < keys.index("do.quarters") < keys.index(joined)
        assert held.n <= sewn.n


def test_buttonholes_are_worked_through_both_layers_and_flat_buttons_get_a_shank() -> None:
    """Common practice: holes before buttons; a shank of thread where the button has none of its own."""
    kinds = {
        kind: [
            x.key
            for s in order_of(costume_of(draft_garment(bdims()[3], WOVEN, "shirt", {"button_shape": kind}), WOVEN))
            if s.verb in ("button", "buttonhole")
            for x in s.say
        ]
        for kind in ("flat", "shank")
    }
    assert kinds["flat"].index("do.holes_tried") < kinds["flat"].index("do.holes_side")
    assert kinds["flat"].index("do.holes_side") < kinds["flat"].index("do.open_holes")
    assert kinds["flat"].index("do.open_holes") < kinds["flat"].index("do.buttons")
    assert "do.thread_shank" in kinds["flat"]
    assert "do.thread_shank" not in kinds["shank"]


def test_seams_are_pressed_as_they_are_sewn() -> None:
    """An overedge seam cannot be pressed open (common practice); a plain one in a woven is."""
    for name, key in (("lamplighter", "do.press_open"), ("kite", "do.press_side")):
        side = next(s for s in planned(laid(name)).steps if "side" in s.seams)
        assert key in [x.key for x in side.say]


def test_a_fly_is_made_while_the_fronts_lie_flat() -> None:
    """Common practice: flat work before the round is closed."""
    garment = draft_garment(bdims()[3], WOVEN, "trouser")
    assert "fly" in garment.draft["front"]
    steps = order_of(costume_of(garment, WOVEN))
    below, side = (next(s.n for s in steps if name in s.seams) for name in ("front crotch", "side"))
    fly = next(s.n for s in steps if ("front", "fly") in s.edges)
    assert below < fly < side


def test_the_two_demos_differ_where_cloth_and_cut_differ() -> None:
    lamp, kite = (planned(laid(name)) for name in ("lamplighter", "kite"))
    needles = [{s.needle.point for s in plan.settings.values()} for plan in (lamp, kite)]
    assert needles == [{"sharp", "stretch"}, {"stretch"}]
    verbs = [{s.verb for s in plan.steps} for plan in (lamp, kite)]
    assert verbs[0] - verbs[1] >= {"bone", "fuse", "button", "steam"}


def test_the_record_holds_the_steps() -> None:
    from drafting.output.report import report

    plan = planned(laid("kite"))
    record = report(laid("kite"), plan)
    assert [row["n"] for row in record["steps"]] == [s.n for s in plan.steps]
    assert all(row["stitch"] for row in record["seams"])
    assert {"n", "do", "uses", "makes", "stitch", "needle", "heat", "caution"} <= set(record["steps"][0])


def test_work_order_needs_no_settings() -> None:
    steps = work_order(laid("kite"), {})
    assert all(s.setting is None or s.setting.stitch in ("200", "209") for s in steps)  # by hand, as ever
