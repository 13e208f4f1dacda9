"""One side of a wearer whose left and right differ."""

from __future__ import annotations

from dataclasses import replace

from drafting.body.body import Body, Side
from drafting.body.estimates import Measure
from drafting.ground.findings import Finding
from drafting.ground.remembered import remembered

TWO_SIDED = 3.0
"""mm: left and right this near each other are one measure, their mean (project contracts)."""


MIDDLE = ("back_waist_length", "front_waist_length", "waist_to_hip", "bust_point_width", "neck_base_girth")
"""Measures that end on the middle of the body, or that both sides share: two sides of one garment meet
along the middle, so each of these is settled to the mean of both hands."""


def differing_measures(body: Body) -> tuple[str, ...]:
    """Return the measures whose left and right lie more than 3 mm apart."""
    return tuple(
        name
        for name, m in body.measures.items()
        if m.left is not None and m.right is not None and abs(m.left - m.right) > TWO_SIDED
    )


def settled_middle(body: Body) -> tuple[Finding, ...]:
    """Return what is to be said of middle lengths that were given for each hand and are settled to one."""
    return tuple(_settled(name, body.measures[name]) for name in differing_measures(body) if name in MIDDLE)


def _settled(name: str, m: Measure) -> Finding:
    left, right = m.left or m.mm, m.right or m.mm
    mean = (left + right) / 2
    words = name.replace("_", " ")
    return Finding(
        "two sides",
        "note",
        words,
        abs(left - right),
        0.0,
        f"The {words} is {left:.0f} mm left and {right:.0f} mm right. Both sides meet in one line on the "
        f"middle, so both are drafted with {mean:.0f} mm; pin what a side has too much or too little at the "
        "fitting.",
    )


def both_sides(body: Body) -> Body:
    """Return a body of one side with the mean of both hands again, for what both sides share."""
    apart = differing_measures(body)
    if not apart:
        return body
    mean = {name: replace(body.measures[name], mm=_mean(body.measures[name])) for name in apart}
    return replace(body, measures={**body.measures, **mean})


def _mean(m: Measure) -> float:
    return m.mm if m.left is None or m.right is None else (m.left + m.right) / 2


@remembered(8)
def one_side(body: Body, side: Side) -> Body:
    """Return `body` with every differing measure as it is on `side`, but for the middle lengths.

    What was estimated stays, so that both sides meet in one centre line; only an estimated axilla
    depth follows its side's shoulder drop, one to one.
    """
    changed: dict[str, Measure] = {
        name: replace(body.measures[name], mm=body.hand(name, side))
        for name in differing_measures(body)
        if name not in MIDDLE
    }
    if "shoulder_drop" in changed and not (body.measured("axilla_depth") or body.measured("scye_depth")):
        axilla = body.measures["axilla_depth"]
        lower = changed["shoulder_drop"].mm - body["shoulder_drop"]
        changed["axilla_depth"] = replace(axilla, mm=axilla.mm + lower)
    return replace(body, measures={**body.measures, **changed})
