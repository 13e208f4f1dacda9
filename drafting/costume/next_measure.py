"""Which measure to take next: how far a garment's outlines move with each one that was estimated.

Each estimated measure that a draft reads is taken in turn as if a tape had found it as far off as it may
be, up and down; whatever is estimated from it follows, and the garments are drafted again. What a tape
would most likely change comes first. A measure that no draft reads only sharpens those that one does.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from statistics import median_low
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from drafting.blocks import Block
from drafting.body import Body, Measure
from drafting.costume.choices import Chosen, block_named, choose, garment_choices, sewn_so
from drafting.costume.file import CostumeFile, Garment
from drafting.costume.garment import drafted
from drafting.costume.proportion import in_proportion
from drafting.costume.watched import watched
from drafting.draft.piece import EdgeKind, Piece
from drafting.fabric import Fabric
from drafting.geometry import area
from drafting.ground.errors import DraftError
from drafting.ground.scale import body_scale, style_growth
from drafting.reading.given import Origin

UNKNOWN_SPREAD = 0.05
"""Share of a measure that it is moved by where nobody knows how far people stray (ours)."""

FELT = 0.5
"""mm: an outline that moves by less has not moved (ours)."""

NEAR = 0.1
"""mm: outlines are compared as chords no farther off than this."""

BETTER = {
    "neck_girth": "neck_base_girth",
    "axilla_depth": "scye_depth",
    "across_back_low_width": "across_back_width",
}
"""Measures that tell the same as another one, less well or less easily taken."""


@dataclass(frozen=True, slots=True)
class Gain:
    """What one more measure would bring, in mm.

    `step` is what the measure was moved by, up and down: 19 of 20 people stray by no more (`known`),
    or a share of it where nobody knows. `moved` is the farthest that any point of an outline moves,
    once its piece is laid on its old self, and `most` the piece and edge it lies on.
    """

    measure: str
    step: float
    known: bool
    moved: float
    most: str


class Wanted(NamedTuple):
    """A garment to be drafted: its block, its cloth and its choices."""

    block: Block
    fabric: Fabric | None
    chosen: Chosen


def shirt_for(body: Body) -> tuple[Wanted, ...]:
    """Return the shirt as the kit proposes it: what a wearer is judged by without a costume."""
    block = block_named("shirt")
    return (Wanted(block, None, choose(block, {}, body_scale(body), Origin(), sewn_so(body, None))),)


def garments_of(costume: CostumeFile, body: Body) -> tuple[Wanted, ...]:
    """Return a costume's garments for this body; raises `InputError` for wrong blocks and choices."""
    return tuple(_wanted(costume, garment, body) for garment in costume.garments)


def _wanted(costume: CostumeFile, garment: Garment, body: Body) -> Wanted:
    field = f"garments.{garment.name}"
    block = block_named(garment.block, f"{field}.block", costume.path, garment.line)
    origin = Origin(costume.path, costume.unit, f"{field}.choices")
    fabric = costume.fabrics.get(garment.fabric)
    given = in_proportion(garment_choices(block), garment.choices, body, origin)
    chosen = choose(block, given, body_scale(body), origin, sewn_so(body, fabric), style_growth(body))
    return Wanted(block, fabric, chosen)


def next_measures(body: Body, count: int = 5, garments: Sequence[Wanted] = ()) -> tuple[Gain, ...]:
    """Return the `count` estimated measures that move these garments most, the greatest first.

    Without garments it is a shirt. Empty where everything was measured, or where the garments
    cannot be drafted for this body.
    """
    found = sorted(_gains(body, garments or shirt_for(body)), key=lambda g: (-g.moved, g.measure))
    return tuple(gain for gain in found if gain.moved > FELT)[:count]


def _gains(body: Body, garments: Sequence[Wanted]) -> Iterator[Gain]:
    asked: set[str] = set()
    now = _pieces(watched(body, asked), garments)
    for name in (name for name in _worth_trying(body) if name in asked):
        step = _step(body.measures[name])
        moves = [move for way in (step, -step) for move in _moves_by(body, name, way, now, garments)]
        if moves:
            by, most = max(moves)
            yield Gain(name, step, body.measures[name].sd is not None, by, most)


def those_that_move(body: Body, named: Iterable[str], garments: Sequence[Wanted]) -> Iterator[str]:
    """Yield those of the measures named that move an outline of these garments where they are far off.

    A draft may read a measure (a crotch, for where a hip lies) that moves no line of it.
    """
    now = _pieces(body, garments)
    for name in named:
        step = _step(body.measures[name])
        ways = (step, -step)
        if any(by > FELT for way in ways for by, _ in _moves_by(body, name, way, now, garments)):
            yield name


def _moves_by(
    body: Body, name: str, way: float, now: dict[tuple[int, str], Piece], garments: Sequence[Wanted]
) -> Iterator[tuple[float, str]]:
    """Yield how far each outline moves, and where most, once a measure is found so far off."""
    if now and (moved := _moved(body, name, way)):
        yield from _moves(now, _pieces(moved, garments))


def _worth_trying(body: Body) -> list[str]:
    guessed = [name for name, m in body.measures.items() if m.source == "estimated"]
    return [name for name in guessed if BETTER.get(name) not in guessed]


def _step(measure: Measure) -> float:
    return UNKNOWN_SPREAD * measure.mm if measure.sd is None else 2 * measure.sd


def _moved(body: Body, name: str, step: float) -> Body | None:
    """Return the body with one measure taken and found so far off; None where no body has it so."""
    try:
        return body.changed(**{name: body[name] + step})
    except DraftError:
        return None


def _pieces(body: Body, garments: Sequence[Wanted]) -> dict[tuple[int, str], Piece]:
    """Return the pieces of the garments' own cloth; none where a garment cannot be drafted.

    Linings and interfacings move with them.
    """
    try:
        drafts = [drafted(body, one.fabric, one.block, one.chosen) for one in garments]
    except DraftError:
        return {}
    return {(n, p.name): p for n, d in enumerate(drafts) for p in d.pieces if not p.material}


def _moves(now: dict[tuple[int, str], Piece], then: dict[tuple[int, str], Piece]) -> Iterator[tuple[float, str]]:
    """Yield for each piece how far its outline moves, mm, and the edge that moves farthest.

    Of a dart that only one of the two has, nothing but the mouth counts: a hair's breadth taken in
    is no long way to the tip.
    """
    for key in sorted(now.keys() & then.keys()):
        old, new = now[key], then[key]
        here, there = _outline(old, new, _shift(old, new)), _outline(new, old, 0j)
        for one, other in ((there, here), (here, there)):
            off = area.off_ring(one.points, other.points)
            farthest = int(off.argmax())
            edge = one.edges[int(np.searchsorted(one.ends, farthest, side="right"))]
            yield float(off[farthest]), f"{key[1]} {edge}".replace("_", " ")


def _shift(old: Piece, new: Piece) -> complex:
    """Return by how much most corners of a piece have moved: it is laid so on its old self."""
    starts = {edge.name: edge.path.start for edge in old.edges}
    moves = [e.path.start - starts[e.name] for e in new.edges if e.name in starts]
    if not moves:
        return 0j
    return complex(median_low(m.real for m in moves), median_low(m.imag for m in moves))


class _Outline(NamedTuple):
    """The points of an outline, the edges they lie on, and where each edge's points end."""

    points: NDArray[np.complex128]
    edges: tuple[str, ...]
    ends: NDArray[np.int64]


def _outline(piece: Piece, beside: Piece, by: complex) -> _Outline:
    """Return the outline moved, without the legs of a dart that the piece `beside` it has not."""
    edges = [e for e in piece.edges if e.kind is not EdgeKind.DART or e.name in beside]
    points = [edge.path.points(NEAR)[:-1] for edge in edges]
    ends = np.cumsum([len(part) for part in points])
    return _Outline(np.concatenate(points) + by, tuple(edge.name for edge in edges), ends)
