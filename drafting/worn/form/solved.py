"""Turn the knobs until the tape reads on the form what it read on the wearer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from drafting.worn.form.arm_root import arm_slopes, arm_turned
from drafting.worn.form.dials import GIRTHS, STANDING, Dials, Stance
from drafting.worn.form.read import Readings, readings
from drafting.worn.form.sizes import Sizes
from drafting.worn.form.solid import Solid, solid

ROUNDS = 12
ASKED_AGAIN = (1, 4, 8)
"""The rounds in which it is asked anew what each knob of the arm does."""
ROUND_MIDDLE = ("hip_girth", "waist_girth", "under_bust_girth", "bust_girth", "high_bust_girth", "neck_girth")
"""The girths that both halves of a body share."""
ROUNDEST, SQUAREST = 1.3, 6.0
"""How round and how square the crotch may be (`Dials.square`)."""


def solved(s: Sizes) -> tuple[Solid, Readings]:
    """Return the form on which every measure reads as wanted, as near as it can, and what reads on it.

    It is read as it stands, with air under its arms (`in_pose` brings them into another pose).
    """
    knobs = first(s)
    body = solid(s, knobs, STANDING)
    found = readings(body)
    best, least, slopes = (body, found), np.inf, None
    for round_ in range(ROUNDS):
        if round_ in ASKED_AGAIN:
            slopes = arm_slopes(body, found.measures)
        knobs = _turned(s, knobs, found.measures)
        if slopes is not None:
            knobs = arm_turned(s, knobs, found.measures, slopes)
        body = solid(s, knobs, STANDING)
        found = readings(body)
        now = misfit(s, found.measures)
        if now < least:
            best, least = (body, found), now
        if now <= 0.0:
            break
    return best


def in_pose(body: Solid, pose: Stance) -> Solid:
    """Return a body that was solved as it stands with its arms swung about their joints into another pose.

    Solved anew for arms that hang, where no armpit is seen, the shoulders came out 40 mm too broad.
    """
    return body if pose == STANDING else solid(body.sizes, replace(body.dials, out=0.0), pose)


def one_middle(one: Solid, other: Solid) -> tuple[Solid, Readings]:
    """Return `one` with all that lies on the middle as it is on both in the mean: the halves of one body."""
    mine, its = one.dials, other.dials

    def mean(name: str) -> float:
        return float(getattr(mine, name) + getattr(its, name)) / 2

    scales = {name: (scale + its.scales[name]) / 2 for name, scale in mine.scales.items() if name in ROUND_MIDDLE}
    dials = replace(
        mine,
        scales={**mine.scales, **scales},
        neck=mean("neck"),
        lift_in=mean("lift_in"),
        lift_back=mean("lift_back"),
        lift_front=mean("lift_front"),
        breasts=mean("breasts"),
        square=mean("square"),
        crotch_up=mean("crotch_up"),
        rounded=mean("rounded"),
    )
    body = solid(one.sizes, dials, STANDING)
    return body, readings(body)


def misfit(s: Sizes, got: Mapping[str, float]) -> float:
    """How far the readings lie from what is wanted: each in shares of what is allowed, squared, added up."""
    off = (max(0.0, abs(got[name] - s.wanted[name]) / allowed(s, name) - 0.3) for name in got if name in s.wanted)
    return sum(one * one for one in off)


def allowed(s: Sizes, name: str) -> float:
    """By how many mm a measure may be off: girths 3 mm or 0.3 %, depth of armpit and crotch lengths 10, else 3."""
    if name in ("axilla_depth", "total_crotch_length", "inside_leg_length"):
        return 10.0
    return max(3.0, 0.003 * s.wanted[name]) if name in GIRTHS else 3.0


def first(s: Sizes) -> Dials:
    """The knobs to begin with."""
    across = 0.25 * (s.wanted["across_back_width"] + s.wanted["across_front_width"])
    full = max(0.0, s.wanted["bust_girth"] - s.wanted["high_bust_girth"]) * s.full
    return Dials(across=0.95 * across, breasts=0.5 * full)


def _turned(s: Sizes, k: Dials, got: Mapping[str, float]) -> Dials:
    """The knobs turned once, from what was `got`."""
    m, u = s.wanted, s.unit
    scales = {name: k.scales[name] * m[name] / got[name] for name in GIRTHS}
    off = {name: m[name] - value for name, value in got.items() if name in m}
    breasts, scales["bust_girth"] = _bust(s, k, off["bust_girth"])
    return replace(
        k,
        scales=scales,
        breasts=breasts,
        neck=_held(k.neck * (m["neck_base_girth"] / got["neck_base_girth"]), 0.75, 1.2),
        arm_long=_held(k.arm_long + 0.9 * off["arm_length"], -60 * u, 60 * u),
        shoulder_out=_held(k.shoulder_out + 0.9 * off["shoulder_length"], -30 * u, 30 * u),
        lift_in=_held(k.lift_in + 0.6 * (s.side_neck[1] - got["side_neck_height"]), -25 * u, 25 * u),
        lift_back=_held(k.lift_back + 1.2 * (s.levels.nape - got["nape_at"]), -25 * u, 25 * u),
        lift_front=_held(k.lift_front + 0.8 * (s.levels.throat - got["throat_at"]), -70 * u, 30 * u),
        lift_out=_held(k.lift_out + 0.6 * (s.shoulder[1] - got["shoulder_top"]), -45 * u, 25 * u),
        square=_held(k.square * (1 + 0.012 / u * off["total_crotch_length"]), ROUNDEST, SQUAREST),
        crotch_up=_held(
            k.crotch_up + 0.7 * (_floor(s, k, off["total_crotch_length"]) - got["inside_leg_length"]),
            -40 * u,
            30 * u,
        ),
        rounded=_held(k.rounded + 1.2 * off["back_waist_length"], -10 * u, 80 * u),
    )


def _floor(s: Sizes, k: Dials, off: float) -> float:
    """How high the crotch closes: as measured, up to 8 mm away where its length cannot be had otherwise."""
    spare = k.square >= SQUAREST or k.square <= ROUNDEST
    return s.levels.crotch - (_held(off / 2, -8 * s.unit, 8 * s.unit) if spare else 0.0)


def _bust(s: Sizes, k: Dials, off: float) -> tuple[float, float]:
    """Breasts take what the bust lacks as far as it is full; the chest, or what no breasts can take, its scale."""
    wanted = k.breasts + 0.9 * off * s.full
    breasts = _held(wanted, 0.0, 0.16 * s.wanted["bust_girth"])
    share = (1.0 - s.full) if breasts == wanted else 1.0
    return breasts, k.scales["bust_girth"] * (1.0 + share * off / s.wanted["bust_girth"])


def _held(value: float, low: float, high: float) -> float:
    return float(np.clip(value, low, high))
