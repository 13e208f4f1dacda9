"""A form that stands, with its arms held otherwise: trunk, neck and legs stay as the tape made them."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from drafting.worn.form.dials import Stance
from drafting.worn.form.form import Form
from drafting.worn.form.solid import solid
from drafting.worn.nouns import Reals


def arms_held(form: Form, pose: Stance) -> Form:
    """Return the form with its arms turned about their joints to a pose.

    A living shoulder goes up and in as the arm rises; this one stays where it is.
    """
    left, right = (solid(one.sizes, one.dials, pose) for one in (form.left, form.right))
    points = dict(form.points) | _arm_points("", left.arm.elbow, left.arm.wrist, 1.0)
    if not form.even:
        points |= _arm_points("right ", right.arm.elbow, right.arm.wrist, -1.0)
    return replace(form, left=left, right=right, points=points)


def _arm_points(hand: str, elbow: Reals, wrist: Reals, side: float) -> dict[str, tuple[float, float, float]]:
    found = {f"{hand}elbow": elbow, f"{hand}wrist": wrist}
    return {name: tuple(np.asarray(at * (side, 1.0, 1.0)).tolist()) for name, at in found.items()}
