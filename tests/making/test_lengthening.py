"""How far each seam and hem must lengthen, and what is sewn there; sources beside each check."""

from __future__ import annotations

import math
import re
from dataclasses import replace

import pytest
from hypothesis import given, reject
from hypothesis import settings as hypothesis_settings
from hypothesis import strategies as st

from drafting.blocks import all_blocks, names
from drafting.checks.treatments import iron_limit
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.make import Made
from drafting.costume.workroom import BLADES, FEET, POINTS, PRESSING, STITCHES, Workroom
from drafting.draft.draft import Draft
from drafting.draft.openings import ring_of
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.making.model import Setting
from drafting.making.settings import edge_key, setting_said, settings
from drafting.making.settings.lengthening import Gives, lengthens
from drafting.making.settings.more_tools import easier
from drafting.making.settings.stitches import edge_stitch, stitch_for, width_for
from drafting.making.words import plan_sentence as text
from drafting.making.words import texts
from tests.making.figures import NYLON, made, with_cloth

GIVING = ("304", "401", "504", "514", "three-step zigzag", "202")
"""Stitch-type teaching pages (common practice), with the three-step zigzag for elastic and the
back stitch that a hand sews."""

STRETCH_BLOCKS = [
    name
    for name in names(alone=True)
    if any(choice.name == "stretch_share" for choice in all_blocks()[name].choices)
]
ROOMS = st.builds(
    Workroom,
    stitches=st.lists(st.sampled_from(sorted(STITCHES)), unique=True).map(tuple),
    feet=st.lists(st.sampled_from(FEET), unique=True).map(tuple),
    foot_pressure=st.booleans(),
    blade=st.sampled_from(BLADES),
    iron_dots=st.integers(1, 3),
    pressing=st.lists(st.sampled_from(PRESSING), unique=True).map(tuple),
    needles=st.lists(st.sampled_from(POINTS), unique=True).map(tuple),
)


def stretchy(stretch: float, weave: str = "knit") -> Fabric:
    return Fabric(
        "Stretch cloth, invented",
        usable_width=1500.0,
        weave="knit" if weave == "knit" else "woven",
        fibre="cotton, elastane",
        mass=200.0,
        stretch_along=stretch / 2,
        stretch_across=stretch,
        recovery=0.97,
    )


def worn(garment: MadeGarment, fabric: Fabric) -> Made:
    base = made("kite")
    return replace(base, garments=(garment,), costume=replace(base.costume, fabrics={garment.fabric: fabric}))


def words_of(setting: Setting) -> str:
    return " ".join(text(sentence) for sentence in setting_said(setting))


def tight(draft: Draft, pieces: set[str]) -> bool:
    """Return whether the garment is smaller than the body at a level of these pieces, by more than a lockstitch
    gives: any gives 1 % (from memory: it breaks at ten times that)."""
    levels = {level.name for piece in pieces for level in draft[piece].levels}
    return any(g.settled_ease < -0.01 * g.body for g in draft.girths if g.level in levels)


@hypothesis_settings(max_examples=40, deadline=None)
@given(
    st.sampled_from(STRETCH_BLOCKS),
    st.floats(0.25, 0.9),
    st.sampled_from(["knit", "woven"]),
    st.sampled_from([0.2, 0.3, 0.45]),
    ROOMS,
)
def test_no_seam_with_negative_ease_is_ever_a_plain_lockstitch(
    block: str, stretch: float, weave: str, share: float, room: Workroom
) -> None:
    """Common practice, any block that stretches, any stretch cloth, any workroom; nothing she has not."""
    fabric = stretchy(stretch, weave)
    try:
        garment = draft_garment(made("kite").costume.wearer, fabric, block, {"stretch_share": share})
    except DraftError:
        reject()
    found = settings(worn(garment, fabric), room)
    for seam in garment.draft.seams:
        sewn = found[garment.name, seam.name]
        assert sewn.stitch in (*room.stitches, "202"), seam.name
        if tight(garment.draft, {piece for piece, _ in (*seam.a, *seam.b)}):
            assert sewn.stitch in GIVING, seam.name
            assert sewn.lengthens <= stretch + 1e-9 or sewn.cause == "around"
        if sewn.lengthens > 0.15:  # the row's own limit
            assert sewn.stitch in GIVING
        assert sewn.dots is not None
        assert sewn.dots <= room.iron_dots
        assert not room.needles or sewn.needle.point in (*room.needles, "stretch", "sharp")
    assert all("{" not in words_of(s) for s in found.values())


def test_a_seam_around_must_give_what_the_body_needs_at_its_level() -> None:
    """Needed stretch = body / garment - 1 (the formula of ASTM D2594): 96 on 80 cm is 20 %."""
    draft = made("kite").garments[0].draft
    hips = next(g for g in draft.girths if g.level == "hip")
    around = replace(draft, girths=(replace(hips, body=960.0, settled_ease=-160.0),))
    shoulder = next(seam for seam in around.seams if seam.name == "shoulder")
    found = lengthens(around, shoulder, stretchy(0.5))
    assert found.cause == "around"
    assert found.share == pytest.approx(0.20)


def test_a_crotch_seam_follows_the_seat_and_a_side_seam_the_bend() -> None:
    """Kirk and Ibrahim 1966, from memory: sitting down takes 25-30 % at the seat; a seam along gives less."""
    found = settings(made("kite"), Workroom())
    assert 0.25 <= found["trouser", "back crotch"].lengthens <= 0.40
    assert 0 < found["trouser", "side"].lengthens < found["trouser", "back crotch"].lengthens
    assert found["top", "sleeve underarm"].lengthens == 0  # a puffed sleeve hangs free of the arm


def test_a_shoulder_that_is_stayed_lengthens_no_more() -> None:
    found = settings(made("kite"), Workroom())["top", "shoulder"]
    assert (found.stayed, found.lengthens) == (True, 0.0)
    assert "lengthen" not in words_of(found)


def test_a_waist_that_is_pulled_on_opens_over_the_hips() -> None:
    """Share = girth to pass / ring - 1, by arithmetic: over the hips or not at all."""
    costume = made("kite")
    trouser = costume.garments[1].draft
    ring = 2 * sum(trouser[piece]["waist"].length for piece in ("front", "back"))
    assert ring_of(trouser, trouser["front"], trouser["front"]["waist"]) == pytest.approx(ring)
    opens = settings(costume, Workroom())["trouser", edge_key("front", "waist")]
    assert opens.lengthens == pytest.approx(costume.costume.wearer["hip_girth"] / ring - 1)
    assert opens.cause == "passes"


def test_a_leg_that_is_wider_than_the_heel_is_pulled_on_as_it_is() -> None:
    """Arithmetic: ring against the heel, 70 cm against a heel of at most 42."""
    assert settings(made("kite"), Workroom())["trouser", edge_key("front", "hem")].lengthens == 0


def test_a_close_neck_asks_for_the_head_that_nobody_measured() -> None:
    costume = made("kite")
    neck = settings(costume, Workroom())["top", "neck strip"]
    assert "head girth" in words_of(neck)
    wearer = costume.costume.wearer.changed(head_girth=900.0)
    measured = replace(costume, costume=replace(costume.costume, wearer=wearer))
    neck = settings(measured, Workroom())["top", "neck strip"]
    assert neck.cause == "passes"
    assert "head girth" not in words_of(neck)


@given(st.floats(0.0, 0.55))
def test_a_zigzag_is_wide_enough_that_its_thread_reaches(share: float) -> None:
    """Pythagoras: the slant of one stitch, pulled straight, is as long as the stretched seam."""
    width = width_for(share, 2.5)
    assert math.hypot(2.5, width) >= (1 + share) * 2.5 - 1e-9
    assert width <= 3.0


@given(st.floats(0.0, 0.6), st.booleans(), ROOMS)
def test_stitch_lengths_stay_within_the_trades(share: float, knit: bool, room: Workroom) -> None:
    """Common practice: seam 2.2 to 2.8 mm, topstitching 3 to 3.5."""
    assert 2.2 <= stitch_for(Gives(share, "moves"), knit, room).length <= 2.8
    top = edge_stitch(Gives(), False, room, caught="", topstitched=True)
    assert 3.0 <= top.length <= 3.5 or top.number == "202"


def test_gathering_rows_are_as_long_as_the_trade_sews_them() -> None:
    """Common practice: gathering and basting 4 to 6 mm."""
    for key in ("do.gather", "do.cap_ease"):
        said = re.search(r"long stitches \((\d+) mm", texts()[key])
        assert said, key
        assert 4 <= float(said[1]) <= 6


def test_cloths_are_sewn_and_pressed_each_in_its_own_way() -> None:
    """Needle charts (points) and ISO 3758:2012 (dots): velveteen, shirting, ponte; then nylon in its place."""
    found = settings(made("lamplighter"), made("lamplighter").costume.workroom)
    coat, shirt, legs = (found[name] for name in (("coat", "back panel"), ("shirt", "side"), ("breeches", "side")))
    assert (coat.needle.point, shirt.needle.point, legs.needle.point) == ("sharp", "sharp", "stretch")
    assert (coat.dots, shirt.dots, legs.dots) == (2, 3, 1)
    assert (coat.stitch, shirt.stitch, legs.stitch) == ("301", "301", "304")
    assert (coat.pressure, shirt.pressure, legs.pressure) == ("lighter", "usual", "lighter")
    assert found["coat", edge_key("tail-1", "hem")].stitch == "200"  # caught by hand: pile
    nylon = settings(with_cloth("lamplighter", "shirting", fibre="nylon", iron_dots=None), Workroom())
    assert nylon["shirt", "side"].dots == iron_limit(NYLON) == 1
    assert "press cloth" in words_of(nylon["shirt", "side"])
    assert "press cloth" not in words_of(shirt)


def test_an_overedge_machine_feeds_by_itself_and_has_no_walking_foot() -> None:
    room = Workroom(stitches=("301", "514"), feet=("all-purpose", "walking"), foot_pressure=True)
    for (_, name), sewn in settings(made("kite"), room).items():
        if sewn.stitch == "514":
            assert (sewn.foot, sewn.pressure) == ("overedge", "usual"), name
            assert "more in front than behind" in words_of(sewn)


@given(ROOMS)
@hypothesis_settings(max_examples=25, deadline=None)
def test_the_work_asks_only_for_what_the_room_has(room: Workroom) -> None:
    """The issue's own demand; what is lacking stands among what would be easier."""
    for name in ("lamplighter", "kite"):
        for sewn in settings(made(name), room).values():
            words = words_of(sewn)
            assert sewn.foot in (*room.feet, "no", "overedge", "all-purpose")
            assert "needle board" not in words or "needle board" in room.pressing
            assert "press cloth" not in words or "press cloth" in room.pressing
            assert "walking" not in words or "walking" in room.feet
            assert "foot lighter" not in words or room.foot_pressure


def test_what_would_be_easier_names_only_what_is_lacking() -> None:
    bare = Workroom(stitches=("301",), feet=("all-purpose",), pressing=(), needles=("universal",))
    words = " ".join(text(sentence) for sentence in easier(made("lamplighter"), bare))
    for lacking in (
        "zigzag",
        "overlock",
        "buttonhole foot",
        "walking foot",
        "needle board",
        "sharp needles",
        "stretch needles",
        "rotary",
        "set lighter",
    ):
        assert lacking in words, lacking
    full = Workroom(
        title="everything",
        stitches=tuple(STITCHES),
        feet=FEET,
        foot_pressure=True,
        blade="rotary",
        iron_dots=3,
        pressing=PRESSING,
        needles=POINTS,
    )
    assert easier(made("lamplighter"), full) == ()


def test_bands_enclose_the_edge_they_are_sewn_to() -> None:
    """ISO 4916:1991: 1 superimposed, 3 bound, 6 an edge by itself."""
    found = settings(made("lamplighter"), Workroom())
    assert found["shirt", "cuff"].seam_class == 3
    assert found["shirt", "cuff"].press == "to one side"
    assert found["shirt", "cuff end"].seam_class == 1
    assert found["shirt", edge_key("front", "hem")].seam_class == 6


def test_both_hands_are_asked_alike_where_the_body_differs() -> None:
    """The same ring and the same stretch, whether a garment is cut as pairs or for each hand."""
    wearer, fabric = made("kite").costume.wearer, stretchy(0.5)
    drop = wearer["shoulder_drop"]
    uneven = wearer.changed(shoulder_drop=(drop - 8, drop + 8))
    even, handed = (draft_garment(body, fabric, "close-top", {"stretch_share": 0.25}) for body in (wearer, uneven))
    assert handed.draft["front"].fold_edge is None  # cut whole, its halves uneven
    plain, found = (settings(worn(g, fabric), Workroom()) for g in (even, handed))
    for side in ("left", "right"):
        hem = found[handed.name, edge_key("front", f"hem_{side}")]
        assert hem.lengthens == pytest.approx(plain[even.name, edge_key("front", "hem")].lengthens, abs=0.01)
        cuff = found[handed.name, edge_key(f"sleeve-{side}", "hem")]
        assert cuff.lengthens == pytest.approx(plain[even.name, edge_key("sleeve", "hem")].lengthens, abs=0.02)
        assert cuff.lengthens > 0  # a close wrist is pulled over the hand
