"""After each alteration all that hangs on it walks: sleeve, collar, facing, lining, interfacing, tails, buttons.

Whole garments are made with one note each, on both hands and on one; what the checks find in them is what
they find in the garment without the note.
"""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drafting.body import Body
from drafting.checks import check_draft
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import MadeGarment, checked_garment, finished_garment
from drafting.draft.roles import SeamKind
from drafting.draft.walk import notched
from drafting.fitting.applied import alterations_meant, fitted
from drafting.fitting.followers import FOLLOWERS
from drafting.fitting.found import places_of
from drafting.fitting.known import ALTERATIONS
from drafting.fitting.note import AmountAs, AtEdge, AtLevel, AtPiece, Note, NoteKind, NoteSide, NoteState, Verb
from drafting.ground.scale import body_scale
from drafting.reading.given import Origin
from tests.bodies import ansur, bdims
from tests.drawn_bodies import at_hand, drawn
from tests.fitting.lines import upto
from tests.shared_data import SURVEY

BODY: Body = ansur(2)[0] if SURVEY.is_file() else drawn(60)[9]


def note(where: str, verb: str, amount: float, side: str = "both") -> Note:
    """Return a note at an edge (`piece.edge`), a piece (`piece:`) or a level, its amount a total."""
    piece, _, edge = where.partition(".")
    place = AtEdge(piece, edge) if edge else AtPiece(piece[:-1]) if piece.endswith(":") else AtLevel(piece)
    return Note(
        garment="it",
        side=NoteSide(side),
        where=place,
        verb=Verb(verb),
        amount=amount,
        counted=AmountAs.TOTAL,
        kind=NoteKind.STYLE,
        state=NoteState.PINNED,
    )


SHIRT = [
    ("waist", "take in", 20.0),
    ("waist", "lower", 12.0),
    ("back.shoulder", "lower", 7.0),
    ("front.shoulder", "lengthen", 8.0),
    ("front.shoulder", "move forward", 7.0),
    ("front.armhole", "raise", 6.0),
    ("front.neck", "lower", 6.0),
    ("back:", "lengthen", 8.0),
    ("sleeve:", "lengthen", 15.0),
    ("upper arm", "let out", 12.0),
    ("bust", "let out", 14.0),
    ("front.armhole", "shorten", 6.0),
    ("back.armhole", "let out", 6.0),
    ("front.armhole", "clip", 3.0),
    ("back.neck", "take in", 6.0),
    ("sleeve.cap_front", "turn", 10.0),
    ("sleeve.cap_back", "ease more", 4.0),
    ("sleeve.cap_front", "ease more", 4.0),
    ("sleeve.cap_front", "raise", 6.0),
]
COAT = [
    ("waist", "let out", 20.0),
    ("waist", "raise", 10.0),
    ("back.shoulder", "lower", 7.0),
    ("front:", "lengthen", 7.0),
    ("back.neck", "let out", 8.0),
    ("back.centre_back", "shorten", 8.0),
    ("back.panel", "take in", 8.0),
    ("top-sleeve:", "shorten", 15.0),
    ("bust", "take in", 8.0),
    ("back:", "lengthen", 8.0),
    ("front.shoulder", "shorten", 5.0),
    ("front.armhole", "raise", 5.0),
    ("back.shoulder", "move forward", 7.0),
    ("front.armhole", "shorten", 5.0),
    ("top-sleeve.top_cap_back", "turn", 8.0),
    ("top-sleeve.top_cap_front", "lower", 4.0),
    ("top-sleeve.top_cap_front", "ease more", 4.0),
    ("under-sleeve.under_cap_front", "ease less", 3.0),
    ("upper arm", "let out", 10.0),
]
TROUSERS = [
    ("waist", "take in", 16.0),
    ("front.hem", "lengthen", 15.0),
    ("hip", "lengthen", 8.0),
    ("back.crotch", "lengthen", 8.0),
    ("back:", "let out", 8.0),
    ("back.crotch", "take in", 12.0),
    ("front.inseam", "let out", 12.0),
    ("back.waist", "raise", 6.0),
    ("front.waist", "raise", 6.0),
]
TABLE = [
    *(("shirt", *row) for row in SHIRT),
    *(("tailcoat", *row) for row in COAT),
    *(("trousers", *row) for row in TROUSERS),
]


def made(block: str, *notes: Note) -> MadeGarment:
    kind = block_named(block)
    chosen = choose(kind, {}, body_scale(BODY), Origin())
    garment = finished_garment(BODY, None, kind, chosen, name=block, role="shell", notes=notes)
    return checked_garment(garment, BODY, None)


@cache
def plain(block: str) -> frozenset[tuple[str, str]]:
    return frozenset((f.check, f.where) for f in made(block).findings if f.level == "error")


@pytest.mark.parametrize(("block", "where", "verb", "amount"), TABLE)
def test_all_that_hangs_on_it_follows(block: str, where: str, verb: str, amount: float) -> None:
    garment = made(block, note(where, verb, amount))
    assert [one.note.where for one in garment.done] == [note(where, verb, amount).where]
    assert garment.done[0].carried
    assert garment.done[0].moved
    wrong = [f.message for f in garment.findings if f.level == "error" and (f.check, f.where) not in plain(block)]
    assert wrong == []


LONGER = ("back.hem",)
"""Where one side alone may be 20 mm longer: the hem stays square to the middle and to the side."""


@pytest.mark.parametrize(
    ("block", "where", "verb"),
    [
        ("shirt", "back.shoulder", "lower"),
        ("shirt", "sleeve:", "lengthen"),
        ("tailcoat", "back.shoulder", "lower"),
        ("shirt", "front.armhole", "shorten"),
        ("shirt", "sleeve.cap_front", "turn"),
        ("trousers", "back.side", "take in"),
        ("shirt", "back.hem", "lengthen"),
        ("trousers", "hip", "raise"),
        ("trousers", "back.crotch", "lengthen"),
        ("trousers", "front.inseam", "let out"),
        ("trousers", "back:", "let out"),
        ("trousers", "front.waist", "lower"),
        ("tailcoat", "waist", "raise"),
    ],
)
def test_one_side_alone_is_drafted_for_itself(block: str, where: str, verb: str) -> None:
    garment = made(block, note(where, verb, 20.0 if where in LONGER else 8.0, "left"))
    names = {piece.name for piece in garment.draft.pieces}
    assert {"front-left", "front-right"} <= names
    assert [f.message for f in garment.findings if f.level == "error"] == []


def test_what_one_hand_alone_moves_of_the_middle_both_hands_share() -> None:
    """The crotch of either hand was stretched at the fork instead: thigh and knee of both changed."""
    was, now = made("trousers").draft, made("trousers", note("hip", "raise", 10.0, "left")).draft
    for name, edge in (("back", "crotch"), ("front", "fly"), ("front", "crotch")):
        left, right = (now[f"{name}-{side}"] for side in ("left", "right"))
        assert left[edge].length == pytest.approx(right[edge].length, abs=0.1)
        for side in (left, right):
            assert side["inseam"].length == pytest.approx(was[name]["inseam"].length, abs=0.1)
        more = [side["side"].length - was[name]["side"].length for side in (left, right)]
        assert more == pytest.approx([10.0, 0.0], abs=0.3)


def test_a_note_in_the_middle_is_for_both_hands() -> None:
    garment = made("tailcoat", note("back.centre_back", "shorten", 8.0, "left"))
    assert [one.carried for one in garment.done] == [False]
    said = [f.message for f in garment.findings if f.check == "fitting"]
    assert len(said) == 1
    assert 'side = "both"' in said[0]


def test_what_no_alteration_answers_is_said_and_changes_nothing() -> None:
    garment, same = made("shirt", note("collar.outer", "turn", 8.0)), made("shirt")
    assert garment.draft.pieces == same.draft.pieces
    assert [f.level for f in garment.findings if f.check == "fitting"] == ["warning"]


def test_every_kind_of_seam_says_how_its_other_side_follows() -> None:
    assert FOLLOWERS.keys() == set(SeamKind)


def test_each_alteration_has_a_name_of_its_own_and_no_verb_means_more_and_less() -> None:
    assert len({one.name for one in ALTERATIONS}) == len(ALTERATIONS) >= 25
    assert not [one.name for one in ALTERATIONS if one.more & one.less]


# ------------------------------------------------------------------------------ random sequences

ABOVE = [
    ("bust", "raise", 8.0),
    ("front.armhole", "take in", 3.0),
    ("back.armhole", "shorten", 5.0),
    ("front.armhole", "clip", 3.0),
    ("front.armhole", "raise", 5.0),
]
RANDOM = {
    ("shirt", "bodice"): [
        *(row for row in SHIRT if "sleeve" not in row[0] and row[0] != "upper arm"),
        *ABOVE,
        ("back.hem", "lengthen", 15.0),
        ("hip", "let out", 10.0),
    ],
    ("tailcoat", "coat-body"): [
        *(row for row in COAT if "sleeve" not in row[0] and row[0] != "upper arm"),
        *ABOVE,
        ("back.centre_back", "take in", 6.0),
    ],
    ("bodice", "bodice"): [
        ("waist", "take in", 16.0),
        ("waist", "lower", 10.0),
        ("back.centre", "shorten", 8.0),
        ("front.centre", "lengthen", 8.0),
        ("front.shoulder", "move forward", 6.0),
        ("front.neck", "lower", 6.0),
        ("bust", "let out", 10.0),
        *ABOVE,
    ],
    ("fitted-top", "sleeve"): [
        ("sleeve.cap_front", "move forward", 8.0),
        ("sleeve.cap_back", "turn", 8.0),
        ("sleeve.cap_back", "ease more", 4.0),
        ("sleeve.cap_front", "ease more", 4.0),
        ("sleeve.cap_front", "raise", 5.0),
        ("sleeve:", "lengthen", 12.0),
        ("upper arm", "let out", 10.0),
    ],
    ("tailcoat", "two-piece-sleeve"): [row for row in COAT if "sleeve" in row[0] or row[0] == "upper arm"],
    ("trousers", "trouser"): [*TROUSERS, ("hip", "take in", 8.0)],
    ("skirt", "skirt-body"): [("waist", "take in", 16.0), ("hip", "let out", 9.0), ("front.side", "take in", 9.0)],
}
"""What is drafted, and the notes that are taken on it in any order."""

OTHER_WAY = {"take in": "let out", "raise": "lower", "lengthen": "shorten", "move forward": "move back"}
OTHER_WAY |= {"ease more": "ease less"} | {less: more for more, less in OTHER_WAY.items()}

Step = tuple[tuple[str, str, float], float, bool, str]
"""A row, how much of its amount, whether the other way, and the side that the note names."""


def steps_on(rows: list[tuple[str, str, float]]) -> st.SearchStrategy[list[Step]]:
    side = st.sampled_from(["both", "left"])
    one = st.tuples(st.sampled_from(rows), st.floats(0.2, 1.0), st.booleans(), side)
    return st.lists(one, min_size=2, max_size=4)


def noted(step: Step) -> Note:
    (where, verb, amount), share, other, side = step
    return note(where, OTHER_WAY.get(verb, verb) if other else verb, amount * share, side)


def test_every_alteration_is_among_what_is_taken_at_random() -> None:
    found = {
        known.name
        for drafted, rows in RANDOM.items()
        for row in rows
        for known, _ in list(alterations_meant(note(*row), places_of(upto(*drafted, BODY), note(*row))))[:1]
    }
    assert {one.name for one in ALTERATIONS} - found == set()


def never_broken(drafted: tuple[str, str], body: Body, steps: list[Step]) -> None:
    start = upto(*drafted, body)
    after = fitted(start, [noted(step) for step in steps])
    assert len(after.done) + len(after.findings) + len(after.left) == len(steps)
    serious = {"outline", "seam length", "notches meet", "notch order", "dart legs"}
    wrong = {(f.check, f.where) for f in check_draft(notched(after.draft), body) if f.level == "error"}
    before = {(f.check, f.where) for f in check_draft(notched(start), body) if f.level == "error"}
    assert not [one for one in wrong - before if one[0] in serious]
    for piece in after.draft.pieces:
        assert piece.area > 0


@settings(max_examples=5, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@pytest.mark.parametrize("drafted", RANDOM, ids=lambda one: f"{one[0]}-{one[1]}")
@given(data=st.data())
def test_alterations_one_after_the_other_never_break_a_draft(
    drafted: tuple[str, str], data: st.DataObject
) -> None:
    never_broken(drafted, BODY, data.draw(steps_on(RANDOM[drafted])))


@pytest.mark.population
@settings(max_examples=60, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@pytest.mark.parametrize("drafted", RANDOM, ids=lambda one: f"{one[0]}-{one[1]}")
@given(data=st.data())
def test_they_never_break_a_draft_on_any_body(drafted: tuple[str, str], data: st.DataObject) -> None:
    body = data.draw(st.sampled_from([*at_hand(24), *bdims(12)]))
    never_broken(drafted, body, data.draw(steps_on(RANDOM[drafted])))
