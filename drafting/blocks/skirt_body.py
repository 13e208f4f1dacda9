"""Skirt body: a skirt below its waist seam, straight with darts, in gores, in a part of a circle, or in tiers.

The wearer's left half, seen from outside, the front to the left. It opens at the centre back or front.

        front                  back               a gore            part of a circle
    waist   dart           dart   waist           waist                 waist
     .---\\/---.           .---\\/---.              .--.                  .-.
     |         \\         /          |            /    \\               .'   '.
     |centre    \\ side  / side      | centre    /front \\ back        /       \\
     |           |      |           |          |        |           '-.      .-'
     |           |      |           |         /          \\             '----'
     '-----------'      '-----------'         '----------'               hem
          hem                hem                  hem
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.roles import EdgeRole
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.sources import AS_ASKED, Source, cite, practice
from drafting.shaping.skirt.cuts import BY_THE_HEM, circle_skirt, gored_skirt, straight_skirt, tiered_skirt
from drafting.shaping.skirt.plan import SkirtPlan, skirt_plan

CIRCLES = {"quarter circle": 90.0, "half circle": 180.0, "three-quarter circle": 270.0, "full circle": 360.0}
"""The angle of each cut, degrees."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the skirt. Eases are garment minus body, in mm."""

    skirt_cut: str = choice(
        "straight",
        "word",
        "shaped by darts, by the seams of gores, as a part of a circle, or gathered in tiers",
        words=("straight", "gored", *CIRCLES, "tiered"),
        group="style",
        source=practice(),
    )
    waist_ease: float = choice(
        16.0,
        "mm",
        "garment minus body at the waist",
        low=-100,
        high=300,
        scales=True,
        source=cite(Source.EASE_IN_CLOTHING, "⟨13⟩ to ⟨19⟩ for skirts"),
    )
    hip_ease: float = choice(
        55.0,
        "mm",
        "garment minus body at the hip, of a straight or gored skirt",
        low=0,
        high=400,
        step=5,
        scales=True,
        source=cite(Source.EASE_IN_CLOTHING, "⟨51⟩ at the least"),
    )
    skirt_ends: str = choice(
        "knee",
        "word",
        "where the skirt ends, unless skirt_length says it",
        words=("above the knee", "knee", "mid-calf", "ankle", "floor"),
        group="length",
        source=practice(),
    )
    skirt_length: float = choice(
        0.0,
        "mm",
        "from the waist seam to the hem; 0 leaves it to skirt_ends",
        low=0,
        high=1500,
        step=10,
        group="length",
        source=AS_ASKED,
    )
    skirt_opens: str = choice(
        "back",
        "word",
        "where the zip is",
        words=("back", "front"),
        group="closing",
        source=practice("at the back or the left side"),
    )
    hem_more: float = choice(
        0.0,
        "mm",
        "how much wider the hem of a straight skirt is than the hip; its side seams flare",
        low=0,
        high=500,
        step=10,
        group="style",
        scales=True,
        source=practice("0 straight, ⟨120⟩ to ⟨240⟩ for an A-line"),
    )
    walking_slit: str = choice(
        BY_THE_HEM,
        "word",
        "a slit to walk in at the centre that opens, of a straight skirt; by the hem: where that measures less "
        "than a step asks for, with all that style and fullness let into it",
        words=(BY_THE_HEM, "yes", "none"),
        group="style",
        source=practice(),
    )
    gores: float = choice(
        8.0,
        "count",
        "gores of the whole skirt, an even number; seams lie at the centre front and back",
        low=4,
        high=12,
        step=2,
        group="style",
        source=practice("4, 6, 8, 10 or 12"),
    )
    gore_hem: float = choice(
        1.7,
        "ratio",
        "hem of a gored skirt, times its hip",
        low=1.0,
        high=5.0,
        step=0.1,
        group="style",
        source=practice("1.5 to 2 to the knee, 3 and more for a trumpet"),
    )
    circle_grain: str = choice(
        "edge",
        "word",
        "the warp of a part of a circle: along the centre front and back, or down the middle of each panel",
        words=("edge", "middle"),
        group="style",
        source=practice("either; along the edge the sides hang on the bias"),
    )
    tiers: float = choice(
        3.0, "count", "tiers of a tiered skirt", low=1, high=6, group="style", source=practice("3 to 5")
    )
    tier_fullness: float = choice(
        1.5,
        "ratio",
        "how much wider each tier is than the edge it is gathered to; one too wide for its cloth has strips "
        "between its front and back, tier-3-side-1 and so on, with the edges of the front",
        low=1.0,
        high=3.0,
        step=0.1,
        group="style",
        source=practice("1.5 to 2"),
    )


def skirt_body(body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the skirt below its waist seam.

    Raises `DraftError` where it would end on the hip or below the floor, where darts cannot shape the waist, and
    where no panel of a circle fits on the cloth.
    """
    plan = skirt_plan(
        body,
        fabric,
        eases=(choices.waist_ease, choices.hip_ease),
        ends=choices.skirt_ends,
        length=choices.skirt_length,
        opens=choices.skirt_opens,
    )
    draft = _cut(plan, fabric, choices)
    return replace(draft, chains={"waist": _waist(draft)})


def _cut(plan: SkirtPlan, fabric: Fabric | None, choices: Choices) -> Draft:
    if choices.skirt_cut == "straight":
        return straight_skirt(plan, choices.hem_more, choices.walking_slit)
    if choices.skirt_cut == "gored":
        return _gored(plan, choices)
    if choices.skirt_cut == "tiered":
        return tiered_skirt(
            plan, round(choices.tiers), choices.tier_fullness, fabric.thickness if fabric else None
        )
    return circle_skirt(plan, CIRCLES[choices.skirt_cut], choices.circle_grain == "edge")


def _gored(plan: SkirtPlan, choices: Choices) -> Draft:
    even = 2 * math.ceil(choices.gores / 2)
    draft = gored_skirt(plan, even, choices.gore_hem)
    if even == choices.gores:
        return draft
    said = f"The whole skirt has {even} gores, not {choices.gores:g}: with seams at centre front and back their "
    said += f"number is even. For fewer choose {even - 2}."
    return replace(
        draft, findings=(*draft.findings, Finding("gores", "warning", "gores", float(even), choices.gores, said))
    )


def _waist(draft: Draft) -> tuple[EdgeRef, ...]:
    """Return the waist from centre back to centre front; pieces stand from front to back."""
    pieces = [p for p in reversed(draft.pieces) if edges_as(p, EdgeRole.WAIST)]
    return tuple((piece.name, edge.name) for piece in pieces for edge in edges_as(piece, EdgeRole.WAIST))
