"""One-piece set-in sleeve: its cap fits the two armhole edges it is given, half by half.

The width at the upper arm is exact; the cap height follows from it. The sleeve lies as the left one
seen from outside, its front to the left. The elbow is shaped by a dart in the back seam.

              cap_front .-'''-. cap_back
                     .-'   |   '-.
       underarm     /      |      \\     underarm
                    \\      |      /
       underarm_    |      |     /  underarm_back_upper
       front        |   ---<elbow_dart
                    |      |     \\  underarm_back_lower
                    '------'------'
                         hem
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.body.reduced import reduced
from drafting.draft.by_role import edge_as, edges_as
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Girth, Seam
from drafting.draft.piece import Edge, EdgeKind, Level, Notch, Piece
from drafting.draft.roles import EdgeRole, Half, LevelKind, NotchKind, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import Path, line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.scale import body_scale
from drafting.ground.sources import AS_ASKED, BY_EYE, memory, practice
from drafting.shaping.flare.fullness import gathered
from drafting.shaping.limbs import arm_girth_at
from drafting.shaping.shared_choices import ARM_EASE, cuff_depth, stretch_share
from drafting.shaping.sleeve.below_cap import Forearm, SleeveSeams, elbow_seams, straight_seams
from drafting.shaping.sleeve.cap import WIDEST_HEM, Cap, fit_widened
from drafting.shaping.sleeve.easing import cap_ease_in, cap_ease_said, sleeve_width_said
from drafting.shaping.sleeve.half_cap import HalfArmhole
from drafting.shaping.sleeve.set_in import armhole_seams, half_armholes
from drafting.shaping.stretch import settle_stretch
from drafting.shaping.torso.dart_mouth import dart_edges, dart_seams
from drafting.shaping.torso.pieces import with_body_girths

NEEDS = ("front_armhole", "back_armhole")

HAND_ROOM = 5.0
"""mm: a closed hem passes the hand with this much to spare (ours)."""

SHORT_HEM = 0.92
"""Least hem of a sleeve that ends above the elbow, of its width: else its seams lean too far (ours)."""

SLIT = 90.0
"""mm at adult scale: seam left open at the hem where the hand does not pass (ours)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the sleeve, in mm and degrees."""

    arm_ease: float = ARM_EASE
    cap_ease: float = choice(
        25.0,
        "mm",
        "cap seam minus armhole, eased in above the notches",
        low=0,
        high=60,
        scales=True,
        source=(practice("23 to 40 in woven cloth, a knit 0 to 10"), memory("a shirt 0 to 15")),
    )
    wrist_ease: float = choice(
        60.0,
        "mm",
        "garment minus body at the wrist, or where a shorter sleeve ends",
        low=0,
        high=300,
        step=5,
        scales=True,
        source=BY_EYE,
    )
    stretch_share: float = stretch_share(0.0)
    sleeve_length: float = choice(
        0.0, "mm", "length added at the wrist", low=-500, high=200, step=5, group="length", source=AS_ASKED
    )
    cuff_depth: float = cuff_depth(0.0, 0.0)
    hem_fullness: float = choice(
        1.0,
        "ratio",
        "hem as cut over what it is gathered up to, at a cuff or an elastic",
        low=1.0,
        high=3.0,
        step=0.1,
        group="fullness",
        source=practice("1.5 light, 2 standard, 3 full"),
    )
    overhang: float = choice(
        0.0,
        "mm",
        "length added so that a gathered sleeve falls over its cuff or elastic",
        low=0,
        high=200,
        step=5,
        group="fullness",
        source=practice("20 to 60"),
    )
    elbow_bend: float = choice(
        7.0,
        "deg",
        "how far the forearm turns forward, taken in by an elbow dart",
        low=0,
        high=12,
        source=BY_EYE,
        group="style",
    )


def sleeve(
    body: Body, fabric: Fabric | None, choices: Choices, *, front_armhole: Chain, back_armhole: Chain
) -> Draft:
    """Return the sleeve (piece `sleeve`) that fits these two armhole edges.

    Raises `DraftError` naming the widths in reach where no cap fits.
    """
    scale = body_scale(body)
    stretch = settle_stretch(fabric, choices.stretch_share)
    share = 1 / (1 + stretch.used)
    hand, body = body["hand_girth"] / stretch.pull, reduced(body, share)
    cap_ease, cloth_said = cap_ease_in(fabric, choices.cap_ease)
    front, back = half_armholes(front_armhole, back_armhole, cap_ease, scale)
    arm = body["upper_arm_girth"]
    ease = choices.arm_ease + body.layer("upper_arm_girth")
    length = body["arm_length"] + choices.sleeve_length - choices.cuff_depth + choices.overhang
    bare = arm_girth_at(body, body["arm_length"] + choices.sleeve_length)
    finished = bare + body.layer("wrist_girth") + choices.wrist_ease
    wrist = finished * choices.hem_fullness
    cap, width = fit_widened(front, back, arm + ease, wrist, length)
    if length < body["upper_arm_length"] and wrist < SHORT_HEM * width:
        wrist = SHORT_HEM * width  # a short sleeve hangs nearly straight from a widened cap
        cap, width = fit_widened(front, back, arm + ease, wrist, length)
    settled = sleeve_width_said(width, arm + ease, "A shallower armhole or gathers in the cap")
    wrist = min(wrist, WIDEST_HEM * width)
    seams, slit = _seams_below(body, choices, cap, (finished, wrist), length, width, scale, hand)
    draft = _draft(
        (front_armhole, back_armhole),
        cap,
        seams,
        front,
        back,
        slit,
        (*cloth_said, *settled),
        Girth("upper_arm", arm, ease, width - arm, limb=True),
    )
    if choices.hem_fullness > 1:
        draft = gathered(draft, ("sleeve", "hem"), sewn=min(finished, wrist))
    if stretch.turned:
        draft = draft.with_pieces(replace(piece, grain=0.0) for piece in draft.pieces)
    return with_body_girths(draft, share)


def _seams_below(
    body: Body,
    choices: Choices,
    cap: Cap,
    hems: tuple[float, float],
    length: float,
    width: float,
    scale: float,
    hand: float,
) -> tuple[SleeveSeams, float]:
    """Return the seams and the slit; `hems` are the hem's length as sewn and as drawn."""
    top = cap.height + 0.2 * (length - cap.height)
    elbow = min(max(body["upper_arm_length"], top), 0.8 * length)
    below = Forearm(cap, width, hems[1], length, elbow)
    long = length > body["upper_arm_length"] + 60 * scale
    slit = 0.0
    if choices.cuff_depth > 0 or (long and hems[0] < hand + HAND_ROOM and choices.hem_fullness <= 1):
        slit = min(SLIT * scale, 0.4 * (length - elbow))
    bend = choices.elbow_bend if long else 0.0
    return (elbow_seams(below, bend) if bend > 0 else straight_seams(below)), slit


def _draft(
    chains: tuple[Chain, Chain],
    cap: Cap,
    seams: SleeveSeams,
    front: HalfArmhole,
    back: HalfArmhole,
    slit: float,
    settled: tuple[Finding, ...],
    girth: Girth,
) -> Draft:
    """Put the ring together; it is drawn front to +x and mirrored to lie as the left sleeve."""
    front_edges = _with_slit(Half.FRONT, seams.front.reversed(), slit, at_start=True)
    back_edges = _back_edges(seams, slit)
    crown = Notch("crown", cap.front.length, kind=NotchKind.CROWN)
    ring = (
        Edge("hem", seams.hem, EdgeKind.HEM, role=EdgeRole.HEM),
        *front_edges,
        Edge("cap_front", cap.front, notches=(crown,), role=EdgeRole.CAP, half=Half.FRONT),
        Edge("cap_back", cap.back.reversed(), role=EdgeRole.CAP, half=Half.BACK),
        *back_edges,
    )
    level = Level(
        "upper_arm", (line(complex(-cap.back_width, 0), complex(cap.front_width, 0)),), LevelKind.UPPER_ARM
    )
    piece = Piece(
        "sleeve",
        ring,
        pair=True,
        levels=(level,),
        title="Sleeve",
        points={"crown": complex(0, cap.height)},
        role=PieceRole.SLEEVE,
    )
    mirrored = piece.mirrored()
    facts = {
        "cap_height": cap.height,
        "arm_lift": cap.lift,
        "sleeve_slit": slit,
        "armhole_depth": (front.depth + back.depth) / 2,
        "notch_front": front.notch,
        "notch_back": back.notch,
    }
    return Draft(
        (mirrored,),
        _seams(mirrored, chains, front, back, cap),
        (girth,),
        (*settled, *_said(cap, front, back, slit)),
        facts,
        {"sleeve_hem": ((mirrored.name, "hem"),)},
    )


def _underarm(half: Half, path: Path, part: str = "") -> Edge:
    return Edge(f"underarm_{half}{part}", path, role=EdgeRole.UNDERARM, half=half)


def _with_slit(half: Half, seam: Path, slit: float, at_start: bool, part: str = "") -> list[Edge]:
    """Return the underarm edge; its hem end of `slit` mm is an edge of its own that stays open."""
    if slit <= 0:
        return [_underarm(half, seam, part)]
    low, high = seam.split(slit) if at_start else seam.split(seam.length - slit)
    sewn, left = (high, low) if at_start else (low, high)
    opening = Edge(f"slit_{half}", left, EdgeKind.OPENING, role=EdgeRole.SLIT, half=half)
    found = [_underarm(half, sewn, part), opening]
    return found[::-1] if at_start else found


def _back_edges(seams: SleeveSeams, slit: float) -> list[Edge]:
    if seams.dart is None:
        return _with_slit(Half.BACK, seams.back[0], slit, at_start=False)
    return [
        _underarm(Half.BACK, seams.back[0], "_upper"),
        *dart_edges("elbow_dart", EdgeRole.ELBOW_DART, *seams.dart),
        *_with_slit(Half.BACK, seams.back[1], slit, at_start=False, part="_lower"),
    ]


def _seams(
    piece: Piece, chains: tuple[Chain, Chain], front: HalfArmhole, back: HalfArmhole, cap: Cap
) -> tuple[Seam, ...]:
    """The sleeve's seams; cap notches stand as far from the underarm as the armhole's."""
    name = piece.name
    under = edges_as(piece, EdgeRole.UNDERARM)
    backs = tuple((name, e.name) for e in under if e.half is Half.BACK)
    closed = edge_as(piece, EdgeRole.SLIT) is not None
    caps = ((name, "cap_front"),), ((name, "cap_back"),)
    seams = [
        *armhole_seams(caps, chains, (front, back), cap),
        Seam(
            "sleeve underarm",
            ((name, "underarm_front"),),
            tuple(reversed(backs)),
            start="smooth",
            end=None if closed else "smooth",
            kind=SeamKind.SLEEVE,
        ),
    ]
    return (*seams, *(replace(seam, name="elbow dart") for seam in dart_seams(piece)))


def _said(cap: Cap, front: HalfArmhole, back: HalfArmhole, slit: float) -> tuple[Finding, ...]:
    found = [
        Finding(
            "arm lift",
            "note",
            "sleeve",
            cap.lift,
            None,
            f"The cap is {cap.height:.0f} mm high: the arm rises about {cap.lift:.0f} degrees from hanging "
            "before the sleeve pulls at the body.",
        ),
        cap_ease_said(cap.front.length + cap.back.length, front.path.length + back.path.length),
    ]
    if slit:
        found.append(
            Finding(
                "hand",
                "note",
                "sleeve",
                slit,
                None,
                f"The lowest {slit:.0f} mm of the underarm seam stay open, so that the hand passes.",
            )
        )
    return tuple(found)
