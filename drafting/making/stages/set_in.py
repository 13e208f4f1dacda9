"""A sleeve into its armhole: the cap with its ease or gathers, and the round looked into from inside the body."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from drafting.draft.chain import laid_end_to_end
from drafting.draft.draft import Seam
from drafting.geometry.curve import Points
from drafting.geometry.polylines import (
    direction_at,
    evenly_spaced,
    left_of,
    part_along,
    point_along,
    points_along,
    polyline_length,
    signed_area,
)
from drafting.making.stages.laid import name_on
from drafting.making.stages.picture import (
    Face,
    Ink,
    InkLine,
    InkMark,
    InkName,
    LineLook,
    Panel,
    StageDrawing,
    drawn_panel,
)
from drafting.making.stages.rows import in_rows
from drafting.making.stages.shapes import CHORD, laid_notches, pieces_along
from drafting.making.stages.so_far import SoFar

BELOW_CAP = 120.0
"""mm of the sleeve shown below its cap (ours)."""

BODY, SLEEVE = 100.0, 24.0
"""mm: how wide the body is drawn round the armhole, and the sleeve's allowance within (ours)."""

POINTS = 160


def sleeve_set_in(so_far: SoFar, seams: Sequence[Seam], *, basted: bool) -> StageDrawing:
    """Return cap and round of the seams that set one sleeve in."""
    ring = drawn_panel(_round(so_far, seams, "basting" if basted else "sewing"))
    return StageDrawing("set in", (_cap(so_far, seams), ring))


def _cap(so_far: SoFar, seams: Sequence[Seam]) -> Panel:
    """Return the sleeve's pieces, right side up, with threads along what is eased or gathered."""
    shapes = so_far.goods.shapes
    pieces = list(dict.fromkeys(piece for seam in seams for piece in pieces_along(seam.a)))
    blocks = []
    for name in pieces:
        shape = shapes[name]
        inks: list[Ink] = [Face("right", shape.cut, name)]
        caps = [shape.edges[edge] for seam in seams for piece, edge in seam.a if piece == name]
        inks += [InkLine("fine", line) for line in caps]
        for seam in seams:
            inks += list(_threads(so_far, seam, name))
            for laid in laid_notches(so_far.goods, seam, so_far.where, on_a=True):
                if any(abs(line - laid.at).min() < 60.0 for line in caps) and len(pieces) == 1:
                    inks.append(InkMark("notch", laid.at + laid.out * 15.0, laid.out, 14.0, laid.notch.count))
        low = min(float(line.imag.min()) for line in caps) - BELOW_CAP
        kept = shape.cut[shape.cut.imag >= low - 1.0]
        inks[0] = Face("right", kept if len(kept) > 2 else shape.cut, name)
        blocks.append([*inks, name_on(shape, kept if len(kept) > 2 else shape.cut)])
    return drawn_panel(in_rows(blocks))


def _threads(so_far: SoFar, seam: Seam, name: str) -> Iterator[InkLine]:
    """Yield two rows of thread along the part of a cap that holds its fullness."""
    passed = 0.0
    for piece, edge in seam.a:
        line = so_far.goods.shapes[piece].edges[edge]
        length = polyline_length(line)
        gathered = so_far.goods.drafted((piece, edge)).sewn is not None
        low, high = (0.0, passed + length) if gathered or not seam.eased else seam.eased
        low, high = max(low - passed, 0.0), min(high - passed, length)
        if piece == name and high - low > 1.0 and (gathered or abs(seam.ease) > 1.0):
            run = part_along(line, low, high)
            yield from (InkLine("hidden", left_of(run, -by)) for by in (4.0, 10.0))
        passed += length


def _round(so_far: SoFar, seams: Sequence[Seam], stroke: LineLook) -> Iterator[Ink]:
    """Yield the armhole as a ring seen from inside the body, the sleeve in it, pinned and sewn round."""
    draft = so_far.goods.garment.draft
    refs = [ref for seam in seams for ref in seam.b]
    chain = laid_end_to_end([draft.edge(ref).path for ref in refs]).points(CHORD)
    ring = ring_bent(chain)
    sign = 1.0 if signed_area(ring[:-1]) > 0 else -1.0
    closed = np.concatenate([ring, ring[1:2]])
    yield Face("wrong", left_of(closed, -BODY * sign)[:-1], refs[0][0], over=True)
    yield Face("wrong", left_of(closed, SLEEVE * sign)[:-1], over=True)
    lengths = np.cumsum([0.0, *(draft.edge(ref).length for ref in refs)])
    scale = polyline_length(ring) / lengths[-1]
    whole = polyline_length(ring)
    start = 0.0
    for seam in seams:
        long = sum(draft.edge(ref).length for ref in seam.b) * scale
        yield InkLine(stroke, part_along(ring, start, min(start + long, whole)), seam.name)
        start += long
    for at in lengths[:-1] * scale:
        place, out = point_along(ring, at), -1j * sign * direction_at(ring, at)
        yield InkLine("firm", np.array([place, place + out * BODY]))
        yield InkMark("pin", place, out, 50.0)
    for i, (piece, _) in enumerate(refs):
        yield _beside(so_far, piece, ring, (lengths[i] + lengths[i + 1]) / 2 * scale, sign)


def _beside(so_far: SoFar, piece: str, ring: Points, at: float, sign: float) -> InkName:
    """Return the name of a piece of the body, written beside its part of the armhole."""
    place = point_along(ring, at) - 1j * sign * direction_at(ring, at) * BODY / 2
    shape = so_far.goods.shapes[piece]
    half = BODY / 2 - 4.0
    corners = np.array([-half - half * 1j, half - half * 1j, half + half * 1j, -half + half * 1j])
    return InkName(shape.title, shape.number, place + corners)


def ring_bent(chain: Points) -> Points:
    """Return an open line closed to a ring: bent evenly until it turns full circle, the rest spread along it."""
    line = points_along(chain, np.linspace(0.0, polyline_length(chain), POINTS + 1))
    steps = np.diff(line)
    angles = np.unwrap(np.angle(steps))
    turned = angles[-1] - angles[0]
    wanted = (np.sign(turned) or 1.0) * 2 * np.pi * POINTS / (POINTS + 1)
    angles = angles + (wanted - turned) * np.linspace(0.0, 1.0, POINTS)
    bent = np.concatenate([[0j], np.cumsum(np.abs(steps) * np.exp(1j * angles))])
    closed = bent - bent[-1] * np.linspace(0.0, 1.0, POINTS + 1)
    return evenly_spaced(closed, polyline_length(closed) / POINTS)
