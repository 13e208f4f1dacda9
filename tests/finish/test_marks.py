"""Notches, grainline and label room."""

from dataclasses import replace

import pytest
import shapely

from drafting.draft.draft import Draft, Seam, SeamNotch
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, Notch, Piece
from drafting.finish import FinishChoices, finish, label_room, proposed
from drafting.geometry import Path, area, line
from tests.finish.figures import finish_piece, polygon, side_dart_half_front, waist_dart_back


def notched(width: float, count: int = 1, at: float = 100.0) -> CutPiece:
    piece = polygon(0j, 200 + 0j, 200 + 300j, 300j)
    side = Edge("s1", piece["s1"].path, notches=(Notch("n", at, count),))
    return finish_piece(piece.with_edges(side), FinishChoices(seam_allowance=width))[0]


@pytest.mark.parametrize(("width", "deep"), [(6, 3), (8, 4), (10, 5), (15, 5), (25, 5)])
def test_a_notch_is_3_to_5_mm_deep_and_never_over_half_the_allowance(width, deep) -> None:
    """Common practice: 3 to 5 mm, at most half the allowance."""
    (mark,) = notched(width).notches
    (stroke,) = mark.strokes
    assert stroke.length == pytest.approx(deep)
    assert stroke.length <= width / 2
    assert stroke.start == pytest.approx(200 + width + 100j, abs=1e-6)  # on the cut line
    assert stroke.end == pytest.approx(200 + width - deep + 100j, abs=1e-6)


def test_a_back_notch_is_two_strokes_6_mm_apart_about_the_true_place() -> None:
    """Common practice: single is front, double is back."""
    (mark,) = notched(10, count=2).notches
    assert [s.start.imag for s in mark.strokes] == pytest.approx([97.0, 103.0])
    (edge,) = notched(10, count=2, at=1.0).notches
    assert [s.start.imag for s in edge.strokes] == pytest.approx([0.0, 6.0])


def test_a_notch_stands_square_to_a_curved_seam_at_the_true_place() -> None:
    piece = side_dart_half_front()
    cut, _ = finish_piece(piece, FinishChoices())
    mark = next(m for m in cut.notches if m.name == "front")
    at, along = piece["armhole"].path.at(65.0), piece["armhole"].path.tangent(65.0)
    (stroke,) = mark.strokes
    assert abs(stroke.start - (at - 10j * along)) < 0.03
    assert abs(((stroke.end - stroke.start) * along.conjugate()).real) < 1e-6
    assert area.distances(line(stroke.start, stroke.start + 1e-6), cut.cut).max() < 0.03


def test_both_sides_of_a_seam_are_notched_from_the_seam() -> None:
    """The underarm-to-notch lengths are equal on both pieces (common practice: within 1 mm)."""
    a = polygon(0j, 200 + 0j, 200 + 300j, 300j, name="a")
    b = polygon(0j, 150 + 0j, 150 + 310j, 310j, name="b")
    seam = Seam("side", (("a", "s1"),), (("b", "s3"),), ease=-10, notches=(SeamNotch("n", 120, 125, 2),))
    pattern = finish(Draft((a, b), (seam,)), "bodice", "shell")
    low_a = [s.start.imag for s in pattern["a"].notches[0].strokes]
    low_b = [s.start.imag for s in pattern["b"].notches[0].strokes]
    assert sum(low_a) / 2 == pytest.approx(120.0, abs=1e-6)
    assert sum(low_b) / 2 == pytest.approx(310 - (310 - 125), abs=1e-6)
    assert [p.number for p in pattern.pieces] == [1, 2]


def test_pieces_finished_together_are_those_finished_one_by_one() -> None:
    """The allowances of a garment are fitted all at once: what stands beside a piece is no matter."""
    pieces = (side_dart_half_front(), waist_dart_back(), polygon(0j, 90 + 0j, 60 + 120j))
    choices = FinishChoices(seam_allowance=11.3)  # asked for nowhere else, so nothing is remembered
    together = finish(Draft(pieces), "bodice", "shell", choices).pieces
    again = replace(choices, seam_allowance=11.3 + 1e-12)
    for cut in together:
        alone, _ = finish_piece(cut.piece, again)
        assert cut.cut.length == pytest.approx(alone.cut.length, abs=1e-9)
        assert area.difference(cut.cut, alone.cut) == pytest.approx(0.0, abs=1e-6)


def test_dart_mouths_and_fold_ends_are_marked_at_the_cut_line() -> None:
    cut, _ = finish_piece(side_dart_half_front(), FinishChoices(seam_allowance=12))
    names = [(m.edge, m.name) for m in cut.notches]
    assert [n for n in names if n[1] == "leg"] == [("dart-a", "leg"), ("dart-b", "leg")]
    assert len([n for n in names if n[0] == "centre"]) == 2
    for mark in cut.notches:
        for stroke in mark.strokes:
            assert area.distances(line(stroke.start, stroke.start + 1e-6), cut.cut).max() < 0.03
            assert stroke.length <= 5.0 + 1e-9
            assert area.distances(line(stroke.end, stroke.end + 1e-6), cut.piece.outline).min() > 4


@pytest.mark.parametrize("piece", [side_dart_half_front(), waist_dart_back()])
@pytest.mark.parametrize("grain", [90.0, 45.0, 0.0])
def test_the_grainline_lies_inside_along_the_warp_and_is_long(piece: Piece, grain: float) -> None:
    cut, _ = finish_piece(replace(piece, grain=grain), FinishChoices(), stretch=90.0)
    arrow = cut.grainline
    assert arrow is not None
    assert cut.stretch_arrow is not None
    way = arrow.leave
    assert (way.real, way.imag) == pytest.approx(
        {90.0: (0, 1), 45.0: (0.5**0.5, 0.5**0.5), 0.0: (1, 0)}[grain], abs=1e-9
    )
    assert arrow.length > 90
    drawn = shapely.LineString([(p.real, p.imag) for p in (arrow.start, arrow.end)])
    assert area.inset(piece.outline, 5.0).contains(drawn)


def test_labels_stay_upright_and_arrows_keep_their_sense_on_the_other_hand() -> None:
    """Common practice: labels stay readable, the grain is not turned."""
    here, _ = finish_piece(side_dart_half_front(), FinishChoices(), stretch=90.0)
    there = here.mirrored()
    assert here.grainline is not None
    assert there.grainline is not None
    assert there.grainline.leave == pytest.approx(1j)  # bottom to top on both hands
    assert there.cut.area == pytest.approx(here.cut.area)
    assert [m.name for m in there.notches] == [m.name for m in here.notches]
    for a, b in zip(here.notches, there.notches, strict=True):
        assert [-s.start.conjugate() for s in a.strokes] == [s.start for s in b.strokes]
    again = there.mirrored()
    assert again.cut.start == here.cut.start
    fresh, _ = finish_piece(side_dart_half_front().mirrored(), FinishChoices())
    assert fresh.grainline is not None
    assert fresh.grainline.leave == pytest.approx(1j)


@pytest.mark.parametrize("mirrored", [False, True])
@pytest.mark.parametrize("piece", [side_dart_half_front(), waist_dart_back()])
def test_the_label_box_is_free_of_edges_and_arrows_on_either_hand(piece: Piece, mirrored: bool) -> None:
    cut, _ = finish_piece(piece, FinishChoices(), stretch=90.0)
    cut = cut.mirrored() if mirrored else cut
    at, (wide, high) = label_room(cut)
    assert min(wide, high) > 30
    half = complex(wide, high) / 2
    box = Path.polygon(at - half, at + half.conjugate(), at + half, at - half.conjugate())
    shape = area.polygon(box)
    assert shape.area == pytest.approx(wide * high)
    assert area.polygon(cut.piece.outline).contains(shape)
    assert cut.grainline is not None
    for arrow in (cut.grainline, cut.stretch_arrow):
        assert arrow is None or area.without(shape, [arrow], 0.5).area == pytest.approx(shape.area)


def test_a_piece_the_size_of_a_dolls_cuff_gets_all_its_marks() -> None:
    """Common practice: small bodies; allowance 6 mm."""
    piece = polygon(0j, 60 + 0j, 60 + 14j, 14j)
    cut, found = finish_piece(piece, FinishChoices(**proposed(0.2)))
    assert cut.cut.bounds == pytest.approx((-6, -6, 66, 20))
    assert cut.grainline is not None
    assert cut.grainline.length > 5
    assert min(label_room(cut)[1]) > 4
    assert found == ()


def test_an_adult_is_proposed_the_allowances_as_written() -> None:
    assert FinishChoices(**proposed(1.0)) == FinishChoices()
