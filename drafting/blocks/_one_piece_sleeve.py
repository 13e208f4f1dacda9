"""The one-piece sleeve put together: its ring of edges, its levels, and the seams it makes."""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.by_role import edge_as, edges_as
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Girth, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Level, Notch, Piece
from drafting.draft.roles import EdgeRole, Half, LevelKind, NotchKind, PieceRole, SeamKind
from drafting.geometry import Path, line
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.sleeve.below_cap import SleeveSeams
from drafting.shaping.sleeve.cap import Cap
from drafting.shaping.sleeve.easing import cap_ease_said, cap_height_said
from drafting.shaping.sleeve.half_cap import HalfArmhole
from drafting.shaping.sleeve.set_in import BothHalfArmholes, armhole_seams
from drafting.shaping.torso.dart_mouth import dart_edges, dart_seams


def one_piece(
    chains: tuple[Chain, Chain],
    cap: Cap,
    seams: SleeveSeams,
    halves: BothHalfArmholes,
    slit: float,
    settled: tuple[Finding, ...],
    girth: Girth,
) -> Draft:
    """Return the draft of the sleeve; it is drawn front to +x and mirrored to lie as the left sleeve."""
    front, back = halves
    piece = _piece(cap, seams, slit).mirrored()
    facts = {
        "cap_height": cap.height,
        "arm_lift": cap.lift,
        "sleeve_slit": slit,
        "armhole_depth": (front.depth + back.depth) / 2,
        "notch_front": front.notch,
        "notch_back": back.notch,
    }
    return Draft(
        (piece,),
        _seams(piece, chains, halves, cap, seams),
        (girth,),
        (*settled, *_said(cap, front, back, slit)),
        facts,
        {"sleeve_hem": ((piece.name, "hem"),)},
    )


def _piece(cap: Cap, seams: SleeveSeams, slit: float) -> Piece:
    """The right sleeve's piece, as it is drawn: front to +x."""
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
    arm = line(complex(-cap.back_width, 0), complex(cap.front_width, 0))
    levels = [Level("upper_arm", (arm,), LevelKind.UPPER_ARM)]
    if seams.elbow is not None:
        levels.append(Level("elbow", (seams.elbow,), LevelKind.ELBOW))
    return Piece(
        "sleeve",
        ring,
        pair=True,
        levels=tuple(levels),
        title="Sleeve",
        points={"crown": complex(0, cap.height)},
        role=PieceRole.SLEEVE,
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
    piece: Piece, chains: tuple[Chain, Chain], halves: BothHalfArmholes, cap: Cap, drawn: SleeveSeams
) -> tuple[Seam, ...]:
    """The sleeve's seams; cap notches stand as far from the underarm as the armhole's."""
    name = piece.name
    under = edges_as(piece, EdgeRole.UNDERARM)
    backs = tuple((name, e.name) for e in under if e.half is Half.BACK)
    closed = edge_as(piece, EdgeRole.SLIT) is not None
    caps = ((name, "cap_front"),), ((name, "cap_back"),)
    seams = [
        *armhole_seams(caps, chains, halves, cap),
        Seam(
            "sleeve underarm",
            ((name, "underarm_front"),),
            tuple(reversed(backs)),
            start="smooth",
            end=None if closed else "smooth",
            notches=_elbow_notch(piece, drawn),
            kind=SeamKind.SLEEVE,
        ),
    ]
    return (*seams, *(replace(seam, name="elbow dart") for seam in dart_seams(piece)))


def _elbow_notch(piece: Piece, drawn: SleeveSeams) -> tuple[SeamNotch, ...]:
    """The mark where the sleeve passes the elbow, on both sides of the underarm seam."""
    if drawn.elbow is None:
        return ()
    return (SeamNotch("elbow", drawn.elbow_at, drawn.elbow_at),)


def _said(cap: Cap, front: HalfArmhole, back: HalfArmhole, slit: float) -> tuple[Finding, ...]:
    found = [
        cap_height_said(cap.height, cap.lift, "pulls at the body"),
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
                f"The lowest {told(slit)} of the underarm seam stay open, so that the hand passes.",
            )
        )
    return tuple(found)
