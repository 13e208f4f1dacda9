"""Costumes of one garment and their orders of work, for the tests. Invented cloths."""

from __future__ import annotations

from dataclasses import replace

from drafting.body import Body
from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.fabric import Fabric
from drafting.making.model import Step
from drafting.making.order import in_waiting_time, sewing_steps
from drafting.making.settings import settings
from tests.making.figures import made

WOVEN = Fabric(
    "Twill, invented", usable_width=1480.0, fibre="cotton", mass=210.0, thickness=0.5, takes_starch=True
)
KNIT = Fabric(
    "Jersey, invented",
    usable_width=1500.0,
    weave="knit",
    fibre="viscose, elastane",
    mass=220.0,
    thickness=0.7,
    stretch_along=0.5,
    stretch_across=0.6,
    recovery=0.97,
    takes_fusible=False,
)


def costume_of(garment: MadeGarment, fabric: Fabric) -> Made:
    base = made("kite")
    return replace(base, garments=(garment,), costume=replace(base.costume, fabrics={garment.fabric: fabric}))


def order_of(costume: Made) -> tuple[Step, ...]:
    sewn = settings(costume)
    return in_waiting_time(
        [step for g in costume.garments for step in sewing_steps(g, costume.costume.fabrics, sewn)]
    )


def first(steps: tuple[Step, ...], garment: str, verb: str) -> int:
    return next(s.n for s in steps if s.garment == garment and s.verb == verb)


def uneven(body: Body, by: float = 8.0) -> Body:
    """Return the body with one shoulder `by` mm lower, the other as much higher."""
    drop = body.measures["shoulder_drop"]
    sides = replace(drop, left=drop.mm - by, right=drop.mm + by)
    return replace(body, measures={**body.measures, "shoulder_drop": sides})
