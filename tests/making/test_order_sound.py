"""The order of work is sound on every block, body, choice and cloth."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, reject
from hypothesis import settings as hypothesis_settings
from hypothesis import strategies as st

from drafting.blocks import all_blocks, names
from drafting.body import Body
from drafting.costume.choices import choose
from drafting.costume.garment import MadeGarment, draft_garment, make_garment
from drafting.draft.bias import OWN_PLACE
from drafting.draft.draft import Draft, Notion
from drafting.draft.piece import EdgeKind
from drafting.fabric import Fabric
from drafting.fabric.sorts import SORTS
from drafting.ground.errors import DraftError, InputError
from drafting.ground.scale import body_scale
from drafting.making import planned
from drafting.making.order.seam_kinds import WORK
from drafting.making.rules import unsound
from drafting.reading.given import Given, Origin
from drafting.reading.pockets import PocketWish
from drafting.reading.trimming import TrimWish
from tests.alter.test_edge_pocket import IN_SEAM, SLANT
from tests.alter.test_pocket import BACK, FLAP, PATCH
from tests.bodies import bdims
from tests.making.figures import laid
from tests.making.orders import KNIT, WOVEN, costume_of, order_of, uneven


def worded(block: str) -> list[tuple[str, str]]:
    """Return every choice of a block that is made in words, with each word."""
    return [(c.name, word) for c in all_blocks()[block].choices for word in c.words]


@hypothesis_settings(max_examples=30, deadline=None)
@given(
    st.sampled_from(names(alone=True)),
    st.data(),
    st.integers(0, 506),
    st.sampled_from([WOVEN, KNIT]),
    st.booleans(),
)
def test_the_order_is_sound_on_any_body_block_choice_and_cloth(
    block: str, data: st.DataObject, n: int, fabric: Fabric, lopsided: bool
) -> None:
    """Each step uses only parts already made; every piece, seam and notion used once."""
    choices = worded(block)
    asked = dict(data.draw(st.lists(st.sampled_from(choices), max_size=3))) if choices else {}
    body = uneven(bdims()[n]) if lopsided else bdims()[n]
    try:
        garment = draft_garment(body, fabric, block, asked)
    except (DraftError, InputError):
        reject()  # what this body cannot have is refused before any plan
    costume = costume_of(garment, fabric)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    darted = [piece for piece in garment.draft.pieces if piece.darts]
    sewn = [f"{garment.name}.{piece.name}" for piece in darted if not piece.material]
    darts = [step.pieces[0] for step in steps if step.say[0].key == "do.inner_dart"]
    assert sorted(darts) == sorted(sewn)
    if any(piece.material == "lining" for piece in darted):  # those of a lining are told where it is made up
        assert any(one.key == "do.lining_darts" for step in steps for one in step.say)


SORTED = [
    *(replace(WOVEN, title=f"{sort}, invented", sort=sort) for sort in SORTS),
    replace(WOVEN, title="Oilskin, invented", sort="coated", care="wipe clean, do not iron", takes_fusible=False),
    replace(WOVEN, title="Chiffon, invented", sort="sheer", takes_fusible=False, mass=45.0, thickness=0.15),
    replace(KNIT, title="Velour, invented", sort="pile"),
    KNIT,
]
"""Every sort of cloth, those that take no iron, pin or fusible among them."""

WISHES: dict[str, tuple[object, ...]] = {
    "turned_cuff": (60.0,),
    "loop_places": ("sides", "all round"),
    "cuff_vent": (True,),
    "coat_buttons": (1.0,),
}
POCKETS = [SLANT, IN_SEAM, PATCH, FLAP, BACK]


def asked_of(block: str) -> list[tuple[str, object]]:
    """Return every word, yes or no, and some numbers that a block may be asked for."""
    found: list[tuple[str, object]] = list(worded(block))
    for one in all_blocks()[block].choices:
        if isinstance(one.default, bool):
            found += [(one.name, True), (one.name, False)]
        found += [(one.name, value) for value in WISHES.get(one.name, ())]
    return found


def made_with(
    body: Body, fabric: Fabric, block: str, asked: dict[str, object], pockets: tuple[PocketWish, ...]
) -> MadeGarment | None:
    """Return the garment, None where it is refused."""
    kind, given_so = all_blocks()[block], {name: Given(value) for name, value in asked.items()}
    try:
        chosen = choose(kind, given_so, body_scale(body), Origin())
        return make_garment(body, fabric, kind, chosen, name=block, role="shell", pockets=pockets)
    except (DraftError, InputError):
        return None


def sound(data: st.DataObject) -> None:
    """Draw a garment of any block, cloth, choices, pockets and trims, and ask whether its order stands."""
    block, fabric = data.draw(st.sampled_from(names(alone=True))), data.draw(st.sampled_from(SORTED))
    choices = asked_of(block)
    asked = dict(data.draw(st.lists(st.sampled_from(choices), max_size=4))) if choices else {}
    body = bdims()[data.draw(st.integers(0, 506))]
    body = uneven(body) if data.draw(st.booleans()) else body
    pockets = tuple(data.draw(st.lists(st.sampled_from(POCKETS), max_size=1)))
    garment = next(filter(None, (made_with(body, fabric, block, asked, found) for found in (pockets, ()))), None)
    if garment is None:
        reject()  # what this body or block cannot have is refused before any plan
    own = [(p.name, e.name) for p in garment.draft.pieces if not p.material for e in p.edges if e.kind is not FOLD]
    trims = data.draw(st.lists(st.tuples(st.sampled_from(own), st.sampled_from(TRIMS)), max_size=2))
    garment = replace(garment, trims=tuple(TrimWish(*ref, kind, 10.0) for ref, kind in trims))
    costume = costume_of(garment, fabric)
    assert unsound(costume, order_of(costume)) == ()


FOLD, TRIMS = EdgeKind.FOLD, ("braid", "piping", "binding", "lace")


@hypothesis_settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.data())
def test_the_order_is_sound_in_every_sort_of_cloth_with_pockets_and_trims(data: st.DataObject) -> None:
    sound(data)


@pytest.mark.population
@hypothesis_settings(max_examples=500, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.data())
def test_the_order_is_sound_in_five_hundred_garments(data: st.DataObject) -> None:
    sound(data)


def test_piping_along_a_sleeves_vent_is_told_where_it_can_be_sewn() -> None:
    """It was to lie on before its edge is turned in, which was done while the sleeve lay flat."""
    garment = draft_garment(bdims()[0], WOVEN, "spencer")
    costume = costume_of(replace(garment, trims=(TrimWish("top-sleeve", "vent", "piping", 10.0),)), WOVEN)
    assert unsound(costume, order_of(costume)) == ()


@pytest.mark.parametrize("block", ["skirt", "fitted-top"])
def test_piping_along_a_zip_is_told_where_it_can_be_sewn(block: str) -> None:
    """The zip is sewn in while its piece lies flat: the piping was to be turned in with that edge long after."""
    garment = draft_garment(bdims()[0], WOVEN, block)
    costume = costume_of(replace(garment, trims=(TrimWish("back", "centre", "piping", 10.0),)), WOVEN)
    assert unsound(costume, order_of(costume)) == ()


def test_an_unlined_coat_of_washed_cloth_leaves_no_edge_raw_at_its_pleat() -> None:
    costume = costume_of(draft_garment(bdims()[0], WOVEN, "tailcoat", {"lining": "none"}), WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    (pleat,) = [s for s in steps if s.seams == ("side pleat",) and s.verb == "join"]
    assert "neatens" in pleat.does


def test_an_elastic_at_a_waist_with_a_band_is_threaded_through_the_band() -> None:
    """As a maker's own block may have it."""
    garment = draft_garment(bdims()[5], WOVEN, "trousers", {})
    elastic = Notion("elastic", "waist", 1, 700.0, edges=garment.draft.chains["waist"])
    banded = replace(garment, draft=garment.draft + Draft(notions=(elastic,)))
    costume = costume_of(banded, WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    (threaded,) = [step for step in steps if any("elastic" in notion for notion in step.notions)]
    assert "do.elastic_in_band" in {one.key for one in threaded.say}


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


@pytest.mark.parametrize("block", ["tailcoat", "shirt", "trousers"])
def test_what_is_cut_longer_for_hanging_is_what_the_plan_hangs_and_levels(block: str) -> None:
    costume = costume_of(draft_garment(bdims()[0], WOVEN, block, {}), WOVEN)
    longer = {p.name for p in costume.garments[0].draft.pieces if any(edge.drops for edge in p.edges)}
    steps = [step for step in order_of(costume) if step.verb == "hang"]
    hung = {piece.partition(".")[2] for step in steps for piece in step.pieces}
    assert longer == hung
    assert bool(hung) == (block == "tailcoat")


def test_seams_with_a_place_of_their_own_in_the_work_never_join_hanging_panels() -> None:
    assert WORK.keys() == OWN_PLACE
