"""A costume on the wearer's form: each garment sewn, placed, settled, measured, and told.

Made -> form; for each garment: plies -> mesh -> placed -> settled -> levels, hem, words -> Worn
"""

from __future__ import annotations

import time
from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

import numpy as np

from drafting.costume.make import Made, MadeGarment
from drafting.costume.telling import Tell, tell_nobody
from drafting.costume.worn_seen import goes_over, seen_edges, turns_over
from drafting.costume.worn_treated import has_tails, seat_back, treated_hems
from drafting.draft.draft import EdgeRef
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.ground.frozen import freeze
from drafting.sheet.faces import face
from drafting.worn.cloth import ply_of
from drafting.worn.form import STANDING, Form, Stance, wearers_form
from drafting.worn.nouns import AtRest, Limb, Ply, Reals, SewnMesh, Truth
from drafting.worn.picture.dressed import Look
from drafting.worn.picture.lapels import laid_on, turned_over
from drafting.worn.picture.maps import distance_off, pull_share
from drafting.worn.picture.tucked import covered, tucked
from drafting.worn.placed import placed
from drafting.worn.placed.braces import Slides, Sunk, held_up, slides_down, sunk
from drafting.worn.settled.search import Limits
from drafting.worn.settled.settle import at_rest, from_coarse
from drafting.worn.sewn import sewn_mesh
from drafting.worn.stands.held import held_told
from drafting.worn.stands.hems import hem_lines, hem_worn, hems_of
from drafting.worn.stands.levels import levels_worn
from drafting.worn.stands.model import GarmentWorn
from drafting.worn.stands.puffs import puffs_told
from drafting.worn.stands.told import garment_told, most_serious_first, sits_on, told_treated
from drafting.worn.stands.treated import TreatedHem, hanging
from drafting.worn.stands.words import Remark, remark

FULL = Limits(steps=500)
"""How long one garment is looked after before it is shown as a shape only: twice what any shipped one takes."""

SHAPE = Limits(residual=1.0, steps=80)
"""A shape to look at while a hand rests: nothing is told of it in numbers."""

COARSE = 40.0
"""mm: a mesh for a shape only, of a grown wearer's garment (see `Form.fineness`)."""

FINE = 20.0
"""mm: a mesh for numbers, the same."""


@dataclass(frozen=True, eq=False)
class WornGarment:
    """A garment at `rest`, as it is `shown` beneath others, what was found, and what is to be said.

    `cloths` are the fabrics of its pieces by material ("": its own); `treated` the hem under each treatment;
    `lines` the edges that pictures show, `over` (T,) the triangles that are turned over and lie on the rest,
    `hidden` (T,) those that others cover, `under` (count,) the sewn points beneath others' cloth.
    """

    name: str
    place: int
    rest: AtRest
    shown: AtRest
    cloths: Mapping[str, Fabric]
    found: GarmentWorn
    treated: tuple[TreatedHem, ...]
    words: tuple[Remark, ...]
    lines: tuple[EdgeRef, ...] = ()
    over: Truth | None = None
    hidden: Truth | None = None
    under: Truth | None = None

    def __post_init__(self) -> None:
        freeze(self, "cloths")


@dataclass(frozen=True, eq=False)
class Worn:
    """A costume on the form, the innermost garment first; `left_out` says which could not be sewn, and why."""

    made: Made
    form: Form
    garments: tuple[WornGarment, ...]
    left_out: tuple[tuple[str, str], ...]
    seconds: float


def worn(
    made: Made,
    tell: Tell = tell_nobody,
    *,
    limits: Limits = FULL,
    mesh: float = FINE,
    treat: bool = True,
    stance: Stance = STANDING,
) -> Worn:
    """Return a costume at rest on its wearer's form; `treat` asks for every treatment of what hangs.

    Raises `DraftError` where no form can be made of these measures.
    """
    start = time.process_time()
    tell("Making the form", 0.0)
    form = wearers_form(made.costume.wearer, stance)
    sewn, left_out = _sewn(made, form, mesh)
    garments: list[WornGarment] = []
    beneath = 0.0
    for number, one in enumerate(sewn):
        garment, cloths, cloth = one.garment, one.cloths, one.mesh
        share = 0.1 + 0.85 * number / len(sewn)
        tell(f"Settling: {garment.name.replace('-', ' ')}", share)
        rest = from_coarse(one.coarse, cloth, one.start, form.distance, limits, beneath=beneath)
        treated = tuple(treated_hems(garment, rest, cloths[""], form, beneath)) if treat and rest.settled else ()
        sank = sunk(one.coarse, one.start, rest, form)
        garments.append(_found(made, garment, rest, cloths, form, treated, one.slides, sank))
        beneath += max(ply.thickness for ply in cloth.plies)
    tell("Dressing", 0.97)
    return Worn(made, form, _over_one_another(garments, form), left_out, time.process_time() - start)


def fallen_shape(made: Made, form: Form, before: AtRest | None = None) -> WornGarment:
    """Return a garment alone as a shape only: a coarse mesh, let fall for a second; raises `DraftError`.

    `before` is how it lay when it was cut a little differently.
    """
    (garment,) = made.garments
    cloths = cloths_of(made, garment)
    cloth = sewn_mesh(garment.draft, garment.name, plies_of(cloths), COARSE * form.fineness)
    start = placed(cloth, form)
    slides = slides_down(cloth, start, form)
    rest = at_rest(held_up(cloth) if slides else cloth, before or start, form.distance, SHAPE)
    found = _found(made, garment, replace(rest, settled=False), cloths, form, (), slides)
    return _over_one_another([found], form)[0]


@dataclass(frozen=True, eq=False)
class Sewn:
    """A garment sewn up, with its cloths by material; the `start` (count, 3) mm is that of its `coarse` mesh.

    `slides` says why nothing but braces holds it up.
    """

    garment: MadeGarment
    cloths: Mapping[str, Fabric]
    mesh: SewnMesh
    coarse: SewnMesh
    start: Reals
    slides: Slides | None

    def __post_init__(self) -> None:
        freeze(self, "cloths")


def _sewn(made: Made, form: Form, mesh: float) -> tuple[list[Sewn], tuple[tuple[str, str], ...]]:
    """Return the garments sewn up and placed, in the order worn; those that could not be, with the reason."""
    found: list[Sewn] = []
    left_out: list[tuple[str, str]] = []
    for garment in made.garments:
        try:
            found.append(_sewn_up(garment, cloths_of(made, garment), form, mesh))
        except DraftError as error:
            left_out.append((garment.name, error.said(made.costume.told_in)))
    return _in_order(found), tuple(left_out)


def _sewn_up(garment: MadeGarment, cloths: Mapping[str, Fabric], form: Form, mesh: float) -> Sewn:
    """Return a garment sewn up and placed, on braces where it would slide down."""
    plies = plies_of(cloths)
    sizes = (COARSE * form.fineness, mesh * form.fineness)
    coarse, fine = (sewn_mesh(garment.draft, garment.name, plies, size) for size in sizes)
    start = placed(coarse, form)
    slides = slides_down(coarse, start, form)
    if slides:
        coarse, fine = held_up(coarse), held_up(fine)
    return Sewn(garment=garment, cloths=cloths, mesh=fine, coarse=coarse, start=start, slides=slides)


def plies_of(cloths: Mapping[str, Fabric]) -> Mapping[str, Ply]:
    """Return each cloth as a ply, by material."""
    return {material: ply_of(cloth) for material, cloth in cloths.items()}


def cloths_of(made: Made, garment: MadeGarment) -> Mapping[str, Fabric]:
    """Return the cloth of each material of a garment; one that no file names is guessed by its role."""
    fabrics = made.costume.fabrics
    materials = {piece.cut_from for piece in garment.draft.pieces} | {""}
    roles = {material: material or garment.fabric for material in materials}
    return MappingProxyType({m: fabrics.get(role) or Fabric(role) for m, role in roles.items()})


def _in_order(sewn: list[Sewn]) -> list[Sewn]:
    """Return garments innermost first: the closest of the trunk, what is drawn over the legs, the others.

    A shirt or a top is tucked in; what has tails or a lapel goes over everything (common practice).
    """

    def girth(one: Sewn) -> float:
        return max((level.drafted for level in one.mesh.levels if level.limb is Limb.TRUNK), default=0.0)

    over = [one for one in sewn if goes_over(one.garment.draft, one.mesh)]
    legs = [one for one in sewn if any(piece.limb is Limb.LEG for piece in one.mesh.pieces) and one not in over]
    trunk = sorted((one for one in sewn if one not in legs and one not in over), key=girth)
    return [*trunk[:1], *sorted(legs, key=girth), *trunk[1:], *sorted(over, key=girth)]


def _found(
    made: Made,
    garment: MadeGarment,
    rest: AtRest,
    cloths: Mapping[str, Fabric],
    form: Form,
    treated: tuple[TreatedHem, ...],
    slides: Slides | None = None,
    sank: Sunk | None = None,
) -> WornGarment:
    """Return what is found on a garment at rest, with its words."""
    lines = hem_lines(rest, hems_of(garment.draft))
    widths = [width for one in treated[:1] if one.hem for width in one.hem.range]
    found = GarmentWorn(
        garment=garment.name,
        settled=rest.settled,
        residual=rest.residual,
        vertices=rest.mesh.count,
        levels=levels_worn(rest, form.distance, form.levels["armpit"], cloths),
        hem=hem_worn(lines, seat_back(form), widths),
        seconds=rest.seconds,
    )
    hangs = has_tails(garment.draft) and hanging(rest.mesh).any() and rest.settled
    sits = sits_on(found.hem, form.levels["knee"]) if found.hem and hangs else ()
    puffs = puffs_told(rest, garment.draft) if rest.settled else ()
    held = held_told(slides, sank if rest.settled else None)
    words = most_serious_first((*garment_told(found), *held, *puffs, *sits, *told_treated(treated)))
    place = [g.name for g in made.garments].index(garment.name)
    return WornGarment(
        name=garment.name,
        place=place,
        rest=rest,
        shown=rest,
        cloths=cloths,
        found=found,
        treated=treated,
        words=words,
        lines=tuple(seen_edges(garment.draft, rest.mesh)),
        over=turned_over(rest, {p.name for p in garment.draft.pieces if turns_over(p)}, form.distance),
    )


def _over_one_another(garments: list[WornGarment], form: Form) -> tuple[WornGarment, ...]:
    """Return the garments, lapels and collars laid on them, each pressed inside those worn over it."""
    dressed: list[WornGarment] = []
    for garment in reversed(garments):
        over = np.zeros(len(garment.rest.mesh.sewn), bool) if garment.over is None else garment.over
        shown, hidden = laid_on(garment.rest, over, form.distance), np.zeros(len(over), bool)
        under = np.zeros(garment.rest.mesh.count, bool)
        for outer in reversed(dressed):
            shown = tucked(shown, outer.shown, form.distance)
        for outer in dressed:
            beneath = covered(shown, outer.shown, form.distance)
            hidden, under = hidden | beneath.triangles, under | beneath.points
        dressed.append(replace(garment, shown=shown, hidden=hidden, under=under))
    return tuple(reversed(dressed))


def look_of(garment: WornGarment, form: Form, *, told: bool = False) -> Look:
    """Return a garment as pictures show it; where it pulls is told only where it came to rest.

    Where it stands off is then told too, or as a shape where that is `told` beside it.
    """
    rest = garment.rest
    untold = np.full(rest.mesh.count, np.nan)
    pull = pull_share(rest, garment.cloths, form.levels["armpit"]) if rest.settled else untold
    off = distance_off(rest, form.distance) if rest.settled or told else untold
    faces = {m: cloth.colour or face(m, garment.place) for m, cloth in garment.cloths.items()}
    return Look(
        name=garment.name.replace("-", " "),
        rest=garment.shown,
        faces=faces,
        pull=pull,
        off=off,
        lines=garment.lines,
        over=garment.over,
        hidden=garment.hidden,
        under=garment.under,
    )


def form_words(costume: Worn) -> tuple[Remark, ...]:
    """Return what is said of every worn costume."""
    left_out = (remark("shape.left_out", garment=name, why=why) for name, why in costume.left_out)
    return (remark("always.form"), remark("always.untrusted"), *left_out)
