"""One side of a wearer whose left and right differ."""

from __future__ import annotations

from dataclasses import replace

from drafting.body.body import Body, Side
from drafting.body.estimates import Measure
from drafting.ground.findings import Finding
from drafting.ground.remembered import remembered

TWO_SIDED = 3.0
"""mm: left and right this near each other are one measure, their mean (project contracts)."""

AXILLA_PER_DROP = 0.758
"""mm of axilla depth per mm of shoulder drop: the estimate's own coefficient (survey fit)."""


ON_EACH_SIDE = """
    shoulder_length shoulder_drop axilla_depth scye_depth bust_point_depth
    upper_arm_girth elbow_girth forearm_girth wrist_girth hand_girth arm_length upper_arm_length
    body_rise inside_leg_length outside_leg_length waist_to_floor thigh_girth lower_thigh_girth knee_girth
    knee_height calf_girth ankle_girth heel_girth
"""

OWN_SIDE = frozenset(ON_EACH_SIDE.split())
"""Measures that each side has of its own. All others go round the body, across or along its middle,
or set the height of a level there, where the hands have to meet: they are one (ours)."""


def one_value(body: Body) -> tuple[Finding, ...]:
    """Return a finding for each measure that was given twice and can be only one: its mean is taken."""
    return tuple(
        Finding(
            "one value",
            "note",
            name,
            m.mm,
            None,
            f"The {name.replace('_', ' ')} is given as {m.left:.0f} mm on the left and {m.right:.0f} on the "
            f"right, but the two sides meet there: {m.mm:.0f} mm is drafted on both. Pin the difference at "
            "the side seams of the mock-up.",
        )
        for name, m in body.measures.items()
        if _apart(m) and name not in OWN_SIDE
    )


def _apart(m: Measure) -> bool:
    return m.left is not None and m.right is not None and abs(m.left - m.right) > TWO_SIDED


def differing_measures(body: Body) -> tuple[str, ...]:
    """Return the measures of a side's own whose left and right lie more than 3 mm apart."""
    return tuple(name for name, m in body.measures.items() if name in OWN_SIDE and _apart(m))


@remembered(8)
def one_side(body: Body, side: Side) -> Body:
    """Return `body` with every differing measure as it is on `side`.

    What was estimated stays, so that both sides meet in one centre line; only an estimated axilla
    depth follows its side's shoulder drop.
    """
    changed: dict[str, Measure] = {
        name: replace(body.measures[name], mm=body.hand(name, side)) for name in differing_measures(body)
    }
    if "shoulder_drop" in changed and not (body.measured("axilla_depth") or body.measured("scye_depth")):
        axilla = body.measures["axilla_depth"]
        lower = changed["shoulder_drop"].mm - body["shoulder_drop"]
        changed["axilla_depth"] = replace(axilla, mm=axilla.mm + AXILLA_PER_DROP * lower)
    return replace(body, measures={**body.measures, **changed})
