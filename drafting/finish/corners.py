"""Corners by kind: on the fold, at a hem, and the ordinary mitre. Each keeps the cloth usable.

At a fold the cut line ends on the fold line itself. At a hem the seam's allowance is mirrored across
the hem line, so that it lies on the seam when the hem is turned up. Everywhere else the two cut
lines meet in a mitre, cut off so that no point reaches beyond twice the allowance.
"""

from __future__ import annotations

from drafting.draft.piece import Edge, EdgeKind
from drafting.geometry import Line, Path, line
from drafting.geometry.crossing import crossings, ends_moved, extended, first_crossing, part_between
from drafting.geometry.join import Joined, LineCorner, join

REACH = 2.0
"""The cut line stays within this many allowances of a stitching corner (common practice)."""

HEM_ANGLES = (0.6, 2.7)
"""radians (34..155 degrees): only between these is a hem corner mirrored; from memory."""


def corner_of(before: Path, after: Path) -> LineCorner:
    """Return the corner of the stitching line between two edges."""
    return LineCorner(after.start, before.arrive, after.leave)


def joined_corner(a: Edge, b: Edge, before: Path, after: Path, widths: tuple[float, float]) -> Joined:
    """Join the cut lines `before` and `after` of edge `a` and the edge `b` that follows it."""
    corner = corner_of(a.path, b.path)
    if b.kind is EdgeKind.FOLD or a.kind is EdgeKind.FOLD:
        if a.kind is b.kind:
            return join(before, after, corner, 0.0)
        if a.kind is EdgeKind.FOLD:
            return cut_at_fold(before, after, corner, widths[1])
        return cut_at_fold(after.reversed(), before.reversed(), corner.reversed(), widths[0]).reversed()
    mirrored = _hem_corner(a, b, before, after, corner, widths)
    return mirrored or join(before, after, corner, REACH * max(widths))


def cut_at_fold(fold: Path, other: Path, corner: LineCorner, width: float) -> Joined:
    """End the cut line `other` on the fold line run on past the corner.

    A point sharper than the reach is cut off square to the fold; a hollow (the point of a V-neck,
    opened) has no such limit.
    """
    reach = REACH * width
    if width == 0 or reach == 0:
        return Joined(fold, None, ends_moved(other, start=fold.end))
    ray = line(corner.at - 1e-3 * corner.arrive, corner.at + 10 * reach * corner.arrive)
    run_on = extended(other, before=10 * reach)
    hits = [c for c in crossings(run_on, ray) if abs(c.point - corner.at) >= width * 0.99]
    hit = hits[0] if hits else None
    if hit and (hit.on_a >= 1 or abs(hit.point - corner.at) <= reach):
        rest = part_between(run_on, hit.on_a, len(run_on.segments))
        return Joined(fold, line(corner.at, hit.point), ends_moved(rest or other, start=hit.point))
    tip = corner.at + reach * corner.arrive
    square = line(tip, tip - 1j * corner.arrive * 10 * reach)
    cut = first_crossing(square, run_on)
    if cut is None:
        return join(fold, other, corner, reach)
    rest = part_between(run_on, cut.on_b, len(run_on.segments))
    return Joined(fold, line(corner.at, tip, cut.point), ends_moved(rest or other, start=cut.point))


def _hem_corner(
    a: Edge, b: Edge, before: Path, after: Path, corner: LineCorner, widths: tuple[float, float]
) -> Joined | None:
    kinds = {a.kind, b.kind}
    other = kinds - {EdgeKind.HEM}
    if EdgeKind.HEM not in kinds or not other or 0.0 in widths:
        return None
    if not HEM_ANGLES[0] < corner.turn < HEM_ANGLES[1]:
        return None
    if b.kind is EdgeKind.HEM:
        return mirrored_at_hem(before, after, corner, corner.leave, widths[1])
    found = mirrored_at_hem(after.reversed(), before.reversed(), corner.reversed(), -corner.arrive, widths[0])
    return found and found.reversed()


def mirrored_at_hem(seam: Path, hem: Path, corner: LineCorner, along: complex, depth: float) -> Joined | None:
    """Run the seam's cut line down to the hem line, then on as its own mirror image.

    `along` is the direction of the hem line at the corner, `depth` the hem's allowance. None where
    the lines do not meet (then the corner is an ordinary one).
    """
    far = 10 * depth + abs(seam.end - corner.at)
    hem_line = Path((Line(corner.at - far * along, corner.at + far * along),))
    long = extended(seam, after=far)
    at_hem = crossings(long, hem_line)
    if not at_hem:
        return None
    turn = min(at_hem, key=lambda c: abs(c.point - seam.end))
    above = part_between(long, 0.0, turn.on_a)
    if above is None:
        return None
    below = extended(above.reversed().mapped(lambda p: _across(p, corner.at, along)), after=far)
    run_on = extended(hem, before=far)
    meeting = first_crossing(below, run_on)
    if meeting is None:
        return None
    tail = part_between(below, 0.0, meeting.on_a)
    rest = part_between(run_on, meeting.on_b, len(run_on.segments))
    if tail is None or rest is None:
        return None
    return Joined(
        ends_moved(above, end=turn.point),
        ends_moved(tail, start=turn.point, end=meeting.point),
        ends_moved(rest, start=meeting.point),
    )


def _across(p: complex, on: complex, along: complex) -> complex:
    """Reflect a point across the line through `on` in direction `along`."""
    return on + ((p - on) / along).conjugate() * along
