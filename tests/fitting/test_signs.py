"""Signs of a mock-up: their order, what is tried for each cause, and their drawing on the wearer."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from drafting.body.dimensions import DIMENSIONS
from drafting.costume.garment import draft_garment
from drafting.costume.make import make
from drafting.draft.by_role import is_shell
from drafting.fitting.bands import GarmentSort, sort_of_garment
from drafting.fitting.note import AtEdge, AtLevel, AtMeasure, AtPiece, NoteKind, Verb
from drafting.fitting.performer import to_try
from drafting.fitting.signs import FitSign, FoldKind
from drafting.fitting.to_try import SIGNS, note_to_try, signs_of
from drafting.fitting.words import order_at_the_body
from drafting.sheet.wearer import draw_wearer, figure_build
from drafting.sheet.wearer.folds import sign_drawn
from drafting.sheet.wearer.small import small_figures
from tests.bodies import bdims
from tests.drawn_bodies import drawn
from tests.making.figures import made
from tests.making.orders import WOVEN

GARMENTS = [("lamplighter", "coat"), ("lamplighter", "shirt"), ("lamplighter", "breeches"), ("kite", "top")]


def by_name(name: str) -> FitSign:
    return next(sign for sign in SIGNS if sign.name == name)


def test_every_sign_has_its_own_name_two_or_three_causes_and_a_drawing() -> None:
    assert len({sign.name for sign in SIGNS}) == len(SIGNS) >= 24
    for sign in SIGNS:
        assert 2 <= len(sign.causes) <= 3, sign.name
        assert sign.folds, sign.name
        assert len({cause.attempt for cause in sign.causes}) == len(sign.causes), sign.name


# The trade's order of causes, from memory: the slope before the armhole before the shoulder's length; the
# shoulder before the neck before a round back; pitch before cap before a forward shoulder; depth, seat, thigh.
@pytest.mark.parametrize(
    ("sign", "words"),
    [
        ("neck to armpit", ("slopes", "armhole", "shoulder is too long")),
        ("below the neck", ("square", "neck", "round")),
        ("sleeve slants", ("pitch", "cap", "forward")),
        ("bust to side", ("bust is fuller", "side", "bust point")),
        ("crotch smiles", ("crotch", "seat", "thigh")),
        ("hem up behind", ("round", "seat")),
    ],
)
def test_causes_stand_in_the_trades_order(sign: str, words: tuple[str, ...]) -> None:
    for cause, word in zip(by_name(sign).causes, words, strict=True):
        assert word in cause.why


def test_strain_is_drawn_straight_and_a_loose_fold_bows() -> None:
    body = made("lamplighter").costume.wearer
    figures, form = small_figures(draw_wearer(body)), figure_build(body)
    for sign in SIGNS:
        lines = sign_drawn(sign, figures, body, form).lines
        kinds = {fold.kind for fold in sign.folds}
        straight = [abs(path.end - path.start) == pytest.approx(path.length, rel=1e-6) for path in lines]
        if kinds == {FoldKind.STRAIN}:
            assert all(straight), sign.name
        if kinds == {FoldKind.LOOSE}:
            assert not any(straight), sign.name


@pytest.mark.parametrize(("costume", "garment"), GARMENTS)
def test_a_sign_is_only_told_of_a_garment_that_can_show_it(costume: str, garment: str) -> None:
    draft = made(costume)[garment].draft
    found = list(signs_of(draft))
    assert len(found) >= 7
    assert all(sort_of_garment(draft) in sign.sorts for sign in found)
    assert (sort_of_garment(draft) is GarmentSort.LEGS) == ("crotch smiles" in {sign.name for sign in found})


@pytest.mark.parametrize(("costume", "garment"), GARMENTS)
def test_what_is_tried_names_a_place_that_the_garment_has(costume: str, garment: str) -> None:
    draft = made(costume)[garment].draft
    pieces = {piece.base or piece.name: piece for piece in draft.pieces if is_shell(piece)}
    kinds = {level.kind.value for piece in draft.pieces for level in piece.levels}
    for sign in signs_of(draft):
        notes = [note_to_try(cause.attempt, draft, garment) for cause in sign.causes]
        assert any(notes), sign.name
        for note in filter(None, notes):
            assert note.amount >= 3.0  # less is no note
            match note.where:
                case AtEdge(piece, edge):
                    assert edge in pieces[piece]
                case AtPiece(piece):
                    assert piece in pieces
                case AtLevel(level):
                    assert level in kinds
                case AtMeasure(measure):
                    assert measure in DIMENSIONS
                    assert note.kind is NoteKind.BODY


def test_a_girth_is_let_out_and_a_length_lengthened() -> None:
    round_ = {Verb.TAKE_IN, Verb.LET_OUT}
    for sign in SIGNS:
        for cause in sign.causes:
            if cause.attempt.measure:
                kind = DIMENSIONS[cause.attempt.measure].kind
                assert (cause.attempt.verb in round_) == (kind in ("girth", "width")), (sign.name, cause.why)


@pytest.mark.parametrize("body", drawn(3), ids=lambda body: body.title)
def test_signs_lie_on_the_figure_of_anybody(body: Any) -> None:
    figures, form = small_figures(draw_wearer(body)), figure_build(body)
    draft = make(replace(made("lamplighter").costume, wearer=body))["shirt"].draft
    for sign in signs_of(draft):
        picture = sign_drawn(sign, figures, body, form)
        x0, y0, x1, y1 = picture.box
        for path in picture.lines:
            a, b, c, d = path.bounds
            assert x0 <= a <= c <= x1, sign.name
            assert y0 <= b <= d <= y1, sign.name


@pytest.mark.parametrize(
    ("block", "sort", "never", "looked"),
    [
        ("spats", GarmentSort.FOOT, ("bust", "armhole", "waist", "crotch"), "instep"),
        ("cape", GarmentSort.CAPE, ("bust", "armhole", "sleeve", "waist"), "drag back"),
        ("skirt", GarmentSort.WAISTED, ("bust", "armhole", "upper back", "back waist", "neck"), "hang plumb"),
    ],
)
def test_what_has_no_body_is_not_fitted_as_one(
    block: str, sort: GarmentSort, never: tuple[str, ...], looked: str
) -> None:
    """A spat was looked at for its armholes, and a skirt's hem asked for another bust, a measure that every other
    garment is drafted from (common practice: one looks at what the garment covers)."""
    draft = draft_garment(bdims()[0], WOVEN, block, {}).draft
    assert sort_of_garment(draft) is sort
    causes = [cause for sign in signs_of(draft) for cause in sign.causes]
    said = " ".join(
        [*order_at_the_body(draft), *(sign.seen for sign in signs_of(draft)), *(cause.why for cause in causes)]
        + [cause.attempt.measure.replace("_", " ") for cause in causes]
    )
    assert looked in said
    assert not [word for word in never if word in said]
    assert any("arms overhead" in one for one in to_try(sort)) == (block == "cape")
    assert all(sign.causes for sign in signs_of(draft))
