"""The dart cap. The outside check is paper: fold the dart and look whether the edges lie together."""

import pytest

from drafting.draft.pattern import DartCap
from drafting.draft.piece import Piece
from drafting.finish import FinishChoices
from drafting.finish.darts import centre_of, wedge
from drafting.geometry import Path, area
from tests.finish.figures import cut_line, side_dart_half_front, waist_dart_back

MISS = 0.05


def reflected(path: Path, on: complex, along: complex) -> Path:
    return path.mapped(lambda p: on + ((p - on) / along).conjugate() * along)


def halves(cap: DartCap, roof: Path) -> tuple[Path, Path]:
    """Part a roof at the crease."""
    segments = roof.segments
    tip, way = cap.fold.start, cap.fold.end - cap.fold.start
    side = [((s.point(0.5) - tip) / way).imag < 0 for s in segments]
    count = sum(side)
    assert side == [True] * count + [False] * (len(side) - count)
    return Path(segments[:count]), Path(segments[count:])


CASES = [
    (side_dart_half_front(), "side-lower", "dart-a", True),
    (waist_dart_back(), "waist-centre", "dart-b", False),
]


@pytest.mark.parametrize(("piece", "neighbour", "near_leg", "before"), CASES)
def test_folded_as_it_is_pressed_the_dart_lies_on_the_edge_it_is_pressed_to(
    piece: Piece, neighbour: str, near_leg: str, before: bool
) -> None:
    """A side dart is pressed down, a waist dart to the centre (common practice)."""
    (cap,) = cut_line(piece, FinishChoices()).caps
    legs = [piece[name].path for name in cap.edges]
    tip = legs[0].end
    opening = (legs[1].end - tip) / (legs[0].start - tip)
    along = piece[near_leg].path.end - piece[near_leg].path.start
    first, second = halves(cap, cap.stitch)
    creased = first if before else second
    turned = second.turned(tip, 1 / opening) if before else first.turned(tip, opening)
    seam = piece[neighbour].path
    for half in (reflected(creased, tip, along), turned):
        assert area.distances(half, seam).max() < MISS


@pytest.mark.parametrize("piece", [side_dart_half_front(), waist_dart_back()])
def test_the_allowance_follows_the_cap(piece: Piece) -> None:
    found = cut_line(piece, FinishChoices(12, 12, 12))
    (cap,) = found.caps
    away = area.distances(cap.cut, cap.stitch)
    assert away.min() == pytest.approx(12.0, abs=0.1)
    assert area.distances(cap.cut, found.path).max() < MISS
    assert area.is_simple(found.path)


@pytest.mark.parametrize("piece", [side_dart_half_front(), waist_dart_back()])
def test_the_seam_line_over_the_closed_dart_is_whole(piece: Piece) -> None:
    """Closed, the two leg ends fall together and the cut lines beside them meet."""
    (cap,) = cut_line(piece, FinishChoices(12, 12, 12)).caps
    legs = [piece[name].path for name in cap.edges]
    tip = legs[0].end
    opening = (legs[1].end - tip) / (legs[0].start - tip)
    for roof in (cap.stitch, cap.cut):
        assert abs(tip + (roof.end - tip) / opening - roof.start) < MISS
    assert abs(cap.stitch.start - legs[0].start) < 1e-9
    assert abs(cap.stitch.end - legs[1].end) < 1e-9


def test_the_other_hand_has_the_mirrored_cap() -> None:
    for piece in (side_dart_half_front(), waist_dart_back()):
        here, there = (cut_line(p, FinishChoices()) for p in (piece, piece.mirrored()))
        assert area.difference(here.path.mirrored().reversed(), there.path) < 0.5


def test_a_dart_is_pressed_down_or_to_the_centre() -> None:
    front, back = side_dart_half_front(), waist_dart_back()
    assert wedge(front, front["dart-a"], front["dart-b"]).to_before
    assert not wedge(back, back["dart-a"], back["dart-b"]).to_before
    assert centre_of(back) == 0.0
