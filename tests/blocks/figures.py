"""Bodies and short ways for the block tests: the chart woman and man, invented others.

All figures here are invented but those of the charts (tests/published.py).
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from typing import Any

from drafting.blocks import Block, all_blocks
from drafting.body import Body, wearer
from drafting.costume.choices import Chosen, choose
from drafting.costume.garment import MadeGarment, drafted, make_garment
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.walk import Walk, notched, walk
from drafting.fabric import Fabric
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin
from tests.published import named

CHART_NAMES = {
    "bust": "bust_girth",
    "chest": "bust_girth",
    "waist": "waist_girth",
    "hip": "hip_girth",
    "seat": "hip_girth",
    "back_width": "across_back_width",
    "chest_width": "across_front_width",
    "shoulder": "shoulder_length",
    "neck": "neck_base_girth",
    "top_arm": "upper_arm_girth",
    "wrist": "wrist_girth",
    "nape_to_waist": "back_waist_length",
    "scye_depth": "scye_depth",
    "waist_to_hip": "waist_to_hip",
    "sleeve": "arm_length",
    "height": "height",
}
"""What the charts' words mean here; a man's sleeve is taken from the nape there, and left out."""

FULL = {
    "height": 1680.0,
    "waist_girth": 780.0,
    "hip_girth": 1040.0,
    "neck_base_girth": 390.0,
    "shoulder_length": 125.0,
    "shoulder_drop": 45.0,
    "across_back_width": 360.0,
    "across_front_width": 330.0,
    "axilla_depth": 165.0,
    "back_waist_length": 405.0,
    "bust_point_width": 190.0,
    "upper_arm_girth": 300.0,
    "wrist_girth": 160.0,
    "hand_girth": 200.0,
    "arm_length": 590.0,
    "upper_arm_length": 335.0,
    "waist_to_hip": 200.0,
}
"""Everything but the bust that a bodice and a sleeve need, in mm: invented."""


def chart_woman(**changes: float) -> Body:
    """Return the chart woman (size 12); the chart gives no height: 1640 is invented."""
    return wearer({"height": 1640.0, **_chart("chart-woman"), **changes}, title="chart woman")


def chart_man() -> Body:
    """Return the chart man (chest 100); half the back is given there."""
    row = _chart("chart-man")
    del row["arm_length"]  # from the nape in that chart
    return wearer({**row, "across_back_width": 400.0}, title="chart man")


def _chart(name: str) -> dict[str, float]:
    found = named(name)
    return {CHART_NAMES[name]: 10 * cm for name, cm in found.items() if name in CHART_NAMES}


def full_bust(bust: float, **changes: float) -> Body:
    """Return a fully measured body with a high bust of 980 mm and this bust."""
    return wearer({**FULL, "high_bust_girth": 980.0, "bust_girth": bust, **changes})


@cache
def pair_block() -> Block:
    """Return the bodice and its sleeve, and nothing else, as one garment."""
    blocks = all_blocks()
    bodice, sleeve = blocks["bodice"], blocks["sleeve"]
    return replace(
        blocks["shirt"],
        name="bodice-and-sleeve",
        choices=(*bodice.choices, *sleeve.choices),
        parts={"bodice": {}, "sleeve": {}},
    )


def chosen_for(body: Body, choices: Mapping[str, Any]) -> Chosen:
    given = {name: Given(value) for name, value in choices.items()}
    return choose(pair_block(), given, body_scale(body), Origin())


def pair(body: Body, fabric: Fabric | None = None, **choices: Any) -> Draft:
    """Return the draft of bodice and sleeve with its notches, without finish and checks."""
    return notched(drafted(body, fabric, pair_block(), chosen_for(body, choices)))


def made(body: Body, fabric: Fabric | None = None, name: str = "pair", **choices: Any) -> MadeGarment:
    """Return bodice and sleeve drafted, finished and checked."""
    return make_garment(body, fabric, pair_block(), chosen_for(body, choices), name=name, role="shell")


def walked(draft: Draft, name: str) -> Walk:
    """Return the walk of the seam of this name."""
    return walk(draft, next(seam for seam in draft.seams if seam.name == name))


def level(draft: Draft, piece: str, name: str) -> float:
    """Return the length (mm) of a level line as drawn on a half piece, darts left out."""
    return next(v.length for v in draft[piece].levels if v.name == name)


def girth(draft: Draft, name: str) -> float:
    """Return the finished girth (mm) at a torso level: twice what both half pieces draw."""
    return 2 * (level(draft, "back", name) + level(draft, "front", name))


def errors(garment: MadeGarment) -> list[str]:
    return [f.message for f in garment.findings if f.level == "error"]


def dart_mouth(draft: Draft, piece: str, dart: str) -> float:
    """Return how wide an open dart's mouth is, mm; 0 where there is no such dart."""
    if f"{dart}_in" not in draft[piece]:
        return 0.0
    edges = draft[piece][f"{dart}_in"], draft[piece][f"{dart}_out"]
    return abs(edges[0].path.start - edges[1].path.end)


def bust_dart(front: Piece) -> tuple[float, float]:
    """Return how far (mm) the bust dart ends off the bust point, and how far (degrees) it aims past."""
    into, out = front["bust_dart_in"].path, front["bust_dart_out"].path
    point, mouth = front.points["bust_point"], (into.start + out.end) / 2
    aim = (point - into.end) / (into.end - mouth)
    return abs(point - into.end), math.degrees(cmath.phase(aim))
