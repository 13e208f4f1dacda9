"""What hangs from the waist let fall again under each treatment, from three starts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from drafting.costume.make import MadeGarment
from drafting.draft.by_role import pieces_as
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.roles import PieceRole
from drafting.fabric import Fabric
from drafting.worn.cloth import stiffened
from drafting.worn.form import Form
from drafting.worn.nouns import AtRest, SewnMesh, Truth
from drafting.worn.picture.tucked import kept_off
from drafting.worn.settled.search import Limits
from drafting.worn.settled.settle import at_rest
from drafting.worn.stands.hems import hem_lines, hem_width, hem_worn, hems_of
from drafting.worn.stands.treated import (
    SWING,
    TreatedHem,
    hanging,
    hanging_points,
    swung,
    treated_mesh,
    treatments_of,
)

AGAIN = Limits(steps=200)
"""How long what hangs is looked after, once more for each treatment and each start: 8 s of a tailcoat."""


def seat_back(form: Form) -> float:
    """Return how far back the seat lies, y in mm."""
    return float(form.contour(form.levels["hip"])[:, 1].max())


def has_tails(draft: Draft) -> bool:
    """Return whether tails hang from a body: what is asked of them is not asked of a skirt or a cape."""
    return bool(pieces_as(draft, PieceRole.TAIL, PieceRole.GODET))


def treated_hems(
    garment: MadeGarment, rest: AtRest, cloth: Fabric, form: Form, beneath: float
) -> Iterator[TreatedHem]:
    """Yield the hem of what hangs, as drafted and under each treatment that its cloth takes, from three starts."""
    hems = hems_of(garment.draft)
    if (
        not has_tails(garment.draft)
        or not hanging(rest.mesh).any()
        or not any(ref in rest.mesh.edges for ref in hems)
    ):
        return
    held = ~hanging_points(rest.mesh)
    meshes = [("drafted", rest.mesh)]
    meshes += [(n, treated_mesh(rest.mesh, hems, stiffened(cloth, way))) for n, way in treatments_of(cloth)]
    for name, mesh in meshes:
        falls = [_fallen(mesh, rest, by, form, beneath, held) for by in (0.0, SWING, -SWING)]
        yield _hem_of(name, [fall for fall in falls if fall.settled], hems, form)


def _fallen(mesh: SewnMesh, rest: AtRest, by: float, form: Form, beneath: float, held: Truth) -> AtRest:
    start = replace(rest, points=kept_off(swung(rest, by), form.distance))
    return at_rest(mesh, start, form.distance, AGAIN, beneath=beneath, held=held)


def _hem_of(name: str, falls: list[AtRest], hems: tuple[EdgeRef, ...], form: Form) -> TreatedHem:
    if not falls:
        return TreatedHem(name, None, ())
    every = [hem_lines(fall, hems) for fall in falls]
    middle = sorted(every, key=hem_width)[len(every) // 2]
    return TreatedHem(name, hem_worn(middle, seat_back(form), map(hem_width, every)), middle)
