"""Panel seams through the bust point: the front in a centre and a side panel of equal seams.

Both panels' edges run from the lower edge past the bust point to the shoulder or the armhole. Where
they cross the bust line is solved, a few millimetres beside the bust point, so that both are equally
long; the girth there stays as it is. What is still missing to smooth joined corners at their ends is
bent into the edges they meet.
"""

from __future__ import annotations

import cmath
from collections.abc import Callable
from dataclasses import dataclass

from drafting.draft.piece import Edge, EdgeKind, Level
from drafting.draft.roles import EdgeRole, LevelKind, PieceRole
from drafting.geometry import Path, line, smooth, unit
from drafting.geometry.brent import brent_zero
from drafting.shaping.torso.bust_dart import (
    COPIED,
    ON_SHOULDER,
    FrontPiece,
    along,
    hem_name,
    hem_role,
    split_armhole,
    split_hem,
    waist_points,
)
from drafting.shaping.torso.dart_mouth import BEND_OVER, true_mouth
from drafting.shaping.torso.shape import TorsoShape

PLACES = ("shoulder-princess", "armhole-princess")

BESIDE = (-30.0, 45.0)
"""mm at adult scale: how far beside the bust point (towards the side) the seam may pass (ours)."""

LOWER_TURN = {"shoulder-princess": 0.5, "armhole-princess": 0.3}
"""Share of the seam's whole turn at the bust line that lies below it (ours, by eye)."""


@dataclass(frozen=True)
class Panels:
    """Centre and side panel, and how far from the lower edge the bust notch stands on each."""

    centre: FrontPiece
    side: FrontPiece
    notch: float


def princess_panels(shape: TorsoShape, where: str, centre: Edge) -> Panels:
    """Return the two panels of a front with a panel seam to the shoulder or the armhole.

    What a belly has of the bust dart lies in the seam below the bust: the side panel stands upright.
    """
    hem_in, hem_out = split_hem(shape)
    hem_out = shape.let_out(hem_out, -1)
    outer, inner = _upper_split(shape, where)
    feet = _feet(shape, hem_in.end, hem_out.start)
    seam = _seams(
        shape, where, (_Ends(hem_in.end, feet[0], inner[0].start), _Ends(hem_out.start, feet[1], outer[-1].end))
    )
    over = BEND_OVER * shape.plan.scale
    low = true_mouth(hem_in, seam.centre, seam.side, hem_out, over)
    room = outer[-1].length - COPIED * shape.plan.scale if where == "armhole-princess" else over
    top = true_mouth(outer[-1], seam.side, seam.centre, inner[0], max(10.0, min(over, room)))
    outer, inner = [*outer[:-1], top.before], [top.after, *inner[1:]]
    named = UPPER[where]
    name, role = hem_name(shape), hem_role(shape)
    centre_edges = (
        Edge(f"{name}_centre", low.before, EdgeKind.HEM, role=role),
        _princess(seam.centre),
        *(_edge(*n, p) for n, p in zip(named[1], inner, strict=True)),
        centre,
    )
    side_edges = (
        Edge(f"{name}_side", low.after, EdgeKind.HEM, role=role),
        Edge("side", shape.let_out(shape.front_side.reversed(), -1), role=EdgeRole.SIDE),
        *(_edge(*n, p) for n, p in zip(named[0], outer, strict=True)),
        _princess(seam.side),
    )
    levels = _levels(shape, seam.point, low.before, low.after)
    return Panels(
        FrontPiece("front", centre_edges, levels[0]),
        FrontPiece("front-side", side_edges, levels[1], role=PieceRole.SIDE_FRONT),
        seam.notch,
    )


Upper = tuple[tuple[str, EdgeRole], ...]

UPPER: dict[str, tuple[Upper, Upper]] = {
    "shoulder-princess": (
        (("armhole", EdgeRole.ARMHOLE), ("shoulder_outer", EdgeRole.SHOULDER)),
        (("shoulder_inner", EdgeRole.SHOULDER), ("neck", EdgeRole.NECK)),
    ),
    "armhole-princess": (
        (("armhole_lower", EdgeRole.ARMHOLE),),
        (("armhole_upper", EdgeRole.ARMHOLE), ("shoulder", EdgeRole.SHOULDER), ("neck", EdgeRole.NECK)),
    ),
}
"""The upper edges of side and centre panel: what each is called and what it is."""


def _princess(path: Path) -> Edge:
    return Edge("princess", path, role=EdgeRole.PRINCESS)


def _edge(name: str, role: EdgeRole, path: Path) -> Edge:
    kind = EdgeKind.OPENING if role is EdgeRole.NECK else EdgeKind.SEAM
    return Edge(name, path, kind, role=role)


def _upper_split(shape: TorsoShape, where: str) -> tuple[list[Path], list[Path]]:
    """What belongs to the side panel (turned until the side is closed) and to the centre panel."""
    armhole = shape.front_armhole.reversed()
    shoulder = line(shape.front_armhole.start, shape.front_neck)
    neck = shape.plan.neck.front.moved(1j * shape.plan.front_neck)
    if where == "shoulder-princess":
        outer, inner = shoulder.split(ON_SHOULDER * shoulder.length)
        return [shape.let_out(shape.turned(path, -1), -1) for path in (armhole, outer)], [inner, neck]
    lower, upper = split_armhole(shape, armhole)
    return [shape.let_out(shape.turned(lower, -1), -1)], [upper, shoulder, neck]


@dataclass(frozen=True)
class _Ends:
    """One panel's edge: lower end, foot of the curve (the waist), upper end."""

    low: complex
    foot: complex
    top: complex


@dataclass(frozen=True)
class _Seam:
    """The centre panel's edge (upwards), the side panel's (downwards), and where they cross the
    bust line."""

    centre: Path
    side: Path
    notch: float
    point: complex


def _seams(shape: TorsoShape, where: str, ends: tuple[_Ends, _Ends]) -> _Seam:
    plan = shape.plan

    def edges(beside: float) -> tuple[Path, Path, float]:
        return _pair(plan.bust_point + beside, ends, LOWER_TURN[where])

    def excess(beside: float) -> float:
        centre, side, _ = edges(beside)
        return centre.length - side.length

    beside = _nearest_root(excess, *(end * plan.scale for end in BESIDE))
    centre, side, notch = edges(beside)
    return _Seam(centre, side.reversed(), notch, plan.bust_point + beside)


def _nearest_root(excess: Callable[[float], float], low: float, high: float) -> float:
    """Return where `excess` is 0, else the limit at which it is least."""
    if abs(excess(0.0)) < 1e-9:
        return 0.0
    limit = min((low, high), key=lambda x: (excess(x) > 0) == (excess(0.0) > 0))
    if (excess(limit) > 0) == (excess(0.0) > 0):
        return min((low, 0.0, high), key=lambda x: abs(excess(x)))
    return float(brent_zero(excess, min(0.0, limit), max(0.0, limit), within=1e-9))


def _pair(point: complex, ends: tuple[_Ends, _Ends], share: float) -> tuple[Path, Path, float]:
    """Return both edges through `point`, upwards, and the length of the centre one below it.

    Each edge turns at the bust line as its two chords ask; at its ends both edges leave their
    chords by one and the same angle, so that the joined corners stay smooth.
    """
    below = [unit(point - e.foot) for e in ends]
    above = [unit(e.top - point) for e in ends]
    turns = [cmath.phase(up / low) for low, up in zip(below, above, strict=True)]
    headings = [low * cmath.exp(1j * share * t) for low, t in zip(below, turns, strict=True)]
    foot = cmath.exp(-0.25j * share * sum(turns))
    top = cmath.exp(0.25j * (1 - share) * sum(turns))
    paths = []
    for e, low, up, heading in zip(ends, below, above, headings, strict=True):
        leave, arrive = low * foot, up * top
        start = (smooth(e.low, e.foot, 1j, leave),) if e.low != e.foot else ()
        paths.append(
            (Path((*start, smooth(e.foot, point, leave, heading))), Path((smooth(point, e.top, heading, arrive),)))
        )
    centre, side = (Path.joined(pair) for pair in paths)
    return centre, side, paths[0][0].length


def _feet(shape: TorsoShape, low_in: complex, low_out: complex) -> tuple[complex, complex]:
    """Where the curve to the bust line starts: the waist, on either side of the waist dart."""
    if hem_name(shape) == "waist":
        return low_in, low_out
    centre, side = waist_points(shape, shape.bottom.front.inner)
    return centre, shape.let_out(line(side, side + 1), -1).start


def _levels(
    shape: TorsoShape, point: complex, hem_in: Path, hem_out: Path
) -> tuple[tuple[Level, ...], tuple[Level, ...]]:
    plan = shape.plan
    start, end = complex(0, plan.bust_line), complex(plan.front, plan.bust_line)
    centre = [Level("bust", (line(start, point),), LevelKind.BUST)]
    side = [Level("bust", (line(point, end),), LevelKind.BUST)]
    if hem_name(shape) == "waist":
        return (*centre, _waist(hem_in)), (*side, _waist(hem_out))
    paths = shape.bottom.front.waist
    if len(paths) == 1:
        centre_part, side_part = paths[0].split(along(paths[0], plan.bust_point.real))
        paths = centre_part, shape.let_out(side_part, -1)
    return (
        (*centre, _waist(paths[0]), Level("hip", (hem_in,), LevelKind.HIP)),
        (*side, _waist(paths[1]), Level("hip", (hem_out,), LevelKind.HIP)),
    )


def _waist(path: Path) -> Level:
    return Level("waist", (path,), LevelKind.WAIST)
