"""Cape body: half, three quarters or all of a circle on its exact radius from the neck line, over both arms.

The wearer's left half, seen from outside, the front to the left. It opens in front. The shoulder is fitted by a
dart in one piece, or by a shoulder seam that goes on down to the hem; more seams come where the cloth is narrow.

             neck                         neck      neck
          .-. .-.  shoulder            .-----.    .-----.
    centre|  V  |  dart          centre|      )  (      | centre
    front |     |  centre        front |   shoulder     | back
         /       \\ back              /         \\/        \\
        '-._   _.-'                  '-._    _.-''-._    _.-'
            hem                          hem          hem
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.body.landmarks import down_to
from drafting.body.sides import both_sides
from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft, EdgeRef, Girth
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.findings import Finding, Severity
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale
from drafting.ground.sources import AS_ASKED, BY_EYE, practice
from drafting.shaping.cape.plan import CapePlan, cape_plan
from drafting.shaping.cape.ring import SHOULDERS, cape_pieces
from drafting.shaping.skirt.circle import UPRIGHT
from drafting.shaping.skirt.opening import OpenCentre, with_opening
from drafting.shaping.skirt.plan import CLOTH_WIDTH, FLOOR

CIRCLES = {"half circle": 180.0, "three-quarter circle": 270.0, "full circle": 360.0}
"""The angle of each cut, degrees."""

FRONT_LOWER = 70.0
"""mm at adult scale: the neck line lies so much lower in front than at the nape, and the hem with it (ours)."""

LEAST_CLEARANCE = 20.0
"""mm above the floor: a hem that one walks in ends no lower (common practice: 20 to 40)."""

ENDS = {"elbow": "waist", "hip": "hip", "knee": "knee", "ankle": "ankle", "floor": "floor"}
"""Where a cape may end, and the landmark down the back at that height."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the cape, mm."""

    cape_cut: str = choice(
        "half circle",
        "word",
        "how much of a circle hangs from the neck",
        words=tuple(CIRCLES),
        group="style",
        source=practice(),
    )
    shoulder_fit: str = choice(
        "dart",
        "word",
        "what fits the shoulder: a dart, where the cloth takes half a cape in one piece, else a seam; or nothing",
        words=("dart", "seam", "none"),
        group="style",
        source=practice(),
    )
    cape_ends: str = choice(
        "hip",
        "word",
        "where the hem ends in front, its lowest place, unless cape_length says it",
        words=tuple(ENDS),
        group="length",
        source=practice(),
    )
    cape_length: float = choice(
        0.0,
        "mm",
        "from the neck line down the back to the hem; 0 leaves it to cape_ends",
        low=0,
        high=1700,
        step=10,
        group="length",
        begins="nape",
        source=AS_ASKED,
    )
    cape_ease: float = choice(
        10.0,
        "mm",
        "least of cape minus body over both arms, with the arms hanging",
        low=0,
        high=400,
        step=5,
        scales=True,
        source=BY_EYE,
    )
    neck_ease: float = choice(
        15.0, "mm", "neckline minus neck base girth", low=-20, high=120, scales=True, source=BY_EYE
    )


def cape_body(body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the cape below its neck line (`cape`, or `cape-front` and `cape-back` in as many panels as needed).

    Raises `DraftError` where it would end on the shoulder, and where no panel lies on the cloth.
    """
    plan, both = (_plan(one, choices) for one in (body, both_sides(body)))
    width = (fabric and fabric.laid_width) or CLOTH_WIDTH
    upside_down = fabric is not None and fabric.one_way and both.half > UPRIGHT  # its front, were it in one piece
    dart = choices.shoulder_fit != "seam" and not upside_down
    pieces, seams = cape_pieces(plan, width, dart=dart, both=both)
    ease = plan.girth - plan.shoulders
    draft = Draft(
        pieces,
        seams,
        girths=(Girth(SHOULDERS, plan.shoulders, ease, ease),),
        facts={"cape_length": plan.length(True), "cape_radius": plan.outer, "hem": plan.hem},
    )
    last = pieces[-1]
    if last["centre_back"].kind is EdgeKind.SEAM:
        sewn, more = with_opening(last, OpenCentre(0.0, 0.0, behind=True))
        draft = draft.with_pieces([sewn]) + Draft(seams=more)
    return replace(
        draft,
        findings=tuple(_said(body, plan, choices, draft, width)),
        chains={"front_neck": _neck(draft, behind=False), "back_neck": _neck(draft, behind=True)},
    )


def _plan(body: Body, choices: Choices) -> CapePlan:
    return cape_plan(
        body,
        angle=CIRCLES[choices.cape_cut],
        fitted=choices.shoulder_fit != "none",
        eases=(choices.neck_ease, choices.cape_ease),
        length=choices.cape_length or _length(body, choices.cape_ends),
    )


def _length(body: Body, ends: str) -> float:
    clear = FRONT_LOWER + (FLOOR if ends == "floor" else 0.0)
    return down_to(body, ENDS[ends], "nape") - clear * body_scale(body)


def _neck(draft: Draft, *, behind: bool) -> tuple[EdgeRef, ...]:
    """Return the neck of the front or the back, in the order in which it runs: from behind forwards."""
    refs = [(piece, edge) for piece in reversed(draft.pieces) for edge in edges_as(piece, EdgeRole.NECK)]
    if len(draft.pieces) == 1:  # in one piece the back's neck comes first
        return tuple((piece.name, edge.name) for piece, edge in (refs[:1] if behind else refs[1:]))
    role = PieceRole.BACK if behind else PieceRole.FRONT
    return tuple((piece.name, edge.name) for piece, edge in refs if piece.role is role)


def _said(body: Body, plan: CapePlan, choices: Choices, draft: Draft, width: float) -> Iterator[Finding]:
    asked, count = CIRCLES[choices.cape_cut], sum(piece.count for piece in draft.pieces)
    if 2 * plan.half > asked + 0.01:
        text = (
            f"A {choices.cape_cut} would bind over the arms, {told(plan.shoulders)} round: it is opened to "
            f"{2 * plan.half:.0f} degrees."
        )
        yield Finding("shoulders of the cape", "note", SHOULDERS, 2 * plan.half, asked, text)
    if plan.girth - plan.shoulders < choices.cape_ease - 1.0:
        text = (
            f"Even a whole circle has only {told(plan.girth - plan.shoulders)} of ease over the arms "
            f"({told(choices.cape_ease)} asked): gather the neck, or give it more ease."
        )
        yield Finding(
            "shoulders of the cape", "warning", SHOULDERS, plan.girth - plan.shoulders, choices.cape_ease, text
        )
    if len(draft.pieces) > 1:
        text = f"The cape is cut in {count} panels, so that each lies on cloth of {told(width)}."
        if choices.shoulder_fit == "dart":
            text += " Its shoulders have a seam in place of the dart."
        yield Finding("panels", "note", draft.pieces[0].name, float(count), None, text)
    yield _hem_said(body, plan, draft)


def _hem_said(body: Body, plan: CapePlan, draft: Draft) -> Finding:
    """Return how far the hem hangs over the floor in front, where it is lowest, and that it is levelled."""
    over = down_to(body, "floor", "nape") - plan.length(behind=False) - FRONT_LOWER * plan.scale
    sides = body["shoulder_length"] - body["shoulder_drop"]
    text = (
        f"The hem is a true arc and ends {told(over)} above the floor in front. On the shoulders it rises by "
        f"about {told(sides)}: let the cape hang for a day and level its hem on the wearer before you turn it up."
    )
    level: Severity = "warning" if over < LEAST_CLEARANCE else "note"
    return Finding("hem clearance", level, draft.pieces[0].name, over, LEAST_CLEARANCE, text)
