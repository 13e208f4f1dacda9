"""What a fitting sheet tells its maker: in which order to look, how a note is written, what to mind."""

from __future__ import annotations

from drafting.alter.braces import BRACE_BUTTON
from drafting.draft.by_role import edges_as, piece_as, pieces_as
from drafting.draft.draft import Draft
from drafting.draft.roles import COLLARS, SLEEVES, EdgeRole, PieceRole
from drafting.fitting.bands import GarmentSort, sort_of_garment
from drafting.fitting.note import Verb
from drafting.ground.lengths import told

FIELDS = ("fitting no.", "on", "worn over", "shoes", "photographs")

STAND = (
    "Let the wearer stand as ever, in the underwear, padding and shoes of the show; close the garment edge to "
    "edge on its middle; tie a tape round the waist."
)

TRUNK = (
    "Shoulders and balance (hem level, middles plumb) - neck - bust and blades - width of the back - waist level "
    "- waist and sides - armhole"
)

PARTS: tuple[tuple[frozenset[PieceRole], str], ...] = (
    (SLEEVES, "sleeve: pitch, cap, width, length"),
    (COLLARS, "collar"),
    (frozenset({PieceRole.HOOD}), "hood, over the wig"),
)
"""What is looked at once the trunk hangs right, by the pieces that a garment has."""

LAST = "the hem last, from the floor."

LEGS = (
    "Let the wearer stand as ever, in the shoes of the show; close the front edge to edge; tie a tape round the "
    "waist.",
    "Waist level - crotch length - seat - thigh - knee - the hem last, on the shoe. Then sit down.",
)

FALL = (
    "Let the wearer stand as ever, in the shoes of the show; pin the bearers together where they meet on the "
    "middle, turn the fall in along its lines and pin it onto them at its marks; tie a tape round the waist.",
    *LEGS[1:],
)

SKIRT = (
    "Let the wearer stand as ever, in the underwear, padding and shoes of the show; close the waist edge to edge "
    "where it opens; tie a tape round the waist.",
    "Waist level - waist and hip - seams that hang plumb - folds below the waist - the hem last, from the floor. "
    "Then walk, sit, and climb a step.",
)

OVER = (
    "Let the wearer stand as ever, over what is worn beneath it, in the shoes of the show; close the neck edge to "
    "edge."
)

HUNG = "Neck, which must not drag back - shoulder line - folds that spread evenly - front edges plumb"

ARMS = "Then lift both arms."

FOOT = (
    "Let the wearer stand in the stocking and the shoe of the show; pin the front over the back along the marks "
    "of its buttons.",
    "Seam down the instep - ankle and upper edge - the tongue flat on the laces - the hem last, which ends above "
    "the ground all round. Then bend the foot and climb a step.",
)

BY_SORT = {GarmentSort.LEGS: LEGS, GarmentSort.WAISTED: SKIRT, GarmentSort.FOOT: FOOT}

ON_BRACES = "It is worn on braces: hang it from them at its marks before you look at anything."

RULES = (
    "Side (the wearer's own left or right, or both), where, what, how much, and how it is counted. A pinch takes "
    "twice its width of cloth; at each of two side seams that is four times its width of the girth. Write pinch, "
    "total, or per seam edge.",
    f"Words for what: {', '.join(Verb)}. Say whether it is the body, the style, the cloth, or an accident of "
    "cutting.",
    f"Under {told(3.0)} is no note. More than {told(25.0)} at one seam, or {told(50.0)} round, is a measure to "
    "take again.",
)

MIND = (
    "Release the wrong seam before you pin, look again, then pin: one cause at a time, from the top down. "
    "Photograph front, back, both sides, arms up and seated, before pinning and after.",
    "Pins lie flat, heads out, never towards the skin. Draw every line on both faces of the cloth before you "
    "sew; long stitches, another colour, no back-stitches.{clip}",
    "A note is closed only at the next fitting, when it has been seen again and is right.",
)


CLIPPED = {EdgeRole.ARMHOLE: "armhole", EdgeRole.NECK: "neck"}
"""Hollow edges that are clipped to the line before a mock-up is tried on (common practice)."""


def to_mind(draft: Draft) -> tuple[str, ...]:
    """Return what to mind as this garment is pinned."""
    hollow = [n for role, n in CLIPPED.items() if any(edges_as(piece, role) for piece in draft.pieces)]
    clip = f" Clip {' and '.join(hollow)} to the line." if hollow else ""
    return tuple(line.format(clip=clip) for line in MIND)


IN_THE_CHAIR = (
    "The wearer is seated: do all of this in the wearer's own chair. Where a line says stand, walk or climb, sit, "
    "reach and turn; the hem is taken as the wearer sits, clear of the wheels."
)


def order_at_the_body(draft: Draft, *, seated: bool = False) -> tuple[str, ...]:
    """Return in which order to look at this garment: each step changes what lies below it."""
    in_chair = (IN_THE_CHAIR,) if seated else ()
    return *in_chair, *_standing_order(draft)


def _standing_order(draft: Draft) -> tuple[str, ...]:
    braced = any(mark.what == BRACE_BUTTON for piece in draft.pieces for mark in piece.placements)
    on_braces = (ON_BRACES,) if braced else ()
    if piece_as(draft, PieceRole.BEARER):
        return *FALL, *on_braces
    sort = sort_of_garment(draft)
    return *(BY_SORT.get(sort) or _from_above(draft, cape=sort is GarmentSort.CAPE)), *on_braces


def _from_above(draft: Draft, *, cape: bool) -> tuple[str, str]:
    """Return the order of what hangs from neck or shoulders: of parts that the garment has, and no others."""
    parts = [name for roles, name in PARTS if pieces_as(draft, *roles)]
    lapels = ["lapel"] if any(edges_as(piece, EdgeRole.LAPEL) for piece in draft.pieces) else []
    order = " - ".join((HUNG if cape else TRUNK, *parts, *lapels, LAST))
    return (OVER, f"{order} {ARMS}") if cape else (STAND, order)
