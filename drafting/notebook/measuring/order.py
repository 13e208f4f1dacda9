"""The order in which a body is measured, and which measures are asked on both hands.

From the plain to the awkward, from the top down, so that the wearer turns round as little as can be
(common practice): each group needs one pose and one place for the tape.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Group:
    """Measures taken one after the other, and what to do before the first of them."""

    title: str
    before: str
    measures: tuple[str, ...]


GROUPS: tuple[Group, ...] = (
    Group(
        "Against the wall",
        "Barefoot, heels and back to a wall. Height, bust, waist and hip are "
        "needed; all else is estimated until it is taken.",
        ("height", "nape_height", "weight"),
    ),
    Group(
        "Round the trunk",
        "Tie a tape or elastic round the waist first and leave it there. Stand "
        "easy, breathe out. A helper sees to it that the tape lies level behind.",
        ("bust_girth", "high_bust_girth", "under_bust_girth", "waist_girth", "hip_girth"),
    ),
    Group(
        "Neck and shoulders",
        "A fine chain round the foot of the neck shows the side neck points. "
        "Take both shoulders: few people have two alike.",
        ("neck_base_girth", "neck_girth", "shoulder_length", "shoulder_drop", "back_shoulder_width", "head_girth"),
    ),
    Group(
        "Down the back",
        "Hold a strip of card level under both arms. The nape is the bone that stands out when the head is bent.",
        ("back_waist_length", "scye_depth", "axilla_depth", "across_back_width", "across_back_low_width"),
    ),
    Group(
        "Down the front",
        "Arms hanging. Over the bust point, not beside it.",
        ("front_waist_length", "bust_point_depth", "bust_point_width", "across_front_width", "waist_to_hip"),
    ),
    Group(
        "The arm",
        "Girths on the hanging arm, lengths over the slightly bent elbow.",
        (
            "arm_length",
            "upper_arm_length",
            "upper_arm_girth",
            "elbow_girth",
            "forearm_girth",
            "wrist_girth",
            "hand_girth",
        ),
    ),
    Group(
        "Seat and leg",
        "The rise is taken sitting on a flat chair, everything else standing.",
        (
            "body_rise",
            "total_crotch_length",
            "back_crotch_length",
            "outside_leg_length",
            "inside_leg_length",
            "thigh_girth",
            "lower_thigh_girth",
            "knee_girth",
            "knee_height",
            "calf_girth",
            "ankle_girth",
            "heel_girth",
        ),
    ),
    Group(
        "In the shoes of the costume", "Last, in the shoes that will be worn.", ("nape_to_floor", "waist_to_floor")
    ),
)

BOTH_HANDS = ("shoulder_length", "shoulder_drop")
"""Asked left and right always: the two sides meet in one neck, and a difference shows."""

CAN_DIFFER = frozenset(
    {
        *BOTH_HANDS,
        "arm_length",
        "upper_arm_length",
        "upper_arm_girth",
        "elbow_girth",
        "forearm_girth",
        "wrist_girth",
        "hand_girth",
        "front_waist_length",
        "bust_point_depth",
        "waist_to_hip",
        "outside_leg_length",
        "inside_leg_length",
        "thigh_girth",
        "lower_thigh_girth",
        "knee_girth",
        "knee_height",
        "calf_girth",
        "ankle_girth",
        "heel_girth",
        "waist_to_floor",
    }
)
"""Asked left and right where the maker wishes."""

ORDER = tuple(name for group in GROUPS for name in group.measures)
