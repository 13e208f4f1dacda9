"""Zips in a centre: where the opening ends, the lap over it, and what to buy. mm.

Lines are those of a front drawn as the wearer's left: its centre on x = 0, the cloth at x > 0. A back
is turned over before and after.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.draft.draft import Draft, EdgeRef, Notion, Seam
from drafting.draft.piece import Edge, Notch, Placement
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.geometry import Path, line
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.details.button_stand import FrontLines

BELOW_NECK = 8.0
"""mm at adult scale: a zip begins so far below the neck, with a hook and eye above it (common practice)."""

LAPPED = 12.0
"""mm at adult scale: the lap over a zip is stitched so far from the centre (common practice: 10 to 15)."""

ZIP_STEP, LONG_ZIP, LONG_STEP = 50.0, 800.0, 100.0
"""mm: zips are sold every 5 cm, beyond 80 cm every 10 (common practice; shops differ)."""

SHORTEST_ZIP = 100.0
"""mm: the shortest zip that is commonly sold (common practice)."""


HOOK = 8.0
"""mm: the hook above a zip, size 2 or 3 (common practice)."""


@dataclass(frozen=True)
class Zip:
    """A zip in the centre of the `side` front or back: `invisible` or `lapped`, its opening's `length`
    and `allowance`; `over` is the hand whose lap lies on top, `through` says it comes apart at the hem.
    `above` is the part of the opening that lies on a yoke, `foot` what it ends at where it comes apart.
    """

    side: str
    kind: str
    length: float
    allowance: float
    over: str
    through: bool
    scale: float
    above: float = 0.0
    foot: str = "hem"

    @property
    def need(self) -> float:
        """How long the zip has to be at least."""
        return self.length + self.above - BELOW_NECK * self.scale


def sold_zip(length: float) -> float:
    """Return the shortest zip that is sold and no shorter than `length`, mm.

    >>> sold_zip(412), sold_zip(60), sold_zip(805)
    (450.0, 100.0, 900.0)
    """
    step = ZIP_STEP if length <= LONG_ZIP else LONG_STEP
    return max(SHORTEST_ZIP, math.ceil(length / step - 1e-9) * step)


def foot_of(draft: Draft, ref: EdgeRef) -> str:
    """Return what a zip ends at that opens a garment down to this edge of its waist: a peplum hangs on below."""
    return "waist seam" if any(ref in (*seam.a, *seam.b) for seam in draft.seams) else "hem"


def parted(centre: Edge, piece: str, zipped: Zip) -> tuple[tuple[Edge, ...], tuple[Seam, ...]]:
    """Return the centre as an opening, and below the stop a seam from left to right."""
    length, allowance, side = zipped.length, zipped.allowance, zipped.side
    if length >= centre.length:
        return (replace(centre, allowance=allowance),), ()
    high, low = centre.path.split(length)
    stop = Notch("zip_stop", length, 1 if side == "front" else 2)
    below = Edge("centre_seam", low, allowance=allowance, role=EdgeRole.CENTRE)
    chain = ((piece, below.name),)
    seam = Seam(f"centre {side}", chain, chain, start=None, end=None, kind=SeamKind.CENTRE)
    return (replace(centre, path=high, allowance=allowance, notches=(*centre.notches, stop)), below), (seam,)


def lap(lines: FrontLines, zipped: Zip) -> tuple[Placement, ...]:
    """Return the stitching of the lap, down beside the centre and across below the stop."""
    over, scale = zipped.over, zipped.scale
    begin = 0.0 if zipped.above else BELOW_NECK * scale
    x, top, low = LAPPED * scale, lines.top - 1j * begin, lines.top - 1j * zipped.length
    down = Placement(f"zip_stitching_{over}", line(top + x, low + x), "stitching", over)
    return down, Placement(f"zip_stitching_end_{over}", line(low + x, low), "stitching", over)


def lap_above(centre: Path, zipped: Zip) -> Placement:
    """Return the stitching of the lap on a yoke, from below the neck on down beside the whole of its centre."""
    x, over = LAPPED * zipped.scale, zipped.over
    down = line(centre.start + x - 1j * BELOW_NECK * zipped.scale, centre.end + x)
    return Placement(f"zip_stitching_{over}", down, "stitching", over)


def zip_notions(piece: str, zipped: Zip) -> Iterator[Notion]:
    """Yield the zip to buy and the hook and eye above it."""
    side, need, right_through = zipped.side, zipped.need, zipped.through
    sort = "open-ended zip" if right_through else f"{zipped.kind} zip" if zipped.kind == "invisible" else "zip"
    sold = sold_zip(need)
    said = "taken apart below" if right_through else f"stopped with a bar at the notch, {told(need)} down"
    yield Notion("zip", f"centre {side}", 1, sold, f"{said}; the opening takes {told(need)}", sort, piece=piece)
    yield Notion(
        "hook and eye",
        f"centre {side}",
        1,
        note="above the zip, inside",
        kind="hook and eye",
        size=HOOK,
        piece=piece,
    )


def zip_said(zipped: Zip) -> Finding:
    """Return what kind of zip it is, how far it goes and which one to buy."""
    side, need, right_through = zipped.side, zipped.need, zipped.through
    sold = sold_zip(need)
    kind = "an open-ended" if right_through else "an invisible" if zipped.kind == "invisible" else "a lapped"
    low = (
        f"as far as the {zipped.foot}, and is taken apart there"
        if right_through
        else "to the notch; below it the seam is sewn"
    )
    return Finding(
        "closing",
        "note",
        side,
        need,
        sold,
        f"The {side} closes with {kind} zip of {told(need)}, {low}. Buy one of {told(sold, 'ready')}, and "
        f"shorten it at {'the top' if right_through else 'the notch, under a bar'}. "
        f"The centre has {told(zipped.allowance)} of allowance.",
    )
