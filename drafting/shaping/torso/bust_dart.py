"""The front with its bust shaping turned anywhere: side, shoulder, armhole, neck or waist.

The front is drafted with the bust dart open at the side. To open it elsewhere, what lies between the
two places turns about the bust point until the side is closed: every other length stays as it was.
Edges run from the lower centre round to the centre line; panel seams are in `princess`.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.draft.piece import Edge, EdgeKind, InnerDart, Level
from drafting.draft.roles import EdgeRole, LevelKind, PieceRole
from drafting.geometry import Path, line
from drafting.shaping.torso.dart_mouth import BEND_OVER, DartMouth, dart_edges, kept_mouth, short_legs, true_mouth
from drafting.shaping.torso.shape import TorsoShape

PLACES = ("side", "shoulder", "armhole", "neck", "waist")
"""Where one dart may shape the bust."""

SIDE_DART_BELOW = 45.0
"""mm at adult scale: least distance of the side dart below the underarm (ours)."""

ON_SHOULDER, ON_ARMHOLE, ON_NECK = 0.5, 0.45, 0.45
"""Where the mouth lies on its edge, as a share of the edge in outline order (ours)."""

BENT_ARMHOLE = 25.0
"""mm at adult scale: the stretch of armhole bent beside a dart: short, as bending a curve lengthens it."""

COPIED = 72.0
"""mm at adult scale from the underarm that truing leaves alone: the sleeve copies them."""


@dataclass(frozen=True)
class FrontPiece:
    """One front piece: its edges in ring order, levels, and darts inside the outline."""

    name: str
    edges: tuple[Edge, ...]
    levels: tuple[Level, ...]
    darts: tuple[InnerDart, ...] = ()
    role: PieceRole = PieceRole.FRONT


def hem_name(shape: TorsoShape) -> str:
    """Return what the lower edge is called: the waist, or the hem of a torso to the hip."""
    return "hem" if len(shape.bottom.back.side.segments) > 1 else "waist"


def hem_role(shape: TorsoShape) -> EdgeRole:
    """Return what the lower edge is."""
    return EdgeRole.HEM if len(shape.bottom.back.side.segments) > 1 else EdgeRole.WAIST


def front_panel(shape: TorsoShape, where: str, centre: Edge) -> FrontPiece:
    """Return the one-piece front with its bust dart at `where` (one of `PLACES`)."""
    upper = _upper(shape)
    draw = {
        "side": _at_side,
        "shoulder": _at_shoulder,
        "armhole": _at_armhole,
        "neck": _at_neck,
        "waist": _at_waist,
    }
    if shape.plan.kappa == 0:
        edges = [*hem_edges(shape), _side(shape.front_side.reversed()), *upper]
    else:
        edges = draw[where](shape, upper)
    edges = [*edges, centre]
    turned = where in ("side", "waist") and shape.plan.kappa > 0
    inner = shape.bottom.front.inner
    split_waist = where == "waist" and shape.plan.kappa > 0
    return FrontPiece(
        "front",
        tuple(edges),
        (bust_line(shape, turned), *waist_levels(shape, edges, split_waist), *across_level(shape, where)),
        (inner,) if inner and not split_waist else (),
    )


def _side(path: Path) -> Edge:
    return Edge("side", path, role=EdgeRole.SIDE)


def _armhole(path: Path) -> Edge:
    return Edge("armhole", path, role=EdgeRole.ARMHOLE)


def _shoulder(path: Path) -> Edge:
    return Edge("shoulder", path, role=EdgeRole.SHOULDER)


def _upper(shape: TorsoShape) -> list[Edge]:
    """Armhole, shoulder and neck as the dart open at the side puts them."""
    neck = shape.plan.neck.front.moved(1j * shape.plan.front_neck)
    return [
        _armhole(shape.front_armhole.reversed()),
        _shoulder(line(shape.front_armhole.start, shape.front_neck)),
        Edge("neck", neck, EdgeKind.OPENING, role=EdgeRole.NECK),
    ]


def hem_edges(shape: TorsoShape) -> list[Edge]:
    """Return the front's lower edge, with its open waist dart where there is one."""
    return waist_edges(shape, shape.bottom.front.hem, shape.bottom.front.tip)


def waist_edges(shape: TorsoShape, hem: tuple[Path, ...], tip: complex) -> list[Edge]:
    """Return a half's lower edge: one path, or two with the legs of a waist dart between."""
    name, role = hem_name(shape), hem_role(shape)
    if len(hem) == 1:
        return [Edge(name, hem[0], EdgeKind.HEM, role=role)]
    legs = line(hem[0].end, tip), line(tip, hem[1].start)
    return [
        Edge(f"{name}_centre", hem[0], EdgeKind.HEM, role=role),
        *dart_edges("waist_dart", EdgeRole.WAIST_DART, *legs),
        Edge(f"{name}_side", hem[1], EdgeKind.HEM, role=role),
    ]


# ------------------------------------------------------------------------------ dart positions


def _mouth(shape: TorsoShape, before: Path, after: Path, over: float = BEND_OVER) -> DartMouth:
    plan = shape.plan
    legs = short_legs(before.end, after.start, plan.bust_point, plan.dart_short)
    return true_mouth(before, *legs, after, over * plan.scale)


def _opened(edge: Edge, mouth: DartMouth, parts: tuple[str, str]) -> list[Edge]:
    """Return an edge in two parts with the bust dart between."""
    return [
        replace(edge, name=f"{edge.name}_{parts[0]}", path=mouth.before),
        *dart_edges("bust_dart", EdgeRole.BUST_DART, mouth.leg_in, mouth.leg_out),
        replace(edge, name=f"{edge.name}_{parts[1]}", path=mouth.after),
    ]


def _at_side(shape: TorsoShape, upper: list[Edge]) -> list[Edge]:
    plan, side = shape.plan, shape.front_side.reversed()
    below = plan.underarm - plan.bust_point.imag + 10 * plan.scale
    below = min(max(SIDE_DART_BELOW * plan.scale, below), 0.5 * side.length)
    at = side.length - below
    curved = hem_name(shape) == "hem"  # a curved seam is bent from the waist up: no wave
    over = side.split(at)[0].lengths[-1] if curved else min(BEND_OVER * plan.scale, 0.8 * below)
    mouth = kept_mouth(side, at, lambda above: shape.turned(above, 1), plan.bust_point, plan.dart_short, over)
    return [*hem_edges(shape), *_opened(_side(side), mouth, ("lower", "upper")), *upper]


def _closed_side(shape: TorsoShape) -> list[Edge]:
    return [*hem_edges(shape), _side(shape.front_side.reversed())]


def _at_shoulder(shape: TorsoShape, upper: list[Edge]) -> list[Edge]:
    armhole, shoulder, neck = upper
    outer, inner = shoulder.path.split(ON_SHOULDER * shoulder.length)
    mouth = _mouth(shape, shape.turned(outer, -1), inner)
    return [
        *_closed_side(shape),
        _armhole(shape.turned(armhole.path, -1)),
        *_opened(shoulder, mouth, ("outer", "inner")),
        neck,
    ]


def _at_armhole(shape: TorsoShape, upper: list[Edge]) -> list[Edge]:
    armhole, shoulder, neck = upper
    lower, above = split_armhole(shape, armhole.path)
    over = max(10.0, lower.length / shape.plan.scale - COPIED)
    mouth = _mouth(shape, shape.turned(lower, -1), above, min(BENT_ARMHOLE, over))
    opened = _opened(armhole, mouth, ("lower", "upper"))
    return [*_closed_side(shape), *opened, shoulder, neck]


def split_armhole(shape: TorsoShape, armhole: Path) -> tuple[Path, Path]:
    """Return the armhole (from the underarm) below and above a dart or panel seam that ends there."""
    at = max(ON_ARMHOLE * armhole.length, (COPIED + 12) * shape.plan.scale)
    return armhole.split(min(at, 0.6 * armhole.length))


def _at_neck(shape: TorsoShape, upper: list[Edge]) -> list[Edge]:
    armhole, shoulder, neck = upper
    outer, inner = neck.path.split(ON_NECK * neck.length)
    mouth = _mouth(shape, shape.turned(outer, -1), inner, 0.35 * neck.length / shape.plan.scale)
    return [
        *_closed_side(shape),
        _armhole(shape.turned(armhole.path, -1)),
        _shoulder(shape.turned(shoulder.path, -1)),
        *_opened(neck, mouth, ("outer", "inner")),
    ]


def _at_waist(shape: TorsoShape, upper: list[Edge]) -> list[Edge]:
    """The bust dart joins the waist dart; in a torso to the hip it runs on down to the hem."""
    name, side = hem_name(shape), shape.turned(shape.front_side.reversed(), 1)
    centre, outer = split_hem(shape)
    outer = shape.turned(outer, 1)
    inner = shape.bottom.front.inner
    ends = centre, outer
    mouth = _mouth(shape, *ends) if name == "waist" else _long_dart(shape, *ends, inner)
    hem = Edge(name, centre, EdgeKind.HEM, role=hem_role(shape))
    return [*_opened(hem, mouth, ("centre", "side")), _side(side), *upper]


def split_hem(shape: TorsoShape) -> tuple[Path, Path]:
    """Return the front's lower edge before and after the waist dart, or the line below the bust."""
    hem = shape.bottom.front.hem
    if len(hem) == 2:
        return hem
    x = shape.plan.bust_point.real
    return hem[0].split(along(hem[0], x))


def along(path: Path, x: float) -> float:
    """Return how far along a nearly level path its x is reached."""
    low, high = 0.0, path.length
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if path.at(middle).real < x else (low, middle)
    return (low + high) / 2


def _long_dart(shape: TorsoShape, before: Path, after: Path, inner: InnerDart | None) -> DartMouth:
    """A dart from hem to bust point whose legs keep the waist dart's shape on the way."""
    plan = shape.plan
    left, right = waist_points(shape, inner)
    right = shape.turned(line(right, right + 1), 1).start
    tip_in, tip_out = short_legs(left, right, plan.bust_point, plan.dart_short)
    legs = line(before.end, left, tip_in.end), line(tip_out.start, right, after.start)
    return true_mouth(before, *legs, after, BEND_OVER * plan.scale)


def waist_points(shape: TorsoShape, inner: InnerDart | None) -> tuple[complex, complex]:
    """Return where the waist meets the line to the bust point: both sides of its dart, if any."""
    if inner is None:
        point = complex(shape.plan.bust_point.real, shape.plan.waist)
        return point, point
    return inner.leg_a.segments[0].end, inner.leg_b.segments[0].end


# ------------------------------------------------------------------------------------- levels


def bust_line(shape: TorsoShape, turned: bool) -> Level:
    """The bust line, broken at the bust point where what lies beyond is turned up."""
    plan = shape.plan
    start, point = complex(0, plan.bust_line), plan.bust_point
    end = complex(plan.front, plan.bust_line)
    if not turned and not shape.bottom.front.let:
        return Level("bust", (line(start, end),), LevelKind.BUST)
    beyond = shape.let_out(line(point, end), 1)
    return Level("bust", (line(start, point), shape.turned(beyond, 1) if turned else beyond), LevelKind.BUST)


def waist_levels(shape: TorsoShape, edges: list[Edge], split: bool) -> tuple[Level, ...]:
    """The waist: the waist edge itself, or in a torso to the hip a line across."""
    if hem_name(shape) == "waist":
        return (Level("waist", tuple(e.path for e in edges if e.kind is EdgeKind.HEM), LevelKind.WAIST),)
    hem = Level("hip", tuple(e.path for e in edges if e.kind is EdgeKind.HEM), LevelKind.HIP)
    paths = shape.bottom.front.waist
    if split:
        if len(paths) == 1:
            paths = paths[0].split(along(paths[0], shape.plan.bust_point.real))
        paths = (paths[0], shape.turned(paths[1], 1))
    return Level("waist", paths, LevelKind.WAIST), hem


def across_level(shape: TorsoShape, where: str) -> tuple[Level, ...]:
    """The across front line, where the upper front is in one piece and not turned."""
    if not across_is_drawn(shape, where):
        return ()
    point = shape.front_armhole.segments[-1].start
    return (Level("across_front", (line(1j * point.imag, point),)),)


def across_is_drawn(shape: TorsoShape, where: str) -> bool:
    return where in ("side", "waist") or (shape.plan.kappa == 0 and where in PLACES)
