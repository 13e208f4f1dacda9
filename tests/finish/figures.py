"""Invented pieces for the finish tests."""

from __future__ import annotations

import math

from drafting.draft.draft import Draft
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, EdgeKind, Notch, Piece
from drafting.finish import FinishChoices, finish
from drafting.finish.cut_line import CutLine, cut_lines
from drafting.geometry import Path, line, smooth, turn
from drafting.ground.findings import Finding

K = EdgeKind


def cut_line(piece: Piece, choices: FinishChoices) -> CutLine:
    """Return the cut line of one piece alone."""
    return cut_lines([(piece, choices)])[0]


def finish_piece(
    piece: Piece, choices: FinishChoices, stretch: float | None = None
) -> tuple[CutPiece, tuple[Finding, ...]]:
    """Return one piece alone with all its marks, and what was found; `stretch` degrees off its warp."""
    stretches = {} if stretch is None else {piece.material: stretch}
    pattern = finish(Draft((piece,)), "alone", "shell", choices, stretches)
    return pattern.pieces[0], pattern.findings


def of_sides(*sides: Path, name: str = "piece", kinds: dict[int, EdgeKind] | None = None) -> Piece:
    """Return a piece whose edges are called s0, s1 ...; seams unless `kinds` says otherwise."""
    kinds = kinds or {}
    edges = (Edge(f"s{i}", path, kinds.get(i, K.SEAM)) for i, path in enumerate(sides))
    return Piece(name, tuple(edges))


def polygon(*corners: complex, **more: object) -> Piece:
    """Return a straight-sided piece."""
    sides = [line(a, b) for a, b in zip(corners, [*corners[1:], corners[0]], strict=True)]
    return of_sides(*sides, **more)  # type: ignore[arg-type]


def side_dart_half_front() -> Piece:
    """A half front on the fold with a side dart: legs 123, intake 30 (trued)."""
    low = 240 + 150j
    tip = low + 123 * (turn(170))
    opening = turn(2 * math.degrees(math.asin(15 / 123)))
    high = tip + (low - tip) * opening
    top = high + (low - (240 + 0j)) / 150 * opening * 60
    armhole = smooth(top, 150 + 400j, (top - high) * turn(90), 0.1 + 1j)
    return Piece(
        "front",
        (
            Edge("waist", line(0j, 240 + 0j), K.HEM),
            Edge("side-lower", line(240 + 0j, low)),
            Edge("dart-a", line(low, tip), K.DART),
            Edge("dart-b", line(tip, high), K.DART),
            Edge("side-upper", line(high, top)),
            Edge("armhole", Path((armhole,)), notches=(Notch("front", 65.0),)),
            Edge("shoulder", line(150 + 400j, 75 + 430j)),
            Edge("neck", Path((smooth(75 + 430j, 350j, -1j, -1 + 0j),))),
            Edge("centre", line(350j, 0j), K.FOLD),
        ),
    )


def waist_dart_back() -> Piece:
    """A half back on the fold (at its right) with a waist dart of 14 degrees, seam curved."""
    tip, centre_leg = -100 + 180j, -85 + 0j
    side_leg = tip + (centre_leg - tip) * turn(-14)
    return Piece(
        "back",
        (
            Edge("side", line(-230 + 220j, -210 + 5j)),
            Edge("waist-side", Path((smooth(-210 + 5j, side_leg, 1 - 0.1j, turn(-14)),))),
            Edge("dart-a", line(side_leg, tip), K.DART),
            Edge("dart-b", line(tip, centre_leg), K.DART),
            Edge("waist-centre", line(centre_leg, 0j)),
            Edge("centre", line(0j, 420j), K.FOLD),
            Edge("top", line(420j, -180 + 400j)),
            Edge("armhole", Path((smooth(-180 + 400j, -230 + 220j, 0.1 - 1j, -1 + 0j),))),
        ),
    )
