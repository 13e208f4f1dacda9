"""Rules of the order: nothing is sewn through, pressed, fused, closed or turned too early, nor done too late.

    tried          before it is tried on, before it has hung
    flat           while a piece lies flat
    small          small things: made up, turned, joined on, closed
    rounds_closed  in the round
    inside         before the lining closes the inside; what fastens
    cloth          what the cloth and the draft ask for
    bearers        the bearers of a fall front
    lacking        what is neither cut nor bought

Each rule reads the steps of one garment in their order and yields what breaks it. All are common practice.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.costume.make import Made
from drafting.making.model import Step
from drafting.making.rules import cloth, flat, inside, rounds_closed, small, tried
from drafting.making.rules.asking import OrderRule
from drafting.making.rules.bearers import bearers_first
from drafting.making.rules.lacking import nothing_lacking


def out_of_order(made: Made, steps: Sequence[Step]) -> Iterator[str]:
    """Yield every rule that an order of work breaks, garment by garment."""
    for garment in made.garments:
        own = [step for step in steps if step.garment == garment.name and step.verb != "toile"]
        fabric = made.costume.fabrics.get(garment.fabric)
        for rule in RULES:
            yield from (f"{garment.name}: {wrong}" for wrong in rule(garment, fabric, own))


RULES: tuple[OrderRule, ...] = (
    tried.tried_first,
    tried.hung_first,
    tried.sleeves_tried,
    flat.stiffened_flat,
    flat.shaped_flat,
    flat.sewn_on_flat,
    flat.neatened_before,
    flat.flat_first,
    flat.hems_stiffened,
    flat.trimmed_in_time,
    flat.gathered_whole,
    small.made_first,
    small.made_before_it_is_on,
    small.turned_last,
    small.closed_last,
    rounds_closed.faced_whole,
    rounds_closed.hems_faced_in_time,
    bearers_first,
    rounds_closed.set_in_round,
    rounds_closed.ended_in_time,
    rounds_closed.facing_ends_last,
    rounds_closed.flies_first,
    inside.lined_last,
    inside.sleeves_lined_last,
    inside.hung_joined,
    inside.caught_in_time,
    inside.barred_when_finished,
    inside.sewn_on_finished,
    inside.fastened_last,
    inside.starched_in_time,
    cloth.neatened_once,
    cloth.starched_once,
    cloth.holed_as_drawn,
    nothing_lacking,
)
