"""Shirt tails and the back's pleat: on many bodies, by plain arithmetic. Choices are invented."""

from __future__ import annotations

import cmath
import math
from typing import Any

import pytest
import shapely

from drafting.body import Body
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import MadeGarment, make_garment
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.draft.walk import walk
from drafting.ground.errors import DraftError
from drafting.ground.scale import body_scale
from drafting.making.rules import unsound
from drafting.reading.given import Given, Origin
from tests.blocks.figures import errors
from tests.blocks.sleeves import odd_bodies
from tests.bodies import ansur, bdims
from tests.drawn_bodies import at_hand
from tests.making.orders import WOVEN, costume_of, order_of

SOME = [*odd_bodies().values(), *at_hand(6), *bdims(4)]


def shirt(body: Body, **choices: Any) -> MadeGarment:
    block = block_named("shirt")
    given = {name: Given(value) for name, value in choices.items()}
    return make_garment(
        body, None, block, choose(block, given, body_scale(body), Origin()), name="shirt", role="shell"
    )


def hem(garment: MadeGarment, piece: str) -> tuple[complex, complex]:
    """Return a hem's end at the centre and at the side."""
    ends = garment.draft[piece]["hem"].path.start, garment.draft[piece]["hem"].path.end
    return min(ends, key=lambda p: abs(p.real)), max(ends, key=lambda p: abs(p.real))


def holds(body: Body, pleat: str) -> None:
    garment = shirt(body, tails="shaped", back_shaping="yoke", back_pleat=pleat)
    assert errors(garment) == [], body.title
    plain = shirt(body, back_shaping="yoke")
    chosen = {name: value for name, (value, _) in garment.choices.items()}
    for name, longer in (("front", 0.0), ("back", chosen["tail_longer"])):
        low, side = hem(garment, name)
        was, side_was = hem(plain, name)
        assert (was - low).imag == pytest.approx(chosen["tail_front"] + longer, abs=1e-6), body.title
        assert abs(side - side_was) >= min(chosen["tail_side"], chosen["tail_front"]) - 1e-6, body.title
        assert low.imag < side.imag
    wider = 0.0 if pleat == "none" else 2 * chosen["back_pleat_depth"]
    # Plain arithmetic: a fold takes twice its depth, all of it in the back and none in the yoke.
    for edge, more in (("hem", wider), ("yoke", 0.0)):
        drawn = sum(e.length for e in garment.draft["back-yoke"].edges if e.role is EdgeRole.YOKE)
        assert edge == "hem" or drawn == pytest.approx(plain.draft["back-yoke"]["yoke"].length + more, abs=1e-6)
    levels = [{v.name: v.length for v in g.draft["back"].levels} for g in (garment, plain)]
    assert levels[0]["hip"] == pytest.approx(levels[1]["hip"] + wider, abs=0.1), body.title


@pytest.mark.parametrize("pleat", ["none", "box", "inverted", "side pleats"])
@pytest.mark.parametrize("body", SOME, ids=lambda body: body.title)
def test_tails_and_pleat_hold_every_check_on_a_sample(body: Body, pleat: str) -> None:
    holds(body, pleat)


@pytest.mark.population
@pytest.mark.parametrize("pleat", ["box", "inverted", "side pleats"])
def test_tails_and_pleat_hold_on_three_hundred_people(pleat: str) -> None:
    for body in (*ansur(200), *bdims(100)):
        holds(body, pleat)


def test_the_shaped_hem_runs_on_smoothly_from_front_to_back() -> None:
    # Plain geometry: the angle between both hems at the side, laid side seam on side seam, is 180 degrees.
    for body in SOME[:4]:
        draft = shirt(body, tails="shaped").draft
        (seam,) = [s for s in draft.seams if s.kind is SeamKind.SIDE]
        assert walk(draft, seam).difference == pytest.approx(0.0, abs=0.5)
        turns = []
        for name in ("front", "back"):
            piece = draft[name]
            at = piece.index("hem")
            before, path, after = (
                piece.edges[at - 1].path,
                piece.edges[at].path,
                piece.edges[(at + 1) % len(piece.edges)].path,
            )
            side_after = piece.edges[(at + 1) % len(piece.edges)].role is EdgeRole.SIDE
            turns.append(cmath.phase(after.leave / path.arrive if side_after else path.leave / before.arrive))
        assert math.degrees(sum(turns)) == pytest.approx(180.0, abs=2.0)


@pytest.mark.parametrize("tails", [{"tails": "straight"}, {"tails": "shaped", "tail_side": 300.0}])
def test_both_sides_of_the_side_seam_run_on_equally_far(tails: dict[str, Any]) -> None:
    for body in SOME[:5]:
        assert errors(shirt(body, **tails)) == [], body.title


def test_off_by_default_the_shirt_is_as_it_was() -> None:
    garment = shirt(SOME[0])
    assert not [m for m in garment.draft["back"].placements if m.what == "pleat fold"]
    assert "tail_front" not in garment.draft.facts


def test_a_pleat_without_a_yoke_and_tails_without_a_whole_hem_are_told() -> None:
    body = SOME[0]
    said = [f for f in shirt(body, back_pleat="box", back_shaping="ease").findings if f.check == "back pleat"]
    assert [f.level for f in said] == ["warning"]
    said = [f for f in shirt(body, tails="shaped", length="waist").findings if f.check == "tails"]
    assert [f.level for f in said] == ["warning"]
    with pytest.raises(DraftError, match="parted by a dart or a panel seam"):
        shirt(body, tails="shaped", bust_dart="shoulder-princess")


# ---------------------------------------------------------------------------------- the sleeve's placket


def slit_holds(body: Body, kind: str) -> None:
    garment = shirt(body, sleeve_opening=kind)
    assert errors(garment) == [], body.title
    draft, plain = garment.draft, shirt(body).draft
    sleeve = draft["sleeve"]
    whole = sleeve["hem"].length + sleeve["hem_behind"].length
    assert whole == pytest.approx(plain["sleeve"]["hem"].length, abs=1e-6)
    # Common practice: a quarter of the hem from the seam, in the back half, along the warp.
    assert sleeve["hem_behind"].length == pytest.approx(0.25 * whole, abs=1e-6)
    (mark,) = [m for m in sleeve.placements if m.what == "slit"]
    assert abs((mark.path.end - mark.path.start).real) < 1e-9
    assert mark.path.length >= plain.facts["sleeve_slit"] - 1e-6 or mark.path.length >= 0.44 * min(
        sleeve[f"underarm_{half}"].length for half in ("front", "back") if f"underarm_{half}" in sleeve
    )
    outline = shapely.Polygon([(p.real, p.imag) for p in sleeve.outline.flattened(0.1)])
    cut = shapely.LineString([(p.real, p.imag) for p in (mark.path.start, mark.path.end)])
    assert outline.buffer(0.2).covers(cut)  # the outline is flattened to 0.1
    strip = draft["slit-strip"]["sewn"].length
    assert strip == pytest.approx((2 if kind == "bound" else 1) * mark.path.length)
    (seam,) = [s for s in draft.seams if s.name == "cuff"]
    assert walk(draft, seam).difference == pytest.approx(0.0, abs=0.05)


@pytest.mark.parametrize("kind", ["bound", "placket"])
@pytest.mark.parametrize("body", SOME, ids=lambda body: body.title)
def test_the_slit_lies_in_the_sleeves_back_on_a_sample(body: Body, kind: str) -> None:
    slit_holds(body, kind)


@pytest.mark.population
@pytest.mark.parametrize("kind", ["bound", "placket"])
def test_the_slit_lies_in_the_sleeves_back_on_three_hundred_people(kind: str) -> None:
    for body in (*ansur(200), *bdims(100)):
        slit_holds(body, kind)


def test_the_cuffs_buttonhole_lies_on_the_front_edge_of_the_slit() -> None:
    # Common practice: the sleeve's front part laps over the part beside the seam. The chains of a seam run against
    # each other, so the cuff's start meets the end of the sleeve's edge that is listed first.
    draft = shirt(SOME[0], sleeve_opening="placket").draft
    (seam,) = [s for s in draft.seams if s.name == "cuff"]
    assert seam.b == (("sleeve", "hem"), ("sleeve", "hem_behind"))
    cuff = draft["cuff"]
    holes, buttons = (
        [m.path.bounds[0] for m in cuff.placements if m.what == what] for what in ("buttonhole", "button")
    )
    start, end = cuff["sleeve"].path.start.real, cuff["sleeve"].path.end.real
    assert abs(holes[0] - start) < abs(holes[0] - end)
    assert abs(buttons[0] - end) < abs(buttons[0] - start)


def test_the_plan_cuts_and_binds_the_slit_before_the_sleeve_is_closed() -> None:
    for kind, keys in (("bound", ["do.slit_strip"]), ("placket", ["do.slit_under", "do.slit_placket"])):
        garment = shirt(SOME[0], sleeve_opening=kind, tails="shaped", back_shaping="yoke", back_pleat="box")
        costume = costume_of(garment, WOVEN)
        steps = order_of(costume)
        assert unsound(costume, steps) == ()
        said = [one.key for step in steps for one in step.say]
        assert [key for key in said if key.startswith("do.slit")] == keys
        assert said.index(keys[-1]) < said.index("do.close_sleeve")
