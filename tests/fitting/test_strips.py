"""Strips to paste over a paper pattern, read back from their PDF by another library."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from pypdfium2 import PdfDocument

from drafting.body import wearer
from drafting.costume.file import read_costume
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.make import make
from drafting.finish.label import Label, piece_title
from drafting.fitting.strip import strips_between
from drafting.output.strips import changed_pieces_pdf, strips_of_last_fitting, strips_pdf

BODY = wearer({"height": 1700, "bust_girth": 900, "waist_girth": 720, "hip_girth": 970})


def bodice(**choices: float) -> MadeGarment:
    return draft_garment(BODY, None, "bodice", {"bust_ease": 80.0, **choices})


def test_nothing_is_pasted_where_nothing_moved() -> None:
    for cut in bodice().pattern.pieces:
        assert strips_between(cut, bodice().pattern[cut.piece.name]) == ()
    assert strips_pdf(bodice(), bodice()) is None


def test_a_strip_shows_the_edges_that_moved_and_how_far() -> None:
    before, after = bodice(waist_ease=60.0), bodice(waist_ease=80.0)
    for name in ("back", "front"):
        strips = strips_between(before.pattern[name], after.pattern[name])
        assert len(strips) >= 1
        edges = {edge for strip in strips for edge in strip.edges}
        assert edges & {"side", "waist", "hem"}
        assert "shoulder" not in edges
        assert "neck" not in edges
        # 20 mm round the waist is 5 mm a quarter; darts and the side's slant take their part of it.
        assert 1.0 < max(strip.moved for strip in strips) < 20.0


def test_what_moved_is_the_same_both_ways() -> None:
    one, two = bodice(waist_ease=60.0).pattern["back"], bodice(waist_ease=80.0).pattern["back"]
    there, back = strips_between(one, two), strips_between(two, one)
    assert [strip.edges for strip in there] == [strip.edges for strip in back]
    for strip, other in zip(there, back, strict=True):
        assert strip.moved == pytest.approx(other.moved, abs=0.5)


def test_a_strip_is_printed_true_to_scale_with_its_words() -> None:
    data = strips_pdf(bodice(waist_ease=60.0), bodice(waist_ease=80.0))
    assert data is not None
    pages = [page.get_textpage().get_text_range() for page in PdfDocument(io.BytesIO(data))]
    assert "strip 1" in pages[0]
    assert any("the old line, on yours" in words for words in pages[1:])
    assert all("100 mm" in words for words in pages[1:])


def test_a_piece_that_changed_all_round_is_printed_again() -> None:
    before, after = bodice(), draft_garment(BODY.changed(bust_girth=1100.0), None, "bodice", {"bust_ease": 80.0})
    assert strips_between(before.pattern["front"], after.pattern["front"]) == ()


def test_making_after_a_fitting_writes_the_strips_of_what_it_moved(tmp_path: Path) -> None:
    for name, text in FILES.items():
        (tmp_path / name).write_text(text, "utf-8")
    unfitted = make(read_costume(tmp_path / "before.toml"))
    fitted = make(read_costume(tmp_path / "after.toml"))
    assert list(strips_of_last_fitting(unfitted)) == []
    (garment, pdf), (pieces, whole) = strips_of_last_fitting(fitted)
    assert (garment, pieces) == ("bodice", "bodice-changed")
    assert "Only these pieces changed" in PdfDocument(io.BytesIO(whole))[0].get_textpage().get_text_range()
    said = PdfDocument(io.BytesIO(pdf))[0].get_textpage().get_text_range()
    assert "strip 1" in said


PLAIN = '[garments.bodice]\nblock = "bodice"\nfabric = "shell"\n[fabrics]\nshell = "cloth.toml"\n'
FILES = {
    "body.toml": 'title = "B"\nunit = "cm"\n[measures]\nheight = 170\n'
    "bust_girth = 94\nwaist_girth = 80\nhip_girth = 100\n",
    "cloth.toml": 'title = "Calico"\nunit = "cm"\nwidth = 150\nweave = "woven"\nsort = "plain"\n',
    "first.toml": 'title = "F"\nunit = "cm"\non = 2026-11-09\n'
    '[[notes]]\nside = "both"\nwhere = "waist"\nverb = "take in"\n'
    'amount = "1 cm"\nas = "pinch"\nkind = "body"\nstate = "pinned"\n',
    "before.toml": f'title = "A"\nwearer = "body.toml"\n{PLAIN}',
    "after.toml": f'title = "A"\nwearer = "body.toml"\nfittings = ["first.toml"]\n{PLAIN}',
}


def test_the_pieces_that_a_fitting_changed_are_printed_whole_and_no_others() -> None:
    before, after = (draft_garment(BODY, None, "shirt", {"collar_ease": ease}) for ease in (12.0, 30.0))
    areas = {cut.piece.name: cut.cut.area for cut in before.pattern.pieces}
    moved = {cut.piece.name for cut in after.pattern.pieces if abs(areas[cut.piece.name] - cut.cut.area) > 100}
    assert 0 < len(moved) < len(areas)  # a collar, no sleeve
    data = changed_pieces_pdf(before, after, Label("Invented", "shirt"))
    assert data is not None
    first = PdfDocument(io.BytesIO(data))[0].get_textpage().get_text_range()
    for cut in after.pattern.pieces:
        assert (f"{cut.number} {piece_title(cut.piece)}, cut" in first) == (cut.piece.name in moved)
    assert changed_pieces_pdf(before, before, Label("Invented", "shirt")) is None
