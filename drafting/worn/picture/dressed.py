"""A garment at rest and the form it is on, as covers and lines of a scene; a halved one with its mirror image."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from drafting.draft.draft import EdgeRef
from drafting.ground.frozen import freeze
from drafting.ground.palette import Colour
from drafting.worn.nouns import AtRest, Reals, Surface, Truth, Whole
from drafting.worn.picture.maps import PULLS, STANDS_OFF
from drafting.worn.picture.scene import Cover, PictureScene, Trace, channels

BEHIND = 0.5
"""Of the length of a mesh's sides, by so much the form is taken to lie farther off: flat triangles cut into it."""
LAYER = 5.0
"""mm that each garment is taken to lie nearer than the one beneath it, for the same reason."""

SEAM_INK, SEAM_WIDE = channels(Colour.INK), 1.0


@dataclass(frozen=True, eq=False)
class Look:
    """A garment to be shown: the `faces` of its pieces by material (#rrggbb); `pull` (count,) its stretch as a
    share of what the cloth gives in comfort, `off` (count,) mm from the form, NaN where it is not told. `lines`
    are the edges that are drawn, `turned` the pieces that lie turned over on themselves, as a lapel does."""

    name: str
    rest: AtRest
    faces: Mapping[str, str]
    pull: Reals
    off: Reals
    lines: tuple[EdgeRef, ...]
    turned: frozenset[str] = frozenset()

    def __post_init__(self) -> None:
        freeze(self, "faces")


@dataclass(frozen=True, eq=False)
class WholeCloth:
    """A garment's sewn surface, both hands: `points` (V, 3), `triangles` (T, 3), `source` (V,) of each point.

    `own` (T,): the triangle of the mesh that each one is, or mirrors.
    """

    points: Reals
    triangles: Whole
    source: Whole
    own: Whole


def whole_cloth(rest: AtRest) -> WholeCloth:
    """Return the whole surface of a garment; points on the middle are one with their mirror image."""
    mesh, points = rest.mesh, rest.points
    count, faces = mesh.count, mesh.sewn
    own, numbers = np.arange(len(faces)), np.arange(count)
    if not mesh.halved:
        return WholeCloth(points, faces, numbers, own)
    apart = np.flatnonzero(~mesh.on_middle)
    twin = numbers.copy()
    twin[apart] = count + np.arange(len(apart))
    mirrored = points[apart] * (-1, 1, 1)
    triangles = np.concatenate((faces, twin[faces[:, ::-1]]))
    source = np.concatenate((numbers, apart))
    return WholeCloth(np.concatenate((points, mirrored)), triangles, source, np.concatenate((own, own)))


def cloth_cover(look: Look, layer: int) -> Cover:
    """Return a garment in the faces of its pieces, with the threads of its warp."""
    rest, mesh, whole = look.rest, look.rest.mesh, whole_cloth(look.rest)
    by_piece = np.array([channels(look.faces[piece.material]) for piece in mesh.pieces])
    tints = np.repeat(by_piece[mesh.piece][whole.own][:, None], 3, axis=1)
    return Cover(
        points=whole.points,
        triangles=whole.triangles,
        tints=tints,
        across=_across(rest, whole),
        nearer=layer * LAYER,
        turned=turned_over(look)[whole.own],
    )


def told_cover(look: Look, tints: Reals, layer: int) -> Cover:
    """Return a garment with a colour (count, 3) at each of its sewn points: what a map tells."""
    whole = whole_cloth(look.rest)
    return Cover(
        points=whole.points,
        triangles=whole.triangles,
        tints=tints[whole.source],
        nearer=layer * LAYER,
        turned=turned_over(look)[whole.own],
    )


def turned_over(look: Look) -> Truth:
    """Return (T,): which triangles of the mesh belong to pieces that lie turned over on themselves."""
    mesh = look.rest.mesh
    found: Truth = np.array([piece.name in look.turned for piece in mesh.pieces], bool)[mesh.piece]
    return found


def _across(rest: AtRest, whole: WholeCloth) -> Reals:
    """Return (T, 3): how far across the warp each corner lies on its flat piece."""
    mesh = rest.mesh
    grain = np.radians([piece.grain for piece in mesh.pieces])[mesh.piece]
    flat = mesh.flat[mesh.triangles]
    across = flat[:, :, 1] * np.cos(grain)[:, None] - flat[:, :, 0] * np.sin(grain)[:, None]
    if mesh.halved:
        across = np.concatenate((across, across[:, ::-1]))
    found: Reals = across[: len(whole.triangles)]
    return found


def edge_traces(look: Look, layer: int) -> Iterator[Trace]:
    """Yield the lines of a garment, where it is sewn and where it ends, on both hands."""
    rest = look.rest
    for ref in look.lines:
        points = rest.points[rest.mesh.edges[ref]]
        for side in (points, points * (-1, 1, 1)) if rest.mesh.halved else (points,):
            yield Trace(side, SEAM_INK, SEAM_WIDE, 4.0 + layer * LAYER)


def behind(looks: Sequence[Look]) -> float:
    """Return how far behind the form is taken to lie, mm, for the coarsest of these garments."""
    sides = [0.0]
    for look in looks:
        corners = look.rest.points[look.rest.mesh.sewn]
        sides.append(float(np.linalg.norm(corners[:, 1] - corners[:, 0], axis=1).mean()))
    return BEHIND * max(sides)


def body_cover(surface: Surface, looks: Sequence[Look]) -> Cover:
    """Return the form, in nobody's skin."""
    tints = np.broadcast_to(channels(Colour.SKIN), surface.points.shape)
    return Cover(surface.points, surface.triangles, tints, nearer=-behind(looks), closed=True)


def dressed_scene(surface: Surface, looks: Sequence[Look]) -> PictureScene:
    """Return the form with garments on it, innermost first, each in its own faces."""
    covers = (body_cover(surface, looks), *(cloth_cover(look, layer) for layer, look in enumerate(looks)))
    return PictureScene(covers, _edges(looks))


def pull_scene(surface: Surface, looks: Sequence[Look]) -> PictureScene:
    """Return the same in the colours that tell where it pulls."""
    told = (told_cover(look, PULLS.tints(look.pull), layer) for layer, look in enumerate(looks))
    return PictureScene((body_cover(surface, looks), *told), _edges(looks))


def off_scene(surface: Surface, looks: Sequence[Look]) -> PictureScene:
    """Return the same in the colours that tell where it stands off."""
    told = (told_cover(look, STANDS_OFF.tints(look.off), layer) for layer, look in enumerate(looks))
    return PictureScene((body_cover(surface, looks), *told), _edges(looks))


def _edges(looks: Sequence[Look]) -> tuple[Trace, ...]:
    return tuple(trace for layer, look in enumerate(looks) for trace in edge_traces(look, layer))
