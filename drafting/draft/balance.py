"""Notches that let two long edges be joined without shifting: at body levels, at joints, or a lone one.

One rule over seams and levels serves every garment: a seam is marked where a level of the body crosses
it, a band where the seams of what it is sewn to end, and a long seam that nothing crosses carries one
notch off its middle, so that no piece can be turned round. What a block has marked already stands.
"""

from __future__ import annotations

import bisect
import itertools
import math
from collections.abc import Iterator
from dataclasses import replace

from drafting.draft.draft import Draft, EdgeRef, Seam, SeamNotch
from drafting.draft.piece import Piece
from drafting.draft.roles import Half, LevelKind, NotchKind, PieceRole, SeamKind
from drafting.geometry import Path
from drafting.geometry.brent import brent_zero
from drafting.geometry.curve import Segment
from drafting.ground.remembered import remembered

LONG = 250.0
"""mm: a seam longer than this carries a notch wherever a level crosses it, and one at least (ours: the
arm's reach between two pins)."""

CLEAR = 20.0
"""mm: no notch is added nearer than this to another, or to an end of its seam (ours: two back notches
with their strokes stand apart, and a hem's turn-up hides none)."""

LONE = 0.4
"""Of a seam's length: where its only notch stands, so that it tells one end from the other (ours)."""

REACH, CROTCH_REACH = 2.0, 40.0
"""mm: a level line is run on by this, so that it crosses the outline on which it ends; a hip's may end at
the centre line, from which the crotch's curve has gone off already."""

PARTS = 6
"""A stretch of outline is looked through in so many parts for where a level crosses it (ours)."""

LEVELS = frozenset({LevelKind.WAIST, LevelKind.HIP, LevelKind.KNEE, LevelKind.ELBOW})
"""Levels that are marked on whatever long seam they cross."""

ALONG = frozenset(
    {SeamKind.ATTACHED, SeamKind.WAIST, SeamKind.YOKE, SeamKind.SET_IN, SeamKind.MADE_UP, SeamKind.FLY}
)
"""Seams that run along a level, or on a part that hangs on no level."""

PLAIN_ENDS = frozenset({SeamKind.ATTACHED, SeamKind.WAIST})
"""Seams on which it is marked where the seams of the larger part end."""

FRONTS = frozenset({PieceRole.FRONT, PieceRole.SIDE_FRONT})


def balanced(draft: Draft) -> Draft:
    """Return the draft with the notches that its long seams still need, both chains at once.

    Darts get none, nor seams that carry the quarters of gathers. Drafts that need nothing come back as
    they are.
    """
    seams = tuple(_balanced(draft, seam) for seam in draft.seams)
    same = all(new is old for new, old in zip(seams, draft.seams, strict=True))
    return draft if same else replace(draft, seams=seams)


def facing_places(draft: Draft, seam: Seam, ref: EdgeRef, at: float) -> tuple[float, float]:
    """Return the places on chains a and b (mm from a seam's start) that meet `at` mm along one of its edges."""
    lengths = _length(draft, seam.a), _length(draft, seam.b)
    if ref in seam.a:
        on_a = _length(draft, seam.a[: seam.a.index(ref)]) + at
        return on_a, _facing(seam, lengths, on_a)
    on_b = _length(draft, seam.b[: seam.b.index(ref)]) + draft.edge(ref).length - at
    b, a = zip(*((there, here) for here, there in _anchors(seam, lengths)), strict=True)
    return _between(b, a, on_b), on_b


def wants_notch(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam is so long, or of such a kind, that it has to carry a notch."""
    if seam.kind is SeamKind.DART:
        return False
    length = _length(draft, seam.a)
    return length > LONG or (seam.kind is SeamKind.SHOULDER and length > 4 * CLEAR)


def _balanced(draft: Draft, seam: Seam) -> Seam:
    quartered = any(n.kind is NotchKind.QUARTER for n in seam.notches)
    if seam.kind is SeamKind.DART or quartered or not _names_edges(draft, seam):
        return seam
    lengths = _length(draft, seam.a), _length(draft, seam.b)
    count = 2 if _behind(draft, seam) else 1
    added: list[SeamNotch] = []
    for name, at in (*_joints(draft, seam, lengths), *_crossed(draft, seam, lengths)):
        if _is_free(at, lengths[0], (*seam.notches, *added)):
            added.append(SeamNotch(name, at, _facing(seam, lengths, at), count))
    if not added and not seam.notches and wants_notch(draft, seam):
        at = LONE * lengths[0]
        added.append(SeamNotch("balance", at, _facing(seam, lengths, at), count))
    if not added:
        return seam
    return replace(seam, notches=tuple(sorted((*seam.notches, *added), key=lambda n: n.a)))


def _names_edges(draft: Draft, seam: Seam) -> bool:
    return all(piece in draft and edge in draft[piece] for piece, edge in (*seam.a, *seam.b))


def _length(draft: Draft, chain: tuple[EdgeRef, ...]) -> float:
    return math.fsum(draft.edge(ref).length for ref in chain)


def _behind(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam lies behind the side: its notches are double."""
    refs = (*seam.a, *seam.b)
    roles = {draft[piece].role for piece, _ in refs}
    halves = {draft.edge(ref).half for ref in refs}
    return not roles & FRONTS and (PieceRole.BACK in roles or halves == {Half.BACK})


def _is_free(at: float, length: float, others: tuple[SeamNotch, ...]) -> bool:
    return CLEAR <= at <= length - CLEAR and all(abs(at - other.a) >= CLEAR for other in others)


def _facing(seam: Seam, lengths: tuple[float, float], at: float) -> float:
    """Return the place on chain b (mm from the seam's start) that meets `at` on chain a."""
    a, b = zip(*_anchors(seam, lengths), strict=True)
    return _between(a, b, at)


def _anchors(seam: Seam, lengths: tuple[float, float]) -> list[tuple[float, float]]:
    """Return places on a and b that are known to meet: ends, notches, and where ease begins and ends."""
    known = sorted({(0.0, 0.0), *((n.a, n.b) for n in seam.notches), lengths})
    if seam.eased is None:
        return known
    start, end = seam.eased
    before = max(pair for pair in known if pair[0] <= start + 1e-6)
    after = min(pair for pair in known if pair[0] >= end - 1e-6)
    more = (start, before[1] + start - before[0]), (end, after[1] - after[0] + end)
    return sorted({pair[0]: pair for pair in (*more, *known)}.values())


def _between(x: tuple[float, ...], y: tuple[float, ...], at: float) -> float:
    i = min(max(bisect.bisect_right(x, at), 1), len(x) - 1)
    run = x[i] - x[i - 1]
    return y[i] if run < 1e-9 else y[i - 1] + (at - x[i - 1]) * (y[i] - y[i - 1]) / run


# --------------------------------------------------------------------------------------- joints


def _joints(draft: Draft, seam: Seam, lengths: tuple[float, float]) -> Iterator[tuple[str, float]]:
    """Yield where the pieces that a small or a hanging part is sewn to are joined themselves."""
    if seam.kind not in PLAIN_ENDS:
        return
    b, a = zip(*((there, here) for here, there in _anchors(seam, lengths)), strict=True)
    for at, one, two in _changes(draft, seam.a):
        yield _joint_name(draft, one, two), at
    for at, one, two in _changes(draft, seam.b):
        yield _joint_name(draft, one, two), _between(b, a, at)


def _changes(draft: Draft, chain: tuple[EdgeRef, ...]) -> Iterator[tuple[float, EdgeRef, EdgeRef]]:
    passed = 0.0
    for one, two in itertools.pairwise(chain):
        passed += draft.edge(one).length
        if one[0] != two[0]:
            yield passed, one, two


def _joint_name(draft: Draft, one: EdgeRef, two: EdgeRef) -> str:
    """Return what the seam is called that joins two pieces, by its kind."""
    wanted = {one[0], two[0]}
    kinds = (s.kind for s in draft.seams if {piece for piece, _ in (*s.a, *s.b)} == wanted)
    return next((kind.value for kind in kinds if kind is not SeamKind.PLAIN), "joint")


# --------------------------------------------------------------------------------------- levels


def _crossed(draft: Draft, seam: Seam, lengths: tuple[float, float]) -> Iterator[tuple[str, float]]:
    """Yield each level that crosses a long seam, and where on chain a."""
    crotch = seam.kind is SeamKind.CROTCH
    if seam.kind in ALONG or (lengths[0] <= LONG and not crotch):
        return
    wanted = LEVELS | {LevelKind.BUST} if seam.kind is SeamKind.PRINCESS else LEVELS
    reach = CROTCH_REACH if crotch else REACH
    found = dict(_on_chain(draft, seam.a, wanted, reach, backwards=False))
    b, a = zip(*((there, here) for here, there in _anchors(seam, lengths)), strict=True)
    for name, at in _on_chain(draft, seam.b, wanted, reach, backwards=True):
        found.setdefault(name, _between(b, a, at))
    yield from found.items()


def _on_chain(
    draft: Draft, chain: tuple[EdgeRef, ...], wanted: frozenset[LevelKind], reach: float, *, backwards: bool
) -> Iterator[tuple[str, float]]:
    """Yield the levels that cross a chain, with their places from the seam's start."""
    passed = 0.0
    for name, edge_name in chain:
        piece = draft[name]
        edge = piece[edge_name]
        for kind, at in _met(piece, edge.path, wanted, reach):
            yield kind.value, passed + (edge.length - at if backwards else at)
        passed += edge.length


def _met(
    piece: Piece, path: Path, wanted: frozenset[LevelKind], reach: float
) -> Iterator[tuple[LevelKind, float]]:
    for level in piece.levels:
        if level.kind in wanted:
            yield from ((level.kind, at) for at in _places(path, level.paths, reach))


@remembered(512)
def _places(path: Path, lines: tuple[Path, ...], reach: float) -> tuple[float, ...]:
    """Return where a path crosses the ends of lines, each run on by `reach`, mm from its start."""
    ends = [end for one in lines for end in ((one.start, -one.leave), (one.end, one.arrive))]
    found = (place for end, way in ends for place in _crossing(path, end, way, reach))
    return tuple(sorted(found))


def _crossing(path: Path, end: complex, way: complex, reach: float) -> Iterator[float]:
    """Yield where a path crosses the straight line through `end`, no farther than `reach` from it."""
    passed = 0.0
    for segment, length in zip(path.segments, path.lengths, strict=True):

        def beside(t: float, segment: Segment = segment) -> float:
            return ((segment.point(t) - end) / way).imag

        heights = [beside(k / PARTS) for k in range(PARTS + 1)]
        for k, (one, two) in enumerate(itertools.pairwise(heights)):
            if one * two <= 0 and one != two:
                t = float(brent_zero(beside, k / PARTS, (k + 1) / PARTS, within=1e-9))
                if abs(segment.point(t) - end) <= reach:
                    yield passed + (segment.split(t)[0].length if 0 < t < 1 else t * length)
        passed += length
