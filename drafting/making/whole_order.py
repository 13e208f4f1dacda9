"""The whole order of a costume: from the bolts to the finished garments, numbered."""

from __future__ import annotations

from collections.abc import Mapping

from drafting.costume.make import Made
from drafting.making.cutting_work import cutting_steps
from drafting.making.model import Setting, Step
from drafting.making.order import in_waiting_time, sewing_steps, toile_steps
from drafting.making.treating import treating_steps


def work_order(made: Made, sewn: Mapping[tuple[str, str], Setting]) -> tuple[Step, ...]:
    """Return every step from the bolts to the finished garments, numbered."""
    fabrics, blade = made.costume.fabrics, made.costume.workroom.blade
    sewing = [
        step for garment in made.garments for step in sewing_steps(garment, fabrics.get(garment.fabric), sewn)
    ]
    toiles = toile_steps(made, sewing)
    return in_waiting_time([*treating_steps(made), *toiles, *cutting_steps(made, blade), *sewing])
