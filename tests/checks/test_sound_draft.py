"""A sound draft is left in peace, and everything is looked at."""

from __future__ import annotations

import pytest

from drafting.checks import check_draft, summary
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.walk import notched
from drafting.ground.findings import Finding
from tests.checks.figures import ADULT, darted, sound


def test_a_sound_draft_has_no_finding_but_ok() -> None:
    findings = check_draft(notched(sound()), ADULT)
    assert [f for f in findings if f.level != "ok"] == []


def test_every_question_was_asked_of_it() -> None:
    asked = {f.check for f in check_draft(notched(sound()), ADULT)}
    assert asked >= {
        "outline",
        "fold corner",
        "seam length",
        "notches meet",
        "joined corner",
        "finished girth",
        "inflections",
        "cap on armhole",
    }


def test_the_other_hand_of_every_piece_is_its_exact_mirror() -> None:
    # Logic: exact mirror images; areas equal within 0.05 cm2.
    for piece in (*sound().pieces, darted()):
        other = piece.mirrored()
        assert other.area == pytest.approx(piece.area, abs=1e-6)
        for edge in piece.edges:
            assert other[edge.name].length == pytest.approx(edge.length, abs=1e-9)
        assert _corners(other) == pytest.approx(_corners(piece)[:1] + _corners(piece)[:0:-1])


def _corners(piece: Piece) -> list[float]:
    return [piece.corner(i) for i in range(len(piece.edges))]


def test_a_seam_is_told_in_a_makers_words() -> None:
    said = {f.where: f.message for f in check_draft(sound(), ADULT) if f.check == "seam length"}
    assert said["side"] == "Side seam: front 200 mm, back 200 mm, they match"
    assert said["back_armhole"].endswith("12 mm of the sleeve eased in as chosen")
    assert said["front_armhole"].endswith("12 mm of the sleeve eased in as chosen")


def test_what_holds_is_counted_beside_what_does_not() -> None:
    findings = [
        Finding("a", "ok", "front", None, None, "holds"),
        Finding("b", "note", "front", None, None, "said"),
        Finding("c", "error", "side", None, None, "wrong " * 40),
    ]
    assert summary(findings) == "1 check holds; 1 error, no warning, 1 note."


def test_an_empty_draft_is_no_trouble() -> None:
    assert check_draft(Draft(), ADULT) == ()
