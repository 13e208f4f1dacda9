"""Garments sewn up and placed on the wearer's form, in the order worn: where the search for rest starts.

Made, form -> for each garment: cloths -> plies -> coarse mesh and mesh -> start
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from drafting.alter.braces import BRACE_BUTTON
from drafting.costume.make import Made, MadeGarment
from drafting.costume.wearing.seen import goes_over
from drafting.costume.wearing.tucks import tucks_sewn
from drafting.draft.draft import Draft
from drafting.draft.frame import BodyHeight
from drafting.fabric import Fabric, handling
from drafting.ground.errors import DraftError
from drafting.ground.frozen import freeze
from drafting.worn.cloth import ply_of
from drafting.worn.cloth.layers import Bond, ClothLayer
from drafting.worn.form import Form
from drafting.worn.nouns import Limb, Ply, Reals, SewnMesh
from drafting.worn.placed import placed
from drafting.worn.placed.braces import Slides, held_up, slides_down
from drafting.worn.sewn import sewn_mesh
from drafting.worn.sewn.mesh import NOT_FUSED

COARSE = 40.0
"""mm: a mesh for a shape only, of a grown wearer's garment (see `Form.fineness`)."""

FINE = 20.0
"""mm: a mesh for numbers, the same."""

FOOT = 0.4
"""What goes round foot and ankle is meshed in steps of so much of another garment's (ours: half an ankle is 35 mm
through)."""

INTERFACING = "interfacing"
"""The material of what stiffens a piece."""

MOST = 650
"""Sewn points of a coarse mesh for each hand; what takes more is meshed in wider steps. A circle
skirt to the floor takes 1,620: with as many it came to no rest."""


@dataclass(frozen=True, eq=False)
class Sewn:
    """A garment sewn up, with its cloths by material; the `start` (count, 3) mm is that of its `coarse` mesh.

    `slides` says why nothing but braces holds it up, or that it hangs from those it was given.
    """

    garment: MadeGarment
    cloths: Mapping[str, Fabric]
    mesh: SewnMesh
    coarse: SewnMesh
    start: Reals
    slides: Slides | None

    def __post_init__(self) -> None:
        freeze(self, "cloths")


def sewn_and_placed(made: Made, form: Form, mesh: float) -> tuple[list[Sewn], tuple[tuple[str, str], ...]]:
    """Return the garments sewn up and placed, in the order worn; those that could not be, with the reason."""
    found: list[Sewn] = []
    left_out: list[tuple[str, str]] = []
    for garment in (tucks_sewn(made.costume, one) for one in made.garments):
        try:
            found.append(_sewn_up(garment, cloths_of(made, garment), form, mesh))
        except DraftError as error:
            left_out.append((garment.name, error.said(made.costume.told_in)))
    return _in_order(found), tuple(left_out)


def coarse_mesh(
    draft: Draft, name: str, plies: Mapping[str, Ply], form: Form, fused: Mapping[str, Ply] = NOT_FUSED
) -> tuple[SewnMesh, float]:
    """Return a garment's mesh for a shape, and the mm of its steps: wider where the garment takes much cloth.

    `plies` and `fused` as `sewn_mesh` takes them.
    """
    size = COARSE * form.fineness * (FOOT if any(p.frame and p.frame.ahead for p in draft.pieces) else 1.0)
    mesh = sewn_mesh(draft, name, plies, size, fused=fused)
    more = mesh.count / (MOST * (1 if mesh.halved else 2))
    if more <= 1.0:
        return mesh, size
    size *= math.sqrt(more)
    return sewn_mesh(draft, name, plies, size, fused=fused), size


def _sewn_up(garment: MadeGarment, cloths: Mapping[str, Fabric], form: Form, mesh: float) -> Sewn:
    """Return a garment sewn up and placed, on braces where it has buttons for them or would slide down."""
    plies, fused = plies_of(cloths), fused_plies(cloths)
    coarse, size = coarse_mesh(garment.draft, garment.name, plies, form, fused)
    fine = sewn_mesh(garment.draft, garment.name, plies, size * mesh / COARSE, fused=fused)
    start = placed(coarse, form)
    slides = slides_down(coarse, start, form, braced=braced(garment.draft))
    if slides:
        coarse, fine = held_up(coarse, slides), held_up(fine, slides)
    return Sewn(garment=garment, cloths=cloths, mesh=fine, coarse=coarse, start=start, slides=slides)


def braced(draft: Draft) -> bool:
    """Return whether a garment has buttons for braces, and so hangs from them."""
    return any(notion.what == BRACE_BUTTON for notion in draft.notions)


def usual_thickness(mesh: SewnMesh) -> float:
    """Return how thick (mm) most of a garment is: what a garment over it lies off the form by.

    A band of many layers is as thick at its waist alone.
    """
    a, b, c = (mesh.flat[mesh.triangles[:, i]] for i in range(3))
    u, v = b - a, c - a
    areas = np.bincount(mesh.ply, np.abs(u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0]), len(mesh.plies))
    return mesh.plies[int(areas.argmax())].thickness


def plies_of(cloths: Mapping[str, Fabric]) -> Mapping[str, Ply]:
    """Return each cloth as a ply, by material."""
    return {material: ply_of(cloth) for material, cloth in cloths.items()}


def fused_plies(cloths: Mapping[str, Fabric]) -> Mapping[str, Ply]:
    """Return the garment's own cloth with its interfacing fused to it, by material; none where it is sewn in.

    As the plan has it: what takes a fusible is fused.
    """
    own, stiff = cloths[""], cloths.get(INTERFACING)
    if stiff is None or not handling(own).fuses:
        return MappingProxyType({})
    return MappingProxyType({INTERFACING: ply_of(own, ClothLayer(stiff, Bond.FUSED))})


def cloths_of(made: Made, garment: MadeGarment) -> Mapping[str, Fabric]:
    """Return the cloth of each material of a garment; one that no file names is guessed by its role."""
    fabrics = made.costume.fabrics
    materials = {piece.cut_from for piece in garment.draft.pieces} | {""}
    roles = {material: material or garment.fabric for material in materials}
    return MappingProxyType({m: fabrics.get(role) or Fabric(role) for m, role in roles.items()})


def _in_order(sewn: list[Sewn]) -> list[Sewn]:
    """Return garments innermost first: the closest of the trunk, what is drawn over the legs, the others.

    A shirt or a top is tucked in; what has tails or a lapel goes over that, and a cape over everything (common
    practice).
    """

    def girth(one: Sewn) -> float:
        return max((level.drafted for level in one.mesh.levels if level.limb is Limb.TRUNK), default=0.0)

    over = [one for one in sewn if goes_over(one.garment.draft, one.mesh)]
    legs = [one for one in sewn if any(piece.limb is Limb.LEG for piece in one.mesh.pieces) and one not in over]
    trunk = sorted((one for one in sewn if one not in legs and one not in over), key=girth)
    over.sort(key=lambda one: (_from_neck(one), girth(one)))
    return [*trunk[:1], *sorted(legs, key=girth), *trunk[1:], *over]


def _from_neck(one: Sewn) -> bool:
    """Return whether a garment hangs from the neck, over arms and all: a cape."""
    hung = (piece.frame for piece in one.mesh.pieces if piece.limb is Limb.HANGS)
    return any(height is BodyHeight.NAPE for frame in hung for height, _ in frame.heights)
