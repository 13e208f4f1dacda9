"""A garment at rest and the form it is on, as covers and lines of a scene; a halved one with its mirror image."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy.spatial import cKDTree

from drafting.draft.draft import EdgeRef
from drafting.ground.frozen import freeze
from drafting.ground.palette import Colour
from drafting.worn.nouns import AtRest, Reals, SewnMesh, Surface, Truth, Whole
from drafting.worn.picture.buttons import SeenButton, button_rings
from drafting.worn.picture.laps import hand_over, under_other
from drafting.worn.picture.maps import PULLS, STANDS_OFF
from drafting.worn.picture.scene import LIES_ON, Cover, PictureScene, Trace, channels, smooth_normals

BEHIND = 0.5
"""Of the length of a mesh's sides, by so much the form is taken to lie farther off: flat triangles cut into it."""
SUNK, BARE = 3.0, 30.0
"""mm that the form is drawn thinner under cloth, for the same reason: seen along it, no distance from the eye
hides it; and how far from cloth it is drawn as it is."""
LAYER = 5.0
"""mm that each garment is taken to lie nearer than the one beneath it, for the same reason."""

LAP = 6.0
"""mm that one hand is taken to lie beneath the other where they lap: more than a line or a lapel lies on its
cloth, less than would put it beneath the next garment."""

LAPEL_LAPS = 5.0
"""Times as far beneath: the foot of a lapel beneath, which stands off the lap it is on."""

ON_CLOTH = 4.0
"""mm that a line is taken to lie nearer than the cloth it is on, for flat triangles cut into it too."""

SEAM_INK, SEAM_WIDE = channels(Colour.INK), 1.0


@dataclass(frozen=True, eq=False)
class Look:
    """A garment to be shown: the `faces` of its pieces by material (#rrggbb); `pull` (count,) its stretch as a
    share of what the cloth gives in comfort, `off` (count,) mm from the form, NaN where it is not told. `lines`
    are the edges that are drawn; `over` (T,) says which triangles are turned over and lie on the rest, as a lapel
    does, `hidden` (T,) which are not seen, `under` (count,) which sewn points lie under other cloth; `buttons` are
    drawn as rings."""

    name: str
    rest: AtRest
    faces: Mapping[str, str]
    pull: Reals
    off: Reals
    lines: tuple[EdgeRef, ...]
    over: Truth | None = None
    hidden: Truth | None = None
    under: Truth | None = None
    buttons: tuple[SeenButton, ...] = ()

    def __post_init__(self) -> None:
        freeze(self, "faces")


@dataclass(frozen=True, eq=False)
class WholeCloth:
    """A garment's sewn surface, both hands: `points` (V, 3), `triangles` (T, 3), `source` (V,) of each point.

    `own` (T,): the triangle of the mesh that each one is, or mirrors; `flat` (T, 3): its flat points. `behind`
    (V,): mm that a point is taken to lie under the other hand, where that laps over it.
    """

    points: Reals
    triangles: Whole
    source: Whole
    own: Whole
    flat: Whole
    behind: Reals


def whole_cloth(rest: AtRest) -> WholeCloth:
    """Return the whole surface of a garment; points on the middle are one with their mirror image."""
    mesh, points = rest.mesh, rest.points
    count, faces = mesh.count, mesh.sewn
    own, numbers = np.arange(len(faces)), np.arange(count)
    if not mesh.halved:
        return WholeCloth(
            points=points, triangles=faces, source=numbers, own=own, flat=mesh.triangles, behind=laps_over(rest)
        )
    apart = np.flatnonzero(~mesh.on_middle)
    twin = numbers.copy()
    twin[apart] = count + np.arange(len(apart))
    mirrored = points[apart] * (-1, 1, 1)
    triangles = np.concatenate((faces, twin[faces[:, ::-1]]))
    return WholeCloth(
        points=np.concatenate((points, mirrored)),
        triangles=triangles,
        source=np.concatenate((numbers, apart)),
        own=np.concatenate((own, own)),
        flat=np.concatenate((mesh.triangles, mesh.triangles[:, ::-1])),
        behind=np.concatenate((laps_over(rest), laps_under(mesh, mirrored))),
    )


def laps_under(mesh: SewnMesh, points: Reals) -> Reals:
    """Return (N,): mm that points of a halved garment's right hand lie behind: those beyond the middle, if the
    left laps over."""
    return np.where((points[:, 0] > 0.0) & (hand_over(mesh) == "left"), LAP, 0.0)


def laps_over(rest: AtRest) -> Reals:
    """Return (count,): mm that sewn points of a garment lie behind the other hand's (`under_other`)."""
    return np.where(under_other(rest), LAP, 0.0)


def seen_cloth(look: Look) -> WholeCloth:
    """Return a garment's surface as it is seen: without what is hidden, what is turned over outside out."""
    whole, none = whole_cloth(look.rest), np.zeros(len(look.rest.mesh.sewn), bool)
    over = none if look.over is None else look.over
    hidden = none if look.hidden is None else look.hidden
    turned, kept = over[whole.own][:, None], ~hidden[whole.own]
    triangles, flat = (np.where(turned, f[:, [0, 2, 1]], f)[kept] for f in (whole.triangles, whole.flat))
    lapel = np.isin(np.arange(len(whole.points)), whole.triangles[over[whole.own]])
    behind = whole.behind * np.where(lapel, LAPEL_LAPS, 1.0)
    return replace(whole, triangles=triangles, flat=flat, own=whole.own[kept], behind=behind)


def cloth_cover(look: Look, layer: int) -> Cover:
    """Return a garment in the faces of its pieces, with the threads of its warp."""
    mesh, whole = look.rest.mesh, seen_cloth(look)
    by_piece = np.array([channels(look.faces[piece.material]) for piece in mesh.pieces])
    tints = np.repeat(by_piece[mesh.piece][whole.own][:, None], 3, axis=1)
    return Cover(
        points=whole.points,
        triangles=whole.triangles,
        tints=tints,
        across=_across(look, whole),
        nearer=layer * LAYER,
        behind=whole.behind,
        over=None if look.over is None else look.over[whole.own],
    )


def told_cover(look: Look, tints: Reals, layer: int) -> Cover:
    """Return a garment with a colour (count, 3) at each of its sewn points: what a map tells."""
    whole = seen_cloth(look)
    return Cover(
        points=whole.points,
        triangles=whole.triangles,
        tints=tints[whole.source],
        nearer=layer * LAYER,
        behind=whole.behind,
        over=None if look.over is None else look.over[whole.own],
    )


def _across(look: Look, whole: WholeCloth) -> Reals:
    """Return (T, 3): how far across the warp each corner of the seen triangles lies on its flat piece."""
    mesh = look.rest.mesh
    grain = np.radians([piece.grain for piece in mesh.pieces])[mesh.piece]
    corners, turn = mesh.flat[whole.flat], grain[whole.own][:, None]
    found: Reals = corners[:, :, 1] * np.cos(turn) - corners[:, :, 0] * np.sin(turn)
    return found


def edge_traces(look: Look, layer: int) -> Iterator[Trace]:
    """Yield the lines of a garment, where it is sewn and where it ends, on both hands, but under other cloth."""
    rest = look.rest
    own = laps_over(rest)
    for ref in look.lines:
        up = raised(look, ref)
        nearer = ON_CLOTH + layer * LAYER + (LIES_ON if up else 0.0)
        for run in shown_runs(look, rest.mesh.edges[ref]):
            points = rest.points[run]
            yield Trace(points, SEAM_INK, SEAM_WIDE, nearer, behind=own[run] * (LAPEL_LAPS if up else 1.0))
            if rest.mesh.halved:
                other = points * (-1, 1, 1)
                under = laps_under(rest.mesh, other) * (LAPEL_LAPS if up else 1.0)
                yield Trace(other, SEAM_INK, SEAM_WIDE, nearer, behind=under)


def button_traces(look: Look, layer: int) -> Iterator[Trace]:
    """Yield the buttons of a garment on both hands, none under other cloth nor under the hand that laps over."""
    rest = look.rest
    hidden = laps_over(rest) > 0.0
    if look.under is not None:
        hidden |= look.under
    for ring in button_rings(rest, look.buttons, hidden):
        if not (ring.mirrored and laps_under(rest.mesh, ring.points).mean() > LAP / 2):
            up = LIES_ON + (2.0 * LAP if ring.through else 0.0)
            yield Trace(ring.points, SEAM_INK, SEAM_WIDE, ON_CLOTH + up + layer * LAYER)


def shown_runs(look: Look, chain: Whole) -> Iterator[Whole]:
    """Yield the parts of a line of sewn points that lie under no other cloth, of two points or more."""
    if look.under is None:
        yield chain
        return
    ends = np.flatnonzero(np.diff(look.under[chain])) + 1
    yield from (run for run in np.split(chain, ends) if len(run) > 1 and not look.under[run[0]])


def raised(look: Look, ref: EdgeRef) -> bool:
    """Return whether an edge lies on what is turned over all along but at its ends."""
    mesh = look.rest.mesh
    chain = mesh.edges[ref][1:-1] if len(mesh.edges[ref]) > 2 else mesh.edges[ref]
    return look.over is not None and bool(np.isin(chain, mesh.sewn[look.over]).all())


def behind(looks: Sequence[Look]) -> float:
    """Return how far behind the form is taken to lie, mm, for the coarsest of these garments."""
    sides = [0.0]
    for look in looks:
        corners = look.rest.points[look.rest.mesh.sewn]
        sides.append(float(np.linalg.norm(corners[:, 1] - corners[:, 0], axis=1).mean()))
    return BEHIND * max(sides)


def thinner(surface: Surface, looks: Sequence[Look]) -> Surface:
    """Return the form as it is drawn under these garments."""
    if not looks:
        return surface
    worn = np.concatenate([look.rest.points for look in looks])
    worn = np.concatenate([worn, worn * (-1.0, 1.0, 1.0)])  # a halved one's other hand; of a whole one no matter
    far, _ = cKDTree(worn).query(surface.points, distance_upper_bound=BARE)
    depth = SUNK * np.clip(2.0 - 2.0 * far / BARE, 0.0, 1.0)
    return replace(
        surface, points=surface.points - depth[:, None] * smooth_normals(surface.points, surface.triangles)
    )


def body_cover(surface: Surface, looks: Sequence[Look]) -> Cover:
    """Return the form, in nobody's skin."""
    tints, drawn = np.broadcast_to(channels(Colour.SKIN), surface.points.shape), thinner(surface, looks)
    return Cover(drawn.points, drawn.triangles, tints, nearer=-behind(looks), closed=True)


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
    return tuple(
        trace
        for layer, look in enumerate(looks)
        for trace in (*edge_traces(look, layer), *button_traces(look, layer))
    )
