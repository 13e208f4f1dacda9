"""The dart cap: what the cut line does over a dart's open mouth.

The dart is folded on paper as it will be pressed, the allowance is drawn straight across, cut, and
unfolded. A dart that lies more level than upright is pressed downwards, any other towards the
centre (common practice). Say it is pressed towards the edge before it: then the edge after it, and
half the wedge, lie flat beneath; the other half is creased back along the first leg. Unfolded, the
half beside the first leg is the mirror image of the neighbouring cut line across that leg, the
other half that same line turned open by the dart's angle: a roof with its peak on the crease.
"""

from __future__ import annotations

import cmath
from dataclasses import dataclass

from drafting.draft.by_role import edges_as
from drafting.draft.pattern import DartCap
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole
from drafting.finish.corners import REACH, corner_of
from drafting.geometry import Path, line
from drafting.geometry.crossing import crossings, ends_moved, extended, first_crossing, part_between
from drafting.geometry.join import Joined, join

TALLEST = 1.5
"""The peak of a roof lies no farther from the tip than this many leg lengths; from there on the
slopes run straight to it (ours: only darts wider than about 50 degrees come so far)."""


@dataclass(frozen=True)
class Wedge:
    """An open dart: its two legs, in outline order, and whether it is pressed towards the edge before."""

    first: Edge
    second: Edge
    to_before: bool

    @property
    def tip(self) -> complex:
        return self.first.path.end

    @property
    def opening(self) -> complex:
        """The turn about the tip that carries the first leg onto the second."""
        turn = (self.second.path.end - self.tip) / (self.first.path.start - self.tip)
        return turn / abs(turn)

    def reversed(self) -> Wedge:
        """The same dart with the outline walked backwards."""
        legs = [Edge(e.name, e.path.reversed(), EdgeKind.DART) for e in (self.second, self.first)]
        return Wedge(legs[0], legs[1], not self.to_before)


def wedge(piece: Piece, first: Edge, second: Edge) -> Wedge:
    """Return the dart of two legs; which way it is pressed follows from how it lies."""
    before, after = first.path.start, second.path.end
    axis = (before + after) / 2 - first.path.end
    if abs(axis.real) > abs(axis.imag):
        return Wedge(first, second, before.imag < after.imag)
    centre = centre_of(piece)
    return Wedge(first, second, abs(before.real - centre) < abs(after.real - centre))


def centre_of(piece: Piece) -> float:
    """Return the x of the piece's centre line: the fold, a centre's edge, else a crotch's, else 0."""
    if piece.fold_edge:
        return piece.fold_edge.path.start.real
    found = [edge for role in CENTRES for edge in edges_as(piece, role)]
    return found[0].path.at(found[0].length / 2).real if found else 0.0


CENTRES = (EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.CROTCH)
"""Edges at the centre of the body, the straight one first."""


def cap_over_mouth(
    w: Wedge, edges: tuple[Edge, Edge], before: Path, after: Path, width: float
) -> tuple[Joined, DartCap]:
    """Join the cut lines of the edges on either side of the dart by its cap.

    `edges` are the stitching edges before and after the dart, `before` and `after` their cut lines,
    `width` the wider of their allowances.
    """
    if not w.to_before:  # walk it backwards: the same construction, seen in a mirror
        back = (edges[1].path.reversed(), edges[0].path.reversed())
        found, cap = _built(w.reversed(), back, after.reversed(), before.reversed(), width)
        names = (w.first.name, w.second.name)
        return found.reversed(), DartCap(names, cap.stitch.reversed(), cap.cut.reversed(), cap.fold)
    return _built(w, (edges[0].path, edges[1].path), before, after, width)


def _built(w: Wedge, edges: tuple[Path, Path], before: Path, after: Path, width: float) -> tuple[Joined, DartCap]:
    closed = after.turned(w.tip, 1 / w.opening)
    near, far = _split_at_leg(w, edges, before, closed, width)
    stitch = _roof(w, edges[0], TALLEST * abs(w.first.path.start - w.tip))
    peak = abs(stitch[0].end - w.tip)
    cut = _roof(w, near, max(peak + REACH * width, abs(near.end - w.tip)))
    start, end = w.first.path.start, w.second.path.end
    cap = DartCap(
        (w.first.name, w.second.name),
        ends_moved(Path.joined(stitch), start=start, end=end),
        Path.joined(cut),
        line(w.tip, cut[0].end),
    )
    opened = far.turned(w.tip, w.opening)
    return Joined(near, cap.cut, ends_moved(opened, start=cap.cut.end)), cap


def _split_at_leg(
    w: Wedge, edges: tuple[Path, Path], before: Path, closed: Path, width: float
) -> tuple[Path, Path]:
    """Draw the cut line over the folded dart and part it where the first leg runs out."""
    corner = corner_of(edges[0], edges[1].turned(w.tip, 1 / w.opening))
    if corner.turn * w.opening.imag < 0:
        parts = _inside(before, closed)
    else:
        parts = join(before, closed, corner, REACH * width).paths
    whole, seam = Path.joined(parts), len(parts[0].segments)
    leg = w.first.path.start - w.tip
    ray = line(w.tip + 0.5 * leg, w.tip + leg * (1 + 10 * width / abs(leg)))
    hits = crossings(whole, ray)
    place = min((c.on_a for c in hits), key=lambda at: abs(at - seam), default=float(seam))
    near, far = part_between(whole, 0.0, place), part_between(whole, place, len(whole.segments))
    return near or before, far or closed


def _inside(before: Path, after: Path) -> list[Path]:
    """Join two cut lines that make an inside corner: where they cross, or else straight across."""
    meeting = first_crossing(before, after)
    head = part_between(before, 0.0, meeting.on_a) if meeting else None
    tail = part_between(after, meeting.on_b, len(after.segments)) if meeting else None
    if meeting and head and tail:
        return [ends_moved(head, end=meeting.point), ends_moved(tail, start=meeting.point)]
    return [before, line(before.end, after.start), after]


def _roof(w: Wedge, near: Path, reach: float) -> tuple[Path, Path]:
    """Return the two slopes over the mouth made from the line `near` that ends on the first leg."""
    half = cmath.sqrt(w.opening)
    leg = (w.first.path.start - w.tip) / abs(w.first.path.start - w.tip)
    crease = line(w.tip + leg / half * 1e-3, w.tip + leg / half * reach)
    under = extended(near, before=reach).reversed()
    hit = first_crossing(under, crease)
    strip = part_between(under, 0.0, hit.on_a) if hit else None
    if strip is None:  # the line would run past the reach: straight to the end of the crease
        strip = line(near.end, crease.end)
    first = strip.mapped(lambda p: _mirror(p, w.tip, leg))
    second = strip.reversed().turned(w.tip, w.opening)
    return first, ends_moved(second, start=first.end)


def _mirror(p: complex, on: complex, along: complex) -> complex:
    return on + ((p - on) / along).conjugate() * along
