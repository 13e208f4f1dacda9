"""Where each tape starts, which way it runs, where it ends.

Landmarks as the trade names them and `Source.ISO_8559` has them; the sentences are ours.
"""

from __future__ import annotations

from types import MappingProxyType

TABLE = """
height: from the floor, straight up the wall, to a book held level on the crown
nape_height: from the nape bone, straight down, to the floor
head_girth: round the brow, above both ears, and over the widest part behind
neck_girth: round the neck, from the throat below the Adam's apple, level, and back to it
neck_base_girth: from the hollow of the throat, round the foot of the neck, over the nape bone, and back
shoulder_length: from the side neck point, along the top of the shoulder, to the shoulder bone
shoulder_drop: from the height of the side neck point, straight down, to the shoulder bone
back_shoulder_width: from one shoulder bone, over the nape bone, to the other
across_back_width: from arm fold to arm fold across the back, half-way between shoulder bone and armpit
across_back_low_width: from arm fold to arm fold across the back, at the height of the folds
across_front_width: from arm fold to arm fold across the chest, half-way between shoulder bone and armpit
bust_girth: round the fullest front, under both arms, level over the shoulder blades
high_bust_girth: round above the breasts, close under both arms, high over the back
under_bust_girth: round the ribs right under the breasts, level
waist_girth: round the tie at the waist
hip_girth: round the fullest part of the seat, level, feet together
axilla_depth: from the nape bone, straight down the back, to the height of the armpit fold
scye_depth: from the nape bone, straight down the back, to a strip held level under the arms
back_waist_length: from the nape bone, down the spine, to the waist tie
front_waist_length: from the side neck point, over the bust point, to the waist tie
bust_point_depth: from the side neck point, down the front, to the bust point
bust_point_width: from bust point to bust point, straight across
waist_to_hip: from the waist tie, down the side, to the level of the hip girth
upper_arm_girth: round the fullest part of the hanging arm, square to it
elbow_girth: round the point of the elbow, the arm bent (the picture shows it straight)
forearm_girth: round the fullest part below the elbow, square to the arm
wrist_girth: round the wrist, over the bone
hand_girth: round the knuckles, the thumb folded into the palm
arm_length: from the shoulder bone, over the point of the slightly bent elbow, to the wrist bone
upper_arm_length: from the shoulder bone, down the outside, to the point of the elbow
body_rise: from the waist tie, down the side, to the flat seat the wearer sits on (shown standing)
total_crotch_length: from the waist tie in front, between the legs, to the waist tie behind
back_crotch_length: from the seam point between the legs, up the back, to the waist tie
inside_leg_length: from the crotch, straight down between the legs, to the floor
outside_leg_length: from the waist tie at the side, over the hip, to the floor
thigh_girth: round the leg at its top, level
lower_thigh_girth: round the leg, level, a hand above the knee
knee_girth: round the middle of the kneecap, the leg straight
knee_height: from the middle of the kneecap, straight down, to the floor
calf_girth: round the fullest part of the lower leg
ankle_girth: round the thinnest part, above the ankle bone
heel_girth: from the tip of the heel, over the instep, and back, the foot pointed
nape_to_floor: from the nape bone, straight down, to the floor, in the shoes of the costume
waist_to_floor: from the waist tie at the side, straight down, to the floor, in the shoes of the costume
weight: on a scale; no tape
"""

WAYS: MappingProxyType[str, str] = MappingProxyType(dict(row.split(": ", 1) for row in TABLE.strip().splitlines()))
"""The way of each tape, by the name of its measure."""
