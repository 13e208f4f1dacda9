"""The waistcoat's back: a shaped centre seam, its hem level with the side, and where its straps lie. Mm.

Drawn as a torso's back: the centre on x = 0, the side at +x, and turned over as all backs are.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.by_role import edges_as
from drafting.draft.draft import Seam
from drafting.draft.frame import BodyFrame
from drafting.draft.piece import Edge, EdgeKind, InnerDart, Level, Piece
from drafting.draft.roles import EdgeRole, LevelKind, SeamKind
from drafting.geometry import Cubic, Path, line, smooth, unit
from drafting.shaping.waistcoat.fronts import open_armhole
from drafting.shaping.waistcoat.hemline import OUT_AT_SIDE, levels_above, shorter_dart, side_cut

MOST_AT_CENTRE, OF_DART, LEAST_DART = 15.0, 0.5, 8.0
"""mm at adult scale: most taken in at the centre back; the share of the dart beyond the least dart that goes there
(the sum at the waist stays as it was; ours)."""

TURNED = 1e-9
"""Two directions so near each other are one."""


def shaped_back(back: Piece, cut: float, below: float, scale: float, cloth: str) -> Piece:
    """Return the waistcoat's back with a centre seam, `cut` mm of its side left off; its hem is `below` mm under
    the waist, `cloth` the role of what it is cut from."""
    flat = back.mirrored()
    upper = side_cut(flat, cut)
    nape, waist, bust = upper[-1].path.end, _level(flat, LevelKind.WAIST), _level(flat, LevelKind.BUST)
    taken = _at_centre(flat, scale)
    foot = complex(taken, waist - below)
    side = upper[0].path
    hem = Path((smooth(foot, side.start, 1 + 0j, unit(side.leave) * OUT_AT_SIDE),))
    edges = (
        Edge("hem", hem, EdgeKind.HEM, role=EdgeRole.HEM),
        *(open_armhole(edge) for edge in upper),
        Edge("centre", _centre(nape, bust, waist, foot), role=EdgeRole.CENTRE_SEAM),
    )
    each = taken / max(1, len(flat.darts))
    darts = tuple(shorter_dart(_narrower(dart, each), hem, scale) for dart in flat.darts)
    shaped = replace(
        flat,
        edges=edges,
        pair=True,
        darts=darts,
        levels=tuple(_moved(level, taken, each) for level in levels_above(flat)) + _across(flat),
        frame=BodyFrame(outer=True),
        cloth=cloth,
    )
    return shaped.mirrored()


def neck_turned(back: Piece, front: Piece, leaves: complex) -> Piece:
    """Return a torso's back whose neck ends at the shoulder as much turned as the V, which `leaves` it, is turned
    from its front's own neck: across the shoulder's seam the one runs on in the other."""
    turned = leaves / edges_as(front, EdgeRole.NECK)[0].path.leave
    if abs(turned - 1) < TURNED:
        return back
    neck = edges_as(back, EdgeRole.NECK)[-1]  # in outline order the shoulder follows it
    *kept, last = neck.path.segments
    end = smooth(last.start, last.end, Path((last,)).leave, neck.path.arrive * unit(turned))
    return back.with_edges(replace(neck, path=Path((*kept, end))))


def centre_back_seam(back: Piece) -> Seam:
    """Return the seam that joins the left back to the right one."""
    centre = ((back.name, "centre"),)
    return Seam("centre back", centre, centre, start=None, end=None, kind=SeamKind.CENTRE)


def _level(piece: Piece, kind: LevelKind) -> float:
    return next(level.paths[0].start.imag for level in piece.levels if level.kind is kind)


def _at_centre(back: Piece, scale: float) -> float:
    """Return what of the waist dart goes to the centre seam, mm of each half."""
    width = sum(abs(dart.leg_b.segments[0].end - dart.leg_a.segments[0].end) for dart in back.darts)
    return min(MOST_AT_CENTRE * scale, OF_DART * max(0.0, width - LEAST_DART * scale))


def _narrower(dart: InnerDart, by: float) -> InnerDart:
    """Return a diamond dart narrower `by` mm at the waist, its axis where it was."""
    tip, foot = dart.leg_a.start, dart.leg_a.end
    left, right = dart.leg_a.segments[0].end + by / 2, dart.leg_b.segments[0].end - by / 2
    return InnerDart(dart.name, line(tip, left, foot), line(tip, right, foot))


def _centre(nape: complex, bust: float, waist: float, foot: complex) -> Path:
    """Return the centre seam downwards: straight to the bust line, hollowed to the waist, straight to the hem."""
    at_bust, at_waist = complex(nape.real, bust), complex(foot.real, waist)
    if foot.real - nape.real < 1e-6:
        return line(nape, foot)
    run = bust - waist
    hollow = Cubic(at_bust, at_bust - 0.4j * run, at_waist + 0.4j * run, at_waist)
    return Path((*line(nape, at_bust).segments, hollow, *line(at_waist, foot).segments))


def _moved(level: Level, taken: float, each: float) -> Level:
    """Return a level as far as the centre seam lets it run: what each dart gives up, the centre takes."""
    if level.kind is not LevelKind.WAIST or not taken:
        return level
    last = len(level.paths) - 1
    parts = (
        line(path.start + (taken if i == 0 else -each / 2), path.end + (each / 2 if i < last else 0.0))
        for i, path in enumerate(level.paths)
    )
    return replace(level, paths=tuple(parts))


def _across(back: Piece) -> tuple[Level, ...]:
    return tuple(level for level in back.levels if level.kind is LevelKind.PLAIN)


def strap_start(back: Piece) -> complex:
    """Return where a strap is sewn on, as the back lies: on the waist, over the dart, or halfway to the side."""
    darts = [dart.leg_a.start.real for dart in back.darts]
    level = next(level for level in back.levels if level.kind is LevelKind.WAIST)
    y = level.paths[0].start.imag
    sides = [edge.path.start.real for edge in edges_as(back, EdgeRole.SIDE)]
    return complex(darts[0] if darts else 0.5 * sides[0], y)
