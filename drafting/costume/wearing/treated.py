"""What hangs from the waist or the neck let fall again under each treatment, from three starts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from drafting.costume.make import MadeGarment
from drafting.costume.telling import Tell, tell_nobody, within
from drafting.costume.wearing.told import told_on_the_way
from drafting.draft.by_role import pieces_as
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.roles import PieceRole
from drafting.fabric import Fabric
from drafting.ground.names import name_in_words
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
    hanging_points,
    hangs_free,
    swung,
    treated_alike,
    treated_mesh,
    treatments_of,
)

AGAIN = Limits(steps=200)
"""How long what hangs is looked after, once more for each treatment and each start: 8 s of a tailcoat."""


STARTS = (0.0, SWING, -SWING)
"""mm by which what hangs is swung before it falls again."""

MUCH, TOO_MUCH = 1500, 3000
"""Sewn points for each hand from which each treatment falls once only, and from which none is reckoned: a circle
skirt to the knee has 2,375, and takes some 15 s a fall."""


def seat_back(form: Form) -> float:
    """Return how far back the seat lies, y in mm."""
    return float(form.contour(form.levels["hip"])[:, 1].max())


def has_tails(draft: Draft) -> bool:
    """Return whether tails hang from a body: they part, and are laid to the sides before sitting down."""
    return bool(pieces_as(draft, PieceRole.TAIL, PieceRole.GODET))


def free_hems(draft: Draft, mesh: SewnMesh) -> tuple[EdgeRef, ...]:
    """Return the hems of a garment if any of them hangs free: of tails, a skirt, a peplum, a cape; else none."""
    free = {piece.name for index, piece in enumerate(mesh.pieces) if hangs_free(mesh, index)}
    hems = hems_of(draft)
    return hems if any(ref in mesh.edges and ref[0] in free for ref in hems) else ()


def treated_hems(
    garment: MadeGarment, rest: AtRest, cloth: Fabric, form: Form, beneath: float, tell: Tell = tell_nobody
) -> Iterator[TreatedHem]:
    """Yield the hem of what hangs, as drafted and under each treatment that its cloth takes, from several starts.

    `tell` hears of every fall. Untreated is told where the draft itself treats the hem. Of cloth that takes
    `TOO_MUCH` nothing is yielded.
    """
    hems = free_hems(garment.draft, rest.mesh)
    if not hems or too_much(rest.mesh):
        return
    held = ~hanging_points(rest.mesh)
    starts = STARTS if _points(rest.mesh) <= MUCH else STARTS[:1]
    meshes = [("drafted", rest.mesh)]
    meshes += [(n, treated_mesh(rest.mesh, hems, stiffened(cloth, way))) for n, way in treatments_of(cloth)]
    meshes = [one for one in meshes if one[1] is rest.mesh or not treated_alike(one[1], rest.mesh)]
    every, words = len(meshes) * len(starts), f"Letting its hem fall: {name_in_words(garment.name)}"
    for number, (name, mesh) in enumerate(meshes):
        falls = []
        for turn, by in enumerate(starts, number * len(starts)):
            limits = told_on_the_way(AGAIN, within(tell, turn / every, (turn + 1) / every), words)
            falls.append(_fallen(mesh, rest, by, form, beneath, held, limits))
        yield _hem_of(name, [fall for fall in falls if fall.settled], hems, form)


def too_much(mesh: SewnMesh) -> bool:
    """Return whether a mesh has so many sewn points that its treatments are not reckoned."""
    return _points(mesh) > TOO_MUCH


def _points(mesh: SewnMesh) -> float:
    """Return the sewn points of one hand."""
    return mesh.count / (1 if mesh.halved else 2)


def _fallen(
    mesh: SewnMesh, rest: AtRest, by: float, form: Form, beneath: float, held: Truth, limits: Limits
) -> AtRest:
    start = replace(rest, points=kept_off(swung(rest, by), form.distance))
    return at_rest(mesh, start, form.distance, limits, beneath=beneath, held=held)


def _hem_of(name: str, falls: list[AtRest], hems: tuple[EdgeRef, ...], form: Form) -> TreatedHem:
    if not falls:
        return TreatedHem(name, None, ())
    every = [hem_lines(fall, hems) for fall in falls]
    middle = sorted(every, key=hem_width)[len(every) // 2]
    return TreatedHem(name, hem_worn(middle, seat_back(form), map(hem_width, every)), middle)
