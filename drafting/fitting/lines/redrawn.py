"""What follows pieces that were drawn anew: their level lines, what lies behind them, and the girths as told."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from drafting.draft.draft import Draft
from drafting.fitting.lines.altered import girth_told
from drafting.fitting.lines.behind import brought_along
from drafting.fitting.lines.shift import Reshaped, stays, with_levels


def with_followers(draft: Draft, found: Mapping[str, Reshaped]) -> Draft:
    """Return the draft with pieces drawn anew and all that follows them."""
    relaid = {name: replace(one, after=with_levels(one, stays)) for name, one in found.items()}
    relaid |= brought_along(draft, relaid)
    now = draft.with_pieces(one.after for one in relaid.values())
    return replace(now, girths=tuple(girth_told(girth, draft, now) for girth in draft.girths))
