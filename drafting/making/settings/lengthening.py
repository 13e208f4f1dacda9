"""How far a seam must lengthen on this body, from the draft's own girths. Layer 5. Fractions.

A seam that runs around the body must give what the cloth gives there: body over garment, less one.
One that runs along a close garment must follow the skin when the wearer bends and sits; a crotch
seam most of all.
"""

from __future__ import annotations

import cmath
import math

from drafting.draft import Draft, Seam
from drafting.fabric import Fabric

BENDS = 0.10
"""Share by which a close garment is drawn longer when its wearer bends or lifts an arm (from memory:
skin along the back and over a bent knee lengthens by more, and the garment slides)."""

SITS = 0.20
"""The same at the crotch seam when the wearer sits (from memory)."""

BIAS = 0.03
"""What a seam on the bias gains as it hangs (from memory; so it is sewn with some give)."""

TRUE_BIAS = 28.0
"""degrees off the thread from which an edge stretches by its own weight (ours; a shoulder's slope is
less)."""

SHORT, STRAIGHT = 60.0, 0.97
"""mm, and chord over length: what is shorter or more curved does not hang on the bias (ours)."""

HANGS = 150.0
"""mm of seam from which its own weight pulls it longer (ours)."""

CLOSE = 0.005
"""Stretch in use at some level from which a garment counts as close to the body (ours)."""


def around(draft: Draft) -> float:
    """Return the greatest stretch in use at any level of the garment, as a fraction."""
    used = [
        -g.settled_ease / (g.body + g.settled_ease)
        for g in draft.girths
        if g.body + g.settled_ease > 0
    ]
    return max(0.0, *used) if used else 0.0


def lengthens(draft: Draft, seam: Seam, fabric: Fabric | None) -> float:
    """Return the fraction by which a seam must lengthen when the garment is worn."""
    used = around(draft)
    if used > CLOSE:
        if any("crotch" in edge for _, edge in seam.a):
            return max(SITS, used)
        return used if runs_around(draft, seam) else max(BENDS, used / 2)
    return BIAS if on_bias(draft, seam) and fabric is not None and fabric.weave == "woven" else 0.0


def runs_around(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam runs more across the body than along it, from its ends."""
    across = along = 0.0
    for ref in seam.a:
        path = draft.edge(ref).path
        across += abs(path.end.real - path.start.real)
        along += abs(path.end.imag - path.start.imag)
    return across > along


def on_bias(draft: Draft, seam: Seam) -> bool:
    """Return whether both sides of a seam lie well off their cloth's threads, as flared panels do."""
    length = sum(draft.edge(ref).length for ref in seam.a)
    angles = [max(bias_angle(draft, ref) for ref in chain) for chain in (seam.a, seam.b)]
    return length > HANGS and min(angles) > TRUE_BIAS


def bias_angle(draft: Draft, ref: tuple[str, str]) -> float:
    """Return how far an edge lies off the nearer thread of its cloth, degrees (45: true bias).

    A short edge, or one so curved that it runs through every angle, counts as 0.
    """
    piece, path = draft[ref[0]], draft.edge(ref).path
    chord = path.end - path.start
    if abs(chord) < max(SHORT, STRAIGHT * path.length):
        return 0.0
    off = (math.degrees(cmath.phase(chord)) - piece.grain) % 90
    return min(off, 90 - off)
