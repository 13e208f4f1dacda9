"""How a seam is pressed: which way, how hot, on what, with what this room has."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from drafting.checks.enclosed import FRENCH, french
from drafting.checks.treatments import iron_limit
from drafting.costume.workroom import Workroom
from drafting.draft.by_role import between_yokes, edge_as, piece_roles, roles_in
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import FACINGS, SLEEVES, EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import PLAIN, has_pile
from drafting.making.model import Said, said
from drafting.making.settings.stitches import OVEREDGE

Press = Literal["open", "to one side", "not"]

ENCLOSING = (
    PieceRole.CUFF,
    PieceRole.KNEE_BAND,
    PieceRole.WAISTBAND,
    PieceRole.BAND,
    PieceRole.COLLAR_STAND,
    PieceRole.CASING,
)
"""Bands that take the edge they are sewn to between their two layers (class 3 of `Source.ISO_4916`)."""


JOINED = FRENCH | {SeamKind.PANEL, SeamKind.PRINCESS, SeamKind.CENTRE, SeamKind.WAIST, SeamKind.CROTCH}
"""Seams between parts of a body or a leg: of sheer cloth both allowances are overcast together."""

LEANING = frozenset({SeamKind.YOKE, SeamKind.LAID_PLEAT})
"""Seams whose allowances never lie open: a yoke's go up into it, a pleat lies as it was laid (common practice)."""


def press_for(draft: Draft, seam: Seam, stitch: str, fabric: Fabric | None) -> Press:
    """Return how the allowances are pressed: open, but where one side must hold the other or both are enclosed.

    What is turned at once is not: its edge is pressed. Of sheer cloth both are overcast together.
    """
    if seam.kind is SeamKind.BAG:  # two bags lie on one another, neatened together
        return "not"
    if french(draft, seam, fabric):
        return "to one side"
    if seam.kind is SeamKind.FACING and {role in FACINGS for role in piece_roles(draft, (*seam.a, *seam.b))} == {
        True,
        False,
    }:
        return "not"
    if (
        seam.kind in LEANING
        or between_yokes(draft, seam)
        or (fabric is not None and handling(fabric).neatens == "french" and seam.kind in JOINED)
    ):
        return "to one side"
    edges = [draft.edge(ref) for ref in (*seam.a, *seam.b)]
    capped = roles_in(draft, seam) & {EdgeRole.CAP, EdgeRole.CAP_PART}
    if stitch in OVEREDGE or capped or any(edge.kind is EdgeKind.DART for edge in edges):
        return "to one side"
    gathered = any(edge.sewn is not None for edge in edges)
    held = gathered or encloses(draft, seam) or _collared(draft, seam)
    return "to one side" if held else "open"


def _collared(draft: Draft, seam: Seam) -> bool:
    """Return whether a collar that has no stand is sewn to the neck; a tailored one is pressed open."""
    roles = piece_roles(draft, (*seam.a, *seam.b))
    return {role is PieceRole.COLLAR for role in roles} == {True, False}


def encloses(draft: Draft, seam: Seam) -> bool:
    """Return whether a band is sewn to an edge that it will enclose."""
    roles = piece_roles(draft, (*seam.a, *seam.b))
    return {role in ENCLOSING for role in roles} == {True, False}


def heat(cloths: tuple[Fabric, ...], room: Workroom) -> int | None:
    """Return the dots of the iron: the tenderest cloth's, no more than the iron has; None unknown."""
    known = [limit for cloth in cloths if (limit := iron_limit(cloth)) is not None]
    return min(*known, room.iron_dots) if known else None


def pressed_on(
    fabric: Fabric | None, dots: int | None, room: Workroom, *, by_hand: bool = False
) -> Iterator[Said]:
    """Yield how a pile is held, and what lies under and over the seam while it is pressed: pile never hard."""
    pile = fabric is not None and has_pile(fabric)
    if pile and not by_hand:
        yield said("set.pile")
    if dots == 0:
        return
    takes = handling(fabric) if fabric is not None else PLAIN
    if pile:
        yield said("set.pile_board" if "needle board" in room.pressing else "set.pile_scrap")
    if pile and takes.steam:
        yield said("set.pile_steam" if "steam" in room.pressing else "set.pile_damp")
    elif takes.press_cloth:
        yield said("set.press_cloth" if takes.steam else "set.press_cloth_dry")
    elif dots == 1:
        yield said("set.cool_cloth" if "press cloth" in room.pressing else "set.cool")


def side_pressed(draft: Draft, seam: Seam) -> Said:
    """Return to which side both allowances go: onto a piece, or where one piece is on both sides."""
    if all(draft.edge(ref).kind is EdgeKind.DART for ref in (*seam.a, *seam.b)):
        return said("side.down" if _is_level(draft, seam) else "side.middle")
    if seam.kind is SeamKind.LAID_PLEAT:
        return said("side.laid")
    if seam.a == seam.b:
        return said("side.left")
    if len({piece for piece, _ in (*seam.a, *seam.b)}) == 1:
        return said("side.back")
    onto = draft[pressed_towards(draft, seam)]
    return said("side.onto", piece=onto.base or onto.name)


def _is_level(draft: Draft, seam: Seam) -> bool:
    """Return whether a dart lies more across the piece than along it."""
    run = draft.edge(seam.a[0]).path
    way = run.end - run.start
    return abs(way.real) > abs(way.imag)


def pressed_towards(draft: Draft, seam: Seam) -> str:
    """Return the piece onto which a seam is pressed where both allowances go to one side (common practice).

    Into the band or the collar that is turned in over it; into the sleeve; off what is gathered; up into a yoke;
    else towards the back.
    """
    for chosen in (ENCLOSING, SLEEVES, (PieceRole.COLLAR,)):
        for chain in (seam.a, seam.b):
            if all(draft[piece].role in chosen for piece, _ in chain):
                return chain[0][0]
    for chain, other in ((seam.a, seam.b), (seam.b, seam.a)):
        if any(draft.edge(ref).sewn is not None for ref in other):
            return chain[0][0]
    if seam.kind is SeamKind.YOKE or between_yokes(draft, seam):
        for piece, _ in (*seam.a, *seam.b):
            if edge_as(draft[piece], EdgeRole.YOKE) and edge_as(draft[piece], EdgeRole.SHOULDER):
                return piece
    backs = [piece for piece, _ in (*seam.a, *seam.b) if draft[piece].role is PieceRole.BACK]
    return backs[0] if backs else seam.a[0][0]
