"""Front and back of a trouser as rings of named edges, with their level lines. mm.

Drafted with the side at -x; the front is turned over, so that both lie as the wearer's left leg seen
from outside.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.roles import EdgeRole, LevelKind, PieceRole
from drafting.geometry import Cubic, Path, line
from drafting.geometry.heights import x_at
from drafting.shaping.torso.dart_mouth import dart_edges
from drafting.shaping.trouser.centre import CentreEdge
from drafting.shaping.trouser.darts import OpenedWaist
from drafting.shaping.trouser.hem import LowerLeg
from drafting.shaping.trouser.legs import thigh_level
from drafting.shaping.trouser.seat import seat_of
from drafting.shaping.trouser.shape import LegShape


@dataclass(frozen=True, slots=True)
class Openings:
    """Lengths (mm) left open: `fly` from the waist down the front crotch, `slit` up from the hem."""

    fly: float = 0.0
    slit: float = 0.0


@dataclass(frozen=True, slots=True)
class CutSettings:
    """What the pieces need besides lines: warp and stretch (degrees), allowances at waist and hem.

    `casing` says that the waist is turned over elastic, else a waistband is sewn on later.
    """

    grain: float
    stretch: float
    casing: bool
    waist_allowance: float | None
    hem_allowance: float | None = None


@dataclass(frozen=True, slots=True)
class _Half:
    """The curves of one piece: upward inside and side, its centre, waist, lower leg and widening."""

    inside: Cubic
    side: Cubic
    hip_curve: Cubic
    centre: CentreEdge
    waist: OpenedWaist
    lower: LowerLeg
    levels: tuple[Level, ...]


def draw_pieces(shape: LegShape, openings: Openings, cutting: CutSettings) -> tuple[Piece, Piece]:
    """Return the front and the back."""
    front_half, back_half = _half(shape, front=True), _half(shape, front=False)
    front = _piece(PieceRole.FRONT, front_half, openings, cutting, openings.fly)
    back = _piece(PieceRole.BACK, back_half, openings, cutting, 0.0)
    return front.mirrored(), back


def _half(shape: LegShape, *, front: bool) -> _Half:
    rise, waist, hems = shape.rise, shape.waist, shape.hems
    if front:
        return _Half(
            inside=rise.legs.front_inside,
            side=rise.legs.side,
            hip_curve=waist.hip_curve,
            centre=rise.front,
            waist=waist.front,
            lower=hems.front,
            levels=_levels(shape, seat_of(shape.frame, rise).front, waist.front, hems.front, 0.0),
        )
    out = shape.frame.wider
    side, hip_curve = (Cubic(*(z - out for z in curve)) for curve in (rise.legs.side, waist.hip_curve))
    return _Half(
        inside=rise.legs.back_inside,
        side=side,
        hip_curve=hip_curve,
        centre=rise.back,
        waist=waist.back,
        lower=hems.back,
        levels=_levels(shape, seat_of(shape.frame, rise).back, waist.back, hems.back, out),
    )


def _levels(shape: LegShape, seat: complex, waist: OpenedWaist, lower: LowerLeg, out: float) -> tuple[Level, ...]:
    """Return the level lines, each from edge to edge; the hip's ends at `seat`."""
    frame, legs = shape.frame, shape.rise.legs
    thigh = thigh_level(frame, legs)
    inside = legs.back_inside if out else legs.front_inside
    hip_side = complex(-legs.half - out, frame.hip)
    knee = complex(frame.knee_half + out, frame.knee)
    return (
        Level("waist", tuple(Path((part,)) for part in waist.parts), LevelKind.WAIST),
        Level("hip", (line(hip_side, seat),), LevelKind.HIP),
        Level("thigh", (line(complex(x_at(legs.side, thigh) - out, thigh), complex(x_at(inside, thigh), thigh)),)),
        Level("knee", (line(complex(-knee.real, knee.imag), knee),), LevelKind.KNEE),
        Level("trouser_hem", (Path((lower.hem,)),)),
    )


def _piece(role: PieceRole, half: _Half, openings: Openings, cutting: CutSettings, fly: float) -> Piece:
    name, lower = role.value, half.lower
    edges = (
        Edge("hem", Path((lower.hem,)), EdgeKind.HEM, allowance=cutting.hem_allowance, role=EdgeRole.HEM),
        Edge("inseam", Path((lower.inside.reversed(), half.inside)), role=EdgeRole.INSEAM),
        *_crotch(half.centre, fly),
        *_waist(half.waist, cutting),
        *_side(half, openings.slit),
    )
    return Piece(
        name,
        edges,
        grain=cutting.grain,
        stretch=cutting.stretch,
        pair=True,
        levels=half.levels,
        title=name.capitalize(),
        role=role,
        points={
            "crotch_point": half.inside.d,
            "centre_waist": half.centre.top,
            "side_waist": half.hip_curve.d,
            "side_hip": half.side.d,
            "side_knee": half.side.a,
            "inside_knee": half.inside.a,
            "centre_hip": half.centre.on_hip,
            "crease_knee": complex(0, half.side.a.imag),
            "crease_hip": complex(0, half.side.d.imag),
        },
    )


def _crotch(centre: CentreEdge, fly: float) -> list[Edge]:
    """Return the edge from the fork up to the waist; its top end of `fly` mm stays open."""
    path = centre.path.reversed()
    if fly <= 0:
        return [Edge("crotch", path, role=EdgeRole.CROTCH)]
    low, high = path.split(path.length - fly)
    return [Edge("crotch", low, role=EdgeRole.CROTCH), Edge("fly", high, EdgeKind.OPENING, role=EdgeRole.FLY)]


def _waist(opened: OpenedWaist, cutting: CutSettings) -> Iterator[Edge]:
    """Yield the waist from centre to side: its parts and, between them, the darts."""
    kind = EdgeKind.HEM if cutting.casing else EdgeKind.OPENING
    parts = [Path((part.reversed(),)) for part in reversed(opened.parts)]
    names = {1: ["waist"], 2: ["waist_centre", "waist_side"]}.get(
        len(parts), ["waist_centre", "waist_middle", "waist_side"]
    )
    darts = ["waist_dart"] if len(parts) < 3 else ["waist_dart_centre", "waist_dart_side"]
    for k, (name, part) in enumerate(zip(names, parts, strict=True)):
        yield Edge(name, part, kind, allowance=cutting.waist_allowance, role=EdgeRole.WAIST)
        if k < len(opened.darts):
            near_side, tip, near_centre = opened.darts[-1 - k]
            legs = line(near_centre, tip), line(tip, near_side)
            yield from dart_edges(darts[k], EdgeRole.WAIST_DART, *legs)


def _side(half: _Half, slit: float) -> list[Edge]:
    """Return the side from waist to hem; its lowest `slit` mm stay open."""
    path = Path((half.hip_curve.reversed(), half.side.reversed(), half.lower.side))
    if slit <= 0:
        return [Edge("side", path, role=EdgeRole.SIDE)]
    high, low = path.split(path.length - slit)
    return [Edge("side", high, role=EdgeRole.SIDE), Edge("slit", low, EdgeKind.OPENING, role=EdgeRole.SLIT)]
