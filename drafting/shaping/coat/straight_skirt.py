"""A coat that goes on below the waist in one with its body: seams sprung over the seat, a level hem, a vent. Mm.

Both edges of a seam leave the waist upright and spring apart alike, so that they stay equally long. Pieces are
taken as they lie in the draft; back and side body are turned over while drawn, so that their front is at +x.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from drafting.draft.by_role import edges_as, the_edge
from drafting.draft.frame import BodyFrame
from drafting.draft.piece import Edge, EdgeKind, Level, Piece, Placement
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.geometry import Path, line, smooth, unit
from drafting.geometry.brent import brent_zero
from drafting.shaping.coat.tail_pieces import VENT_SLANT

CENTRE, BACK, FRONT = 0.06, 0.54, 0.40
"""Shares of what the seat wants beyond the waist: centre back, back seam, front seam (ours: most of it behind the
hip bone, next to nothing at the centre, so that stripes stay straight)."""

FACED_AT_HEM = 75.0
"""mm at adult scale, inside the centre front: what the facing takes of the hem (by eye: past the buttons)."""

LONGER_IN_FRONT = 12.0
"""mm at adult scale: the hem's front corner lies so much below its sides (common practice: 10 to 15)."""

HEM_TURN = 45.0
"""mm at adult scale: what is turned up of a straight coat hem (common practice: 40 to 50)."""


@dataclass(frozen=True)
class SkirtWish:
    """What is asked, mm: how far below the waist `hip` and hem (`drop`) lie, what the half seat wants `beyond` the
    half waist, the `flare` of each seam's edge from hip to hem, a vent `vent` high (0: none) and `lap` wide, at
    the centre back or, `sides`, at the two back seams."""

    hip: float
    drop: float
    beyond: float
    flare: float
    vent: float
    lap: float
    sides: bool
    scale: float
    allowance: float

    def spring(self, share: float, edges: int) -> float:
        """Return how far one edge of a seam springs out that takes a share of what is wanted."""
        return max(0.0, self.beyond) * share / edges


def sprung(foot: complex, side: int, out: float, wish: SkirtWish) -> Path:
    """Return a seam's edge from its foot at the waist to the hem, sprung `out` mm at the hip to its `side`."""
    below = max(wish.drop - wish.hip, 1.0)
    way = unit(complex(side * wish.flare, -below)) if wish.drop > wish.hip else -1j
    hip = foot + complex(side * out, -wish.hip)
    whole = Path((smooth(foot, hip, -1j, way),))
    if wish.drop > wish.hip:
        end = complex(hip.real + side * wish.flare, foot.imag - wish.drop)
        return Path((*whole.segments, *line(hip, end).segments))
    at = brent_zero(lambda s: whole.at(s).imag - foot.imag + wish.drop, 0.0, whole.length, within=1e-10)
    return whole.split(float(at))[0]


def at_hip(path: Path) -> complex:
    """Return where a seam's edge passes the hip, or its end above it."""
    return path.segments[0].end


def _hem(left: Path, right: Path) -> Path:
    """Return a hem, square to the seams it ends at."""
    return Path((smooth(left.end, right.end, 1j * left.arrive, 1j * right.arrive),))


def _turned_up(path: Path, wish: SkirtWish) -> Edge:
    return Edge("hem", path, EdgeKind.HEM, allowance=wish.allowance, role=EdgeRole.HEM)


def _levels(
    piece: Piece, left: complex, right: complex, wish: SkirtWish, stops: tuple[complex, ...] = ()
) -> tuple[Level, ...]:
    """Return the piece's levels with the hip, where it is long enough."""
    hip = (Level("hip", (line(left, right),), LevelKind.HIP, stops),) if wish.drop > wish.hip else ()
    return (*piece.levels, *hip)


@dataclass(frozen=True)
class Opened:
    """A seam that opens below: the `seam` that is left, the `vent`'s edges from the seam out and down, the `hem`
    from the fold out to its edge, and the `fold`."""

    seam: Path
    vent: tuple[Path, ...] = ()
    hem: tuple[Path, ...] = ()
    fold: Path | None = None


def _opened(seam: Path, side: int, wish: SkirtWish) -> Opened:
    """Return a seam, drawn downwards, that opens in a vent on its `side`: square to the fold at both its ends."""
    upper, below = seam.split(seam.length - wish.vent)
    out = wish.lap * side * 1j
    top = below.start + out * below.leave + VENT_SLANT * wish.lap * below.leave
    low = below.end + out * below.arrive
    return Opened(upper, (line(below.start, top), line(top, low)), (line(below.end, low),), below)


def _side_vent(seam: Opened) -> tuple[Edge, ...]:
    """Return a side vent's edges, from the seam out and down."""
    names = ("side_vent_top", "side_vent")
    return tuple(
        Edge(name, path, EdgeKind.OPENING, role=EdgeRole.VENT)
        for name, path in zip(names, seam.vent, strict=False)
    )


def _fold_marks(seam: Opened) -> tuple[Placement, ...]:
    return (Placement("vent_fold", seam.fold, "fold"),) if seam.fold else ()


def _turned(edges: tuple[Edge, ...]) -> tuple[Edge, ...]:
    """Return edges that run on the other way."""
    return tuple(replace(edge, path=edge.path.reversed()) for edge in reversed(edges))


def long_back(piece: Piece, wish: SkirtWish) -> Piece:
    """Return the back down to the hem, a vent at its centre on the left half as drawn: the lap is folded in, or
    lies under; of side vents the back lies on top, and its lap is folded in."""
    flat = piece.mirrored()
    waist, panel = the_edge(flat, EdgeRole.WAIST), the_edge(flat, EdgeRole.PANEL)
    centre = the_edge(flat, EdgeRole.CENTRE_SEAM)
    middle = sprung(waist.path.start, -1, wish.spring(CENTRE, 1), wish)
    side = sprung(waist.path.end, 1, wish.spring(BACK, 2), wish)
    hem, seam, opened, marks = _hem(middle, side), middle, tuple[Edge, ...](), tuple[Placement, ...]()
    beside = _opened(side, 1, wish) if wish.sides else Opened(side)
    hem = Path.joined([hem, *beside.hem])
    if wish.vent > 0 and not wish.sides:
        seam, below = middle.split(middle.length - wish.vent)
        top = below.start - wish.lap * (1 + 1j * VENT_SLANT)
        low = below.end - wish.lap
        opened = (
            Edge("vent_top", line(seam.end, top), EdgeKind.OPENING, role=EdgeRole.VENT),
            Edge("vent", line(top, low), EdgeKind.OPENING, role=EdgeRole.VENT),
        )
        hem = Path((*line(low, below.end).segments, *hem.segments))
        marks = (Placement("vent_fold", below, "fold"),)
    new = {
        waist.name: (*opened, _turned_up(hem, wish), *_turned(_side_vent(beside))),
        panel.name: (replace(panel, path=Path((*beside.seam.reversed().segments, *panel.path.segments))),),
        centre.name: (replace(centre, path=Path((*centre.path.segments, *seam.segments))),),
    }
    hip, seat = at_hip(middle), at_hip(side)
    stops = ((hip,) if opened else ()) + ((seat,) if beside.fold else ())
    levels = _levels(flat, hip, seat, wish, stops)
    placements = (*flat.placements, *marks, *_fold_marks(beside))
    return replace(flat, edges=_ring(flat, new), levels=levels, placements=placements).mirrored()


def long_side(piece: Piece, wish: SkirtWish) -> Piece:
    """Return the side body down to the hem; at a side vent it reaches under the back."""
    flat = piece.mirrored()
    waist = the_edge(flat, EdgeRole.WAIST)
    fore, back = edges_as(flat, EdgeRole.PANEL)
    behind = sprung(waist.path.start, -1, wish.spring(BACK, 2), wish)
    before = sprung(waist.path.end, 1, wish.spring(FRONT, 2), wish)
    beside = _opened(behind, -1, wish) if wish.sides else Opened(behind)
    hem = Path.joined([*(path.reversed() for path in beside.hem), _hem(behind, before)])
    new = {
        waist.name: (*_side_vent(beside), _turned_up(hem, wish)),
        fore.name: (replace(fore, path=Path((*before.reversed().segments, *fore.path.segments))),),
        back.name: (replace(back, path=Path((*back.path.segments, *beside.seam.segments))),),
    }
    seat = at_hip(behind)
    levels = _levels(flat, seat, at_hip(before), wish, (seat,) if beside.fold else ())
    placements = (*flat.placements, *_fold_marks(beside))
    return replace(flat, edges=_ring(flat, new), levels=levels, placements=placements).mirrored()


def long_front(piece: Piece, wish: SkirtWish) -> Piece:
    """Return the front down to the hem, its edge upright from the waist on, the hem beside it faced.

    The edge comes down from the break to where it stands upright, so that it is not hollow below the waist.
    """
    bottom, waist = the_edge(piece, EdgeRole.BOTTOM), the_edge(piece, EdgeRole.WAIST)
    panel, edge = the_edge(piece, EdgeRole.PANEL), the_edge(piece, EdgeRole.FRONT_EDGE)
    side = sprung(waist.path.end, 1, wish.spring(FRONT, 2), wish)
    corner = complex(edge.path.end.real, side.end.imag - LONGER_IN_FRONT * wish.scale)
    *kept, above = edge.path.segments
    upright = smooth(above.start, above.end, Path((above,)).leave, -1j)
    down = (*kept, upright, *line(edge.path.end, corner).segments)
    hem = Path((smooth(corner, side.end, 1 + 0j, 1j * side.arrive),))
    middle = piece.frame.front[1].real if piece.frame and piece.frame.front else 0.0
    faced = min(middle - corner.real + FACED_AT_HEM * wish.scale, 0.6 * hem.length)
    below, rest = hem.split(faced)
    new = {
        bottom.name: (replace(bottom, path=below),),
        waist.name: (_turned_up(rest, wish),),
        panel.name: (replace(panel, path=Path((*side.reversed().segments, *panel.path.segments))),),
        edge.name: (replace(edge, path=Path(down)),),
    }
    hip = at_hip(side)
    centre = complex(middle, hip.imag)
    levels = tuple(_stopped(level) for level in piece.levels)
    if wish.drop > wish.hip:
        levels = (*levels, Level("hip", (line(centre, hip),), LevelKind.HIP, (centre,)))
    frame = replace(piece.frame or BodyFrame(), front=_middle(piece, middle, corner.imag))
    return replace(piece, edges=_ring(piece, new), levels=levels, frame=frame)


def _stopped(level: Level) -> Level:
    """Return a front's waist level as one that ends inside, at the centre front."""
    if level.kind is not LevelKind.WAIST:
        return level
    return replace(level, stops=(level.paths[0].start,))


def _middle(piece: Piece, middle: float, low: float) -> tuple[complex, complex] | None:
    stated = piece.frame.front if piece.frame else None
    return (stated[0], complex(middle, low)) if stated else None


def _ring(piece: Piece, new: Mapping[str, tuple[Edge, ...]]) -> tuple[Edge, ...]:
    return tuple(own for edge in piece.edges for own in new.get(edge.name, (edge,)))
