"""Which seams and pieces lie on the bias: they stretch by their own weight as they hang."""

from __future__ import annotations

import cmath
import math

from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.frame import Limb
from drafting.draft.piece import Piece
from drafting.draft.roles import SLEEVES, EdgeRole, SeamKind
from drafting.geometry import Path

BIASED = 28.0
"""degrees off the thread from which an edge stretches by its own weight (ours; a shoulder's slope is
less)."""

SHORT, STRAIGHT = 60.0, 0.97
"""mm, and chord over length: what is shorter or more curved does not hang on the bias (ours)."""

HANGS = 150.0
"""mm of seam from which its own weight pulls it longer (ours)."""


FALLS, ALONG_HEM = 300.0, 20.0
"""mm of height from which the weight of cloth below pulls a part of a circle longer (ours: a peplum does not
wait), and from place to place along its hem."""

RUNS_OFF = 20.0
"""degrees off the thread from which a part of a circle drops unevenly (ours): cloth that gives by shear alone is
stretched half as far by a pull at 22.5 degrees as on the true bias (off-axis stiffness, from memory)."""

ENDS = frozenset({EdgeRole.WAIST, EdgeRole.NECK, EdgeRole.YOKE, EdgeRole.HEM, EdgeRole.BOTTOM, EdgeRole.ARMHOLE})
"""What lies across the upper or the lower end of a seam that runs down."""

OWN_PLACE = frozenset(
    {
        SeamKind.DART,
        SeamKind.LAID_PLEAT,
        SeamKind.BAG,
        SeamKind.FLY,
        SeamKind.SET_IN,
        SeamKind.SLEEVE,
        SeamKind.MADE_UP,
        SeamKind.ATTACHED,
        SeamKind.FACING,
    }
)
"""Kinds of seams that never join hanging panels."""


def hung_pieces(draft: Draft) -> dict[str, Piece]:
    """Return the pieces that hang on the bias, and the lining behind them, by name."""
    seams = (seam for seam in draft.seams if on_bias(draft, seam))
    shell = {piece for seam in seams for piece, _ in (*seam.a, *seam.b)}
    shell |= {piece.name for piece in draft.pieces if not piece.material and falls_on_bias(piece)}
    lining = {p.name for p in draft.pieces if p.material == "lining" and shell & set(p.lines)}
    return {p.name: p for p in draft.pieces if p.name in shell | lining}


def falls_on_bias(piece: Piece) -> bool:
    """Return whether a piece hangs free and runs round so far that some of it falls on the bias, as circles do."""
    hems = [edge.path for edge in piece.edges if edge.role is EdgeRole.HEM]
    if not hems or piece.frame is None or piece.frame.limb is not Limb.HANGS:
        return False
    runs = [path.tangent(at) for path in hems for at in _places(path.length)]
    off = [(math.degrees(cmath.phase(run)) - piece.grain) % 90 for run in runs]
    return _long(piece, hems) > FALLS and max((min(one, 90 - one) for one in off), default=0.0) > RUNS_OFF


def _places(length: float) -> list[float]:
    """Return places along a hem, mm from its start, both its ends among them."""
    count = math.ceil(length / ALONG_HEM) or 1
    return [length * step / count for step in range(count + 1)]


def _long(piece: Piece, hems: list[Path]) -> float:
    """Return how long the cloth is that falls to a hem, mm: from waist or neck, which run round with it."""
    tops = [edge.path for edge in piece.edges if edge.role in (EdgeRole.WAIST, EdgeRole.NECK)]
    if not tops:
        _, low, _, high = piece.outline.bounds
        return high - low
    above = [place for path in tops for place in path.points(ALONG_HEM)]
    below = [place for path in hems for place in path.points(ALONG_HEM)]
    return float(max(min(abs(place - top) for top in above) for place in below))


def on_bias(draft: Draft, seam: Seam) -> bool:
    """Return whether both sides of a seam lie well off their cloth's threads, as flared panels do."""
    if seam.kind in OWN_PLACE or seam.kind is SeamKind.CROTCH:  # which is held between the legs
        return False
    if seam.kind is SeamKind.SHOULDER and any(_has_armhole(draft[piece]) for piece, _ in seam.a):
        return False  # a body hangs from it, however steep it is
    if any(draft[name].role in SLEEVES for name, _ in (*seam.a, *seam.b)):
        return False  # an arm is in it
    if not any(_runs_down(draft[name], edge) for name, edge in (*seam.a, *seam.b)):
        return False
    length = sum(draft.edge(ref).length for ref in seam.a)
    angles = [max(bias_angle(draft, ref) for ref in chain) for chain in (seam.a, seam.b)]
    return length > HANGS and min(angles) > BIASED


def _runs_down(piece: Piece, edge: str) -> bool:
    """Return whether an edge ends where its piece begins above or ends below: a line across a leg does not."""
    at, count = piece.index(edge), len(piece.edges)
    return any(piece.edges[(at + step) % count].role in ENDS for step in (-1, 1))


def _has_armhole(piece: Piece) -> bool:
    return any(edge.role is EdgeRole.ARMHOLE for edge in piece.edges)


def bias_angle(draft: Draft, ref: EdgeRef) -> float:
    """Return how far an edge lies off the nearer thread of its cloth, degrees (45: true bias).

    A short edge, or one so curved that it runs through every angle, counts as 0.
    """
    piece, path = draft[ref[0]], draft.edge(ref).path
    chord = path.end - path.start
    if abs(chord) < max(SHORT, STRAIGHT * path.length):
        return 0.0
    off = (math.degrees(cmath.phase(chord)) - piece.grain) % 90
    return min(off, 90 - off)
