"""Two-piece coat sleeve: top sleeve and under sleeve, bent at the elbow, fitted to its armhole.

The two caps together are the cap of a one-piece sleeve, fitted half by half; the width at the upper
arm is exact. Both lie as the left sleeve seen from outside: the under sleeve's front is to the right.

         top_cap_front .-'-. top_cap_back
                     .'     '-.            under_cap_back   under_cap_front
       fore         |          |  hind        .             .
                    |          |         hind | '-._____.-' | fore
       fore seam     |         |              |            |
       bent at the   |        /                \\           |
       elbow        |        / vent        vent \\           |
                    '-------'                    '---------'
                      cuff                          cuff
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Girth, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Level, Notch, Piece
from drafting.draft.roles import EdgeRole, Half, LevelKind, NotchKind, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import Path, line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale
from drafting.ground.sources import AS_ASKED, BY_EYE, memory, practice
from drafting.shaping.shared_choices import ARM_EASE, BENT_ARM, LEAST_VENT
from drafting.shaping.sleeve.cap import Cap, fit_widened
from drafting.shaping.sleeve.easing import cap_ease_in, cap_ease_said, cap_height_said, sleeve_width_said
from drafting.shaping.sleeve.pitch import pitch_of
from drafting.shaping.sleeve.set_in import BothHalfArmholes, armhole_seams, half_armholes
from drafting.shaping.sleeve.two_piece import ArmLines, Pitch, TwoPiece, two_piece

NEEDS = ("front_armhole", "back_armhole")

ELBOW_EASE, ELBOW_SHARE = 70.0, 0.78
"""mm over the forearm at the elbow, and the least elbow as a share of the upper arm (from memory)."""

USUAL_BEND = 7.0
"""degrees: the elbow bend for which the construction's figures are meant (ours)."""

VENT, VENT_LAP = 100.0, 36.0
"""mm at adult scale: the cuff's vent up the hind-arm seam and its lap (from memory)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the coat sleeve, in mm and degrees."""

    arm_ease: float = ARM_EASE
    cap_ease: float = choice(
        30.0,
        "mm",
        "cap seams minus armhole, eased in above the notches",
        low=0,
        high=60,
        scales=True,
        source=practice("⟨23⟩ to ⟨40⟩ in woven cloth, ⟨30⟩ to ⟨50⟩ in tailored wool"),
    )
    wrist_ease: float = choice(
        95.0, "mm", "garment minus body at the cuff", low=0, high=300, step=5, scales=True, source=memory()
    )
    sleeve_length: float = choice(
        0.0,
        "mm",
        "length added at the cuff",
        low=-300,
        high=200,
        step=5,
        group="length",
        begins="wrist",
        source=AS_ASKED,
    )
    bent_arm: float = BENT_ARM
    elbow_bend: float = choice(
        7.0, "deg", "how far the forearm hangs forward", low=0, high=12, group="style", source=BY_EYE
    )
    cuff_vent: bool = choice(
        True, "yes/no", "an open vent at the cuff end of the hind-arm seam", group="style", source=practice()
    )


def two_piece_sleeve(
    body: Body, fabric: Fabric | None, choices: Choices, *, front_armhole: Chain, back_armhole: Chain
) -> Draft:
    """Return the coat sleeve (pieces `top-sleeve` and `under-sleeve`) for these armhole edges.

    Raises `DraftError` naming the widths in reach where no cap fits.
    """
    scale = body_scale(body)
    ease, cloth_said = cap_ease_in(fabric, choices.cap_ease)
    front, back = half_armholes(front_armhole, back_armhole, ease, scale)
    arm, length = body["upper_arm_girth"], body["arm_length"] + choices.sleeve_length + choices.bent_arm
    asked = choices.arm_ease + body.layer("upper_arm_girth")
    # no lean: the caps run on under the arm
    cap, width = fit_widened(front, back, arm + asked, None, length)
    lines = _arm_lines(body, choices, cap, width, length)
    pitch = pitch_of(cap, (front, back), back_armhole, scale)
    sleeves = two_piece(cap, lines, scale, pitch)
    vent = _vent(lines, scale) if choices.cuff_vent else 0.0
    top, under = _top(sleeves, vent, cap, scale), _under(sleeves, vent, scale)
    return Draft(
        (top, under),
        _seams((top, under), (front_armhole, back_armhole), (front, back), cap, sleeves.elbows),
        (Girth("upper_arm", arm, asked, width - arm, limb=True),),
        (
            *cloth_said,
            *_said(ease, cap, (front, back), (width, arm + asked)),
            *_pitch_said(sleeves, pitch),
            *_vent_said(choices, vent),
        ),
        {
            "cap_height": cap.height,
            "arm_lift": cap.lift,
            "cuff_vent": vent,
            "cuff": 2 * lines.cuff_half,
            "notch_front": front.notch,
            "notch_back": back.notch,
        },
    )


def _vent(lines: ArmLines, scale: float) -> float:
    """Return how long the cuff's vent is, mm; 0 where the sleeve ends too near the elbow for one."""
    vent = min(VENT * scale, 0.45 * (lines.elbow - lines.cuff))
    return vent if vent >= LEAST_VENT * VENT_LAP * scale else 0.0


def _arm_lines(body: Body, choices: Choices, cap: Cap, width: float, length: float) -> ArmLines:
    scale = body_scale(body)
    elbow = max(body["upper_arm_length"], cap.height + 0.2 * (length - cap.height))
    elbow = min(elbow, cap.height + 0.75 * (length - cap.height))
    at_elbow = max((body["forearm_girth"] + ELBOW_EASE * scale) / 2, ELBOW_SHARE * width / 2)
    cuff = (body["wrist_girth"] + body.layer("wrist_girth") + choices.wrist_ease) / 2
    return ArmLines(
        elbow=cap.height - elbow,
        cuff=cap.height - length,
        elbow_half=min(at_elbow, 0.55 * width),
        cuff_half=min(cuff, 0.75 * width),
        bend=choices.elbow_bend / USUAL_BEND,
    )


# ------------------------------------------------------------------------------------- pieces


def _top(sleeves: TwoPiece, vent: float, cap: Cap, scale: float) -> Piece:
    """The top sleeve, drawn front to +x and mirrored."""
    fore, hind = sleeves.fore[0], sleeves.hind[0]
    crown = Notch("crown", sleeves.top_front.length, kind=NotchKind.CROWN)
    ring = (
        *_hind(hind, vent, scale),
        _hem(sleeves.cuffs[0]),
        _fore(fore.reversed()),
        replace(_cap("top_cap_front", sleeves.top_front, Half.FRONT), notches=(crown,)),
        _cap("top_cap_back", sleeves.top_back.reversed(), Half.BACK),
    )
    return Piece(
        "top-sleeve",
        ring,
        pair=True,
        levels=_levels(hind, fore),
        title="Top sleeve",
        points={"crown": 1j * cap.height},
        role=PieceRole.TOP_SLEEVE,
    ).mirrored()


def _under(sleeves: TwoPiece, vent: float, scale: float) -> Piece:
    fore, hind = sleeves.fore[1], sleeves.hind[1]
    ring = (
        *_hind(hind, vent, scale),
        _hem(sleeves.cuffs[1]),
        _fore(fore.reversed()),
        _cap("under_cap_front", sleeves.under_front.reversed(), Half.FRONT),
        _cap("under_cap_back", sleeves.under_back, Half.BACK),
    )
    return Piece(
        "under-sleeve",
        ring,
        pair=True,
        levels=_levels(hind, fore),
        title="Under sleeve",
        role=PieceRole.UNDER_SLEEVE,
    )


def _hem(path: Path) -> Edge:
    return Edge("cuff", path, EdgeKind.HEM, role=EdgeRole.HEM)


def _fore(path: Path) -> Edge:
    return Edge("fore", path, role=EdgeRole.ARM_SEAM)


def _cap(name: str, path: Path, half: Half) -> Edge:
    return Edge(name, path, role=EdgeRole.CAP_PART, half=half)


def _hind(hind: Path, vent: float, scale: float) -> list[Edge]:
    if vent <= 0:
        return [Edge("hind", hind, role=EdgeRole.ARM_SEAM)]
    upper, lower = hind.split(hind.length - vent)
    lap = max(10.0, VENT_LAP * scale)
    return [
        Edge("hind", upper, role=EdgeRole.ARM_SEAM),
        Edge("vent", lower, EdgeKind.OPENING, allowance=lap, role=EdgeRole.VENT),
    ]


def _levels(hind: Path, fore: Path) -> tuple[Level, Level]:
    elbows = (path.segments[1].end for path in (hind, fore))
    return (
        Level("upper_arm", (line(complex(hind.start.real, 0), complex(fore.start.real, 0)),), LevelKind.UPPER_ARM),
        Level("elbow", (line(*elbows),), LevelKind.ELBOW),
    )


# -------------------------------------------------------------------------------------- seams


def _seams(
    pieces: tuple[Piece, Piece],
    chains: tuple[Chain, Chain],
    halves: BothHalfArmholes,
    cap: Cap,
    elbows: tuple[float, float],
) -> tuple[Seam, ...]:
    """Cap notches stand as far from the underarm as the armhole's."""
    top, under = (piece.name for piece in pieces)
    caps = (
        ((top, "top_cap_front"), (under, "under_cap_front")),
        ((under, "under_cap_back"), (top, "top_cap_back")),
    )
    vent = edge_as(pieces[0], EdgeRole.VENT)
    above_vent = elbows[1] - (vent.length if vent else 0.0)
    return (
        *armhole_seams(caps, chains, halves, cap),
        Seam(
            "forearm",
            ((top, "fore"),),
            ((under, "fore"),),
            notches=(SeamNotch("elbow", elbows[0], elbows[0]),),
            kind=SeamKind.SLEEVE,
        ),
        Seam(
            "hind arm",
            ((top, "hind"),),
            ((under, "hind"),),
            start=None if vent else "smooth",
            notches=(SeamNotch("elbow", above_vent, above_vent, 2),),
            kind=SeamKind.SLEEVE,
        ),
    )


def _said(ease: float, cap: Cap, halves: BothHalfArmholes, widths: tuple[float, float]) -> tuple[Finding, ...]:
    hole = sum(half.path.length for half in halves)
    found = [
        cap_height_said(cap.height, cap.lift, "lifts the coat's front and waist with it"),
        cap_ease_said(hole + ease, hole, "The caps together are"),
    ]
    return (*found, *sleeve_width_said(*widths, "A shallower armhole"))


def _vent_said(choices: Choices, vent: float) -> tuple[Finding, ...]:
    if vent or not choices.cuff_vent:
        return ()
    why = "The sleeve ends too near the elbow for a vent in its hind-arm seam: it has none."
    return (Finding("cuff vent", "note", "sleeve", 0.0, 0.0, why),)


def _pitch_said(sleeves: TwoPiece, pitch: Pitch) -> tuple[Finding, ...]:
    lower = pitch.back[0] - sleeves.under_back.length
    if lower < 0.5:
        return ()
    return (
        Finding(
            "back pitch",
            "warning",
            "sleeve",
            sleeves.under_back.length,
            pitch.back[0],
            f"The hind-arm seam begins {told(lower)} under the back pitch: the cap rises upright there, and the "
            "under sleeve would lie over itself. The armhole is narrow behind: more bust ease, or less across "
            "ease, widens it.",
        ),
    )
