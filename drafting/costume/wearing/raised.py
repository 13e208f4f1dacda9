"""A costume that hangs at rest, once more with its arms raised: in steps, each begun where the last came to rest.

Worn -> for each garment, for each stance: carried with the arms -> at rest; what rose -> Worn
"""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import numpy as np

from drafting.body import Body
from drafting.costume.make import Made
from drafting.costume.telling import Tell, tell_nobody, within
from drafting.costume.wearing.sewn import usual_thickness
from drafting.costume.wearing.told import told_on_the_way
from drafting.costume.wearing.worn import Worn, WornGarment, dressed_over, found_worn, worn
from drafting.draft.by_role import edges_as
from drafting.draft.roles import EdgeRole
from drafting.ground.names import name_in_words
from drafting.worn.form import RAISED, RAISING, Form, Stance, arms_held, wearers_form
from drafting.worn.nouns import AtRest
from drafting.worn.picture.tucked import kept_off
from drafting.worn.placed.lifted import lifted
from drafting.worn.settled.search import Limits
from drafting.worn.settled.settle import at_rest
from drafting.worn.stands.hems import hems_of
from drafting.worn.stands.risen import Reached, Risen, risen, risen_told
from drafting.worn.stands.words import remark

ON_THE_WAY = Limits(residual=0.5, steps=150)
"""How long a garment is looked after at a stance that is only passed through."""

THERE = Limits(steps=600)
"""How long it is looked after with its arms up: a shirt takes some 150 steps."""

STILL = 0.1
"""mm: what moves less from one stance to the next has nothing to do with the arms (ours)."""

LOWER = 100.0
"""mm: a garment whose upper edge lies so much lower than another's is worn below it (ours)."""


def form_so(wearer: Body, stance: Stance) -> Form:
    """Return a wearer's form with its arms held so. Raises `DraftError` for measures that make no figure."""
    return arms_held(wearers_form(wearer), RAISED) if stance is RAISED else wearers_form(wearer, stance)


def worn_so(made: Made, stance: Stance, tell: Tell = tell_nobody) -> Worn:
    """Return a costume worn with the arms held so: `RAISED` once it hangs at rest, and without treatments.

    Raises `DraftError` where no form can be made of these measures.
    """
    if stance is not RAISED:
        return worn(made, tell, stance=stance)
    return arms_raised(worn(made, within(tell, 0.0, 0.6), treat=False), within(tell, 0.6, 1.0))


def arms_raised(costume: Worn, tell: Tell = tell_nobody) -> Worn:
    """Return a costume that stands with its arms a little out (`STANDING`) as it is with them level.

    What had not come to rest is carried along and stays a shape only.
    """
    forms = [costume.form, *(arms_held(costume.form, pose) for pose in RAISING)]
    rests: list[AtRest] = []
    beneath = 0.0
    for number, garment in enumerate(costume.garments):
        each = within(tell, number / len(costume.garments), (number + 1) / len(costume.garments))
        rests.append(_raised(garment, forms, beneath, each))
        beneath += usual_thickness(garment.rest.mesh)
    rose = _rose(costume, rests, forms)
    garments = [_told(costume, i, rest, forms, rose) for i, rest in enumerate(rests)]
    return replace(costume, form=forms[-1], garments=dressed_over(garments, forms[-1]), raised=True)


def _rose(costume: Worn, rests: list[AtRest], forms: list[Form]) -> list[Risen]:
    """Return how each garment went up with the arms."""
    return [
        risen(garment.rest, rest, (forms[0], forms[-1]), hems_of(costume.made[garment.name].draft))
        for garment, rest in zip(costume.garments, rests, strict=True)
    ]


def _raised(garment: WornGarment, forms: list[Form], beneath: float, tell: Tell) -> AtRest:
    """Return a garment carried from form to form, at rest on the last; what goes along with no arm stays."""
    rest, words, count = garment.rest, f"Raising the arms: {name_in_words(garment.name)}", len(forms) - 1
    for step, (before, after) in enumerate(pairwise(forms)):
        moved = lifted(rest.mesh, rest.points, before, after)
        if np.abs(moved - rest.points).max() < STILL:
            continue
        limits = THERE if step == count - 1 else ON_THE_WAY
        limits = told_on_the_way(limits, within(tell, step / count, (step + 1) / count), words)
        start = replace(rest, points=kept_off(moved, after.distance))
        rest = at_rest(rest.mesh, start, after.distance, limits, beneath=beneath)
    return rest if garment.rest.settled else replace(rest, settled=False)


def _told(costume: Worn, number: int, rest: AtRest, forms: list[Form], rose: list[Risen]) -> WornGarment:
    """Return a garment with its arms up, and what is to be said of it that is not said of it hanging."""
    garment = costume.garments[number]
    made = costume.made[garment.name]
    now = found_worn(costume.made, made, rest, garment.cloths, forms[-1], ())
    if not now.found.settled:
        return now
    if rest is garment.rest:
        return replace(now, words=(remark("raised.apart"),))
    pulls = () if garment.found.slid else tuple(one for one in now.words if one.key.startswith("pull."))
    armhole = any(edges_as(piece, EdgeRole.ARMHOLE) for piece in made.draft.pieces)
    told = risen_told(rose[number], _covered(costume, number, rose), armhole=armhole)
    return replace(now, words=(*told, *pulls))


def _covered(costume: Worn, number: int, rose: list[Risen]) -> list[Reached]:
    """Return what a garment's hem reached down over with the arms down, and no other still covers with them up."""
    own, up = _top(costume, number), rose[number]
    found = []
    for other, garment in enumerate(costume.garments):
        top = _top(costume, other)
        hung = [
            at - rise
            for at, rise in ((up.front_at, up.front), (up.back_at, up.back))
            if at is not None and rise is not None
        ]
        if other == number or not hung or top >= own - LOWER or max(hung) >= top:
            continue
        ends = _highest(up)
        between = (i for i in range(len(rose)) if i not in (number, other))
        if not any(_highest(rose[i]) < top and _top(costume, i) > ends for i in between):
            crotch = any(edges_as(p, EdgeRole.CROTCH) for p in costume.made[garment.name].draft.pieces)
            found.append(Reached(name_in_words(garment.name), top, has_rise=crotch))
    return found


def _top(costume: Worn, number: int) -> float:
    """Return how high a garment reaches, mm."""
    return float(costume.garments[number].rest.points[:, 2].max())


def _highest(up: Risen) -> float:
    """Return how high a hem hangs with the arms up, where that is highest, mm; what has none covers nothing."""
    return max((at for at in (up.front_at, up.back_at) if at is not None), default=math.inf)
