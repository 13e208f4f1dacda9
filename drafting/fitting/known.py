"""The alterations of the line that are known, as one table: which words at which place mean which.

A row says what verbs make more and less of it, at which places it is meant (by what edges, pieces and
levels were declared to be), what its amount counts, and what to do. The first row that fits is taken.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drafting.draft.roles import EdgeRole as Role
from drafting.draft.roles import LevelKind, PieceRole, SeamKind
from drafting.fitting.amounts import Counts
from drafting.fitting.found import Found
from drafting.fitting.lines import armhole, balance, bust, cap, lengths, neck, rise, seams, shoulder, waist, wedge
from drafting.fitting.lines.altered import Altered
from drafting.fitting.note import Verb

Meant = Callable[[Found], bool]
Alter = Callable[[Found, float], Altered]
Verbs = frozenset[Verb]

IN, OUT = frozenset({Verb.TAKE_IN}), frozenset({Verb.LET_OUT})
LONGER, SHORTER = frozenset({Verb.LENGTHEN}), frozenset({Verb.SHORTEN})
UP, DOWN = frozenset({Verb.RAISE}), frozenset({Verb.LOWER})
FORWARD, BACK = frozenset({Verb.FORWARD}), frozenset({Verb.BACK})
NEVER: Verbs = frozenset()


@dataclass(frozen=True)
class Known:
    """One alteration: its name, the verbs that make more or less of it, where it is meant, what it does.

    `middle` says that it moves the middle line, which both hands have in common.
    """

    name: str
    more: Verbs
    less: Verbs
    meant: tuple[Meant, ...]
    counts: Counts
    alter: Alter
    middle: bool = False


def edge(*roles: Role, part: str = "trunk", behind: bool | None = None) -> Meant:
    """Return a test for a note at an edge of one of these roles, on this part of the garment."""

    def meant(found: Found) -> bool:
        here = found.edge is not None and found.part == part and found.edge.role in roles
        return here and (behind is None or found.behind == behind)

    return meant


def piece(part: str, *roles: PieceRole) -> Meant:
    """Return a test for a note at a whole piece of a part, of one of these roles where any is given."""

    def meant(found: Found) -> bool:
        whole = found.piece is not None and found.edge is None and found.part == part
        return whole and found.piece is not None and (not roles or found.piece.role in roles)

    return meant


def level(part: str, kind: LevelKind) -> Meant:
    """Return a test for a note at a level of a part."""
    return lambda found: found.part == part and found.level == kind


def measure(part: str, *names: str) -> Meant:
    """Return a test for a note at a measure of the body, on a part of the garment."""
    return lambda found: found.part == part and found.measure in names


def _middle(found: Found) -> bool:
    seam = found.seam() if found.edge is not None else None
    return found.part == "trunk" and seam is not None and seam.kind is SeamKind.CENTRE


HANGING = (Role.SIDE, Role.PANEL, Role.PRINCESS)
CENTRES = (Role.CENTRE, Role.CENTRE_SEAM)
CAPS = (Role.CAP, Role.CAP_PART)

KNOWN: tuple[Known, ...] = (
    Known(
        "waist",
        IN,
        OUT,
        (level("trunk", LevelKind.WAIST), measure("trunk", "waist_girth"), edge(Role.WAIST)),
        Counts.ROUND,
        lambda at, by: waist.waist(at.draft, by),
    ),
    Known(
        "sleeve length",
        LONGER | DOWN,
        SHORTER | UP,
        (measure("sleeve", "arm_length"), piece("sleeve"), edge(Role.HEM, part="sleeve")),
        Counts.LENGTH,
        lambda at, by: lengths.sleeve_length(at.draft, by),
    ),
    Known(
        "leg length",
        LONGER | DOWN,
        SHORTER | UP,
        (measure("leg", "inside_leg_length", "outside_leg_length"), edge(Role.HEM, part="leg")),
        Counts.LENGTH,
        lambda at, by: lengths.leg_length(at.draft, by),
    ),
    Known(
        "waist level",
        LONGER | DOWN,
        SHORTER | UP,
        (level("trunk", LevelKind.WAIST), measure("trunk", "back_waist_length"), edge(Role.WAIST)),
        Counts.LENGTH,
        lambda at, by: lengths.waist_level(at.draft, by),
    ),
    Known(
        "length below the waist",
        LONGER | DOWN,
        SHORTER | UP,
        (edge(Role.HEM), level("trunk", LevelKind.HIP)),
        Counts.LENGTH,
        lambda at, by: lengths.body_length(at.draft, by),
    ),
    Known(
        "shoulder slope",
        DOWN,
        UP,
        (edge(Role.SHOULDER), measure("trunk", "shoulder_drop", "shoulder_slope")),
        Counts.LENGTH,
        lambda at, by: shoulder.slope(at.draft, by),
    ),
    Known(
        "shoulder length",
        LONGER | OUT,
        SHORTER | IN,
        (edge(Role.SHOULDER), measure("trunk", "shoulder_length")),
        Counts.LENGTH,
        lambda at, by: shoulder.length(at.draft, by),
    ),
    Known(
        "forward shoulder",
        FORWARD,
        BACK,
        (edge(Role.SHOULDER),),
        Counts.LENGTH,
        lambda at, by: shoulder.forward(at.draft, by),
    ),
    Known(
        "bust",
        IN,
        OUT,
        (level("trunk", LevelKind.BUST), measure("trunk", "bust_girth")),
        Counts.ROUND,
        lambda at, by: armhole.bust(at.draft, by),
    ),
    Known(
        "bust point",
        UP,
        DOWN,
        (level("trunk", LevelKind.BUST), edge(Role.BUST_DART, Role.PRINCESS)),
        Counts.LENGTH,
        lambda at, by: bust.point(at.draft, by),
    ),
    Known(
        "armhole base", UP, DOWN, (edge(Role.ARMHOLE),), Counts.LENGTH, lambda at, by: armhole.base(at.draft, by)
    ),
    Known(
        "armhole scooped",
        frozenset({Verb.CLIP}),
        NEVER,
        (edge(Role.ARMHOLE),),
        Counts.LENGTH,
        lambda at, by: armhole.scoop(at.draft, at.ref, by),
    ),
    Known(
        "across back",
        OUT,
        IN,
        (edge(Role.ARMHOLE, behind=True), measure("trunk", "across_back", "across_back_width")),
        Counts.MIDDLE,
        lambda at, by: armhole.across(at.draft, True, by),
    ),
    Known(
        "across front",
        OUT,
        IN,
        (edge(Role.ARMHOLE, behind=False), measure("trunk", "across_front", "across_front_width")),
        Counts.MIDDLE,
        lambda at, by: armhole.across(at.draft, False, by),
    ),
    Known(
        "neck depth",
        DOWN,
        UP,
        (edge(Role.NECK),),
        Counts.LENGTH,
        lambda at, by: neck.depth(at.draft, at.behind, by),
        middle=True,
    ),
    Known(
        "neck width",
        OUT,
        IN,
        (edge(Role.NECK), measure("trunk", "neck_base_girth")),
        Counts.MIDDLE,
        lambda at, by: neck.width(at.draft, by),
    ),
    Known(
        "round back",
        LONGER,
        SHORTER,
        (piece("trunk", PieceRole.BACK), edge(Role.YOKE, behind=True)),
        Counts.LENGTH,
        lambda at, by: wedge.blades(at.draft, by),
        middle=True,
    ),
    Known(
        "sway back",
        LONGER,
        SHORTER,
        (edge(*CENTRES, behind=True),),
        Counts.LENGTH,
        lambda at, by: wedge.waist_wedge(at.draft, True, by),
        middle=True,
    ),
    Known(
        "abdomen",
        LONGER,
        SHORTER,
        (edge(*CENTRES, Role.FRONT_EDGE, behind=False),),
        Counts.LENGTH,
        lambda at, by: wedge.waist_wedge(at.draft, False, by),
        middle=True,
    ),
    Known(
        "balance",
        LONGER | UP,
        SHORTER | DOWN,
        (piece("trunk", PieceRole.FRONT), measure("trunk", "front_waist_length")),
        Counts.LENGTH,
        lambda at, by: balance.balance(at.draft, by),
    ),
    Known(
        "seam in the middle",
        IN,
        OUT,
        (lambda at: _middle(at),),
        Counts.MIDDLE,
        lambda at, by: seams.seam(at, by),
        middle=True,
    ),
    Known(
        "seam",
        IN,
        OUT,
        (edge(*HANGING), edge(Role.SIDE, part="leg")),
        Counts.ROUND,
        lambda at, by: seams.seam(at, by),
    ),
    Known(
        "hip",
        IN,
        OUT,
        (level("trunk", LevelKind.HIP), level("leg", LevelKind.HIP), measure("leg", "hip_girth")),
        Counts.ROUND,
        lambda at, by: seams.at_sides(at, LevelKind.HIP, by),
    ),
    Known(
        "trouser waist",
        IN,
        OUT,
        (level("leg", LevelKind.WAIST), measure("leg", "waist_girth"), edge(Role.WAIST, part="leg")),
        Counts.ROUND,
        lambda at, by: seams.at_sides(at, LevelKind.WAIST, by),
    ),
    Known(
        "cap height",
        UP,
        DOWN,
        (edge(*CAPS, part="sleeve"),),
        Counts.LENGTH,
        lambda at, by: cap.cap_height(at.draft, by),
    ),
    Known(
        "upper arm",
        OUT,
        IN,
        (level("sleeve", LevelKind.UPPER_ARM), measure("sleeve", "upper_arm_girth"), edge(*CAPS, part="sleeve")),
        Counts.LIMB,
        lambda at, by: cap.upper_arm(at.draft, by),
    ),
    Known(
        "crotch length",
        LONGER,
        SHORTER,
        (edge(Role.CROTCH, part="leg"),),
        Counts.LENGTH,
        lambda at, by: rise.crotch(at.draft, at.behind, by),
    ),
    Known(
        "rise",
        LONGER | UP,
        SHORTER | DOWN,
        (level("leg", LevelKind.HIP), level("leg", LevelKind.WAIST), measure("leg", "body_rise", "crotch_length")),
        Counts.LENGTH,
        lambda at, by: rise.depth(at.draft, by),
    ),
    Known(
        "waist at the centre",
        UP | LONGER,
        DOWN | SHORTER,
        (edge(Role.WAIST, Role.FLY, part="leg"),),
        Counts.LENGTH,
        lambda at, by: rise.at_waist(at.draft, at.behind, by),
    ),
    Known("seat", OUT, IN, (piece("leg", PieceRole.BACK),), Counts.LENGTH, lambda at, by: rise.seat(at.draft, by)),
    Known(
        "centre of the waist",
        IN,
        OUT,
        (edge(Role.CROTCH, Role.FLY, part="leg"),),
        Counts.MIDDLE,
        lambda at, by: rise.centre_waist(at.draft, at.behind, by),
    ),
    Known(
        "leg",
        IN,
        OUT,
        (edge(Role.INSEAM, part="leg"), level("leg", LevelKind.KNEE), measure("leg", "thigh_girth", "knee_girth")),
        Counts.LIMB,
        lambda at, by: seams.leg(at, by),
    ),
)
"""Every alteration that is known, the commonest first."""
