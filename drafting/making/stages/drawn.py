"""Every drawing of a plan, by the step's key: the garments sewn on paper, step after step."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.costume.make import Made
from drafting.making.model import Step
from drafting.making.stages.bolts import made_ready
from drafting.making.stages.cut_out import laid_out_to_cut
from drafting.making.stages.figures import after, figure
from drafting.making.stages.inked import Inked, inked
from drafting.making.stages.picture import StageDrawing
from drafting.making.stages.shapes import goods_of
from drafting.making.stages.so_far import SoFar, nothing_sewn
from drafting.making.words import text


def drawings(made: Made, steps: Sequence[Step]) -> dict[str, Inked]:
    """Return the drawing of every step that has one, in the order of the work."""
    lays = {f"{lay.role}/cut": lay for lay in made.lays}
    found = {
        step.key: inked(laid_out_to_cut(lays[step.key]), text(step.say[0]))
        for step in steps
        if step.stage == "cut" and step.key in lays
    }
    found |= {step.key: inked(ready, text(step.say[0])) for step, ready in _bolts(made, steps)}
    for step, _, drawing in sewn_on_paper(made, steps):
        if drawing is not None:
            found[step.key] = inked(drawing, text(step.say[0]))
    return found


def _bolts(made: Made, steps: Sequence[Step]) -> Iterator[tuple[Step, StageDrawing]]:
    """Yield the drawings of cloths made ready, each kind of work at the first cloth that needs it."""
    shown: set[str] = set()
    for step in steps:
        lay = next((lay for lay in made.lays if step.key == f"{lay.role}/{step.verb}"), None)
        if step.stage == "treat" and lay is not None and (work := step.say[0].key.partition(".")[2]) not in shown:
            shown.add(work)
            ready = made_ready(work, lay)
            if ready is not None:
                yield step, ready


def sewn_on_paper(made: Made, steps: Sequence[Step]) -> Iterator[tuple[Step, SoFar, StageDrawing | None]]:
    """Yield each step on a garment, the garment as it is when the step begins, and the step's drawing."""
    so_far = {garment.name: nothing_sewn(goods_of(garment)) for garment in made.garments}
    for step in steps:
        if step.garment in so_far:
            yield step, so_far[step.garment], figure(so_far[step.garment], step)
            so_far[step.garment] = after(so_far[step.garment], step)
