"""The back's pieces: one, or with a yoke the back below it and the yoke."""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.roles import EdgeRole, LevelKind, PieceRole
from drafting.geometry import Path, line
from drafting.shaping.torso.bust_dart import waist_edges
from drafting.shaping.torso.dart_mouth import dart_edges
from drafting.shaping.torso.shape import TorsoShape
from drafting.shaping.torso.upper_back import Seamline, UpperBack


def centre_edge(path: Path, opens: bool) -> Edge:
    """Return a centre line: an opening, or on the fold."""
    return Edge("centre", path, EdgeKind.OPENING if opens else EdgeKind.FOLD, role=EdgeRole.CENTRE)


def back_pieces(shape: TorsoShape, to_hip: bool, opening: str) -> tuple[Piece, ...]:
    """Return the back, and the yoke if there is one."""
    upper, opens = shape.upper_back, opening == "back"
    points = {"nape": upper.nape, "side_neck": upper.side_neck, "shoulder_point": upper.tip}
    if upper.yoke is None or upper.lower is None:
        return (_back(shape, to_hip, upper_edges(upper), opens, points),)
    below = (
        Edge("armhole", upper.armholes[1].reversed(), role=EdgeRole.ARMHOLE),
        Edge("yoke", upper.lower.reversed(), role=EdgeRole.YOKE),
    )
    ring = (
        Edge("yoke", upper.yoke, role=EdgeRole.YOKE),
        *upper_edges(upper),
        centre_edge(line(upper.nape, upper.yoke.start), opens),
    )
    yoke = Piece("back-yoke", ring, pair=opens, title="Back yoke", points=points)
    return _back(shape, to_hip, below, opens, {}), yoke.mirrored()


def _back(
    shape: TorsoShape, to_hip: bool, above: tuple[Edge, ...], opens: bool, points: dict[str, complex]
) -> Piece:
    """Return the back below and with what lies `above` its side: armhole and on to the centre."""
    plan, half = shape.plan, shape.bottom.back
    low = complex(0, plan.hip if to_hip else plan.waist)
    edges = (
        *waist_edges(shape, half.hem, half.tip),
        Edge("side", shape.back_side.reversed(), role=EdgeRole.SIDE),
        *above,
        centre_edge(line(above[-1].path.end, low), opens),
    )
    across = complex(0, shape.upper_back.armhole.segments[-1].start.imag)
    hip = (Level("hip", half.hem, LevelKind.HIP),) if to_hip else ()
    levels = (
        Level("bust", (line(complex(0, plan.bust_line), complex(plan.back, plan.bust_line)),), LevelKind.BUST),
        Level("across_back", (line(across, across + plan.across_back),)),
        Level("waist", half.waist, LevelKind.WAIST),
        *hip,
    )
    piece = Piece(
        "back",
        edges,
        pair=opens,
        levels=levels,
        title="Back",
        darts=half.inners,
        points={**points, "underarm": shape.back_side.start},
        role=PieceRole.BACK,
    )
    return piece.mirrored()


def upper_edges(upper: UpperBack) -> tuple[Edge, ...]:
    """Return armhole, shoulder and neck of an upper back, with their darts, in ring order."""
    shoulder = Edge("shoulder", upper.shoulder.before, role=EdgeRole.SHOULDER)
    neck = Edge("neck", upper.neck.before, EdgeKind.OPENING, role=EdgeRole.NECK)
    return (
        Edge("armhole", upper.armholes[0].reversed(), role=EdgeRole.ARMHOLE),
        *_with_dart(shoulder, upper.shoulder, ("outer", "inner")),
        *_with_dart(neck, upper.neck, ("side", "centre")),
    )


def _with_dart(edge: Edge, seam: Seamline, parts: tuple[str, str]) -> list[Edge]:
    if seam.legs is None or seam.after is None:
        return [edge]
    return [
        replace(edge, name=f"{edge.name}_{parts[0]}"),
        *dart_edges(f"{edge.name}_dart", EdgeRole.BACK_DART, *seam.legs),
        replace(edge, name=f"{edge.name}_{parts[1]}", path=seam.after),
    ]
