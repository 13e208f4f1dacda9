"""One side of a wearer whose left and right differ."""

from __future__ import annotations

from dataclasses import replace

from drafting.body.body import Body, Side
from drafting.body.estimates import Measure
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.remembered import remembered

TWO_SIDED = 3.0
"""mm: left and right this near each other are one measure, their mean (project contracts)."""


ON_EACH_SIDE = """
    across_back_width across_back_low_width across_front_width
    shoulder_length shoulder_drop axilla_depth scye_depth bust_point_depth
    upper_arm_girth elbow_girth forearm_girth wrist_girth hand_girth arm_length upper_arm_length
    body_rise inside_leg_length outside_leg_length waist_to_floor thigh_girth lower_thigh_girth knee_girth
    knee_height calf_girth ankle_girth heel_girth
"""

OWN_SIDE = frozenset(ON_EACH_SIDE.split())
"""Measures that each side has of its own. All others go round the body, across or along its middle,
or set the height of a level there, where the hands have to meet: they are one (ours)."""


def _apart(m: Measure) -> bool:
    return m.left is not None and m.right is not None and abs(m.left - m.right) > TWO_SIDED


def differing_measures(body: Body) -> tuple[str, ...]:
    """Return the measures of a side's own whose left and right lie more than 3 mm apart."""
    return tuple(name for name, m in body.measures.items() if name in OWN_SIDE and _apart(m))


def settled_middle(body: Body) -> tuple[Finding, ...]:
    """Return what is to be said of middle lengths that were given for each hand and are settled to one."""
    return tuple(_settled(name, m) for name, m in body.measures.items() if _apart(m) and name not in OWN_SIDE)


def _settled(name: str, m: Measure) -> Finding:
    left, right = m.left or m.mm, m.right or m.mm
    mean = (left + right) / 2
    words, instead = name.replace("_", " "), APART.get(name, "")
    return Finding(
        "two sides",
        "note",
        words,
        abs(left - right),
        0.0,
        f"The {words} is {told(left)} left and {told(right)} right. Both sides meet in one line on the "
        f"middle, so both are drafted with {told(mean)}; pin what a side has too much or too little at the "
        f"fitting.{instead}",
    )


APART = {
    "waist_to_hip": " Where one hip stands higher, measure the waist to the floor on either side: that is drafted "
    "for each."
}
"""What is measured instead, where a line across the middle hides which side is longer."""


def both_sides(body: Body) -> Body:
    """Return a body of one side with the mean of both hands again, for what both sides share.

    An axilla depth that followed its side's shoulder drop goes back with it.
    """
    apart = differing_measures(body)
    if not apart:
        return body
    mean = {name: replace(body.measures[name], mm=_mean(body.measures[name])) for name in apart}
    if "shoulder_drop" in mean:
        mean |= _axilla_lowered(body, mean["shoulder_drop"].mm - body["shoulder_drop"])
    return replace(body, measures={**body.measures, **mean})


def _axilla_lowered(body: Body, lower: float) -> dict[str, Measure]:
    """Return the axilla depth where it is estimated, `lower` mm more: it follows the shoulder one to one."""
    if body.measured("axilla_depth") or body.measured("scye_depth"):
        return {}
    axilla = body.measures["axilla_depth"]
    return {"axilla_depth": replace(axilla, mm=axilla.mm + lower)}


def _mean(m: Measure) -> float:
    return m.mm if m.left is None or m.right is None else (m.left + m.right) / 2


@remembered(8)
def one_side(body: Body, side: Side) -> Body:
    """Return `body` with every differing measure as it is on `side`, but for the middle lengths.

    What was estimated stays, so that both sides meet in one centre line; only an estimated axilla
    depth follows its side's shoulder drop, one to one.
    """
    changed: dict[str, Measure] = {
        name: replace(body.measures[name], mm=body.hand(name, side)) for name in differing_measures(body)
    }
    if "shoulder_drop" in changed:
        changed |= _axilla_lowered(body, changed["shoulder_drop"].mm - body["shoulder_drop"])
    return replace(body, measures={**body.measures, **changed})
