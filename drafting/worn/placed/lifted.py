"""What is worn carried along with the arms from one way of holding them to the next: where its search starts."""

from __future__ import annotations

import numpy as np

from drafting.worn.form import Form
from drafting.worn.nouns import Limb, Reals, SewnMesh

WITHIN = 0.55
"""Of the joint's distance from the middle: cloth nearer to it than that stays with the trunk (ours)."""

GOES_ALONG, STAYS = 2.0, 3.5
"""Of an upper arm's radius: what is no sleeve goes along so near the arm, stays so far off (ours)."""


def lifted(mesh: SewnMesh, points: Reals, before: Form, after: Form) -> Reals:
    """Return sewn points (count, 3) mm turned with each arm about its joint; what lies on the trunk stays.

    Round the joint the turn grows from none to all, over the arm's own thickness. Sleeves go along, and of all
    else what lies near the arm.
    """
    found = points.copy()
    sleeve = np.zeros(mesh.count, bool)
    sleeve[mesh.sewn[np.array([piece.limb is Limb.ARM for piece in mesh.pieces], bool)[mesh.piece]]] = True
    for hand, side in (("left", 1.0), ("right", -1.0)):
        own = points[:, 0] * side > 0
        if (mesh.halved and hand == "right") or not own.any():
            continue
        mirrored = points[own] * (side, 1.0, 1.0)
        arm, now, thick = before.arm_of(hand), after.arm_of(hand), _thick(before)
        goes = np.where(sleeve[own], 1.0, _near(mirrored, arm, thick))
        found[own] = _turned(mirrored, goes, arm, now, thick) * (side, 1.0, 1.0)
    return found


def _thick(form: Form) -> float:
    """Return the radius of the upper arm, mm."""
    return float(form.left.sizes.wanted["upper_arm_girth"]) / (2 * np.pi)


def _near(at: Reals, arm: Reals, thick: float) -> Reals:
    """Return (n,) 1 beside the arm to 0 away from it, by the distance from its line, joint to wrist."""
    line = arm[2] - arm[0]
    along = np.clip((at - arm[0]) @ line / (line @ line), 0.0, 1.0)
    off: Reals = np.linalg.norm(at - arm[0] - along[:, None] * line, axis=1) / thick
    near: Reals = np.clip((STAYS - off) / (STAYS - GOES_ALONG), 0.0, 1.0)
    return near


def _turned(at: Reals, goes: Reals, arm: Reals, now: Reals, thick: float) -> Reals:
    """Return points (n, 3) turned about the joint, each as far as it `goes` along (n,)."""
    joint, way, on = arm[0], _unit(arm[1] - arm[0]), _unit(now[1] - now[0])
    axis = np.cross(way, on)
    sine = float(np.linalg.norm(axis))
    if sine < 1e-9:
        return np.asarray(at + goes[:, None] * (now[0] - joint))
    axis, angle = axis / sine, np.arctan2(sine, way @ on)
    along = np.clip(((at - joint) @ way + 0.5 * thick) / (1.5 * thick), 0.0, 1.0)
    aside = np.clip((at[:, 0] / joint[0] - WITHIN) / (1.0 - WITHIN), 0.0, 1.0)
    share = goes * along * aside
    turn = (angle * share * share * (3.0 - 2.0 * share))[:, None]
    from_joint = at - joint
    turned = from_joint * np.cos(turn) + np.cross(axis, from_joint) * np.sin(turn)
    turned += axis * (from_joint @ axis)[:, None] * (1.0 - np.cos(turn))
    return np.where(share[:, None] > 0.0, turned + joint + share[:, None] * (now[0] - joint), at)


def _unit(way: Reals) -> Reals:
    return np.asarray(way / np.linalg.norm(way))
