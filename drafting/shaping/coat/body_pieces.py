"""The coat body's pieces: back, side body, front with its lapel, and the front facing.

  back            side-body                 front                   front-facing
 neck shoulder                       shoulder  neck  gorge
  .--.                 armhole_      .------.__ .--.lapel_top      (the front's edges,
c |   `-.   armhole_  .-' front     |armhole   `   \\ |             turned over, and an
e |      )    back .-'             (                \\ lapel        inner edge)
n |     /         /   \\             \\      :         |
t |    | panel   |     |             | panel: buttons| edge
r |    |         |     | panel_front |       :       |
e '----'   panel_'-----'             '--.----.______/
  waist    back    waist               waist   bottom
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from drafting.draft.by_role import edges_as
from drafting.draft.draft import EdgeRef, Seam, SeamNotch
from drafting.draft.frame import BodyFrame
from drafting.draft.piece import Edge, EdgeKind, Level, Piece, Placement
from drafting.draft.roles import EdgeRole, LevelKind, PieceRole, SeamKind
from drafting.geometry import Path, curve_through, line, smooth, turn
from drafting.geometry.brent import brent_zero
from drafting.shaping.coat.lapel import FrontEdge, Lapel
from drafting.shaping.coat.shape import CoatShape, path_x_at

FACING_ON_SHOULDER = 0.34
"""Share of the front shoulder that the facing reaches along (from memory)."""

TAIL_FRONT_MOST = 0.7
"""The tail starts at most at this share of the way from the centre to the front seam (ours)."""

INNER_AT_BUST = 0.72
"""The facing's inner edge passes the bust line at most so far from the centre to the seam (ours)."""

INNER_AT_WAIST, LONG_BELOW = 0.72, 0.3
"""The same at the waist of a front that goes on below it, and from which share of bust to waist it does (ours)."""

CENTRE_BACK, WAIST = "centre_back", EdgeKind.HEM
"""The waist is a hem until tails are sewn to it."""


def back_piece(shape: CoatShape) -> Piece:
    """Return the back to the waist, its centre seam on the right."""
    plan = shape.plan
    tip, foot = shape.back_armhole.start, shape.back_panel.end
    upper = Path(shape.back_armhole.segments[:-1])
    waist = line(shape.centre.end, foot)
    edges = (
        Edge("waist", waist, WAIST, role=EdgeRole.WAIST),
        Edge("panel", shape.back_panel.reversed(), role=EdgeRole.PANEL),
        Edge("armhole", upper.reversed(), role=EdgeRole.ARMHOLE),
        Edge("shoulder", shape.upper_back.shoulder.before, role=EdgeRole.SHOULDER),
        Edge("neck", shape.upper_back.neck.before, role=EdgeRole.NECK),
        Edge(CENTRE_BACK, shape.centre, role=EdgeRole.CENTRE_SEAM),
    )
    y, across = plan.bust_line, upper.end
    bust = line(complex(path_x_at(shape.centre, y), y), complex(path_x_at(shape.back_panel, y), y))
    levels = (
        Level("bust", (bust,), LevelKind.BUST),
        Level("across_back", (line(1j * across.imag, across),)),
        Level("waist", (waist,), LevelKind.WAIST),
    )
    points = {"nape": shape.upper_back.nape, "side_neck": shape.upper_back.side_neck, "shoulder_point": tip}
    piece = Piece("back", edges, pair=True, levels=levels, title="Back", points=points, role=PieceRole.BACK)
    return piece.mirrored()


def side_piece(shape: CoatShape) -> Piece:
    """Return the side body: what lies under the arm between the two panel seams."""
    plan = shape.plan
    front = shape.front_partner.mapped(shape.across)
    lower = Path(shape.back_armhole.segments[-1:])
    waist = side_waist(shape)
    edges = (
        Edge("waist", waist, WAIST, role=EdgeRole.WAIST),
        Edge("panel_front", front.reversed(), role=EdgeRole.PANEL),
        Edge("armhole_front", shape.front_lower.mapped(shape.across), role=EdgeRole.ARMHOLE),
        Edge("armhole_back", lower.reversed(), role=EdgeRole.ARMHOLE),
        Edge("panel_back", shape.back_partner, role=EdgeRole.PANEL),
    )
    y = plan.bust_line
    bust = line(complex(path_x_at(shape.back_partner, y), y), shape.across(shape.pivot))
    levels = Level("bust", (bust,), LevelKind.BUST), Level("waist", (waist,), LevelKind.WAIST)
    piece = Piece(
        "side-body",
        edges,
        pair=True,
        levels=levels,
        title="Side body",
        points={"underarm": complex(plan.back, plan.underarm)},
        role=PieceRole.SIDE_BODY,
    )
    return piece.mirrored()


def side_waist(shape: CoatShape) -> Path:
    """Return the side body's waist, level at both ends."""
    end = shape.across(shape.front_partner.end)
    return Path((smooth(shape.back_partner.end, end, 1 + 0j, 1 + 0j),))


def half_waist(shape: CoatShape, front: FrontEdge) -> float:
    """Return the half waist as drawn, to the centre front, mm."""
    back = abs(shape.back_panel.end - shape.centre.end)
    return back + side_waist(shape).length + split_at_x(front.bottom, -shape.taken.belly)[1].length


def tail_front_most(shape: CoatShape) -> float:
    """Return how far from the centre front the tails may start, mm."""
    return TAIL_FRONT_MOST * shape.front_panel.end.real


def front_piece(shape: CoatShape, front: FrontEdge, tails_at: float, buttons: tuple[Placement, ...] = ()) -> Piece:
    """Return the forepart with its lapel; its lower edge is parted where the tails start."""
    bottom, waist = split_at_x(front.bottom, tails_at)
    tip = shape.front_upper.start
    edges = (
        Edge("bottom", bottom, EdgeKind.SEAM, role=EdgeRole.BOTTOM),
        Edge("waist", waist, WAIST, role=EdgeRole.WAIST),
        Edge("panel", shape.front_panel.reversed(), role=EdgeRole.PANEL),
        Edge("armhole", shape.front_upper.reversed(), role=EdgeRole.ARMHOLE),
        Edge("shoulder", line(tip, shape.front_neck), role=EdgeRole.SHOULDER),
        Edge("neck", front.neck, role=EdgeRole.NECK),
        *_upper_edges(front),
        Edge("edge", front.edge, role=EdgeRole.FRONT_EDGE),
    )
    return Piece(
        "front",
        edges,
        pair=True,
        levels=_front_levels(shape, front, waist, bottom),
        title="Front",
        points={"side_neck": shape.front_neck, "bust_point": shape.pivot, **_lapel_points(front)},
        placements=(*_roll_line(front), *buttons),
        role=PieceRole.FRONT,
        frame=BodyFrame(front=(complex(0, tip.imag), complex(-front.belly, bottom.start.imag)), outer=True),
    )


def _upper_edges(front: FrontEdge) -> Iterator[Edge]:
    """Yield what lies between neck and front edge: gorge and lapel, or the neck of the button stand."""
    upper = front.upper
    if not isinstance(upper, Lapel):
        yield Edge("stand_neck", upper.line, role=EdgeRole.STAND_NECK)
        return
    yield Edge("gorge", upper.gorge, role=EdgeRole.GORGE)
    if upper.top:
        yield Edge("lapel_top", upper.top, role=EdgeRole.LAPEL)
    yield Edge("lapel", upper.edge, role=EdgeRole.LAPEL)


def _lapel_points(front: FrontEdge) -> dict[str, complex]:
    upper = front.upper
    if not isinstance(upper, Lapel):
        return {}
    return {"collar_tip": upper.collar_tip, "roll_top": upper.roll.start, "break": upper.roll.end}


def _roll_line(front: FrontEdge) -> Iterator[Placement]:
    if isinstance(front.upper, Lapel):
        yield Placement("roll_line", front.upper.roll, "roll line")


def _front_levels(shape: CoatShape, front: FrontEdge, waist: Path, bottom: Path) -> tuple[Level, ...]:
    """Bust, waist and across front, each to the centre front and not beyond it."""
    y = shape.plan.bust_line
    across, centre = shape.front_upper.segments[-1].start, complex(0, y)
    return (
        Level("bust", (line(centre, shape.pivot),), LevelKind.BUST, (centre,)),
        Level("waist", (split_at_x(bottom, -shape.taken.belly)[1], waist), LevelKind.WAIST),
        Level("across_front", (line(1j * across.imag, across),), stops=(1j * across.imag,)),
    )


def split_at_x(path: Path, x: float) -> tuple[Path, Path]:
    """Return a single curve that runs steadily to the right before and after the place x."""
    (curve,) = path.segments
    t = brent_zero(lambda t: curve.point(t).real - x, 0.0, 1.0, within=1e-14)
    first, second = curve.split(float(t))
    return Path((first,)), Path((second,))


FACED = (EdgeRole.LAPEL, EdgeRole.STAND_NECK, EdgeRole.FRONT_EDGE)
"""What of a front a facing is sewn to, besides its lower edge."""


def facing_piece(front: Piece) -> Piece:
    """Return the facing: the front's edges from the shoulder round the lapel to the tails, turned
    over, as its right side lies inside."""
    shoulder, bottom = front["shoulder"].path, front["bottom"].path
    start = shoulder.at((1 - FACING_ON_SHOULDER) * shoulder.length)
    inner = _inner(front, bottom.end, start)
    free = (EdgeRole.NECK, EdgeRole.GORGE)
    copied = edges_as(front, *free, *FACED)
    edges = (
        front["bottom"],
        Edge("inner", inner, EdgeKind.FREE, role=EdgeRole.INNER),
        Edge("shoulder", line(start, shoulder.end), EdgeKind.FREE, allowance=10.0, role=EdgeRole.SHOULDER),
        *(replace(e, kind=EdgeKind.FREE, allowance=10.0) if e.role in free else e for e in copied),
    )
    roll = tuple(mark for mark in front.placements if mark.what == "roll line")
    piece = Piece(
        "front-facing",
        edges,
        pair=True,
        title="Front facing",
        placements=roll,
        role=PieceRole.FACING,
        lines=(front.name,),
    )
    return piece.mirrored()


def _inner(front: Piece, low: complex, top: complex) -> Path:
    """Return the facing's inner edge, upwards; that of a front that goes on below its waist is led past it."""
    bust = front.points["bust_point"]
    waist = next(level.paths[-1].end for level in front.levels if level.kind is LevelKind.WAIST)
    if waist.imag - low.imag < LONG_BELOW * (bust.imag - waist.imag):
        return facing_inner(low, top, bust)
    beside = complex(min(low.real, INNER_AT_WAIST * waist.real), waist.imag)
    return Path((smooth(low, beside, 1j, 1j), *facing_inner(beside, top, bust).segments))


def facing_inner(low: complex, top: complex, bust_point: complex) -> Path:
    """Return the facing's inner edge, upwards; at the bust line it keeps clear of the front seam."""
    share = (bust_point.imag - low.imag) / (top.imag - low.imag)
    x = min((low + share * (top - low)).real, INNER_AT_BUST * bust_point.real)
    return curve_through(low, complex(x, bust_point.imag), top, 1j, turn(80))


def body_seams(shape: CoatShape, shoulder_ease: float, faced_front: Piece) -> tuple[Seam, ...]:
    """Return the body's seams; notches at the bust line, halfway down the back seam."""
    half = shape.back_panel.length / 2
    front = shape.front_panel.length - shape.bust_notch
    faced = tuple(e.name for e in (*edges_as(faced_front, *FACED), *edges_as(faced_front, EdgeRole.BOTTOM)))
    return (
        Seam(
            "back panel",
            (("back", "panel"),),
            (("side-body", "panel_back"),),
            notches=(SeamNotch("blade", half, half, 2),),
            kind=SeamKind.PANEL,
        ),
        Seam(
            "front panel",
            (("front", "panel"),),
            (("side-body", "panel_front"),),
            notches=(SeamNotch("bust", front, front),),
            kind=SeamKind.PANEL,
        ),
        Seam("shoulder", (("back", "shoulder"),), (("front", "shoulder"),), shoulder_ease, kind=SeamKind.SHOULDER),
        Seam(
            "centre back",
            (("back", CENTRE_BACK),),
            (("back", CENTRE_BACK),),
            start=None,
            end=None,
            kind=SeamKind.CENTRE,
        ),
        Seam(
            "front edge",
            tuple(("front", n) for n in faced),
            tuple(("front-facing", n) for n in faced),
            start=None,
            end=None,
            kind=SeamKind.FACING,
        ),
    )


def chains(front: Piece) -> dict[str, tuple[EdgeRef, ...]]:
    """Return what later blocks fit onto, each in outline order."""
    necks = edges_as(front, EdgeRole.NECK, EdgeRole.GORGE)
    return {
        "front_armhole": (("side-body", "armhole_front"), (front.name, "armhole")),
        "back_armhole": (("back", "armhole"), ("side-body", "armhole_back")),
        "front_neck": tuple((front.name, edge.name) for edge in necks),
        "back_neck": (("back", "neck"),),
        "front_shoulder": ((front.name, "shoulder"),),
        "coat_waist": ((front.name, "waist"), ("side-body", "waist")),
    }
