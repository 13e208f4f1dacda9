"""Darts: folded on the line from mouth to tip and stitched, then pressed; those inside a piece alike."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

import numpy as np

from drafting.draft.by_role import edges_as
from drafting.draft.draft import Seam
from drafting.draft.piece import EdgeKind, InnerDart
from drafting.draft.roles import EdgeRole
from drafting.geometry.curve import Points
from drafting.geometry.moves import STAY, TURNED_OVER, Motion, mirrored_in
from drafting.geometry.polylines import kept_left, line_crossings, polyline_length, stepped, stepped_ring
from drafting.making.stages.laid import name_on
from drafting.making.stages.picture import Face, Ink, InkLine, InkMark, StageDrawing, drawn_panel
from drafting.making.stages.shapes import CHORD, Shape

STEP = 40.0
"""mm between the points of a line that is spread round a dart's tip (ours)."""

LEAST_DART = 22.0
"""mm of cloth: a folded dart is drawn at least so wide (ours)."""


def dart_sewn(shape: Shape, seam: Seam) -> StageDrawing:
    """Return an open dart folded and stitched, then pressed: level ones down, upright ones to the centre."""
    start, tip, end = _legs(shape, seam)
    mouth = (start + end) / 2
    way = (mouth - tip) / abs(mouth - tip)
    one = drawn_panel(_folded(shape, seam.name, tip, way, [(start + 0j, tip)]))
    two = drawn_panel(_pressed(shape, seam, way))
    return StageDrawing("dart", (one, two), alike=True)


def _legs(shape: Shape, seam: Seam) -> tuple[complex, complex, complex]:
    """Return mouth, tip and mouth of a dart, in outline order."""
    a, b = shape.edges[seam.a[0][1]], shape.edges[seam.b[0][1]]
    if abs(a[-1] - b[0]) > abs(b[-1] - a[0]):
        a, b = b, a
    return complex(a[0]), complex(a[-1]), complex(b[-1])


def _folded(
    shape: Shape, of: str, tip: complex, way: complex, legs: list[tuple[complex, complex]]
) -> Iterator[Ink]:
    """Yield the piece folded on a dart's line, right sides in, the legs on the folded part heavy."""
    lies, turned = _halves(shape.cut, tip, way)
    over = mirrored_in(tip, tip + way)
    flap = over(turned)
    yield Face("right", lies, shape.name)
    yield Face("wrong", flap, shape.name, over=True)
    ends = line_crossings(shape.cut, tip, way)
    yield InkLine("fold", np.array([ends[0], ends[-1]]))
    for leg, inner in legs:
        at = over.point(leg) if _is_on(turned, leg, tip, way) else leg
        yield InkLine("sewing", np.array([at, inner]), of)
        along = (inner - at) / abs(inner - at)
        for share in (0.15, 0.55):
            yield InkMark("pin", at + (inner - at) * share, 1j * along, 40.0)
    yield InkMark("dot", tip, size=7.0)
    yield name_on(shape, lies, [flap])


def _halves(ring: Points, through: complex, way: complex) -> tuple[Points, Points]:
    """Return the larger and the smaller part of a ring on both sides of a line."""
    parts = [kept_left(ring, through, way), kept_left(ring, through, -way)]
    size = [abs(np.sum(p.real * np.roll(p.imag, -1) - p.imag * np.roll(p.real, -1))) for p in parts]
    return (parts[0], parts[1]) if size[0] >= size[1] else (parts[1], parts[0])


def _is_on(ring: Points, at: complex, through: complex, way: complex) -> bool:
    """Return whether a point lies on the side of a line on which a ring does."""
    side = ((ring - through) * np.conj(way)).imag
    return bool(side.sum() * ((at - through) * way.conjugate()).imag > 0)


def _pressed(shape: Shape, seam: Seam, way: complex) -> Iterator[Ink]:
    """Yield the piece wrong side up with the dart sewn, and the arrow that says where it is pressed."""
    start, tip, end = _legs(shape, seam)
    closed = shaped(shape, seam)
    close = dart_closing(shape, seam)
    yield Face("wrong", TURNED_OVER(closed.outline), shape.name, over=True)
    mouth, top = TURNED_OVER.point(complex(close(np.array([start]))[0])), TURNED_OVER.point(tip)
    to = _press_way(closed, TURNED_OVER.point(tip), way)
    wide = max(abs(start - end) / 2, LEAST_DART)
    yield Face("wrong", np.array([top, mouth, mouth + to * wide]))
    yield InkLine("sewn", np.array([mouth, top]), seam.name)
    middle = mouth + (top - mouth) * 0.4
    yield InkMark("press", middle + to * (wide + 60.0), to, 80.0)
    yield name_on(closed, TURNED_OVER(closed.outline))


def _press_way(shape: Shape, tip: complex, way: complex) -> complex:
    """Return which way a dart is pressed, wrong side up: a level one down, another towards the centre."""
    if abs(way.imag) <= abs(way.real):
        return -1j
    return 1 + 0j if (TURNED_OVER.point(centre_place(shape)) - tip).real > 0 else -1 + 0j


CENTRES = (EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.FLY, EdgeRole.CROTCH, EdgeRole.FRONT_EDGE)
"""Edges that lie on the middle of the body, or nearest to it."""


def centre_place(shape: Shape) -> complex:
    """Return where a piece's centre lies: on its fold, or its centre edges; else the piece's own middle."""
    if shape.axis:
        return (shape.axis[0] + shape.axis[1]) / 2
    found = [shape.edges[edge.name].mean() for edge in edges_as(shape.piece, *CENTRES)]
    marks = [mark.path.at(mark.path.length / 2) for mark in shape.piece.placements if mark.what == "centre"]
    return complex(np.mean(marks or found)) if marks or found else complex(shape.outline.mean())


# --------------------------------------------------------------------------------------- shaped


def dart_closing(shape: Shape, seam: Seam) -> Callable[[Points], Points]:
    """Return what closes a dart: the angles round its tip are spread to fill what it took out."""
    start, tip, end = _legs(shape, seam)
    middle = (start - tip) / abs(start - tip) + (end - tip) / abs(end - tip)
    middle = middle / abs(middle)
    half = abs(np.angle((start - tip) / middle))

    def close(points: Points) -> Points:
        away = (points - tip) / middle
        angle, reach = np.angle(away), np.abs(away)
        spread = np.sign(angle) * (np.abs(angle) - half) * np.pi / (np.pi - half)
        return np.asarray(tip + middle * reach * np.exp(1j * np.where(np.abs(angle) > half, spread, 0.0)))

    return close


def shaped(shape: Shape, seam: Seam) -> Shape:
    """Return the piece with a dart sewn: its outline closed over it, and every edge with it."""
    close = dart_closing(shape, seam)
    return replace(
        shape,
        outline=close(stepped_ring(shape.outline, STEP)),
        cut=close(stepped_ring(shape.cut, STEP)),
        edges={name: close(stepped(line, STEP)) for name, line in shape.edges.items()},
    )


# ----------------------------------------------------------------------------------- inner darts


def inner_darts_sewn(shape: Shape) -> StageDrawing:
    """Return the darts inside a piece: the first folded and stitched, then all of them pressed."""
    dart = shape.piece.darts[0]
    a = dart.leg_a.points(CHORD)
    top, low = complex(a[0]), complex(a[-1])
    way = (low - top) / abs(low - top)
    one = drawn_panel(_inner_folded(shape, dart, top, way))
    two = drawn_panel(_inner_pressed(shape))
    return StageDrawing("inner dart", (one, two), alike=True)


def _inner_folded(shape: Shape, dart: InnerDart, top: complex, way: complex) -> Iterator[Ink]:
    lies, turned = _halves(shape.cut, top, way)
    over = mirrored_in(top, top + way)
    yield Face("right", lies, shape.name)
    yield Face("wrong", over(turned), shape.name, over=True)
    ends = line_crossings(shape.cut, top, way)
    yield InkLine("fold", np.array([ends[0], ends[-1]]))
    legs = (dart.leg_a.points(CHORD), dart.leg_b.points(CHORD))
    leg = next((line for line in legs if not _is_on(turned, line.mean(), top, way)), legs[0])
    yield InkLine("sewing", leg, dart.name)
    for point in (leg[0], leg[-1]):
        yield InkMark("dot", complex(point), size=7.0)
    middle = complex(leg[len(leg) // 2])
    yield InkMark("pin", middle, 1j * way, 40.0)
    yield name_on(shape, lies, [over(turned)])


def _inner_pressed(shape: Shape) -> Iterator[Ink]:
    yield Face("wrong", TURNED_OVER(shape.outline), shape.name, over=True)
    centre = TURNED_OVER.point(centre_place(shape))
    for hand in (STAY, mirrored_in(*shape.axis)) if shape.axis else (STAY,):
        for dart in shape.piece.darts:
            yield from _one_pressed(dart, TURNED_OVER.after(hand), centre)
    yield name_on(shape, TURNED_OVER(shape.outline))


def _one_pressed(dart: InnerDart, view: Motion, centre: complex) -> Iterator[Ink]:
    """Yield a sewn dart with its fold turned towards the centre."""
    leg = dart.leg_a.points(CHORD)
    line = view(leg)
    at, chord = complex((line[0] + line[-1]) / 2), complex(leg[-1] - leg[0])
    to = 1 + 0j if (centre - at).real > 0 else -1 + 0j
    deep = float(np.abs(((leg - leg[0]) * np.conj(chord)).imag).max() / abs(chord))
    wide = max(deep, LEAST_DART / 2)
    yield Face("wrong", np.array([line[0], at + to * wide, line[-1]]))
    yield InkLine("sewn", np.array([line[0], line[-1]]), dart.name)
    yield InkMark("press", at + to * (wide + 60.0), to, 54.0)


def takes_dart(seam: Seam, shape: Shape) -> bool:
    """Return whether a seam is the two legs of an open dart."""
    return (
        all(shape.piece[edge].kind is EdgeKind.DART for _, edge in (*seam.a, *seam.b))
        and polyline_length(shape.edges[seam.a[0][1]]) > 0.0
    )
