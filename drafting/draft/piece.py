"""Edges, notches, levels and pieces: the outline of a piece is a ring of named edges.

A piece lies as the left hand of the wearer seen from outside, y up, as it hangs on the body. Its
edges run anticlockwise with the cloth on the left; each starts where the last ends.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from functools import cached_property

from drafting.draft.frame import BodyFrame
from drafting.draft.roles import DartLeg, EdgeRole, Half, LevelKind, NotchKind, PieceRole
from drafting.geometry import Path
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.frozen import freeze
from drafting.ground.lengths import told


class EdgeKind(StrEnum):
    """What an edge is: sewn to a partner, on the fold, a hem, a dart leg, an opening, or free."""

    SEAM = "seam"
    FOLD = "fold"
    HEM = "hem"
    DART = "dart"
    OPENING = "opening"
    FREE = "free"


@dataclass(frozen=True, slots=True)
class Notch:
    """A mark across the allowance, `at` mm from the edge's start; `count` 1 front, 2 back."""

    name: str
    at: float
    count: int = 1
    kind: NotchKind = NotchKind.PLAIN


@dataclass(frozen=True)
class Edge:
    """One named side of a piece.

    `sewn` is the length (mm) it becomes when gathers or elastic are pulled up (None: as drawn);
    `allowance` the seam or hem allowance asked for here (None: the finish's own for this kind).
    `drops` is what a hem has beyond its allowance, cut away when it is levelled (mm).
    `role` says what it is, `half` on which half of the body, `dart` of which dart it is a leg;
    `twin` names the edge of a folded piece whose inside it is; `hand` says on whose half of a piece
    over the middle it lies, and `base` its name there, where each hand has been drafted for itself.
    """

    name: str
    path: Path
    kind: EdgeKind = EdgeKind.SEAM
    sewn: float | None = None
    allowance: float | None = None
    drops: float = 0.0
    notches: tuple[Notch, ...] = ()
    role: EdgeRole = EdgeRole.PLAIN
    half: Half = Half.NONE
    dart: DartLeg | None = None
    twin: str = ""
    hand: str = ""
    base: str = ""

    @property
    def length(self) -> float:
        return self.path.length

    @property
    def sewn_length(self) -> float:
        return self.length if self.sewn is None else self.sewn

    def mirrored(self) -> Edge:
        """Return the edge of the other hand: reflected, and reversed to stay anticlockwise.

        The legs of a dart are named in outline order, so they change names.
        """
        notches = tuple(sorted((replace(n, at=self.length - n.at) for n in self.notches), key=lambda n: n.at))
        name, dart = self.dart.mirrored(self.name) if self.dart else (self.name, None)
        path = self.path.mirrored().reversed()
        return replace(self, name=name, path=path, notches=notches, dart=dart)


@dataclass(frozen=True)
class InnerDart:
    """A dart inside the outline, closed to a point at both ends: its two legs, each tip to tip."""

    name: str
    leg_a: Path
    leg_b: Path


@dataclass(frozen=True)
class Level:
    """A body level drawn across a piece: one or more paths whose lengths add up to the width.

    They run from edge to edge; at `stops` they end inside, at a centre line with an overlap beyond it.
    Girths call it by its `name`; `kind` says which level of the body it is.
    """

    name: str
    paths: tuple[Path, ...]
    kind: LevelKind = LevelKind.PLAIN
    stops: tuple[complex, ...] = ()

    @property
    def length(self) -> float:
        return math.fsum(path.length for path in self.paths)

    def mapped(self, move: Callable[[complex], complex]) -> Level:
        """Return the level with every point moved by an orientation-keeping move."""
        paths = tuple(path.mapped(move) for path in self.paths)
        return replace(self, paths=paths, stops=tuple(map(move, self.stops)))

    def mirrored(self) -> Level:
        """Return the level of the other hand."""
        stops = tuple(-stop.conjugate() for stop in self.stops)
        return replace(self, paths=tuple(path.mirrored() for path in self.paths), stops=stops)


NAMED_MARK = "named mark"
"""A mark whose name is written beside it."""


@dataclass(frozen=True)
class Placement:
    """A mark inside a piece: where a button, a buttonhole, a roll line or a bone lies.

    `what` is the kind of mark in a trade word (`button`, `buttonhole`, `fold`, `roll line`, `bone`,
    `named mark`).
    `hand` is the side of the wearer it is meant for, where a pair carries the marks of both; `piece`
    names the piece that is sewn on there.
    """

    name: str
    path: Path
    what: str
    hand: str = ""
    piece: str = ""


@dataclass(frozen=True)
class Piece:
    """One pattern piece on its stitching line.

    `grain` is the direction of the warp (90 = upright) and `stretch` that of the greatest stretch,
    degrees; `pair` says that a left and a right are cut; `hand` names a piece that exists for one
    side only ("" otherwise). A half piece has one edge of kind fold. `material` names the role of
    a second layer's cloth (`interfacing`, `lining`), `cloth` that of a part of the outside which is cut from
    another cloth than the garment's own; `copies` says how many times the
    piece (or its pair) is cut. `role` says what it is and `place` its number among those of its
    role; `base` is the name that a maker calls both hands by, where each hand has a piece of its own.
    `stiffens` names what an interfacing belongs to, `lines` what a lining or a facing lies behind.
    `frame` states how it lies on the body, where edges, levels and marks do not say it.
    """

    name: str
    edges: tuple[Edge, ...]
    grain: float = 90.0
    stretch: float = 0.0
    pair: bool = False
    hand: str = ""
    levels: tuple[Level, ...] = ()
    darts: tuple[InnerDart, ...] = ()
    points: Mapping[str, complex] = field(default_factory=dict)
    title: str = ""
    placements: tuple[Placement, ...] = ()
    material: str = ""
    copies: int = 1
    role: PieceRole = PieceRole.PLAIN
    place: int = 0
    base: str = ""
    stiffens: tuple[str, ...] = ()
    lines: tuple[str, ...] = ()
    frame: BodyFrame | None = None
    cloth: str = ""

    def __post_init__(self) -> None:
        freeze(self, "points")
        for edge, after in zip(self.edges, (*self.edges[1:], self.edges[0]), strict=True):
            gap = abs(edge.path.end - after.path.start)
            if not gap <= tol.CLOSED:
                raise DraftError(
                    f"piece {self.name}: edge {edge.name} ends {told(gap, 'fine')} from where "
                    f"{after.name} starts ({edge.path.end:.3f}, {after.path.start:.3f})"
                )
        if len({e.name for e in self.edges}) < len(self.edges):
            raise DraftError(f"piece {self.name}: two edges carry one name")

    def __getitem__(self, name: str) -> Edge:
        return self.edges[self.index(name)]

    def index(self, name: str) -> int:
        """Return the place of edge `name` in the ring; a KeyError names the edges there are."""
        for i, edge in enumerate(self.edges):
            if edge.name == name:
                return i
        raise KeyError(f"{self.name} has no edge {name!r}; it has {[e.name for e in self.edges]}")

    def __contains__(self, name: str) -> bool:
        return any(edge.name == name for edge in self.edges)

    @cached_property
    def outline(self) -> Path:
        """The closed stitching line, anticlockwise."""
        return Path.joined(edge.path for edge in self.edges)

    @property
    def area(self) -> float:
        return self.outline.area

    @property
    def fold_edge(self) -> Edge | None:
        """The edge that lies on the fold (a half piece), or None."""
        return next((e for e in self.edges if e.kind is EdgeKind.FOLD), None)

    @property
    def cut_from(self) -> str:
        """The role of the cloth that it is cut from, "" for the garment's own."""
        return self.material or self.cloth

    @property
    def count(self) -> int:
        """How many pieces of cloth are cut from it: a pair is 2."""
        return self.copies * (2 if self.pair else 1)

    @property
    def both_hands(self) -> bool:
        """Whether each of its edges comes on the left and on the right: a pair's, or a half's on the fold."""
        return self.pair or self.fold_edge is not None

    def corner(self, index: int) -> float:
        """Return the inside angle, degrees, where edge `index` starts (and the one before ends)."""
        back = -self.edges[index - 1].path.arrive
        ahead = self.edges[index].path.leave
        return math.degrees(cmath.phase(back / ahead)) % 360

    def with_edges(self, *edges: Edge) -> Piece:
        """Return the piece with the edges of these names replaced."""
        new = {edge.name: edge for edge in edges}
        return replace(self, edges=tuple(new.get(edge.name, edge) for edge in self.edges))

    def mapped(self, move: Callable[[complex], complex]) -> Piece:
        """Return the piece with every point moved by an orientation-keeping move."""
        return replace(
            self,
            edges=tuple(replace(e, path=e.path.mapped(move)) for e in self.edges),
            levels=tuple(level.mapped(move) for level in self.levels),
            darts=tuple(replace(d, leg_a=d.leg_a.mapped(move), leg_b=d.leg_b.mapped(move)) for d in self.darts),
            points={name: move(p) for name, p in self.points.items()},
            placements=tuple(replace(m, path=m.path.mapped(move)) for m in self.placements),
            frame=self.frame and self.frame.mapped(move),
        )

    def mirrored(self) -> Piece:
        """Return the other hand of this piece."""
        return replace(
            self,
            edges=tuple(edge.mirrored() for edge in reversed(self.edges)),
            grain=180 - self.grain,
            stretch=-self.stretch % 180,
            levels=tuple(level.mirrored() for level in self.levels),
            darts=tuple(replace(d, leg_a=d.leg_a.mirrored(), leg_b=d.leg_b.mirrored()) for d in self.darts),
            points={name: -p.conjugate() for name, p in self.points.items()},
            placements=tuple(replace(m, path=m.path.mirrored()) for m in self.placements),
            frame=self.frame and self.frame.mirrored(),
        )
