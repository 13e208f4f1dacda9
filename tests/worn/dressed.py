"""Garments come to rest on a wearer's own form or on another's, kept for every test of a run that asks again."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

import numpy as np

from drafting.body import Body, wearer
from drafting.costume.wearing.sewn import COARSE, FINE, coarse_mesh
from drafting.draft.draft import Draft
from drafting.fabric import Fabric
from drafting.worn.cloth import ply_of
from drafting.worn.form import Form, wearers_form
from drafting.worn.nouns import AtRest, Limb, Ply, SewnMesh, Whole
from drafting.worn.placed import placed
from drafting.worn.placed.braces import held_up, slides_down
from drafting.worn.settled import Limits, from_coarse
from drafting.worn.sewn import sewn_mesh
from drafting.worn.stands.levels import levels_worn
from drafting.worn.stands.model import LevelWorn
from tests.worn.garments import KNIT, drafted

LIMITS = Limits(steps=1500)

TAKEN = {
    "height": 1700.0,
    "bust_girth": 900.0,
    "waist_girth": 720.0,
    "hip_girth": 970.0,
    "neck_base_girth": 364.5,
    "neck_girth": 325.6,
    "back_waist_length": 420.2,
    "shoulder_length": 143.8,
    "shoulder_drop": 55.2,
    "across_back_width": 368.7,
    "across_back_low_width": 398.1,
    "across_front_width": 346.6,
    "high_bust_girth": 887.3,
    "under_bust_girth": 753.5,
    "upper_arm_girth": 280.2,
    "arm_length": 571.3,
    "upper_arm_length": 324.4,
    "forearm_girth": 266.6,
    "elbow_girth": 273.4,
    "wrist_girth": 158.7,
    "hand_girth": 192.7,
    "axilla_depth": 172.8,
    "scye_depth": 219.8,
    "bust_point_depth": 247.0,
    "bust_point_width": 180.0,
    "waist_to_hip": 208.9,
    "nape_height": 1464.6,
    "body_rise": 249.6,
    "inside_leg_length": 819.9,
    "outside_leg_length": 1069.5,
    "total_crotch_length": 692.1,
    "back_crotch_length": 391.2,
    "thigh_girth": 586.9,
    "calf_girth": 370.8,
    "lower_thigh_girth": 388.7,
    "knee_girth": 370.5,
    "ankle_girth": 218.7,
    "heel_girth": 326.7,
    "knee_height": 472.1,
}
"""mm: an invented wearer of a chart's middle size, every measure given, so that no estimate enters."""


def trial_wearer(larger: float = 0.0) -> Body:
    """Return the wearer of whom all is taken, or one with bust, waist and hip this much larger."""
    return wearer(TAKEN | {name: TAKEN[name] + larger for name in ("bust_girth", "waist_girth", "hip_girth")})


def plies_for(block: str) -> Mapping[str, Ply]:
    """Return cotton, or jersey for what is drafted for it."""
    ply = ply_of(KNIT if block.startswith(("close", "puffed")) else Fabric("cotton"))
    return {"": ply, "interfacing": ply, "lining": ply}


def on_form(draft: Draft, name: str, form: Form, *, mesh: float = FINE, shaken: float = 0.0) -> AtRest:
    """Return a draft at rest on a form; it starts `shaken` mm (standard deviation) out of its place."""
    coarse, size = coarse_mesh(draft, name, plies_for(name), form)
    fine = sewn_mesh(draft, name, plies_for(name), size * mesh / COARSE)
    start = placed(coarse, form)
    if slides := slides_down(coarse, start, form):
        coarse, fine = held_up(coarse, slides), held_up(fine, slides)
    if shaken:
        start = start + np.random.default_rng(4).normal(size=start.shape) * shaken
        start[coarse.on_middle, 0] = 0.0
    return from_coarse(coarse, fine, start, form.distance, LIMITS)


@cache
def dressed(
    block: str, larger: float = 0.0, mesh: float = FINE, shaken: float = 0.0, ease: float | None = None
) -> AtRest:
    """Return a block drafted for the trial wearer, at rest on that wearer or on one `larger`."""
    draft = drafted(block, trial_wearer(), None if ease is None else {"bust_ease": ease})
    return on_form(draft, block, the_form(larger), mesh=mesh, shaken=shaken)


@cache
def the_form(larger: float = 0.0) -> Form:
    return wearers_form(trial_wearer(larger))


def levels(rest: AtRest, form: Form) -> dict[str, LevelWorn]:
    return {one.name: one for one in levels_worn(rest, form.distance, form.levels["armpit"], {})}


def hem_height(rest: AtRest, *hems: tuple[str, str]) -> float:
    """Return the mean height of hems over the floor, mm."""
    return float(np.concatenate([rest.points[rest.mesh.edges[ref], 2] for ref in hems]).mean())


def of_legs(mesh: SewnMesh) -> Whole:
    """Return the sewn vertices that belong to legs."""
    legs = [index for index, piece in enumerate(mesh.pieces) if piece.limb is Limb.LEG]
    found: Whole = np.unique(mesh.sewn[np.isin(mesh.piece, legs)])
    return found
