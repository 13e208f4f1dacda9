"""A turned cuff: on its sleeve's end, as much wider than the sleeve where it lies as asked, closed or open.

Checked against plane geometry: the far edge is the sleeve's own width that far up, read off its pieces here
by straight chords, and the spread; a flat ring is as deep everywhere, its ends square to its arcs.
"""

from __future__ import annotations

import itertools
import math

import pytest

from drafting.body import Body, wearer
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.ground.errors import DraftError
from drafting.making.rules import unsound
from drafting.making.words import text
from tests.blocks.figures import chart_woman, errors
from tests.blocks.test_contact_sheets_of_settings import six
from tests.blocks.test_lapels import sample
from tests.making.orders import WOVEN, costume_of, order_of

CUFFS = {
    ("coat", "closed"): {"turned_cuff": 100.0, "cuff_vent": False},
    ("tailcoat", "open"): {"turned_cuff": 110.0},
    ("fitted-top", "one piece"): {"turned_cuff": 80.0},
}

GIVEN = ("height", "bust_girth", "waist_girth", "hip_girth")


def made(which: tuple[str, str], body: Body, **more: object) -> MadeGarment:
    return draft_garment(body, WOVEN, which[0], {**CUFFS[which], **more})


@pytest.mark.parametrize("which", CUFFS, ids="-".join)
def test_cuffs_on_the_sample_have_no_error_and_a_sound_order(which: tuple[str, str]) -> None:
    for body in sample():
        deep = 0.055 * body["height"]
        found = made(which, body, turned_cuff=deep)
        assert errors(found) == [], (body.title, errors(found))
    costume = costume_of(found, WOVEN)
    assert unsound(costume, order_of(costume)) == ()


def sleeve_pieces(draft: Draft) -> list[Piece]:
    roles = (PieceRole.TOP_SLEEVE, PieceRole.UNDER_SLEEVE, PieceRole.SLEEVE)
    return [piece for piece in draft.pieces if piece.role in roles and not piece.material]


def chord(piece: Piece, hem: str, up: float) -> float:
    """Return the width of a piece `up` mm along the outline on either side of its hem, by flattened chords."""
    at = piece.index(hem)
    ring = [*piece.edges[at + 1 :], *piece.edges[:at]]
    points = [p for edge in ring for p in list(edge.path.flattened(0.005))]

    def along(line: list[complex]) -> complex:
        gone = 0.0
        for a, b in itertools.pairwise(line):
            if abs(b - a) > 0 and gone + abs(b - a) >= up:
                return a + (b - a) * (up - gone) / abs(b - a)
            gone += abs(b - a)
        raise AssertionError("too short")

    return abs(along(points) - along(points[::-1]))


@pytest.mark.parametrize("which", CUFFS, ids="-".join)
@pytest.mark.parametrize("who", ["largest", "smallest"])
def test_its_ends_are_the_sleeves_and_its_far_edge_stands_off_as_asked(which: tuple[str, str], who: str) -> None:
    body, depth, spread = six()[who], 90.0, 40.0
    draft = made(which, body, turned_cuff=depth, turned_cuff_spread=spread).draft
    cuff = draft["turned-cuff"]
    hems = {piece.name: "hem" if "hem" in piece else "cuff" for piece in sleeve_pieces(draft)}
    low = sum(draft[name][hem].length for name, hem in hems.items())
    high = sum(chord(draft[name], hem, depth) for name, hem in hems.items())
    assert cuff["sleeve"].length == pytest.approx(low, abs=0.05)
    assert cuff["far"].length == pytest.approx(high + spread, abs=0.05)


def test_it_is_a_part_of_a_flat_ring_as_deep_everywhere() -> None:
    cuff = made(("coat", "closed"), chart_woman(), turned_cuff=120.0, turned_cuff_spread=90.0).draft["turned-cuff"]
    sleeve, far = cuff["sleeve"].path, cuff["far"].path
    for share in (0.0, 0.2, 0.5, 0.8, 1.0):
        over = abs(sleeve.at((1 - share) * sleeve.length) - far.at(share * far.length))
        assert over == pytest.approx(120.0, abs=0.02)
    angle = math.radians(cuff.corner(0) + cuff.corner(1) - 180.0)
    assert angle == pytest.approx(0.0, abs=1e-3), "its ends are square to its arcs"


def test_open_at_the_vent_or_closed_all_round() -> None:
    for which, closed in ((("coat", "closed"), True), (("tailcoat", "open"), False)):
        names = {seam.name for seam in made(which, chart_woman()).draft.seams}
        assert ("turned cuff closed" in names) is closed
        assert ({"turned cuff start", "turned cuff end"} <= names) is not closed


@pytest.mark.parametrize("hand", ["", "left", "right"])
def test_the_ends_of_an_open_cuff_meet_at_the_vent(hand: str) -> None:
    """It opened at the forearm seam, with the vent beneath its middle. A chain `b` meets `a` walked backwards."""
    body = six()["largest"]
    if hand:
        drop = body["shoulder_drop"]
        body = wearer({name: body[name] for name in GIVEN} | {"shoulder_drop": (drop + 8.0, drop - 8.0)})
    draft = made(("tailcoat", "open"), body).draft
    cuff = next(piece for piece in draft.pieces if piece.name.startswith("turned-cuff") and piece.hand == hand)
    (seam,) = (one for one in draft.seams if one.a == ((cuff.name, "sleeve"),))
    first, last = seam.b[0], seam.b[-1]
    ends = (draft.edge(first).path.end, draft.edge(last).path.start)
    for ref, place in zip((first, last), ends, strict=True):
        (vent,) = (edge for edge in draft[ref[0]].edges if edge.role is EdgeRole.VENT)
        assert min(abs(vent.path.start - place), abs(vent.path.end - place)) < 0.01


def test_it_is_sewn_on_once_the_sleeve_is_in_and_turned_over_the_seam() -> None:
    steps = order_of(costume_of(made(("coat", "closed"), chart_woman()), WOVEN))
    at = {name: i for i, step in enumerate(steps) for name in step.seams}
    assert at["turned cuff closed"] <= at["turned cuff far"] < at["turned cuff"]
    assert at["forearm"] < at["turned cuff"]
    assert any("over the sleeve" in text(said) for said in steps[at["turned cuff"]].say)


def test_none_is_drawn_that_nobody_asked_for() -> None:
    assert "turned-cuff" not in draft_garment(chart_woman(), WOVEN, "coat", {}).draft


@pytest.mark.parametrize(
    ("block", "choices", "words"),
    [
        ("fitted-top", {"turned_cuff": 80.0, "hem_fullness": 1.6}, "plain hem"),
        ("coat", {"turned_cuff": 300.0, "sleeve_length": -300.0}, "cap"),
    ],
)
def test_where_none_can_lie_it_is_refused_in_words(block: str, choices: dict[str, float], words: str) -> None:
    with pytest.raises(DraftError, match=words):
        draft_garment(chart_woman(), WOVEN, block, choices)


@pytest.mark.parametrize("spread", [24.0, 57.0, 75.0])
def test_a_shallow_cuff_that_spreads_far_is_as_long_as_its_sleeve(spread: float) -> None:
    """One curve for the whole ring made its edge 1.8 mm too long: the arc's length is radius times angle."""
    found = made(("coat", "closed"), chart_woman(), turned_cuff=19.0, turned_cuff_spread=spread)
    assert errors(found) == []
    (cuff,) = (piece for piece in found.draft.pieces if piece.name == "turned-cuff")
    hems = sum(piece["cuff"].length for piece in sleeve_pieces(found.draft))
    assert cuff["sleeve"].length == pytest.approx(hems, abs=0.05)
    out = {round(abs(p), 2) for p in cuff["far"].path.flattened(0.001)}
    assert max(out) - min(out) < 0.02


def test_a_cuff_that_would_lie_over_itself_is_refused_with_what_to_turn() -> None:
    with pytest.raises(DraftError, match="lie over itself") as refused:
        made(("coat", "closed"), chart_woman(), turned_cuff=19.0, turned_cuff_spread=200.0)
    assert "turned_cuff_spread" in str(refused.value)
