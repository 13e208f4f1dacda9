"""How far a seam must lengthen on this body, and why, from the draft's own girths. Fractions.

A seam around the body must give what the cloth gives at its level: body over garment, less one. One
along a close garment is cut shorter too, and follows the skin when the wearer bends; an armhole
follows the lifted arm, a crotch seam the seat when the wearer sits.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from drafting.draft.bias import on_bias
from drafting.draft.by_role import roles_in
from drafting.draft.draft import Draft, EdgeRef, Girth, Seam
from drafting.draft.roles import SLEEVES, EdgeRole
from drafting.fabric import Fabric, needed_stretch
from drafting.shaping.stretch import SEAT_STRAIN

Cause = Literal["", "around", "moves", "passes", "bias"]

BENDS = 0.10
"""Share by which a close garment is drawn longer when its wearer bends (from memory: the skin of back
and knee lengthens by more, and the garment slides)."""

RISES = 0.15
"""The same round the armhole of a close garment when the arm is lifted (from memory)."""

SHORTER = 0.5
"""Of what girths give, lengths of a close garment give this share (as `settle_stretch` cuts them)."""

BIAS = 0.03
"""What a seam on the bias gains as it hangs (from memory; so it is sewn with some give)."""

CLOSE = 0.005
"""Stretch in use at some level from which a garment counts as close to the body (ours)."""


@dataclass(frozen=True, slots=True)
class Gives:
    """The fraction by which a line of stitches must lengthen, and what lengthens it.

    `around` the body's girth, `moves` its bending, `passes` a hand or head that it is pulled over,
    `bias` its own weight.
    """

    share: float = 0.0
    cause: Cause = ""

    @property
    def by_the_body(self) -> bool:
        return self.cause in ("around", "moves", "passes")


def around(draft: Draft) -> float:
    """Return the greatest stretch in use at any level of the garment, as a fraction."""
    return max((in_use(girth) for girth in draft.girths if _is_held(draft, girth)), default=0.0)


def _is_held(draft: Draft, girth: Girth) -> bool:
    """Return whether a level is held at both ends: without sleeves nothing draws a width across the body."""
    return not girth.width or any(piece.role in SLEEVES for piece in draft.pieces)


def in_use(girth: Girth) -> float:
    """Return the stretch in use at one level; 0 where there is ease."""
    finished = girth.body + girth.settled_ease
    return max(0.0, needed_stretch(girth.body - girth.inside, finished)) if finished > 0 else 0.0


def lengthens(draft: Draft, seam: Seam, fabric: Fabric | None) -> Gives:
    """Return how far a seam must lengthen when the garment is worn, and why.

    No seam lengthens further than its cloth: firm cloth that is cut too narrow binds, whatever its stitch.
    """
    gives = _asked(draft, seam, fabric)
    if gives.cause == "around" and fabric is not None:
        share = min(gives.share, fabric.greatest_stretch)
        return replace(gives, share=share) if share > CLOSE else Gives()
    most = fabric.greatest_stretch if fabric is not None else 0.0
    return replace(gives, share=min(gives.share, most)) if gives.cause == "moves" else gives


def _asked(draft: Draft, seam: Seam, fabric: Fabric | None) -> Gives:
    used = max((in_use(girth) for _, girth in girths_across(draft, seam)), default=around(draft))
    if used <= CLOSE:
        hangs = on_bias(draft, seam) and fabric is not None and fabric.weave == "woven"
        return Gives(BIAS, "bias") if hangs else Gives()
    roles = roles_in(draft, seam)
    along = 1 + SHORTER * used
    if EdgeRole.CROTCH in roles:
        return Gives(along * (1 + SEAT_STRAIN) - 1, "moves")
    if EdgeRole.ARMHOLE in roles:
        return Gives(max(RISES, used), "moves")
    if runs_around(draft, seam):
        return Gives(in_use_near(draft, seam, used), "around")
    return Gives(along * (1 + BENDS) - 1, "moves")


def girths_across(draft: Draft, seam: Seam) -> list[tuple[float, Girth]]:
    """Return the girths whose levels lie across the seam's pieces, each with its height there, mm."""
    refs = (*seam.a, *seam.b)
    return [
        (_height(level.paths[0].start, level.paths[-1].end) - _mean_height(draft, piece, refs), girth)
        for piece in dict.fromkeys(piece for piece, _ in refs)
        for level in draft[piece].levels
        for girth in draft.girths
        if girth.level == level.name and (not draft[piece].hand or girth.side in ("", draft[piece].hand))
        if _is_held(draft, girth)
    ]


def in_use_near(draft: Draft, seam: Seam, otherwise: float) -> float:
    """Return the stretch in use at the level nearest to a seam that runs around."""
    found = girths_across(draft, seam)
    return in_use(min(found, key=lambda pair: abs(pair[0]))[1]) if found else otherwise


def _height(*points: complex) -> float:
    return math.fsum(p.imag for p in points) / len(points)


def _mean_height(draft: Draft, piece: str, refs: Iterable[EdgeRef]) -> float:
    paths = [draft.edge(ref).path for ref in refs if ref[0] == piece]
    return _height(*(p for path in paths for p in (path.start, path.end)))


def runs_around(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam runs more across the body than along it, from its ends."""
    across = along = 0.0
    for ref in seam.a:
        path = draft.edge(ref).path
        across += abs(path.end.real - path.start.real)
        along += abs(path.end.imag - path.start.imag)
    return across > along
