"""Landmarks of a body that a style's length may end at, and how far down the body each lies."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from drafting.body.body import Body
from drafting.body.heights import heights

TRUNK: Mapping[str, str] = MappingProxyType(
    {
        "nape": "the bone at the back of the neck",
        "armpit": "the fold of the arm behind",
        "waist": "where the waist tape lay",
        "hip": "the greatest of the seat",
        "crotch": "where the legs part",
        "knee": "the hollow of the knee",
        "ankle": "above the ankle bone",
        "hem": "where a trouser just clears the shoe",
        "floor": "what she stands on in the costume's shoes",
    }
)
"""Places down the body, each with its meaning."""

ARM: Mapping[str, str] = MappingProxyType(
    {"shoulder": "the shoulder point", "elbow": "the point of the elbow", "wrist": "above the hand"}
)
"""Places down the arm, each with its meaning."""

ANKLE, CLEARS = 0.045, 0.025
"""The ankle's height of the body's (from memory), and how far a hem hangs above the floor, of the inside leg
(ours: a trouser that just touches a shoe)."""


def places_beside(begin: str) -> Mapping[str, str]:
    """Return the landmarks that a length which begins at landmark `begin` may end at; none where it has none."""
    return next((places for places in (TRUNK, ARM) if begin in places), MappingProxyType({}))


def down_to(body: Body, landmark: str, begin: str) -> float:
    """Return how far `landmark` lies below landmark `begin`, mm; a KeyError for names that are not beside.

    Down the back and the legs it is a difference of heights, down the arm a length along it.
    """
    places = _arm(body) if begin in ARM else _trunk(body)
    return places[landmark] - places[begin]


def _arm(body: Body) -> dict[str, float]:
    return {"shoulder": 0.0, "elbow": body["upper_arm_length"], "wrist": body["arm_length"]}


def _trunk(body: Body) -> dict[str, float]:
    """Return how far below the nape each landmark lies, mm."""
    stands, nape = heights(body), body["nape_height"]
    up = {
        "nape": nape,
        "armpit": nape - body["axilla_depth"],
        "waist": stands.waist,
        "hip": stands.waist - body["waist_to_hip"],
        "crotch": stands.crotch,
        "knee": body["knee_height"],
        "ankle": ANKLE * body["height"],
        "hem": CLEARS * body["inside_leg_length"] - body.heel,
        "floor": -body.heel,
    }
    return {name: nape - height for name, height in up.items()}
