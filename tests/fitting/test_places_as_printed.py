"""Every place that a fitting sheet prints, and every note that it says to try, is one that a file takes."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from drafting.costume.file import CostumeFile, read_costume
from drafting.costume.make import Made, make
from drafting.costume.mock_up import tried_on
from drafting.costume.refitted import refitted
from drafting.fitting.file import FittingFile
from drafting.fitting.note import AmountAs, AtEdge, FromEnd, Note, NoteKind, NoteSide, NoteState, Verb
from drafting.fitting.to_try import note_to_try, signs_of
from drafting.fitting.to_write_on import seam_lines
from drafting.ground.errors import InputError
from drafting.output.fitting_pages import sheets_to_write_on
from drafting.reading.given import FilePlace
from tests.fitting.test_fitting_files import BODY, CLOTH

KNIT = """title = "Jersey"
unit = "cm"
width = 150
weave = "knit"
sort = "plain"
pretreated = true
stretch_along = { rest = 10, stretched = 13 }
stretch_across = { rest = 10, stretched = 15 }
"""

STYLED = """
[[garments.it.style]]
do = "cut"
piece = "front"
from = { edge = "armhole", share = 0.45 }
to = { edge = "centre", distance = "9 cm", beside = "neck" }
name = "front-yoke"
holds = "neck"
"""


def costume(folder: Path, block: str, more: str = "") -> CostumeFile:
    """Return a garment on a body whose shoulders differ: its back is cut whole, its halves uneven."""
    uneven = BODY.replace("shoulder_drop = 4.6", "shoulder_drop = { left = 4.2, right = 5.4 }")
    (folder / "body.toml").write_text(uneven, "utf-8")
    (folder / "cloth.toml").write_text(CLOTH, "utf-8")
    path = folder / "costume.toml"
    path.write_text(
        f'title = "It"\nwearer = "body.toml"\n[fabrics]\nshell = "cloth.toml"\n'
        f'[garments.it]\nblock = "{block}"\nfabric = "shell"\n{more}',
        "utf-8",
    )
    return read_costume(path)


def noted(costume: CostumeFile, *notes: Note) -> Made:
    return make(refitted(costume, [FittingFile("First", None, "first.toml", False, notes)]))


def at(where: str, verb: Verb, number: int, mm: float = 0.0) -> Note:
    piece, _, edge = where.partition(".")
    return Note(
        garment="it",
        side=NoteSide.BOTH,
        where=AtEdge(piece, edge),
        verb=verb,
        amount=mm,
        counted=AmountAs.TOTAL,
        kind=NoteKind.STYLE,
        state=NoteState.PINNED,
        spot=FilePlace("first.toml", f"notes[{number}]", number),
    )


@pytest.mark.parametrize(
    ("block", "more"), [("shirt", ""), ("fitted-top", ""), ("fitted-top", STYLED), ("coat", "")]
)
def test_a_note_may_name_every_place_that_the_sheet_prints(tmp_path: Path, block: str, more: str) -> None:
    asked = costume(tmp_path, block, more)
    printed = [
        ref for one in tried_on(make(asked)).made.garments for line in seam_lines(one.draft) for ref in line.edges
    ]
    places = [f"{piece}.{edge}" for piece, edge in printed if not edge.startswith("style_line")]
    assert any(place.endswith("_left") for place in places) or block == "coat"
    noted(asked, *(at(place, Verb.LEAVE, number) for number, place in enumerate(places)))


@pytest.mark.parametrize(
    ("block", "more"), [("shirt", ""), ("fitted-top", STYLED), ("coat", ""), ("trousers", "")]
)
def test_a_note_that_the_sheet_says_to_try_is_read(tmp_path: Path, block: str, more: str) -> None:
    asked = costume(tmp_path, block, more)
    draft = make(asked).garments[0].draft
    tried = [note_to_try(cause.attempt, draft, "it") for sign in signs_of(draft) for cause in sign.causes]
    for note in filter(None, tried):
        made = noted(asked, note)
        assert note.kind is not NoteKind.STYLE or [one.note.verb for one in made.garments[0].done] == [note.verb]


def test_a_half_of_a_piece_cut_whole_is_that_hands(tmp_path: Path) -> None:
    asked = costume(tmp_path, "shirt")
    plain = noted(asked).garments[0].draft["back"]
    lower = noted(asked, at("back.shoulder_left", Verb.LOWER, 1, 10.0)).garments[0].draft["back"]

    def drop(piece: object, side: str) -> float:
        path = piece[f"shoulder_{side}"].path  # type: ignore[index]
        return abs((path.end - path.start).imag)

    assert drop(lower, "left") - drop(plain, "left") == pytest.approx(10.0, abs=0.3)
    assert drop(lower, "right") - drop(plain, "right") == pytest.approx(0.0, abs=0.3)


def test_a_note_after_which_the_sleeve_cannot_be_drafted_stops_no_other(tmp_path: Path) -> None:
    """The whole costume was refused, at the line of its garment."""
    asked = costume(tmp_path, "close-top")
    (tmp_path / "cloth.toml").write_text(KNIT, "utf-8")
    body = tmp_path / "body.toml"
    body.write_text(body.read_text("utf-8").replace("upper_arm_girth = 30", "upper_arm_girth = 38"), "utf-8")
    asked = read_costume(tmp_path / "costume.toml")
    made = noted(asked, at("back.armhole", Verb.RAISE, 1, 24.0), at("front.neck", Verb.LOWER, 2, 6.0))
    by_line = {one.note.spot.line: one for one in made.garments[0].done}
    assert by_line[2].carried
    assert not by_line[1].carried
    assert "no sleeve cap fits" in by_line[1].said
    assert any(one.level == "warning" and "cap" in one.sentence for one in made.findings)


def test_a_hem_beside_tails_is_told_to_be_a_choice(tmp_path: Path) -> None:
    """A band behind the tail came apart, and the maker was told of coordinates."""
    made = noted(costume(tmp_path, "tailcoat"), at("back.hem", Verb.LENGTHEN, 1, 10.0))
    (told,) = (one.sentence for one in made.findings if one.check == "fitting" and one.level == "warning")
    assert "tail_length" in told


@pytest.mark.parametrize(
    ("mm", "end", "said"),
    [
        (4000.0, "hem", "the back side is"),
        (40.0, "neck", "does not meet the neck"),
        (40.0, "moon", "no edge moon"),
    ],
)
def test_a_place_that_an_edge_does_not_have_is_refused(tmp_path: Path, mm: float, end: str, said: str) -> None:
    """It was taken for the other end of the edge, and the seam was taken in there."""
    note = replace(at("back.side", Verb.TAKE_IN, 7, 10.0), at=FromEnd(mm, end))
    with pytest.raises(InputError, match=said) as refused:
        noted(costume(tmp_path, "shirt"), note)
    assert [fault.line for fault in refused.value.faults] == [7]


def test_the_small_pieces_of_a_sheet_say_whose_hand_they_are(tmp_path: Path) -> None:
    """A front of either hand stood there twice under one name."""
    ((_, pages),) = sheets_to_write_on(tried_on(make(costume(tmp_path, "coat"))))
    said = [line for text in pages[0].texts for line in text.lines]
    assert any(line.endswith("Front L") for line in said)
    assert any(line.endswith("Front R") for line in said)
