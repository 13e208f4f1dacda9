"""The alterations of sleeves, skirts and legs that are known; see `fitting/known`."""

from __future__ import annotations

from drafting.draft.roles import EdgeRole as Role
from drafting.draft.roles import Half, LevelKind, PieceRole
from drafting.fitting.alteration import (
    BACK,
    DOWN,
    FORWARD,
    IN,
    LESS,
    LONGER,
    MORE,
    NEVER,
    OUT,
    SHORTER,
    TURN,
    UP,
    Alteration,
)
from drafting.fitting.amounts import Counts
from drafting.fitting.lines import cap, lengths, pitch, rise, seams, waist
from drafting.fitting.meant import edge, level, measure, piece

HANGING = (Role.SIDE, Role.PANEL, Role.PRINCESS)
CAPS = (Role.CAP, Role.CAP_PART)

LIMBS: tuple[Alteration, ...] = (
    Alteration(
        "sleeve length",
        LONGER | DOWN,
        SHORTER | UP,
        (measure("sleeve", "arm_length"), piece("sleeve"), edge(Role.HEM, part="sleeve")),
        Counts.LENGTH,
        lambda at, by: lengths.sleeve_length(at.draft, by),
    ),
    Alteration(
        "leg length",
        LONGER | DOWN,
        SHORTER | UP,
        (measure("leg", "inside_leg_length", "outside_leg_length"), edge(Role.HEM, part="leg")),
        Counts.LENGTH,
        lambda at, by: lengths.leg_length(at.draft, by),
    ),
    Alteration(
        "seam",
        IN,
        OUT,
        (edge(*HANGING), edge(Role.SIDE, part="leg")),
        Counts.ROUND,
        lambda at, by: seams.one_seam(at, by),
    ),
    Alteration(
        "skirt waist",
        IN,
        OUT,
        (level("skirt", LevelKind.WAIST), measure("skirt", "waist_girth"), edge(Role.WAIST, part="skirt")),
        Counts.ROUND,
        lambda at, by: waist.waist(at.draft, by, "skirt"),
    ),
    Alteration(
        "skirt hip",
        IN,
        OUT,
        (level("skirt", LevelKind.HIP), measure("skirt", "hip_girth")),
        Counts.ROUND,
        lambda at, by: seams.at_sides(at, LevelKind.HIP, by),
    ),
    Alteration(
        "skirt seam", IN, OUT, (edge(*HANGING, part="skirt"),), Counts.ROUND, lambda at, by: seams.one_seam(at, by)
    ),
    Alteration(
        "trouser waist",
        IN,
        OUT,
        (level("leg", LevelKind.WAIST), measure("leg", "waist_girth"), edge(Role.WAIST, part="leg")),
        Counts.ROUND,
        lambda at, by: seams.at_sides(at, LevelKind.WAIST, by),
    ),
    Alteration(
        "cap height",
        UP,
        DOWN,
        (edge(*CAPS, part="sleeve"),),
        Counts.LENGTH,
        lambda at, by: cap.cap_height(at.draft, by),
    ),
    Alteration(
        "upper arm",
        OUT,
        IN,
        (level("sleeve", LevelKind.UPPER_ARM), measure("sleeve", "upper_arm_girth"), edge(*CAPS, part="sleeve")),
        Counts.LIMB,
        lambda at, by: cap.arm_width(at.draft, by),
    ),
    Alteration(
        "sleeve pitch",
        FORWARD,
        BACK,
        (edge(*CAPS, part="sleeve"), piece("sleeve")),
        Counts.LENGTH,
        lambda at, by: pitch.sleeve_turned(at.draft, by),
    ),
    Alteration(
        "sleeve turned",
        TURN,
        NEVER,
        (edge(*CAPS, part="sleeve"), piece("sleeve")),
        Counts.LENGTH,
        lambda at, by: pitch.sleeve_turned(at.draft, -by if at.half is Half.BACK else by),
    ),
    Alteration(
        "cap ease",
        MORE,
        LESS,
        (edge(*CAPS, part="sleeve"),),
        Counts.LENGTH,
        lambda at, by: cap.cap_ease(at.draft, at.half is Half.BACK, by),
    ),
    Alteration(
        "crotch length",
        LONGER,
        SHORTER,
        (edge(Role.CROTCH, part="leg"),),
        Counts.LENGTH,
        lambda at, by: rise.crotch_length(at.draft, at.behind, by),
    ),
    Alteration(
        "rise",
        LONGER | UP,
        SHORTER | DOWN,
        (level("leg", LevelKind.HIP), level("leg", LevelKind.WAIST), measure("leg", "body_rise", "crotch_length")),
        Counts.LENGTH,
        lambda at, by: rise.rise_depth(at.draft, by),
    ),
    Alteration(
        "waist at the centre",
        UP | LONGER,
        DOWN | SHORTER,
        (edge(Role.WAIST, Role.FLY, part="leg"),),
        Counts.LENGTH,
        lambda at, by: rise.centre_height(at.draft, at.behind, by),
    ),
    Alteration(
        "seat",
        OUT,
        IN,
        (piece("leg", PieceRole.BACK),),
        Counts.LENGTH,
        lambda at, by: rise.fuller_seat(at.draft, by),
    ),
    Alteration(
        "centre of the waist",
        IN,
        OUT,
        (edge(Role.CROTCH, Role.FLY, part="leg"),),
        Counts.MIDDLE,
        lambda at, by: rise.centre_waist(at.draft, at.behind, by),
    ),
    Alteration(
        "leg",
        IN,
        OUT,
        (edge(Role.INSEAM, part="leg"), level("leg", LevelKind.KNEE), measure("leg", "thigh_girth", "knee_girth")),
        Counts.LIMB,
        lambda at, by: seams.noted_leg(at, by),
    ),
)
"""Those of a sleeve, of a skirt and of a leg, the commonest first."""
