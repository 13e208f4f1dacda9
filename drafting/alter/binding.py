"""Binding: a strip along every neckline and armhole that nothing else is sewn to.

The strip is cut on the bias, or the way a knit gives; it is sewn to the edge, turned inside and
stitched down along its inner edge.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.scale import body_scale
from drafting.ground.sources import practice
from drafting.shaping.details.bound_edges import bound_edges
from drafting.shaping.details.small_pieces import turned_under


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about strips along raw edges."""

    strip_width: float = choice(
        12.0,
        "mm",
        "how wide a strip along a neckline or armhole shows inside",
        low=5,
        high=60,
        group="facings",
        source=practice("⟨8⟩ to ⟨15⟩"),
    )


def binding(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with a strip along each neckline and armhole that is still raw."""
    for role in (EdgeRole.NECK, EdgeRole.ARMHOLE):
        draft = bound_edges(draft, fabric, role, choices.strip_width, turned_under(body_scale(body)))
    return draft
