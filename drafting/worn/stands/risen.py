"""How far a garment goes up with the arms: its hem in front and behind, its sleeves' ends, what it bares."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np

from drafting.draft.draft import EdgeRef
from drafting.worn.form import Form
from drafting.worn.nouns import AtRest, Limb, Reals, Whole
from drafting.worn.stands.hems import body_hems
from drafting.worn.stands.words import Remark, remark

NEAR_MIDDLE = 0.35
"""Of a hem's half breadth: what lies so near the middle is its front, or its back (ours)."""

RISES = 3.0
"""mm under which nothing is said to rise (ours: half of what a fitting notes)."""


@dataclass(frozen=True)
class Risen:
    """mm: how far a hem rises in `front` and `back`, and how far a sleeve's end draws up its arm (`cuff`); None
    without such an edge. `front_at`, `back_at`: how high the hem hangs there, arms raised."""

    front: float | None
    back: float | None
    front_at: float | None
    back_at: float | None
    cuff: float | None


@dataclass(frozen=True)
class Reached:
    """A garment that a hem reached down over with the arms down: its name in words, the height of its upper edge,
    mm, and whether it has a rise that could be longer."""

    garment: str
    top: float
    has_rise: bool = False


def risen(before: AtRest, after: AtRest, forms: tuple[Form, Form], hems: Iterable[EdgeRef]) -> Risen:
    """Return how a garment went up from one rest to the other, each on its own form."""
    mesh, hems = before.mesh, tuple(hems)
    own = [mesh.edges[ref] for ref in body_hems(mesh, hems)]
    hem = np.unique(np.concatenate(own)) if own else np.zeros(0, dtype=np.int64)
    front, back = _faces(before.points, hem)
    arms = {piece.name for piece in mesh.pieces if piece.limb is Limb.ARM}
    ends = [mesh.edges[ref] for ref in hems if ref in mesh.edges and ref[0] in arms]
    cuff = np.unique(np.concatenate(ends)) if ends else None
    return Risen(
        front=_up(before, after, front),
        back=_up(before, after, back),
        front_at=_height(after, front),
        back_at=_height(after, back),
        cuff=None if cuff is None else _along(before, cuff, forms[0]) - _along(after, cuff, forms[1]),
    )


def _faces(points: Reals, hem: Whole) -> tuple[Whole, Whole]:
    """Return the points of a hem near the middle in front, and behind."""
    if not len(hem):
        return hem, hem
    at = points[hem]
    near = np.abs(at[:, 0]) <= NEAR_MIDDLE * np.abs(at[:, 0]).max()
    middle = (at[:, 1].min() + at[:, 1].max()) / 2
    return hem[near & (at[:, 1] < middle)], hem[near & (at[:, 1] >= middle)]


def _up(before: AtRest, after: AtRest, chosen: Whole) -> float | None:
    return float((after.points[chosen] - before.points[chosen])[:, 2].mean()) if len(chosen) else None


def _height(rest: AtRest, chosen: Whole) -> float | None:
    return float(rest.points[chosen][:, 2].mean()) if len(chosen) else None


def _along(rest: AtRest, cuff: Whole, form: Form) -> float:
    """Return how far along the forearms, from the elbow, the middle of the sleeves' ends lies, mm."""
    found = []
    for hand, side in (("left", 1.0), ("right", -1.0)):
        at = rest.points[cuff]
        at = at[at[:, 0] * side > 0] * (side, 1.0, 1.0)
        if len(at):
            _, elbow, wrist = form.arm_of(hand)
            found.append(float(((at - elbow) @ ((wrist - elbow) / np.linalg.norm(wrist - elbow))).mean()))
    return sum(found) / len(found)


def risen_told(found: Risen, covered: Iterable[Reached] = (), *, armhole: bool = True) -> Iterator[Remark]:
    """Yield what goes up with the arms, and what of `covered` it bares; `armhole`: it has one that could lie
    higher."""
    rises = [one for one in (found.front, found.back) if one is not None]
    if rises and max(rises) >= RISES:
        if len(rises) == 2:
            yield remark("raised.hem", front=max(0.0, rises[0]), back=max(0.0, rises[1]))
        else:
            yield remark("raised.one", rise=max(rises))
    elif rises:
        yield remark("raised.stays")
    lowest = [at for at in (found.front_at, found.back_at) if at is not None]
    for one in covered:
        if lowest and max(lowest) > one.top:
            way = remark(WAYS[armhole, one.has_rise])
            yield remark("raised.bares", garment=one.garment, gap=max(lowest) - one.top, way=way)
    if found.cuff is not None and found.cuff >= RISES:
        yield remark("raised.cuff", by=found.cuff)


WAYS = {
    (False, False): "raised.way_longer",
    (True, False): "raised.way_armhole",
    (False, True): "raised.way_rise",
    (True, True): "raised.way_both",
}
"""What is advised where something is bared, by whether the garment has an armhole, and the one below a rise."""
