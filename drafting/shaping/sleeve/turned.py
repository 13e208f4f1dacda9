"""A sleeve turned in its armhole: the same cap meets it farther forward or back, all the way round.

Nothing of the sleeve's outline changes. Front and back cap end elsewhere on it: behind the crown where it is
turned forward, and as much in front of the underarm below, where the front cap's last part then meets the
back of the armhole. The ease stays where it was along the armhole, and the sleeve's notches move.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import Notch
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.geometry import Path
from drafting.geometry.healed import healed
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told

FACT = "sleeve_turn"
"""The fact of a draft that says how far its sleeve is turned forward, mm."""

MOST = 0.3
"""Of an edge of the cap: a sleeve is turned no farther (ours: its notches would come to the next seam)."""

CAPS = frozenset({EdgeRole.CAP, EdgeRole.CAP_PART})

Caps = tuple[Seam, Seam]
"""A cap's seams: from the underarm up its back to the crown, and down its front."""


def turned_by(draft: Draft) -> float:
    """Return how far a draft's sleeve is turned forward along its armhole, mm."""
    return draft.facts.get(FACT, 0.0)


def turned(draft: Draft, forward: float) -> Draft:
    """Return the draft with its sleeve turned forward by `forward` mm in all, along the seam of its armhole.

    Raises `DraftError` where it has no set-in sleeve, or the sleeve would be turned too far.
    """
    caps = list(_caps(draft))
    if not caps:
        raise DraftError("there is no set-in sleeve to turn", turn="note it at a sleeve with a cap")
    for back, front in caps:
        whole = [draft.edge(ref).length for ref in (*back.a, *front.a) if not _is_part(draft, ref)]
        if abs(forward) > MOST * min(whole):
            raise DraftError(
                "the sleeve would be turned too far: its notches would come to the next seam",
                value=told(abs(forward)),
                turn=f"turn it by {told(MOST * min(whole))} at most",
            )
        draft = _turned_cap(draft, (back, front), forward)
    return replace(draft, facts={**draft.facts, FACT: forward})


def _caps(draft: Draft) -> Iterator[Caps]:
    """Yield each cap: two set-in seams of which one goes on where the other ends, at the crown."""
    seams = [s for s in draft.seams if s.kind is SeamKind.SET_IN and all(_on_cap(draft, ref) for ref in s.a)]
    for back in seams:
        after = _after(draft, back.a[-1])
        yield from ((back, one) for one in seams if one.a[0] == after and one is not back and _turns(one, back))


def _turns(front: Seam, back: Seam) -> bool:
    """Return whether two seams that meet do so at the crown: below, the front one ends where the back begins."""
    if front.eased is None or back.eased is None:
        return False
    return front.eased[0] == 0.0 < back.eased[0]


def _on_cap(draft: Draft, ref: EdgeRef) -> bool:
    return draft.edge(ref).role in CAPS


def _after(draft: Draft, ref: EdgeRef) -> EdgeRef:
    piece = draft[ref[0]]
    return ref[0], piece.edges[(piece.index(ref[1]) + 1) % len(piece.edges)].name


def _turned_cap(draft: Draft, caps: Caps, forward: float) -> Draft:
    marks = [_marks(draft, seam.a) for seam in caps]
    more = forward - turned_by(draft)
    draft = _passed(draft, caps[0].a[-1], caps[1].a[0], more)
    low, first = caps[1].a[-1], caps[0].a[0]
    if _after(draft, low) == first and not _parted(draft, caps):
        draft = _passed(draft, low, first, more)
    else:
        draft, caps = _parted_anew(draft, caps, forward)
    for seam, notches in zip(caps, marks, strict=True):
        draft = _marked(draft, seam.a, notches)
    found = {seam.name: seam for seam in caps}
    return replace(draft, seams=tuple(found.get(seam.name, seam) for seam in draft.seams))


def _passed(draft: Draft, before: EdgeRef, after: EdgeRef, by: float) -> Draft:
    """Return the draft with the last `by` mm of an edge given to the one that follows (less than 0: back)."""
    piece = draft[before[0]]
    one, two = piece[before[1]], piece[after[1]]
    low, high = map(healed, Path.joined((one.path, two.path)).split(one.length - by))
    return draft.with_pieces([piece.with_edges(replace(one, path=low), replace(two, path=high))])


PART = "_under"
"""How the part of a cap is called that is sewn to the other half of the armhole."""


def _parted(draft: Draft, caps: Caps) -> bool:
    """Return whether a part of this cap is sewn to the other half already, where the sleeve has its own seam."""
    return any(_is_part(draft, ref) for seam in caps for ref in seam.a)


def _is_part(draft: Draft, ref: EdgeRef) -> bool:
    """Return whether an edge was cut off a whole cap, to be sewn to the other half of the armhole."""
    whole = any(edge.role is EdgeRole.CAP for edge in draft[ref[0]].edges)
    return whole and draft.edge(ref).role is EdgeRole.CAP_PART


def _parted_anew(draft: Draft, caps: Caps, forward: float) -> tuple[Draft, Caps]:
    """Return draft and seams with the part of the cap under the arm that meets the other half, put back first."""
    back, front = caps
    if _is_part(draft, back.a[0]):
        draft = _one_again(draft, front.a[-1], back.a[0])
        back = replace(back, a=back.a[1:])
    elif _is_part(draft, front.a[-1]):
        draft = _one_again(draft, front.a[-1], back.a[0])
        front = replace(front, a=front.a[:-1])
    if forward > 0:
        draft, part = _cut_off(draft, front.a[-1], forward, at_start=False)
        back = replace(back, a=(part, *back.a))
    elif forward < 0:
        draft, part = _cut_off(draft, back.a[0], -forward, at_start=True)
        front = replace(front, a=(*front.a, part))
    return draft, (back, front)


def _one_again(draft: Draft, one: EdgeRef, two: EdgeRef) -> Draft:
    """Return the draft with two edges that follow each other as one, under the name of the whole cap's."""
    piece = draft[one[0]]
    first, second = piece[one[1]], piece[two[1]]
    whole = second if _is_part(draft, one) else first
    joined = replace(whole, path=healed(Path.joined((first.path, second.path))), notches=())
    edges = tuple(joined if e is whole else e for e in piece.edges if e is whole or e not in (first, second))
    return draft.with_pieces([replace(piece, edges=edges)])


def _cut_off(draft: Draft, ref: EdgeRef, by: float, *, at_start: bool) -> tuple[Draft, EdgeRef]:
    """Return the draft with the first or last `by` mm of an edge as an edge of its own, and its name."""
    piece = draft[ref[0]]
    edge = piece[ref[1]]
    low, high = edge.path.split(by if at_start else edge.length - by)
    rest = replace(edge, path=high if at_start else low, notches=())
    part = replace(rest, name=edge.name + PART, path=low if at_start else high, role=EdgeRole.CAP_PART)
    new = (part, rest) if at_start else (rest, part)
    edges = tuple(e for one in piece.edges for e in (new if one is edge else (one,)))
    return draft.with_pieces([replace(piece, edges=edges)]), (piece.name, part.name)


def _marks(draft: Draft, chain: Iterable[EdgeRef]) -> list[tuple[Notch, float]]:
    """Return the notches of a chain of edges with their places along it, mm."""
    found, passed = [], 0.0
    for ref in chain:
        edge = draft.edge(ref)
        found += [(notch, passed + notch.at) for notch in edge.notches]
        passed += edge.length
    return found


def _marked(draft: Draft, chain: Iterable[EdgeRef], marks: Iterable[tuple[Notch, float]]) -> Draft:
    """Return the draft with these notches at these places of a chain, and no others on its edges."""
    passed, left = 0.0, list(marks)
    for ref in chain:
        edge = draft.edge(ref)
        here = [(notch, at) for notch, at in left if at <= passed + edge.length + 1e-9]
        left = [one for one in left if one not in here]
        notches = tuple(replace(notch, at=max(at - passed, 0.0)) for notch, at in here)
        draft = draft.with_pieces([draft[ref[0]].with_edges(replace(edge, notches=notches))])
        passed += edge.length
    return draft
