"""Which measure to take next: how far the shirt's lines move with each one that was estimated.

Each estimated measure in turn is moved by its standard deviation, whatever is estimated from it
follows, and the shirt is drafted again. What a tape would most likely change comes first.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from drafting.body import Body, Measure
from drafting.costume.choices import Chosen, block_named, choose
from drafting.costume.garment import drafted
from drafting.ground.errors import DraftError
from drafting.ground.scale import body_scale
from drafting.reading.given import Origin

UNKNOWN_SPREAD = 0.05
"""Share of a measure that it is moved by where nobody knows how far people stray (ours)."""

FELT = 0.5
"""mm: lines that move by less in all have not moved (ours)."""

BETTER = {"neck_girth": "neck_base_girth", "axilla_depth": "scye_depth"}
"""Measures that tell the same as another one, less well or less easily taken."""


@dataclass(frozen=True, slots=True)
class Gain:
    """What one more measure would bring, in mm.

    `moved` is the sum over all seams and levels of the shirt, `most` the one that moves most, by
    `by`; `step` is what the measure was moved by, `known` whether that is how far people stray.
    """

    measure: str
    step: float
    known: bool
    moved: float
    most: str
    by: float


class _Watched(dict[str, Measure]):
    """Measures that remember which of them were asked for."""

    def __init__(self, measures: Mapping[str, Measure]) -> None:
        super().__init__(measures)
        self.asked: set[str] = set()

    def __getitem__(self, name: str) -> Measure:
        self.asked.add(name)
        return super().__getitem__(name)


def next_measures(body: Body, count: int = 5) -> tuple[Gain, ...]:
    """Return the `count` estimated measures that move the shirt most, the greatest first.

    Empty where everything was measured, or where no shirt can be drafted for this body.
    """
    found = sorted(_gains(body), key=lambda gain: (-gain.moved, gain.measure))
    return tuple(gain for gain in found if gain.moved > FELT)[:count]


def _gains(body: Body) -> Iterator[Gain]:
    watched = _Watched(body.measures)
    chosen = choose(block_named("shirt"), {}, body_scale(body), Origin())
    now = _lengths(replace(body, measures=watched), chosen)
    for name in _worth_trying(body) if now else ():
        step = _step(body.measures[name])
        moved = _moved(body, name, step)
        if moved is None or all(moved[used] == body[used] for used in watched.asked):
            continue
        then = _lengths(moved, chosen)
        moves = {line: abs(then[line] - now[line]) for line in now.keys() & then.keys()}
        if moves:
            most = max(sorted(moves), key=moves.__getitem__)
            known = body.measures[name].sd is not None
            yield Gain(name, step, known, sum(moves.values()), most[0], moves[most])


def _worth_trying(body: Body) -> list[str]:
    guessed = [name for name, m in body.measures.items() if m.source == "estimated"]
    return [name for name in guessed if BETTER.get(name) not in guessed]


def _step(measure: Measure) -> float:
    return UNKNOWN_SPREAD * measure.mm if measure.sd is None else measure.sd


def _moved(body: Body, name: str, step: float) -> Body | None:
    """Return the body with one measure moved up (or down), still an estimate; None for neither."""
    for way in (step, -step):
        try:
            moved = body.changed(**{name: body[name] + way})
        except DraftError:
            continue
        still = replace(moved.measures[name], source="estimated")
        return replace(moved, measures=MappingProxyType({**moved.measures, name: still}))
    return None


def _lengths(body: Body, chosen: Chosen) -> dict[tuple[str, ...], float]:
    """Return the length of every seam and level line of the shirt, in mm.

    Each goes by its name and the edges of its piece, as one that gains a slit is not moved by it.
    """
    try:
        draft = drafted(body, None, block_named("shirt"), chosen)
    except DraftError:
        return {}
    edges = {piece.name: tuple(edge.name for edge in piece.edges) for piece in draft.pieces}
    seams = {
        (seam.name, *edges[seam.a[0][0]]): sum(draft.edge(ref).length for ref in seam.a) for seam in draft.seams
    }
    levels = {
        (f"{piece.name} at the {level.name.replace('_', ' ')}", *edges[piece.name]): level.length
        for piece in draft.pieces
        for level in piece.levels
    }
    return seams | levels
