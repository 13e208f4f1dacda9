"""The whole order of a costume: from the bolts to the finished garments, numbered."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from drafting.costume.make import Made
from drafting.making.cutting_work import cutting_steps
from drafting.making.model import Setting, Step, said
from drafting.making.order import in_waiting_time, sewing_steps, toile_steps
from drafting.making.starting import LINING_LAST
from drafting.making.treating import treating_steps


def work_order(made: Made, sewn: Mapping[tuple[str, str], Setting]) -> tuple[Step, ...]:
    """Return every step from the bolts to the finished garments, numbered."""
    fabrics, blade = made.costume.fabrics, made.costume.workroom.blade
    sewing = [step for garment in made.garments for step in sewing_steps(garment, fabrics, sewn)]
    toiles, cuts = toile_steps(made, sewing), cutting_steps(made, blade)
    after = _after_fittings(made, cuts, sewing)
    cuts = tuple(replace(cut, say=(*cut.say, CUT_LAST)) if cut.key in after else cut for cut in cuts)
    return in_waiting_time([*treating_steps(made), *toiles, *cuts, *sewing], after)


CUT_LAST = said(LINING_LAST)


def _after_fittings(made: Made, cuts: Sequence[Step], sewing: Sequence[Step]) -> dict[str, set[str]]:
    """Return for each lay of linings alone the first fittings of its garments: what those change is changed in the
    lining before it is cut (common practice)."""
    linings = {
        f"{g.name}.{p.name}": g.name for g in made.garments for p in g.draft.pieces if p.material == "lining"
    }
    fits = {step.garment: step.key for step in reversed(sewing) if step.verb == "fit"}
    waits = {
        cut.key: {fits[linings[name]] for name in cut.pieces if linings[name] in fits}
        for cut in cuts
        if {*cut.pieces} <= linings.keys()
    }
    return {key: keys for key, keys in waits.items() if keys}
