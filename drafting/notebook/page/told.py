"""What a page tells of a costume in sentences. No widgets."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from drafting.making import planned
from drafting.making.treating import treating_steps
from drafting.making.words import plan_sentence
from drafting.notebook.living.living import Living

Tells = Callable[[Living], tuple[str, ...]]


def workroom(living: Living) -> tuple[str, ...]:
    """Return what would be easier in another workroom."""
    remarks = tuple(plan_sentence(remark, living.asked.told_in) for remark in planned(living.laid()).remarks)
    return remarks or ("Nothing would be easier with more than you have.",)


def cloths(living: Living) -> tuple[str, ...]:
    """Return each cloth with how far it stretches."""
    return tuple(
        f"{role}: {cloth.title}; stretches {100 * cloth.stretch_along:.0f} % along, "
        f"{100 * cloth.stretch_across:.0f} % across"
        for role, cloth in living.asked.fabrics.items()
    )


def making_ready(living: Living) -> tuple[str, ...]:
    """Return what each cloth needs before it is cut."""
    return tuple(
        " ".join(plan_sentence(said, living.asked.told_in) for said in step.say)
        for step in treating_steps(living.made)
    )


TOLD: Mapping[str, Tells] = {"workroom": workroom, "cloths": cloths, "making ready": making_ready}
