"""The alterations of the line that are known, as one table: which words at which place mean which.

A row says what verbs make more and less of it, at which places it is meant (by what edges, pieces and
levels were declared to be), what its amount counts, and what to do. The first row that fits is taken.
"""

from __future__ import annotations

from drafting.draft.roles import EdgeRole as Role
from drafting.draft.roles import LevelKind, PieceRole
from drafting.fitting.alteration import BACK, DOWN, FORWARD, IN, LONGER, NEVER, OUT, SHORTER, UP, Alteration
from drafting.fitting.amounts import Counts
from drafting.fitting.known_limbs import LIMBS
from drafting.fitting.lines import armhole, balance, bust, dart, lengths, neck, seams, shoulder, waist, wedge
from drafting.fitting.meant import edge, in_the_middle, level, measure, piece
from drafting.fitting.note import Verb

CENTRES = (Role.CENTRE, Role.CENTRE_SEAM)

BODY: tuple[Alteration, ...] = (
    Alteration(
        "waist",
        IN,
        OUT,
        (level("trunk", LevelKind.WAIST), measure("trunk", "waist_girth"), edge(Role.WAIST)),
        Counts.ROUND,
        lambda at, by: waist.waist(at.draft, by),
    ),
    Alteration(
        "waist level",
        LONGER | DOWN,
        SHORTER | UP,
        (level("trunk", LevelKind.WAIST), measure("trunk", "back_waist_length"), edge(Role.WAIST)),
        Counts.LENGTH,
        lambda at, by: lengths.waist_level(at.draft, by),
    ),
    Alteration(
        "length below the waist",
        LONGER | DOWN,
        SHORTER | UP,
        (edge(Role.HEM), level("trunk", LevelKind.HIP)),
        Counts.LENGTH,
        lambda at, by: lengths.body_length(at.draft, by),
    ),
    Alteration(
        "shoulder slope",
        DOWN,
        UP,
        (edge(Role.SHOULDER), measure("trunk", "shoulder_drop", "shoulder_slope")),
        Counts.LENGTH,
        lambda at, by: shoulder.shoulder_slope(at.draft, by),
    ),
    Alteration(
        "shoulder length",
        LONGER | OUT,
        SHORTER | IN,
        (edge(Role.SHOULDER), measure("trunk", "shoulder_length")),
        Counts.LENGTH,
        lambda at, by: shoulder.shoulder_length(at.draft, by),
    ),
    Alteration(
        "forward shoulder",
        FORWARD,
        BACK,
        (edge(Role.SHOULDER),),
        Counts.LENGTH,
        lambda at, by: shoulder.shoulder_forward(at.draft, by),
    ),
    Alteration(
        "bust",
        IN,
        OUT,
        (level("trunk", LevelKind.BUST), measure("trunk", "bust_girth"), edge(Role.BUST_DART)),
        Counts.ROUND,
        lambda at, by: dart.fuller_bust(at.draft, by),
    ),
    Alteration(
        "bust point",
        UP,
        DOWN,
        (level("trunk", LevelKind.BUST), edge(Role.BUST_DART, Role.PRINCESS)),
        Counts.LENGTH,
        lambda at, by: bust.bust_point(at.draft, by),
    ),
    Alteration(
        "armhole base",
        UP,
        DOWN,
        (edge(Role.ARMHOLE),),
        Counts.LENGTH,
        lambda at, by: armhole.armhole_base(at.draft, by),
    ),
    Alteration(
        "gaping armhole",
        SHORTER,
        LONGER,
        (edge(Role.ARMHOLE),),
        Counts.LENGTH,
        lambda at, by: dart.armhole_fold(at.draft, at.behind, by),
    ),
    Alteration(
        "armhole scooped",
        frozenset({Verb.CLIP}),
        NEVER,
        (edge(Role.ARMHOLE),),
        Counts.LENGTH,
        lambda at, by: armhole.armhole_scoop(at.draft, at.ref, by),
    ),
    Alteration(
        "across back",
        OUT,
        IN,
        (edge(Role.ARMHOLE, behind=True), measure("trunk", "across_back", "across_back_width")),
        Counts.MIDDLE,
        lambda at, by: armhole.across_width(at.draft, True, by),
    ),
    Alteration(
        "across front",
        OUT,
        IN,
        (edge(Role.ARMHOLE, behind=False), measure("trunk", "across_front", "across_front_width")),
        Counts.MIDDLE,
        lambda at, by: armhole.across_width(at.draft, False, by),
    ),
    Alteration(
        "neck depth",
        DOWN,
        UP,
        (edge(Role.NECK),),
        Counts.LENGTH,
        lambda at, by: neck.neck_depth(at.draft, at.behind, by),
        middle=True,
    ),
    Alteration(
        "neck width",
        OUT,
        IN,
        (edge(Role.NECK), measure("trunk", "neck_base_girth")),
        Counts.MIDDLE,
        lambda at, by: neck.neck_width(at.draft, by),
    ),
    Alteration(
        "round back",
        LONGER,
        SHORTER,
        (piece("trunk", PieceRole.BACK), edge(Role.YOKE, behind=True)),
        Counts.LENGTH,
        lambda at, by: wedge.blades_wedge(at.draft, by),
        middle=True,
    ),
    Alteration(
        "sway back",
        LONGER,
        SHORTER,
        (edge(*CENTRES, behind=True),),
        Counts.LENGTH,
        lambda at, by: wedge.waist_wedge(at.draft, True, by),
        middle=True,
    ),
    Alteration(
        "abdomen",
        LONGER,
        SHORTER,
        (edge(*CENTRES, Role.FRONT_EDGE, behind=False),),
        Counts.LENGTH,
        lambda at, by: wedge.waist_wedge(at.draft, False, by),
        middle=True,
    ),
    Alteration(
        "balance",
        LONGER | UP,
        SHORTER | DOWN,
        (piece("trunk", PieceRole.FRONT), measure("trunk", "front_waist_length")),
        Counts.LENGTH,
        lambda at, by: balance.front_balance(at.draft, by),
    ),
    Alteration(
        "seam in the middle",
        IN,
        OUT,
        (in_the_middle,),
        Counts.MIDDLE,
        lambda at, by: seams.one_seam(at, by),
        middle=True,
    ),
    Alteration(
        "hip",
        IN,
        OUT,
        (level("trunk", LevelKind.HIP), level("leg", LevelKind.HIP), measure("leg", "hip_girth")),
        Counts.ROUND,
        lambda at, by: seams.at_sides(at, LevelKind.HIP, by),
    ),
)
"""Those of a body, the commonest first."""

ALTERATIONS = (*BODY, *LIMBS)
"""Every alteration that is known."""
