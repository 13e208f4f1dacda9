"""Coat skirt: back, side body and front go on below the waist in one, to a level hem, with a vent or without.

   back              side-body            front
  |     )           .--.                 |     |
c |    | panel     |    |         panel  |     | edge
  |    /           |     \\              /      |
vent    \\         /       \\            /       |
  |      \\       /         \\          /        |
  '-------'      '-----------'        '--------'
     hem              hem             hem  bottom
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import piece_as, the_edge
from drafting.draft.draft import Draft, Girth, Seam
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, LevelKind, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import angle_said, told
from drafting.ground.scale import allowance_scale, body_scale
from drafting.ground.sources import BY_EYE, Source, cite, practice
from drafting.shaping.coat.body_pieces import facing_piece
from drafting.shaping.coat.straight_skirt import HEM_TURN, SkirtWish, long_back, long_front, long_side
from drafting.shaping.coat.tail_remarks import HemHang, hang_of
from drafting.shaping.shared_choices import LEAST_VENT, VENT_WIDTH

PAST_HIP = 60.0
"""mm at adult scale: a coat whose length nobody asked for ends so far below the hip (common practice: over the
seat)."""

LEAST, VENT_BELOW_WAIST = 40.0, 50.0
"""mm at adult scale: shortest skirt below the waist, and the highest a vent may open below it (ours)."""

SIDES_ABOVE_HIP = 100.0
"""mm at adult scale above the hip: no side vent opens higher, as its fold would bend over the seat (common
practice: up to the pockets)."""

STEEP = 30.0
"""Degrees by which a seam below the hip leans out at most without a corner that shows (ours; an edge of a half
circle in four panels leans 22)."""

WALKS = 250.0
"""mm at adult scale below the hip from which a coat wants a vent or flare to walk in (ours)."""

NEAR_FLOOR = 50.0
"""mm above the floor under which a coat's hem is warned of (ours: stairs and heels catch it; to walk in,
a hem clears 20 to 40, common practice)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the coat below its waist, in mm."""

    coat_length: float = choice(
        0.0,
        "mm",
        f"from the nape to the hem; 0: {told(60)} below the hip",
        low=0,
        high=1800,
        step=10,
        group="length",
        begins="nape",
        source=practice("a jacket covers the seat"),
    )
    hip_ease: float = choice(
        90.0,
        "mm",
        "garment minus body at the hip, all round",
        low=0,
        high=600,
        step=5,
        scales=True,
        source=(cite(Source.EASE_IN_CLOTHING, "⟨51⟩ to ⟨70⟩, more over other clothes"), BY_EYE),
    )
    skirt_flare: float = choice(
        10.0,
        "mm",
        "how far each edge of a seam runs out from hip to hem",
        low=0,
        high=200,
        step=5,
        scales=True,
        group="style",
        grows=True,
        source=BY_EYE,
    )
    vent: str = choice(
        "none",
        "word",
        "whether the coat opens in a vent at the centre back, or in one at either back seam",
        words=("none", "centre", "sides"),
        group="style",
        source=practice(),
    )
    vent_length: float = choice(
        220.0,
        "mm",
        f"how high a vent opens above the hem; it ends at least {told(50)} below the waist, at the sides at most "
        f"{told(100)} above the hip",
        low=40,
        high=900,
        step=10,
        scales=True,
        group="style",
        source=practice("⟨200⟩ to ⟨250⟩ on a jacket"),
    )
    vent_width: float = VENT_WIDTH


def coat_skirt(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the coat whose back, side body, front and facing end in a level hem below the waist.

    Raises `DraftError` where the draft has no coat body, or for a coat that ends above the waist.
    """
    back, front = piece_as(draft, PieceRole.BACK), piece_as(draft, PieceRole.FRONT)
    side, facing = piece_as(draft, PieceRole.SIDE_BODY), piece_as(draft, PieceRole.FACING)
    if "coat_waist" not in draft.chains or not (back and front and side and facing):
        raise DraftError(
            "a coat's skirt goes on from its body, and this draft has none",
            turn="take the block coat, or put coat-body before coat-skirt",
        )
    wanted = (body["hip_girth"] + _ease(body, choices)) / 2
    wish = _wish(body, choices, draft.facts["waist_half"], _waist_below_nape(back))
    for _ in range(3):
        pieces = long_back(back, wish), long_side(side, wish), long_front(front, wish)
        drawn = sum(level.length for p in pieces for level in p.levels if level.kind is LevelKind.HIP)
        if wish.drop > wish.hip and wish.beyond > 0:
            wish = replace(wish, beyond=wish.beyond + wanted - drawn)
    long = draft.with_pieces([*pieces, facing_piece(pieces[2])])
    longer = the_edge(pieces[2], EdgeRole.PANEL).length - the_edge(front, EdgeRole.PANEL).length
    seams = tuple(_lowered(seam, front.name, longer) for seam in draft.seams)
    if wish.sides:
        seams = tuple(_opening(seam, {back.name, side.name}) for seam in seams)
    chains = {name: refs for name, refs in draft.chains.items() if name != "coat_waist"}
    facts = {**draft.facts, "coat_length": wish.drop + _waist_below_nape(back), "vent": wish.vent}
    found = replace(long, seams=seams, chains=chains, facts=facts)
    spare = 2 * drawn - body["hip_girth"]
    girth = (Girth("hip", body["hip_girth"], _ease(body, choices), spare),) if wish.drop > wish.hip else ()
    return found + Draft((), (), girth, tuple(_said(body, choices, wish, spare)))


def _ease(body: Body, choices: Choices) -> float:
    return choices.hip_ease + body.layer("hip_girth")


def _waist_below_nape(back: Piece) -> float:
    return -the_edge(back, EdgeRole.WAIST).path.end.imag


def _wish(body: Body, choices: Choices, waist_half: float, waist: float) -> SkirtWish:
    scale, hip = body_scale(body), body["waist_to_hip"]
    drop = choices.coat_length - waist if choices.coat_length else hip + PAST_HIP * scale
    if drop < LEAST * scale:
        raise DraftError(
            "the coat ends above the waist or just below it",
            value=f"coat length {told(choices.coat_length)} from the nape",
            reach=f"from {told(waist + LEAST * scale, 'least')}",
            turn="coat length is taken from the nape down to the hem; a coat that ends at the waist is the block "
            "spencer",
        )
    sides = choices.vent == "sides"
    vent = min(choices.vent_length, _vent_room(choices, drop, hip, scale))
    if choices.vent == "none" or vent < LEAST_VENT * choices.vent_width:
        vent = 0.0
    return SkirtWish(
        hip=hip,
        drop=drop,
        beyond=(body["hip_girth"] + _ease(body, choices)) / 2 - waist_half,
        flare=choices.skirt_flare,
        vent=vent,
        lap=choices.vent_width,
        sides=sides and vent > 0,
        scale=scale,
        allowance=HEM_TURN * allowance_scale(scale),
    )


def _vent_room(choices: Choices, drop: float, hip: float, scale: float) -> float:
    """Return how long a vent may be, mm: as far up as it may open; below 0 where the coat ends above that."""
    below_waist = drop - VENT_BELOW_WAIST * scale
    return min(below_waist, drop - hip + SIDES_ABOVE_HIP * scale) if choices.vent == "sides" else below_waist


def _lowered(seam: Seam, front: str, longer: float) -> Seam:
    """The front seam is counted from its lower end, which has gone down."""
    if seam.kind is not SeamKind.PANEL or seam.a[0][0] != front:
        return seam
    notches = tuple(replace(n, a=n.a + longer, b=n.b + longer) for n in seam.notches)
    return replace(seam, notches=notches)


def _opening(seam: Seam, pieces: set[str]) -> Seam:
    """The seam that ends in a side vent makes no corner with it."""
    joins = {name for name, _ in (*seam.a, *seam.b)} == pieces
    return replace(seam, end=None) if joins and seam.kind is SeamKind.PANEL else seam


def _said(body: Body, choices: Choices, wish: SkirtWish, spare: float) -> Iterator[Finding]:
    if wish.beyond <= 0 and wish.drop > wish.hip:
        said = (
            f"The waist is as wide as the seat with its ease: the coat hangs straight from the waist, with "
            f"{told(spare)} of ease at the hip instead of {told(_ease(body, choices))}."
        )
        yield Finding("hip ease", "note", "coat", spare, _ease(body, choices), said)
    if wish.sides:
        said = (
            f"A vent of {told(wish.vent)} opens at either back seam: the back lies on top, its lap of "
            f"{told(wish.lap)} folded in, and the side body reaches under it as far."
        )
        yield Finding("vent", "note", "coat", wish.vent, choices.vent_length, said)
    elif choices.vent != "none" and not wish.vent:
        yield _no_vent(choices, wish)
    if choices.coat_length:
        yield from _over_the_floor(hang_of(body, choices.coat_length))
    below = wish.drop - wish.hip
    leans = math.degrees(math.atan2(wish.flare, below)) if below > 0 else 0.0
    if leans > STEEP:
        most = told(math.tan(math.radians(STEEP)) * below, "most")
        said = (
            f"From the hip to the hem, {told(below)}, every seam leans out by {angle_said(leans)} and makes a "
            f"corner at the hip: choose a skirt_flare of up to {most}, or a longer coat_length."
        )
        yield Finding("skirt flare", "warning", "coat", leans, STEEP, said)
    if below > WALKS * wish.scale and not wish.vent and choices.skirt_flare < 40 * wish.scale:
        said = (
            f"The coat ends {told(below)} below the hip with neither vent nor flare: it will pull at the knees on "
            'stairs. Ask for vent = "centre", or more skirt_flare.'
        )
        yield Finding("walking room", "note", "coat", choices.skirt_flare, 40 * wish.scale, said)


def _no_vent(choices: Choices, wish: SkirtWish) -> Finding:
    """Return that the coat has no vent though one was asked for, and what would make room for one."""
    least = LEAST_VENT * choices.vent_width
    room = max(0.0, _vent_room(choices, wish.drop, wish.hip, wish.scale))
    laps = f"a vent whose lap is {told(choices.vent_width)} wide is at least {told(least)} long"
    said = f"The coat has no vent: {laps}, not {told(choices.vent_length)}. Choose a longer vent_length."
    if room < least:
        where = "at the back seams, below the pockets" if choices.vent == "sides" else "below the waist"
        said = (
            f"The coat has no vent: there is no room for one. {laps[0].upper()}{laps[1:]}, and {where}, there is "
            f"only {told(room)} above the hem. Choose a longer coat_length, or a narrower vent_width."
        )
    return Finding("vent", "note", "coat", min(room, choices.vent_length), least, said)


def _over_the_floor(hang: HemHang) -> Iterator[Finding]:
    """Yield that a coat's hem comes near the floor, or lies on it."""
    over = hang.floor - hang.length
    if over >= NEAR_FLOOR:
        return
    where = f"{told(over)} above the floor" if over > 0 else f"{told(-over)} below the floor, on which it lies"
    said = (
        f"The coat ends {where}: {told(hang.length)} from the nape, which stands {told(hang.floor)} high. A hem "
        "so low trips whoever wears it, on stairs above all. Choose a coat_length of at most "
        f"{told(hang.floor - NEAR_FLOOR)}."
    )
    yield Finding("hem clearance", "warning", "coat", over, NEAR_FLOOR, said)
