"""What the worn view hands from step to step: cloth as numbers, the sewn mesh, the form, and what came to rest.

Lengths in mm. x points to the wearer's left, y to the back, z up from the floor; the origin lies on the
floor under the middle. Arrays are read-only. A halved garment is its left half (x >= 0), mirrored in x = 0.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from drafting.draft.draft import EdgeRef
from drafting.draft.frame import BodyFrame, Straight
from drafting.draft.frame import Limb as Limb
from drafting.draft.roles import PieceRole
from drafting.geometry.curve import Points
from drafting.ground.frozen import freeze

Reals = NDArray[np.float64]
Whole = NDArray[np.int64]
Truth = NDArray[np.bool_]
Point = tuple[float, float, float]


@dataclass(frozen=True)
class Ply:
    """A cloth, or several sewn or fused together, as numbers for the sheet.

    `along`, `across`, `shear`: N/m per unit strain; `bends_along`, `bends_across`: N m (rigidity per
    unit width); `weight`: N/m2; `thickness`: mm. `twists`: N m, what a curvature across both threads
    meets: a strip on the bias has the rigidity (along + across) / 4 + twists / 2. `guessed` names the values
    that no test gave.
    """

    along: float
    across: float
    shear: float
    bends_along: float
    bends_across: float
    weight: float
    thickness: float
    twists: float | None = None
    guessed: tuple[str, ...] = ()

    @property
    def twisting(self) -> float:
        """`twists`; where nothing tells, the mean of the two rigidities, N m."""
        return (self.bends_along * self.bends_across) ** 0.5 if self.twists is None else self.twists


@dataclass(frozen=True)
class SewnPiece:
    """One piece in the mesh: `hand` "left", "right" or "" (over the middle); `grain` in degrees as drafted.

    `frame` says how it lies on the body: its `heights` are places on the flat piece. A piece of the trunk
    without any is carried by what it is sewn to (a band, a collar). `rolls` are the lines it turns over at, a
    wing collar's one a hand.
    `holes` is the hand that has its buttonholes, where one hand only has any.
    """

    name: str
    limb: Limb
    grain: float
    hand: str = ""
    material: str = ""
    role: PieceRole = PieceRole.PLAIN
    frame: BodyFrame = field(default_factory=BodyFrame)
    rolls: tuple[Straight, ...] = ()
    holes: str = ""


@dataclass(frozen=True, eq=False)
class ElasticThread:
    """A thread of elastic, or an edge of a band, along vertices: `rest` mm slack, `pull` N per unit strain."""

    vertices: Whole
    rest: float
    pull: float


@dataclass(frozen=True, eq=False)
class Rod:
    """A bone or wire along mesh vertices, straight at rest: `stiffness` in N m2.

    `along` N for each unit of strain, pulled or pushed: a bone keeps its length, a braid gives.
    """

    vertices: Whole
    stiffness: float
    along: float = 0.0


@dataclass(frozen=True, eq=False)
class MeshLevel:
    """A drafted level on the mesh: points (S,) as triangle and weights (S, 3), in order round the garment.

    `drafted` is the girth it was drafted to, mm, of the whole garment (of one limb on arms and legs).
    """

    name: str
    limb: Limb
    triangles: Whole
    weights: Reals
    drafted: float


def _none() -> Whole:
    return np.zeros(0, dtype=np.int64)


@dataclass(frozen=True, eq=False)
class SewnMesh:
    """A garment meshed along its stitching lines, vertices of a seam merged.

    `flat` (F, 2): vertices of the pieces as cut, mm; `triangles` (T, 3) into `flat`; `merged` (F,): the
    sewn vertex of each flat one, 0..count-1. Per triangle: `piece` into `pieces`, `ply` into `plies`.
    `edges`: sewn vertices along each edge, in its order. `folds` (K, 2): sewn vertex pairs over which cloth
    bends free (darts, roll lines). `on_middle` (count,): stays in the plane x = 0. `added` (count,): weight
    of hems and the like, N. `tied` (K, 2): sewn vertices that buttons or hooks hold together. `front` and
    `back`: sewn vertices on the middle of the body, in front and behind. `shoulders`: those along shoulder seams.
    `hung`: sewn vertices that keep their height, as braces hold them.
    """

    garment: str
    halved: bool
    pieces: tuple[SewnPiece, ...]
    plies: tuple[Ply, ...]
    flat: Reals
    triangles: Whole
    merged: Whole
    piece: Whole
    ply: Whole
    count: int
    on_middle: Truth
    added: Reals
    folds: Whole
    tied: Whole
    edges: Mapping[EdgeRef, Whole] = field(default_factory=dict)
    levels: tuple[MeshLevel, ...] = ()
    elastics: tuple[ElasticThread, ...] = ()
    rods: tuple[Rod, ...] = ()
    front: Whole = field(default_factory=_none)
    back: Whole = field(default_factory=_none)
    shoulders: Whole = field(default_factory=_none)
    hung: Whole = field(default_factory=_none)

    def __post_init__(self) -> None:
        freeze(self, "edges")

    def places(self, vertices: Whole) -> Points:
        """Return (N, ...): where flat vertices lie on their pieces, mm, as one number each (x + iy)."""
        found: Points = self.flat[vertices] @ np.array([1.0, 1j])
        return found

    @property
    def sewn(self) -> Whole:
        """(T, 3): triangles of sewn vertices."""
        return self.merged[self.triangles]


@dataclass(frozen=True, eq=False)
class Surface:
    """A closed triangle mesh, `points` (V, 3) mm, `triangles` (T, 3), seen from outside anticlockwise."""

    points: Reals
    triangles: Whole


@dataclass(frozen=True, eq=False)
class AtRest:
    """Where the vertices of a `SewnMesh` lie: `points` (count, 3) mm.

    `residual` is the root mean square force left on a vertex as a share of the mean vertex weight;
    `settled` says that it is small enough for numbers. `seconds` of CPU time. `slip` (count, 3) mm: how far
    each vertex was drawn from where it clings to the form, which is what friction holds it by.
    """

    mesh: SewnMesh
    points: Reals
    slip: Reals
    residual: float
    settled: bool
    steps: int
    seconds: float
