"""Every drawing of a plan, by the step's key: the garments sewn on paper, step after step."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.costume.make import Made
from drafting.making.model import Step
from drafting.making.stages.figures import after, figure
from drafting.making.stages.inked import Inked, inked
from drafting.making.stages.shapes import goods_of
from drafting.making.stages.so_far import nothing_sewn
from drafting.making.words import text


def drawings(made: Made, steps: Sequence[Step]) -> dict[str, Inked]:
    """Return the drawing of every step that has one, in the order of the work."""
    by_garment = {garment.name: nothing_sewn(goods_of(garment)) for garment in made.garments}
    found: dict[str, Inked] = {}
    for step in steps:
        so_far = by_garment.get(step.garment)
        if so_far is None:
            continue
        drawing = figure(so_far, step)
        if drawing is not None:
            found[step.key] = inked(drawing, text(step.say[0]))
        by_garment[step.garment] = after(so_far, step)
    return found
