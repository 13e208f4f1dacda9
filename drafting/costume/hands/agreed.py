"""Choices of which both hands of a wearer need one value: one zip closes both fronts."""

from __future__ import annotations

from dataclasses import replace

from drafting.blocks import all_blocks
from drafting.costume.choices import Chosen
from drafting.draft.draft import Draft


def agreed_choices(chosen: Chosen, left: Draft, right: Draft) -> Chosen:
    """Return the choices, with one value for both hands where a block's `SHARED` asks for it."""
    parts = dict(chosen.parts)
    for name in chosen.parts:
        for choice, settle in all_blocks()[name].shared.items():
            value = settle(left, right)
            if value is not None:
                parts[name] = replace(parts[name], **{choice: value})
    return chosen if parts == chosen.parts else replace(chosen, parts=parts)
