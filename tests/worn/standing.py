"""A costume on a made-up form: a post for a wearer, tubes for garments, worked out by hand."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any, cast

import numpy as np

from drafting.costume.file import read_costume
from drafting.costume.make import Made, finished
from drafting.costume.wearing.worn import Worn, WornGarment
from drafting.fabric import Fabric
from drafting.ground.shipped import demo_costume
from drafting.worn.contact import DistanceField
from drafting.worn.nouns import AtRest, Surface
from drafting.worn.stands.hems import hem_lines, hem_worn
from drafting.worn.stands.levels import levels_worn
from drafting.worn.stands.model import GarmentWorn
from drafting.worn.stands.told import garment_told, told_treated
from drafting.worn.stands.treated import TreatedHem
from tests.worn.made_up import post, tube
from tests.worn.posts import post_field

RADIUS, ARMHOLE = 150.0, 1400.0


@dataclass(frozen=True)
class PostMeasure:
    name: str
    wanted: float
    got: float


@dataclass(frozen=True, eq=False)
class PostForm:
    """A wearer as round and as upright as a post."""

    distance: DistanceField
    surface: Surface
    report: tuple[PostMeasure, ...] = (PostMeasure("waist_girth", 942.0, 942.5),)

    @property
    def levels(self) -> dict[str, float]:
        return {"armpit": ARMHOLE, "hip": 850.0, "waist": 1050.0, "knee": 480.0}

    def contour(self, height: float) -> Any:
        turn = np.linspace(0, 2 * math.pi, 60, endpoint=False)
        return np.column_stack((RADIUS * np.cos(turn), RADIUS * np.sin(turn)))


def one_garment(name: str = "shirt", unit: str = "cm") -> Made:
    """Return one garment of the lamplighter, drafted."""
    costume = read_costume(demo_costume())
    only = tuple(garment for garment in costume.garments if garment.name == name)
    return finished(replace(costume, garments=only, unit=unit))


def worn_post(rest: AtRest | None = None, *, unit: str = "cm", treated: bool = False) -> Worn:
    """Return a shirt that is a tube, on a post for a wearer."""
    rest = tube(RADIUS + 20, 800, 1200) if rest is None else rest
    rest = replace(rest, mesh=replace(rest.mesh, garment="shirt"))
    form = PostForm(post_field(RADIUS), post(RADIUS, 1600))
    lines = hem_lines(rest, [("body", "hem")])
    hems = tuple(TreatedHem(n, hem_worn(lines, RADIUS), lines) for n in ("plain", "boned")) if treated else ()
    found = GarmentWorn(
        garment="shirt",
        settled=rest.settled,
        residual=rest.residual,
        vertices=rest.mesh.count,
        levels=levels_worn(rest, form.distance, ARMHOLE, {}),
        hem=hem_worn(lines, RADIUS),
    )
    cloths = {"": Fabric("cotton")}
    garment = WornGarment(
        name="shirt",
        place=0,
        rest=rest,
        shown=rest,
        cloths=cloths,
        found=found,
        treated=hems,
        words=(*garment_told(found), *told_treated(hems)),
    )
    return Worn(one_garment(unit=unit), cast(Any, form), (garment,), (), 1.0)
