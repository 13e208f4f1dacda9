"""The stitch for a seam or a hem: what gives as far as it must, of what the room sews."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from drafting.costume.workroom import THREE_STEP, Workroom
from drafting.making.model import Said, said
from drafting.making.settings.lengthening import Gives

OVEREDGE = ("514", "504")
STRETCHY = (*OVEREDGE, "401")
"""Stitches that give with a knit, the best for a seam first (common practice)."""

MUCH = 0.15
"""Lengthening from which a plain 301 must not be chosen (common practice)."""

LITTLE = 0.005
"""Below it a seam does not have to lengthen at all (ours)."""

BACKSTITCH, CAUGHT = "202", "200"
"""Sewn by hand: a back stitch where no machine sews anything that gives, and a hem caught without a
line of stitches (class 200 of `Source.ISO_4915`; the number 202 from memory)."""

PLAIN, TIGHT, TOP = 2.5, 2.2, 3.2
"""mm of stitch length: a seam 2.2 to 2.8, topstitching 3 to 3.5 (common practice)."""

NARROW, WIDE, STEP = 0.5, 3.0, 0.5
"""mm of zigzag: the least that gives, the most that a seam bears before it tunnels (from memory)."""


@dataclass(frozen=True, slots=True)
class Stitch:
    """An ISO 4915 stitch, its length and width in mm, and why it was chosen."""

    number: str
    length: float = PLAIN
    width: float = 0.0
    why: tuple[Said, ...] = ()


def stitch_for(gives: Gives, knit: bool, room: Workroom) -> Stitch:
    """Return the stitch of a seam that must lengthen so far.

    A seam that the body stretches, and any seam of a knit, is never sewn with a plain 301: overedge
    or chain if there is one, then zigzag, wider the more it must give; else by hand. A bias seam,
    which only hangs, takes a narrow zigzag, or a plain stitch under even tension.
    """
    stretched = knit or gives.by_the_body
    if not stretched and gives.share <= LITTLE:
        return _still(room)
    if stretched and (found := room.has(*STRETCHY)):
        why = "set.why_overedge" if found in OVEREDGE else "set.why_chain"
        return Stitch(found, PLAIN, 0.0, (said(why),))
    if found := room.has("304", THREE_STEP):
        return Stitch(found, PLAIN, width_for(gives.share, PLAIN), (said("set.why_zigzag"),))
    if not stretched and room.has("301"):
        return Stitch("301", TIGHT, 0.0, (said("set.why_even_tension"),))
    return Stitch(BACKSTITCH, PLAIN, 0.0, (said("set.why_by_hand"),))


def without_overedge(room: Workroom) -> Workroom:
    """Return the room for what is sewn along a fold: an overedge would cut the fold off (common practice)."""
    return replace(room, stitches=tuple(stitch for stitch in room.stitches if stitch not in OVEREDGE))


def width_for(share: float, length: float) -> float:
    """Return the width (mm) of a zigzag whose thread, drawn straight, is longer by this share.

    One swing is the slant of a right triangle: sqrt(length^2 + width^2) = (1 + share) length; the
    thread's own stretch is left in hand. Rounded up to half a mm, never more than a seam bears.
    """
    exact = length * math.sqrt((1 + share) ** 2 - 1)
    return min(WIDE, max(NARROW, STEP * math.ceil(exact / STEP - 1e-9)))


def _still(room: Workroom) -> Stitch:
    """Return the stitch of a seam that keeps its length."""
    return Stitch(room.has("301", "401", "101") or BACKSTITCH, PLAIN)


def edge_stitch(gives: Gives, knit: bool, room: Workroom, *, caught: str, topstitched: bool) -> Stitch:
    """Return the stitch that holds a turned edge: a hem, a casing, an opening; `caught` says why by hand."""
    if knit or gives.share > LITTLE:
        if found := room.has("406", THREE_STEP):
            width = 0.0 if found == "406" else WIDE
            return Stitch(found, PLAIN, width, (said("set.why_edge_gives"),))
        if room.has("304"):
            width = max(1.5, width_for(gives.share, PLAIN))
            return Stitch("304", PLAIN, width, (said("set.why_edge_gives"),))
        return Stitch(BACKSTITCH, PLAIN, 0.0, (said("set.why_edge_by_hand"),))
    if caught:
        return Stitch(CAUGHT, 6.0, 0.0, (said(caught),))
    return Stitch(room.has("301", "401", "101") or BACKSTITCH, TOP if topstitched else PLAIN)
