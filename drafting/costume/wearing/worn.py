"""A costume on the wearer's form: each garment sewn, placed, settled, measured, and told.

Made -> form; for each garment: plies -> mesh -> placed -> settled -> levels, hem, words -> Worn
"""

from __future__ import annotations

import time
from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from drafting.costume.make import Made, MadeGarment
from drafting.costume.telling import Tell, tell_nobody, within
from drafting.costume.wearing.seen import seen_buttons, seen_edges, turns_over
from drafting.costume.wearing.sewn import (
    FINE,
    Sewn,
    braced,
    cloths_of,
    coarse_mesh,
    fused_plies,
    plies_of,
    sewn_and_placed,
    usual_thickness,
)
from drafting.costume.wearing.told import told_on_the_way
from drafting.costume.wearing.treated import free_hems, has_tails, seat_back, too_much, treated_hems
from drafting.costume.wearing.tucks import tucks_sewn
from drafting.draft.draft import EdgeRef
from drafting.fabric import Fabric
from drafting.ground.frozen import freeze
from drafting.ground.names import name_in_words
from drafting.sheet.faces import face
from drafting.worn.form import STANDING, Form, Stance, wearers_form
from drafting.worn.nouns import AtRest, Truth
from drafting.worn.picture.buttons import SeenButton
from drafting.worn.picture.drawn_in import drawn_in
from drafting.worn.picture.dressed import Look
from drafting.worn.picture.lapels import laid_on, turned_over
from drafting.worn.picture.maps import distance_off, pull_share
from drafting.worn.picture.tucked import covered, tucked
from drafting.worn.placed import placed
from drafting.worn.placed.braces import Slides, Sunk, held_up, slides_down, sunk
from drafting.worn.settled.search import Limits
from drafting.worn.settled.settle import LOOSE, at_rest, from_coarse
from drafting.worn.stands.held import drawn_by_the_cut, held_told
from drafting.worn.stands.hems import hem_lines, hem_worn, hems_of
from drafting.worn.stands.hoops import hoop_of
from drafting.worn.stands.levels import levels_worn
from drafting.worn.stands.model import GarmentWorn, LevelWorn
from drafting.worn.stands.puffs import puffs_told
from drafting.worn.stands.told import (
    garment_told,
    most_serious_first,
    on_the_floor,
    sits_on,
    told_once,
    told_treated,
)
from drafting.worn.stands.treated import TreatedHem
from drafting.worn.stands.words import Remark, remark

FULL = Limits(steps=1000)
"""How long one garment is looked after before it is shown as a shape only: four times what any shipped one takes;
a circle cape to the ankle takes 655."""

PUT_ON = 0.15
"""Share of a garment's way to rest that its coarse mesh takes (a shirt 0.1, a coat 0.18)."""

SHAPE = Limits(residual=1.0, steps=80)
"""A shape to look at while a hand rests: nothing is told of it in numbers."""


@dataclass(frozen=True, eq=False)
class WornGarment:
    """A garment at `rest`, as it is `shown` beneath others, what was found, and what is to be said.

    `cloths` are the fabrics of its pieces by material ("": its own); `treated` the hem under each treatment;
    `lines` the edges that pictures show, `over` (T,) the triangles that are turned over and lie on the rest,
    `hidden` (T,) those that others cover, `under` (count,) the sewn points beneath others' cloth, `buttons` those
    that pictures show.
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
    buttons: tuple[SeenButton, ...] = ()

    def __post_init__(self) -> None:
        freeze(self, "cloths")


@dataclass(frozen=True, eq=False)
class Worn:
    """A costume on the form, the innermost garment first; `left_out` says which could not be sewn, and why, and
    `raised` that the arms are up."""

    made: Made
    form: Form
    garments: tuple[WornGarment, ...]
    left_out: tuple[tuple[str, str], ...]
    seconds: float
    raised: bool = False


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
    sewn, left_out = sewn_and_placed(made, form, mesh)
    garments: list[WornGarment] = []
    beneath = 0.0
    for number, one in enumerate(sewn):
        garment, cloths, cloth = one.garment, one.cloths, one.mesh
        each = within(tell, 0.1 + 0.85 * number / len(sewn), 0.1 + 0.85 * (number + 1) / len(sewn))
        falls = treat and bool(free_hems(garment.draft, cloth))
        rest = _settled(one, form, limits, beneath, within(each, 0.0, 0.5 if falls else 1.0))
        treated = (
            tuple(treated_hems(garment, rest, cloths[""], form, beneath, within(each, 0.5, 1.0)))
            if treat and rest.settled
            else ()
        )
        sank = sunk(one.coarse, one.start, rest, form)
        garments.append(found_worn(made, garment, rest, cloths, form, treated, one.slides, sank))
        beneath += usual_thickness(cloth)
    tell("Dressing", 0.97)
    return Worn(made, form, dressed_over(garments, form), left_out, time.process_time() - start)


def _settled(one: Sewn, form: Form, limits: Limits, beneath: float, tell: Tell) -> AtRest:
    """Return a garment at rest, told at every step."""
    name = name_in_words(one.garment.name)
    first = told_on_the_way(replace(limits, residual=LOOSE), within(tell, 0.0, PUT_ON), f"Putting it on: {name}")
    limits = told_on_the_way(limits, within(tell, PUT_ON, 1.0), f"Letting it come to rest: {name}")
    return from_coarse(one.coarse, one.mesh, one.start, form.distance, limits, beneath=beneath, first=first)


def fallen_shape(made: Made, form: Form, before: AtRest | None = None) -> WornGarment:
    """Return a garment alone as a shape only: a coarse mesh, let fall for a second; raises `DraftError`.

    `before` is how it lay when it was cut a little differently.
    """
    (garment,) = (tucks_sewn(made.costume, one) for one in made.garments)
    cloths = cloths_of(made, garment)
    cloth, _ = coarse_mesh(garment.draft, garment.name, plies_of(cloths), form, fused_plies(cloths))
    start = placed(cloth, form)
    slides = slides_down(cloth, start, form, braced=braced(garment.draft))
    rest = at_rest(held_up(cloth, slides) if slides else cloth, before or start, form.distance, SHAPE)
    found = found_worn(made, garment, replace(rest, settled=False), cloths, form, (), slides)
    return dressed_over([found], form)[0]


def found_worn(
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
    slid = slides is not None or sank is not None
    found = GarmentWorn(
        garment=garment.name,
        settled=rest.settled,
        residual=rest.residual,
        vertices=rest.mesh.count,
        levels=_levels(garment, rest, cloths, form, slid),
        hem=hem_worn(lines, seat_back(form), widths, hoop_of(rest)),
        seconds=rest.seconds,
        slid=slid,
    )
    hangs = rest.settled and bool(free_hems(garment.draft, rest.mesh))
    parts, knee = has_tails(garment.draft), form.levels["knee"]
    sits = sits_on(found.hem, knee, parts=parts) if found.hem and hangs else ()
    puffs = puffs_told(rest, garment.draft) if rest.settled else ()
    held = held_told(slides, sank if rest.settled else None, on_floor=on_the_floor(found.hem))
    stiff = told_treated(treated, knee, parts=parts)
    said = told_once((*garment_told(found), *held, *puffs, *sits, *stiff, *_not_reckoned(rest, hangs)))
    words = most_serious_first(said)
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
        buttons=tuple(seen_buttons(garment.draft, rest.mesh)),
        over=turned_over(rest, {p.name for p in garment.draft.pieces if turns_over(p)}, form.distance),
    )


def _levels(
    garment: MadeGarment, rest: AtRest, cloths: Mapping[str, Fabric], form: Form, slid: bool
) -> tuple[LevelWorn, ...]:
    """Return the levels as worn; of a garment that slid, with what its own weight draws not trusted."""
    levels = levels_worn(rest, form.distance, form.levels["armpit"], cloths)
    bodies = {girth.level: girth.body for girth in garment.draft.girths}
    return drawn_by_the_cut(levels, bodies) if slid else levels


def _not_reckoned(rest: AtRest, hangs: bool) -> tuple[Remark, ...]:
    """Return that the form wears no shoe, and that a free hem takes too much cloth for its treatments."""
    bare = any(piece.frame.ahead for piece in rest.mesh.pieces)
    much = hangs and too_much(rest.mesh)
    return (*((remark("foot.bare"),) if bare else ()), *((remark("treated.too_much"),) if much else ()))


def dressed_over(garments: list[WornGarment], form: Form) -> tuple[WornGarment, ...]:
    """Return the garments, lapels and collars laid on them, each pressed inside those worn over it."""
    dressed: list[WornGarment] = []
    middle = form.contour(form.levels["hip"]).mean(axis=0)[:2]
    for garment in reversed(garments):
        over = np.zeros(len(garment.rest.mesh.sewn), bool) if garment.over is None else garment.over
        shown, hidden = laid_on(garment.rest, over, form.distance), np.zeros(len(over), bool)
        under = np.zeros(garment.rest.mesh.count, bool)
        for outer in reversed(dressed):
            points = drawn_in(shown, outer.shown, form.levels["hip"], middle)
            shown = tucked(replace(shown, points=points), outer.shown, form.distance)
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
    pull = (
        pull_share(rest, garment.cloths, form.levels["armpit"])
        if rest.settled and not garment.found.slid
        else untold
    )
    off = distance_off(rest, form.distance) if rest.settled or told else untold
    faces = {m: cloth.colour or face(m, garment.place) for m, cloth in garment.cloths.items()}
    return Look(
        name=name_in_words(garment.name),
        rest=garment.shown,
        faces=faces,
        pull=pull,
        off=off,
        lines=garment.lines,
        buttons=garment.buttons,
        over=garment.over,
        hidden=garment.hidden,
        under=garment.under,
    )


def form_words(costume: Worn) -> tuple[Remark, ...]:
    """Return what is said of every worn costume."""
    up = (remark("raised.shoulder"),) if costume.raised else ()
    sits = (remark("always.seated"),) if costume.made.costume.wearer.posture == "seated" else ()
    return (remark("always.form"), *sits, remark("always.untrusted"), *up, *left_out_words(costume))


def left_out_words(costume: Worn) -> tuple[Remark, ...]:
    """Return which garments could not be put on the form, and why, in the order of `left_out`."""
    names = ((name_in_words(name), why) for name, why in costume.left_out)
    return tuple(remark("shape.left_out", garment=name, why=why) for name, why in names)
