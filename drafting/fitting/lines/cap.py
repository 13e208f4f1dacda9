"""A sleeve's cap higher or lower, and its width at the upper arm; both halves keep their length.

The part of the cap below the notches lies on the armhole and keeps its shape; what lies above is drawn
between it and the crown. So the sleeve still fits the armhole half by half.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

import numpy as np

from drafting.checks.girths import finished_girth
from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole, Half, LevelKind, NotchKind, SeamKind
from drafting.fitting.lines.along import Knot, moved_along, way_of
from drafting.fitting.lines.altered import Altered, carried_out, made_exact
from drafting.fitting.lines.places import INSIDE, at_height, height, sleeve_pieces
from drafting.fitting.lines.shift import Shift
from drafting.ground.errors import DraftError
from drafting.shaping.sleeve.turned import turned, turned_by

CAPS = frozenset({EdgeRole.CAP, EdgeRole.CAP_PART})
BELOW = frozenset({EdgeRole.UNDERARM, EdgeRole.ARM_SEAM})

ROUNDS = 3
"""How often the cap's lengths are asked again, as its corner at the underarm is squared afterwards."""


EQUAL = 1e-6
"""mm: a cap's half that differs from what it should be by no more is as long."""


@dataclass(frozen=True)
class Crowned:
    """The piece of a sleeve that has the crown: its two cap edges, and where their lower parts begin.

    `notches` are places on the front and the back cap, mm from each edge's start, above which it is drawn
    anew; None where the whole edge lies above.
    """

    piece: Piece
    front: Edge
    back: Edge
    notches: tuple[float | None, float | None]

    def shift(self, crown: complex, out: tuple[float, float], elbow: float | None) -> Shift:
        """Return the piece with its crown moved and its front and back ends that much farther out."""
        ends = self.front.path.end, self.back.path.start
        by = [math.copysign(1.0, end.real) * far + 0j for end, far in zip(ends, out, strict=True)]
        after = self.piece.edges[(self.piece.index(self.front.name) + 1) % len(self.piece.edges)].name
        knots: dict[str, tuple[Knot, ...]] = {}
        for edge, at, far in zip((self.front, self.back), self.notches, by, strict=True):
            if at is not None:
                knots[edge.name] = (Knot(at, far),)
        for edge in self.piece.edges:
            at = at_height(edge.path, elbow) if edge.role in BELOW and elbow is not None else None
            if at is not None and INSIDE < at < edge.length - INSIDE:
                knots[edge.name] = (Knot(at, 0j),)
        corners = {self.front.name: crown, after: by[0], self.back.name: by[1]}
        held = frozenset({(self.front.name, "start"), (self.back.name, "end"), *self.corners()})

        def inside(place: complex) -> complex:
            return crown if abs(place - self.front.path.start) < INSIDE else 0j

        return Shift(self.piece.name, corners, knots, held, inside=inside)

    def corners(self) -> Iterator[tuple[str, str]]:
        """Yield the ends of edges that meet where cap and seam end together: both keep their direction there."""
        after = self.piece.edges[(self.piece.index(self.front.name) + 1) % len(self.piece.edges)]
        before = self.piece.edges[self.piece.index(self.back.name) - 1]
        yield from (
            (self.front.name, "end"),
            (self.back.name, "start"),
            (after.name, "start"),
            (before.name, "end"),
        )

    def lengths(self, shift: Shift) -> tuple[float, float]:
        """Return the lengths of the front and the back cap, moved so."""
        found = []
        for edge in (self.front, self.back):
            at = (self.piece.index(edge.name) + 1) % len(self.piece.edges)
            pull = shift.pull(edge.name, self.piece.edges[at].name)
            found.append(moved_along(way_of(edge.path, () if pull is None else (pull,))).length)
        return found[0], found[1]


def crowned(draft: Draft) -> Crowned:
    """Return the piece of the sleeve that has the crown; raises `DraftError` where there is none."""
    for piece in sleeve_pieces(draft):
        for at, edge in enumerate(piece.edges):
            before = piece.edges[at - 1]
            marks = [n.kind for e in (edge, before) for n in e.notches]
            caps = {before.role, edge.role} <= CAPS and (before.half, edge.half) == (Half.BACK, Half.FRONT)
            if caps and NotchKind.CROWN in marks:
                return Crowned(piece, edge, before, (_notch(draft, piece, edge), _notch(draft, piece, before)))
    raise DraftError("no sleeve of this draft has a crown", turn="note it at an edge (`piece.edge`) instead")


def _notch(draft: Draft, piece: Piece, edge: Edge) -> float | None:
    """Return where the notch of a cap edge's seam stands, mm along the edge, if that edge reaches the underarm."""
    if edge.role is not EdgeRole.CAP:
        return None
    for seam in draft.seams:
        if seam.kind is SeamKind.SET_IN and seam.a == ((piece.name, edge.name),) and seam.notches:
            low = seam.notches[-1] if edge.half is Half.FRONT else seam.notches[0]
            return low.a
    return None


def cap_height(draft: Draft, raised: float) -> Altered:
    """Return a sleeve whose crown is higher by `raised` mm; it is narrower at the upper arm by what that takes."""

    def shift(cap: Crowned, free: np.ndarray, elbow: float | None) -> Shift:
        return cap.shift(1j * raised, (float(free[0]), float(free[1])), elbow)

    return upright(draft, lambda one: _fitted(one, shift, f"cap {'raised' if raised > 0 else 'lowered'}"))


def cap_ease(draft: Draft, behind: bool, more: float) -> Altered:
    """Return a sleeve with `more` mm more to be eased in, in the back half of its cap or in the front.

    The crown goes up, and a little toward that half; the width stays. Raises `DraftError` where there would be
    less cap than armhole.
    """

    def shift(cap: Crowned, free: np.ndarray, elbow: float | None) -> Shift:
        return cap.shift(complex(free[0], free[1]), (0.0, 0.0), elbow)

    def alter(one: Draft) -> Altered:
        longer = (0.0, more) if behind else (more, 0.0)
        found = _fitted(one, shift, f"{'back' if behind else 'front'} cap eased {_more(more)}", longer)
        return replace(found, draft=_with_ease(found.draft, Half.BACK if behind else Half.FRONT, more))

    return upright(draft, alter)


def _more(by: float) -> str:
    return "more" if by > 0 else "less"


def _with_ease(draft: Draft, half: Half, more: float) -> Draft:
    """Return the draft with more of the cap eased in at the armhole seam of one half."""
    on_crown = crowned(draft)
    edge = on_crown.front if half is Half.FRONT else on_crown.back
    ref = on_crown.piece.name, edge.name
    seams = [
        replace(s, ease=s.ease + more) if s.kind is SeamKind.SET_IN and ref in s.a else s for s in draft.seams
    ]
    if min(s.ease for s in seams if s.kind is SeamKind.SET_IN and ref in s.a) < 0:
        raise DraftError("there would be less cap than armhole", turn="ease it by less")
    return replace(draft, seams=tuple(seams))


def upright(draft: Draft, alter: Callable[[Draft], Altered]) -> Altered:
    """Return the draft altered with its sleeve turned as it hangs straight, and turned again as it was."""
    forward = turned_by(draft)
    if not forward:
        return alter(draft)
    found = alter(turned(draft, 0.0))
    return replace(found, draft=turned(found.draft, forward))


def arm_width(draft: Draft, wider: float) -> Altered:
    """Return a sleeve wider by `wider` mm at the upper arm, its crown lower by what that takes."""
    level = next(
        (lv.name for p in sleeve_pieces(draft) for lv in p.levels if lv.kind is LevelKind.UPPER_ARM), None
    )
    if level is None:
        raise DraftError("no sleeve of this draft draws the upper arm", turn="note it at an edge instead")

    def alter(one: Draft, by: float) -> Altered:
        def shift(cap: Crowned, free: np.ndarray, elbow: float | None) -> Shift:
            return cap.shift(complex(free[0], free[1]), (by / 2, by / 2), elbow)

        return _fitted(one, shift, f"upper arm {'widened' if wider > 0 else 'narrowed'}")

    return upright(draft, lambda one: made_exact(one, wider, alter, lambda it: finished_girth(it, level) or 0.0))


Shaped = Callable[[Crowned, "np.ndarray", "float | None"], Shift]


def _fitted(draft: Draft, shape: Shaped, why: str, longer: tuple[float, float] = (0.0, 0.0)) -> Altered:
    """Return a sleeve moved so that both halves of its cap keep their lengths, or get `longer` (front, back).

    Raises `DraftError` where no cap has them.
    """
    from scipy.optimize import fsolve  # loaded by who alters a cap only

    cap, elbow = crowned(draft), height(sleeve_pieces(draft), LevelKind.ELBOW)
    wanted = np.array([cap.front.length + longer[0], cap.back.length + longer[1]])
    asked, free = wanted.copy(), np.zeros(2)
    found = Altered(draft)
    for _ in range(ROUNDS):
        target = asked.copy()
        free, told, _, _ = fsolve(
            lambda x, t=target: np.array(cap.lengths(shape(cap, x, elbow))) - t, free, full_output=True, xtol=1e-12
        )
        if np.abs(told["fvec"]).max() > EQUAL:
            raise DraftError(
                "no cap of this height has the length of the armhole",
                turn="change the cap's height or the sleeve's width by less",
            )
        found = carried_out(draft, [shape(cap, free, elbow)], why, _facts(cap, shape(cap, free, elbow)))
        new = found.draft[cap.piece.name]
        got = np.array([new[cap.front.name].length, new[cap.back.name].length])
        asked += wanted - got
        if np.abs(wanted - got).max() < 1e-6:
            break
    return found


def _facts(cap: Crowned, shift: Shift) -> Mapping[str, float]:
    return {"cap_height": shift.corners[cap.front.name].imag}
