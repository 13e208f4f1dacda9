"""The waistcoat's front: V neck, button stand or lap, corner, pointed hem and buttons. Front frame, mm.

    shoulder .---.
            /     \\ neck
   armhole (       \\
            \\       \\ break
             |       |
        side |     o | edge
             |     o |
             |  :    /
             '-..__/ cut
             hem  bottom
"""

from __future__ import annotations

import cmath
from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.draft.by_role import edges_as
from drafting.draft.frame import BodyFrame
from drafting.draft.piece import Edge, EdgeKind, Level, Piece, Placement
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.geometry import Path, line, smooth, unit
from drafting.geometry.brent import brent_zero
from drafting.shaping.details.button_rows import on_both_fronts, on_the_middle
from drafting.shaping.details.buttons import Button
from drafting.shaping.waistcoat.hemline import OUT_AT_SIDE, levels_above, shorter_dart, side_cut

FACED_AT_HEM, MOST_FACED = 55.0, 0.4
"""mm at adult scale, and most of its length: what of the hem is faced, from its point (ours)."""

HOLLOW = 1.5
"""The hem leaves its point so much more steeply than its chord, and arrives level at the side (ours, by eye)."""

HOLE_IN = 18.0
"""mm at adult scale: how far inside the edge on top a buttonhole of a lap holds its button (from memory)."""

NARROWER_LOW = 0.8
"""Of the lap at the break: the lap at the hem, so that the rows of buttons lean towards each other (ours)."""

FACED = ("neck", "edge", "cut", "bottom")
"""The edges of the front that a facing is sewn to, in outline order from the shoulder on."""


@dataclass(frozen=True)
class FrontWish:
    """What is asked of a front, mm: `lap` beyond the centre at the break, `low_lap` at the corner; which way the V
    `leaves` the side neck point; the heights y of its end (`opens`), of the `first` and `last` button, of the
    `corner` where the edge turns and of the `point`, whose x is `point_x`; `rows` of buttons, 1 or 2."""

    lap: float
    low_lap: float
    leaves: complex
    opens: float
    first: float
    last: float
    corner: float
    point: complex
    rows: int
    scale: float


@dataclass(frozen=True)
class FrontLine:
    """The front's own lines, in outline order from the side neck point: V, edge, corner, faced and free hem."""

    neck: Path
    edge: Path
    cut: Path
    bottom: Path
    hem: Path


def front_line(neck: Path, side: Path, wish: FrontWish) -> FrontLine:
    """Return the lines of a front: its old `neck` starts at the side neck point, its `side` runs upwards."""
    broken, corner = complex(-wish.lap, wish.opens), complex(-wish.low_lap, wish.corner)
    chord = broken - neck.start
    bend = cmath.phase(chord / wish.leaves)
    v = Path((smooth(neck.start, broken, wish.leaves, unit(chord) * cmath.exp(1j * bend)),))
    rise = side.start - wish.point
    leave = unit(rise) * cmath.exp(1j * (HOLLOW - 1) * cmath.phase(rise))
    below = Path((smooth(wish.point, side.start, leave, unit(side.leave) * OUT_AT_SIDE),))
    faced = min(FACED_AT_HEM * wish.scale, MOST_FACED * below.length)
    bottom, hem = below.split(faced)
    edge, turned = line(broken, corner), line(corner, wish.point)
    return FrontLine(neck=v, edge=edge, cut=turned, bottom=bottom, hem=hem)


def shaped_front(front: Piece, cut: float, wish: FrontWish, marks: tuple[Placement, ...]) -> Piece:
    """Return the waistcoat's front: a torso's front to the hip, `cut` mm of its side left off."""
    upper = side_cut(front, cut)
    necks = edges_as(front, EdgeRole.NECK)
    drawn = front_line(necks[0].path, upper[0].path, wish)
    below = Path.joined([drawn.bottom, drawn.hem])
    edges = (
        Edge("bottom", drawn.bottom, role=EdgeRole.BOTTOM),
        Edge("hem", drawn.hem, EdgeKind.HEM, role=EdgeRole.HEM),
        *(open_armhole(edge) for edge in upper if edge.role is not EdgeRole.NECK),
        Edge("neck", drawn.neck, role=EdgeRole.NECK),
        Edge("edge", drawn.edge, role=EdgeRole.FRONT_EDGE),
        Edge("cut", drawn.cut, role=EdgeRole.BOTTOM),
    )
    centre = Placement("centre_front", centre_line(drawn), "centre")
    return replace(
        front,
        edges=edges,
        levels=tuple(_levels(front, centre.path)),
        darts=tuple(shorter_dart(dart, below, wish.scale) for dart in front.darts),
        placements=(centre, *marks),
        frame=BodyFrame(front=(centre.path.start, centre.path.end), outer=True),
    )


def open_armhole(edge: Edge) -> Edge:
    """Return an armhole's edge as one that no sleeve is sewn to; any other edge as it is."""
    return replace(edge, kind=EdgeKind.OPENING) if edge.role is EdgeRole.ARMHOLE else edge


def centre_line(drawn: FrontLine) -> Path:
    """Return the centre front from the V down to the lower edge."""
    v = drawn.neck
    at = float(brent_zero(lambda s: v.at(s).real, 0.0, v.length, within=1e-9))
    low = drawn.cut
    foot = low.end
    if low.start.real < 0 < low.end.real:
        foot = low.at(float(brent_zero(lambda s: low.at(s).real, 0.0, low.length, within=1e-9)))
    return line(v.at(at), complex(0, foot.imag))


def _levels(front: Piece, centre: Path) -> Iterator[Level]:
    """Yield the levels that the V leaves whole."""
    for level in levels_above(front):
        if level.kind is not LevelKind.BUST or level.paths[0].start.imag < centre.start.imag:
            yield replace(level, stops=(level.paths[0].start,))


def draws_bust(front: Piece) -> bool:
    """Return whether the bust line runs to the centre front, below the end of the V."""
    return any(level.kind is LevelKind.BUST for level in front.levels)


def button_marks(wish: FrontWish, count: int, button: Button, over: str, under: str) -> tuple[Placement, ...]:
    """Return the marks of `count` buttons in each row, from the top down, and of their holes."""
    if wish.rows == 1:
        return tuple(on_the_middle((complex(0, y) for y in _heights(wish, count)), button, over, under))
    return tuple(on_both_fronts(_double(wish, count), button, over))


def _heights(wish: FrontWish, count: int) -> list[float]:
    if count < 2:
        return [wish.first] * count
    return [wish.first + (wish.last - wish.first) * i / (count - 1) for i in range(count)]


def _double(wish: FrontWish, count: int) -> Iterator[tuple[complex, complex]]:
    """Yield a row as far from the centre as the holes in the edge on top, and those holes."""
    for y in _heights(wish, count):
        share = (y - wish.opens) / (wish.corner - wish.opens)
        out = wish.lap + share * (wish.low_lap - wish.lap) - HOLE_IN * wish.scale
        yield complex(out, y), complex(-out, y)
