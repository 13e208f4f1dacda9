"""How thick an arm or a leg is at a given place: straight lines between its measures (ours)."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from drafting.body import Body


def arm_girth_at(body: Body, depth: float) -> float:
    """Return the arm's girth (mm) `depth` mm below the shoulder point; the wrist's at its end."""
    elbow = body["upper_arm_length"]
    return _between(
        depth,
        (
            (0.4 * elbow, body["upper_arm_girth"]),
            (elbow, body["forearm_girth"]),
            (max(body["arm_length"], elbow + 1), body["wrist_girth"]),
        ),
    )


def leg_girth_at(body: Body, fall: float) -> float:
    """Return the leg's girth (mm) `fall` mm below the crotch; the ankle's at its end.

    The knee lies at its own height; a calf is thickest a third of the way from knee to floor.
    """
    inside = body["inside_leg_length"]
    knee = min(max(inside - body["knee_height"], 0.3 * inside), 0.7 * inside)
    return _between(
        fall,
        (
            (0.03 * inside, body["thigh_girth"]),
            (knee, body["knee_girth"]),
            (knee + (inside - knee) / 3, body["calf_girth"]),
            (0.93 * inside, body["ankle_girth"]),
        ),
    )


def _between(at: float, places: Sequence[tuple[float, float]]) -> float:
    for (a, girth), (b, further) in pairwise(places):
        if at < b:
            share = min(1.0, max(0.0, (at - a) / (b - a)))
            return girth + share * (further - girth)
    return places[-1][1]
