"""Choices of which both hands of a wearer need one value: one zip closes both fronts."""

from __future__ import annotations

from dataclasses import replace

from drafting.blocks import all_blocks
from drafting.costume.choices import Chosen
from drafting.draft.draft import Draft
from drafting.draft.two_sides import ALIKE


def agreed_choices(chosen: Chosen, left: Draft, right: Draft) -> Chosen:
    """Return the choices, those that both hands share as the smaller hand has them."""
    parts = dict(chosen.parts)
    for name, choices in chosen.parts.items():
        for choice, fact in all_blocks()[name].shared.items():
            made = [draft.facts.get(fact, 0.0) for draft in (left, right)]
            if max(made) - min(made) > ALIKE:
                parts[name] = replace(choices, **{choice: min(made)})
    return chosen if parts == chosen.parts else replace(chosen, parts=parts)
