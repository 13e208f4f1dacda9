"""Bodies whose two sides differ: left is sewn to right along the middle, and every edge once."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drafting.blocks import all_blocks, names
from drafting.body import Body, wearer
from drafting.body.sides import OWN_SIDE, differing_measures
from drafting.checks.seams import sewn_to_another
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import MadeGarment, draft_garment, make_garment
from drafting.costume.hands import both as hands_drafted
from drafting.draft.centres import joins_hands
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import PieceRole
from drafting.draft.walk import walk
from drafting.fabric import Fabric
from drafting.ground.scale import body_scale
from drafting.making.rules.soundness import unsound
from drafting.reading.fullness import FullnessWish
from drafting.reading.given import Given, Origin
from drafting.reading.trimming import TrimWish
from tests.making.orders import KNIT, WOVEN, costume_of, order_of

EVEN = {"height": 1700.0, "bust_girth": 900.0, "waist_girth": 720.0, "hip_girth": 970.0}
STRETCHED = {name for name, block in all_blocks().items() if "close-torso" in (name, *block.parts)}
WALKED = 0.2  # mm by which left and right may differ along the middle
ON_THE_MIDDLE = {
    "shirt": [],
    "tailcoat": ["centre back", "collar centre back"],
    "trousers": ["front crotch", "back crotch"],
}


def cloth(block: str) -> Fabric:
    return KNIT if block in STRETCHED else WOVEN


def sloping(by: float = 20.0, **more: Any) -> Body:
    """Return a body whose right shoulder is `by` mm lower than its left, and its right thigh larger."""
    sides = {"shoulder_drop": (40.0, 40.0 + by), "thigh_girth": (560.0, 560.0 + by)}
    return wearer({**EVEN, **sides, **more})


def hands(draft: Draft, refs: tuple[tuple[str, str], ...]) -> set[str]:
    return {draft[piece].hand for piece, _ in refs}


def left_to_right(draft: Draft) -> list[Seam]:
    return [s for s in draft.seams if hands(draft, s.a) == {"left"} and hands(draft, s.b) == {"right"}]


def errors(made: MadeGarment) -> list[str]:
    return [f"{f.check}: {f.message}" for f in made.findings if f.level == "error"]


@pytest.mark.parametrize("block", ON_THE_MIDDLE)
def test_the_middle_is_sewn_left_to_right_and_walks(block: str) -> None:
    made = draft_garment(sloping(), WOVEN, block)
    assert errors(made) == []
    middle = left_to_right(made.draft)
    assert [seam.name for seam in middle] == ON_THE_MIDDLE[block]
    assert all(abs(walk(made.draft, seam).difference) <= WALKED for seam in middle)


@pytest.mark.parametrize(
    ("block", "pieces"), [("shirt", ("back", "collar", "collar-stand")), ("tailcoat", ("top-collar",))]
)
def test_what_lies_on_the_fold_is_cut_whole_with_the_half_of_each_side(
    block: str, pieces: tuple[str, ...]
) -> None:
    made = draft_garment(sloping(), WOVEN, block)
    halves = [draft_garment(sloping(0.0, shoulder_drop=drop), WOVEN, block).draft for drop in (40.0, 60.0)]
    for name in pieces:
        piece = made.draft[name]
        assert (piece.hand, piece.pair, piece.fold_edge) == ("", False, None)
        assert piece.area == pytest.approx(sum(half[name].area for half in halves), rel=0.02)
    assert "Cut in one piece" in next(f.message for f in made.findings if f.check == "two sides")


FRONT_WAIST = {"front_waist_length": wearer(EVEN)["back_waist_length"] + 25}
MIDDLE = sorted((set(wearer(EVEN).measures) | set(FRONT_WAIST)) - OWN_SIDE - set(EVEN))


@st.composite
def uneven_bodies(draw: st.DrawFn) -> Body:
    """Return a body some of whose measures differ left and right, by up to 30 mm or 14 %."""
    bust = draw(st.floats(820, 1150))
    taken: dict[str, Any] = {
        "height": draw(st.floats(1550, 1900)),
        "bust_girth": bust,
        "waist_girth": bust * draw(st.floats(0.72, 0.95)),
        "hip_girth": bust * draw(st.floats(0.98, 1.12)),
    }
    whole = wearer(taken)
    own = sorted(OWN_SIDE & set(whole.measures))
    for name in draw(st.lists(st.sampled_from([*own, *MIDDLE]), min_size=1, max_size=6, unique=True)):
        at = FRONT_WAIST[name] if name in FRONT_WAIST else whole[name]
        apart = draw(st.floats(-1, 1)) * min(30.0, 0.14 * at)
        taken[name] = (at + apart / 2, at - apart / 2)
    return wearer(taken)


@pytest.mark.parametrize("block", names(alone=True))
@given(data=st.data(), body=uneven_bodies())
@settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))
def test_any_uneven_body_gets_every_garment_sewn_left_to_right(
    block: str, data: st.DataObject, body: Body
) -> None:
    made = draft_garment(body, cloth(block), block)
    draft = made.draft
    assert errors(made) == []
    assert all(abs(walk(draft, seam).difference) <= WALKED for seam in left_to_right(draft))
    if any(piece.hand and piece.base for piece in draft.pieces):
        assert not [seam.name for seam in draft.seams if joins_hands(draft, seam)]
        pairs = [p for p in draft.pieces if p.pair or (p.fold_edge and not p.hand)]
        assert pairs == []
    costume = costume_of(made, cloth(block))
    assert unsound(costume, order_of(costume)) == ()


def test_an_armhole_is_made_no_shallower_than_can_be_drawn() -> None:
    """A thin arm asked for one that had no room under its shoulder, and a close top was refused."""
    taken = {"height": 1550.0, "bust_girth": 1145.0, "waist_girth": 824.4, "hip_girth": 1216.6}
    whole = wearer(taken)
    widths = ("neck_base_girth", "across_back_low_width", "across_back_width", "across_front_width")
    body = wearer(taken | {name: whole[name] for name in widths} | {"front_waist_length": 445.1})
    made = draft_garment(body, KNIT, "close-top")
    assert errors(made) == []
    assert any(f.check == "armhole turn" and f.level == "warning" for f in made.findings)


@pytest.mark.parametrize("block", ["close-top", "puffed-top"])
def test_an_armhole_that_has_no_room_is_made_deeper(block: str) -> None:
    """A short wearer with a full bust, in cloth that stretches: her scoop was too flat to be drawn."""
    taken: dict[str, Any] = {"height": 1550.0, "bust_girth": 1150.0, "waist_girth": 828.0, "hip_girth": 1219.8}
    taken |= {"bust_point_depth": (278.4, 251.9), "ankle_girth": (242.6, 226.3)}
    assert errors(draft_garment(wearer(taken), KNIT, block)) == []


def test_a_seam_that_joins_one_side_to_itself_is_an_error() -> None:
    draft = draft_garment(sloping(), WOVEN, "tailcoat").draft
    seam = next(s for s in draft.seams if s.name == "centre back")
    wrong = replace(draft, seams=(*(s for s in draft.seams if s is not seam), replace(seam, b=seam.a)))
    assert list(sewn_to_another(draft)) == []
    assert [f.where for f in sewn_to_another(wrong)] == ["centre back"]


@pytest.mark.parametrize("name", ["back_waist_length", "front_waist_length", "waist_to_hip"])
@pytest.mark.parametrize("block", ["shirt", "tailcoat", "trousers"])
def test_a_length_on_the_middle_that_was_given_twice_is_settled_with_a_finding(name: str, block: str) -> None:
    at = FRONT_WAIST[name] if name in FRONT_WAIST else wearer(EVEN)[name]
    made = draft_garment(wearer({**EVEN, name: (at + 15, at - 15)}), WOVEN, block)
    assert errors(made) == []
    assert [f.where for f in made.findings if "both are drafted with" in f.message] == [name.replace("_", " ")]


def test_a_limbs_own_measures_are_no_measure_of_the_middle() -> None:
    assert differing_measures(sloping()) == ("shoulder_drop", "thigh_girth")


def test_trims_and_fullness_of_a_whole_pieces_edge_go_to_both_halves() -> None:
    kind = block_named("shirt")
    body = sloping()
    chosen = choose(kind, {}, body_scale(body), Origin())
    more: dict[str, Any] = {"name": "shirt", "role": "shell"}
    plain = make_garment(body, WOVEN, kind, chosen, **more)
    trim = TrimWish("back", "hem", "braid", 12.0, False)
    full = make_garment(
        body, WOVEN, kind, chosen, fullness=(FullnessWish("back", "hem", flat=600.0),), trims=(trim,), **more
    )
    assert [(t.piece, t.edge) for t in full.trims] == [("back", "hem_left"), ("back", "hem_right")]
    assert full.draft["back"]["hem_left"].length == pytest.approx(600.0, abs=1.0)
    assert plain.draft["back"]["hem_left"].length < 400.0
    assert errors(full) == []


def test_whole_pieces_keep_no_fold_and_their_middle_is_marked() -> None:
    back = draft_garment(sloping(), WOVEN, "shirt").draft["back"]
    assert [edge.kind for edge in back.edges if edge.kind is EdgeKind.FOLD] == []
    (centre,) = [mark.path for mark in back.placements if mark.what == "centre"]
    assert centre.start.real == pytest.approx(centre.end.real, abs=0.01)


def test_a_cape_that_one_hand_only_just_lays_on_the_fold_is_parted_alike_on_both() -> None:
    """The left back lay on the fold of the cloth, the right had a seam at the middle: joining them was a KeyError.

    Found at random (invented figures); the cloth's width is not known, so that a usual one is taken.
    """
    body = wearer(
        {
            "height": 1821.9596491193504,
            "neck_base_girth": 397.9651168833388,
            "shoulder_drop": (14.800514711565725, 16.13996256927519),
            "across_back_low_width": (436.82580771898586, 438.4836253116956),
            "bust_girth": 1369.2788291867082,
            "waist_girth": (1296.2866598899327, 1159.78923498928),
            "hip_girth": 1599.3808271671267,
            "bust_point_width": 237.9966199680748,
            "forearm_girth": (334.76416369293236, 300.1595213042202),
            "upper_arm_length": 432.48949867712867,
            "body_rise": 292.6343787148104,
            "inside_leg_length": (847.0107173789557, 770.8161486170578),
            "knee_height": (582.0995392239736, 519.1775632826236),
            "waist_to_floor": 968.6603729998346,
        }
    )
    draft = draft_garment(body, replace(WOVEN, usable_width=None), "cape", {}).draft
    backs = {piece.name: piece for piece in draft.pieces if piece.role is PieceRole.BACK and not piece.material}
    assert set(backs) == {"cape-back-left", "cape-back-right"}
    assert {edge.name for edge in backs["cape-back-left"].edges} == {
        e.name for e in backs["cape-back-right"].edges
    }


@pytest.mark.parametrize(
    ("cut", "ends", "width"),
    [("half circle", "ankle", 925.0), ("full circle", "floor", 785.0), ("three-quarter circle", "floor", 1265.0)],
)
def test_a_circle_that_one_hand_only_just_lays_on_the_cloth_has_as_many_panels_on_both(
    cut: str, ends: str, width: float
) -> None:
    """The longer side had a panel more, sewn to nothing of the other hand: 90 of some 1,600 widths."""
    lengths = {"waist_to_floor": (1040.0, 1070.0), "knee_height": (455.0, 485.0), "shoulder_drop": (40.0, 60.0)}
    cloth = replace(WOVEN, usable_width=width)
    draft = draft_garment(
        wearer({**EVEN, **lengths}), cloth, "skirt", {"skirt_cut": cut, "skirt_ends": ends}
    ).draft
    left, right = ({p.base for p in draft.pieces if p.hand == side} for side in ("left", "right"))
    assert left == right


def test_hands_that_no_narrower_cloth_makes_alike_are_left_as_they_are(monkeypatch: pytest.MonkeyPatch) -> None:
    """They had come back as drafted for the narrowest cloth that was tried, in more panels than they need."""
    lengths = {"waist_to_floor": (1040.0, 1070.0), "knee_height": (455.0, 485.0), "shoulder_drop": (40.0, 60.0)}
    body, cloth = wearer({**EVEN, **lengths}), replace(WOVEN, usable_width=1400.0)

    def pieces() -> set[str]:
        draft = draft_garment(body, cloth, "skirt", {"skirt_cut": "half circle", "skirt_ends": "floor"}).draft
        return {piece.name for piece in draft.pieces}

    alike = pieces()
    turns = iter(range(1000))
    monkeypatch.setattr(hands_drafted, "_parted", lambda _: {(str(next(turns)), False)})
    assert pieces() == alike


@pytest.mark.parametrize("right", [126.0, 129.0, 132.0, 135.0])
@pytest.mark.parametrize("edge", ["neck", "hem_centre"])
def test_fullness_is_let_into_both_hands_from_one_pivot(edge: str, right: float) -> None:
    """Common practice: a piece is slashed alike on both hands. One half was opened from the panel by 7 degrees,
    the other from its armhole, by 15."""
    girths = {"bust_girth": 960.0, "high_bust_girth": 900.0, "waist_girth": 780.0, "hip_girth": 1010.0}
    arms = {"upper_arm_girth": (290.0, 330.0), "arm_length": (550.0, 575.0), "shoulder_length": (120.0, right)}
    body = wearer({"height": 1580.0, **girths, **arms}, figure="womens")
    block = block_named("fitted-top")
    given = {"bust_dart": Given("armhole-princess"), "opening": Given("back")}
    wish = FullnessWish("front", edge, ratio=1.3)
    chosen = choose(block, given, body_scale(body), Origin())
    garment = make_garment(body, WOVEN, block, chosen, name="top", role="shell", fullness=(wish,))
    said = [
        f.sentence.partition(" and ")[2].partition(" as long")[0] for f in garment.findings if f.check == "flare"
    ]
    assert said
    assert len(set(said)) == 1
    assert not [f for f in garment.findings if f.level == "error"]
