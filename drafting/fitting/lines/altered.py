"""An alteration carried out: pieces moved, what lies behind them too, seams trued, accounts kept.

Every alteration is a list of `Shift`s, one for each piece that it moves. The rest is the same for all.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace

from drafting.checks.girths import bare_girth, finished_girth
from drafting.draft.draft import Draft, EdgeRef, Girth, Seam, SeamNotch
from drafting.draft.roles import EdgeRole
from drafting.draft.walk import sewn_apart
from drafting.fitting.lines.aim import aimed
from drafting.fitting.lines.behind import brought_along
from drafting.fitting.lines.giving import ready
from drafting.fitting.lines.shift import Reshaped, Shift, stays, with_levels
from drafting.fitting.lines.true import corners_kept, seams_trued
from drafting.fitting.lines.trueing import started
from drafting.fitting.note import Moved
from drafting.geometry import Path

SEEN = 0.05
"""mm: an edge that is moved by no more than this stays (half of the last figure a maker is shown)."""


@dataclass(frozen=True)
class Altered:
    """A draft that an alteration has changed, and every edge that it moved."""

    draft: Draft
    moved: tuple[Moved, ...] = ()


def carried_out(
    draft: Draft, shifts: Iterable[Shift], why: str, facts: Mapping[str, float] | None = None
) -> Altered:
    """Return the draft with its pieces moved as `shifts` say, and all that has to follow within it.

    `facts` are added to those of the draft. Raises `DraftError` where a piece would not close.
    """
    asked = {shift.piece: shift for shift in shifts}
    given, draft = draft, ready(draft, asked)
    work = started(draft, asked.values())
    for name in asked:
        work = work.with_shift(aimed(draft[name], work.draft[name]))
    work = seams_trued(corners_kept(work))
    after, found = work.draft, dict(work.found)
    found = {name: replace(one, after=with_levels(one, _inside(asked, name))) for name, one in found.items()}
    behind = brought_along(draft, found)
    found |= behind
    after = after.with_pieces(one.after for one in found.values())
    after = after.with_pieces(given[p.name] for p in draft.pieces if after[p.name] is p)
    seams = tuple(_noted(seam, found, draft, after) for seam in draft.seams)
    more = {name: draft.facts[name] + by for name, by in (facts or {}).items() if name in draft.facts}
    after = replace(after, seams=seams, facts={**draft.facts, **more, **_crotch(draft, after)})
    after = replace(after, girths=tuple(girth_told(girth, given, after) for girth in draft.girths))
    return Altered(after, tuple(moves(given, after, why)))


def _crotch(before: Draft, after: Draft) -> dict[str, float]:
    """Return the crotch length that was asked for, with what an alteration changed of it."""
    if "crotch_asked" not in before.facts:
        return {}
    on = {EdgeRole.CROTCH, EdgeRole.FLY}
    old, new = (
        math.fsum(e.length for p in draft.pieces if not p.material for e in p.edges if e.role in on)
        for draft in (before, after)
    )
    return {"crotch_asked": before.facts["crotch_asked"] + new - old}


def then(first: Altered, second: Altered) -> Altered:
    """Return two alterations in turn as one."""
    return Altered(second.draft, (*first.moved, *second.moved))


def girth_told(girth: Girth, before: Draft, after: Draft) -> Girth:
    """Return a girth with the ease that the cloth has now, and what an armhole leaves bare of it."""
    old, new = (finished_girth(one, girth.level, girth.side) for one in (before, after))
    more = (new or 0.0) - (old or 0.0)
    bare = 0.0 if girth.limb else bare_girth(after, girth.level) - bare_girth(before, girth.level)
    return replace(
        girth,
        asked_ease=girth.asked_ease + more,
        settled_ease=girth.settled_ease + more,
        inside=max(0.0, girth.inside + bare),
    )


def _noted(seam: Seam, found: Mapping[str, Reshaped], before: Draft, after: Draft) -> Seam:
    """Return a seam whose notches stand where their places have come to, as far apart as they were.

    A notch beyond what is eased in is as far from the end as its partner is: there the two lie on each other.
    """
    if not any(name in found for name, _ in seam.a):
        return seam
    more = sewn_apart(after, seam) - sewn_apart(before, seam)
    notches = tuple(_notch(one, seam, found, more) for one in seam.notches)
    ends = seam.eased and (_place(seam.a, seam.eased[0], found), _place(seam.a, seam.eased[1], found))
    return replace(seam, notches=notches, eased=ends)


def _notch(notch: SeamNotch, seam: Seam, found: Mapping[str, Reshaped], more: float) -> SeamNotch:
    """Return a notch moved; `more` is by how much (mm) chain a has become longer against chain b."""
    a = _place(seam.a, notch.a, found)
    beyond = more if seam.eased and notch.a >= seam.eased[1] else 0.0
    return replace(notch, a=a, b=a + notch.b - notch.a - beyond)


def _place(chain: tuple[EdgeRef, ...], at: float, found: Mapping[str, Reshaped]) -> float:
    """Return where a place of a chain (mm from its start) has come to."""
    passed = come = 0.0
    for number, (name, edge) in enumerate(chain):
        if name not in found:
            return at
        length = found[name].before[edge].length
        if at <= passed + length or number == len(chain) - 1:
            return come + found[name].place(edge, at - passed)
        passed, come = passed + length, come + found[name].after[edge].length
    return at


def moves(before: Draft, after: Draft, why: str) -> Iterable[Moved]:
    """Yield every edge of `before` that lies otherwise in `after`, with both its lengths."""
    for piece in before.pieces:
        new = after[piece.name]
        if new is piece:
            continue
        for edge in piece.edges:
            if edge.name in new and _moved(edge.path, new[edge.name].path):
                yield Moved(piece.name, edge.name, edge.length, new[edge.name].length, why)


def _moved(one: Path, two: Path) -> bool:
    """Say whether an edge lies otherwise than it did, its length and its ends first, as they cost little."""
    if one is two:
        return False
    told = (one.length - two.length, one.start - two.start, one.end - two.end)
    if any(abs(by) > SEEN for by in told):
        return True
    return any(abs(p - q) > SEEN for p, q in zip(one.evenly(9), two.evenly(9), strict=True))


def _inside(asked: Mapping[str, Shift], name: str) -> Callable[[complex], complex]:
    return asked[name].inside if name in asked else stays


def made_exact(
    draft: Draft, by: float, alter: Callable[[Draft, float], Altered], measure: Callable[[Draft], float]
) -> Altered:
    """Return the draft altered so that what `measure` reads changes by exactly `by`.

    Curves make an alteration a hair too much or too little; it is asked again in the measure in which it
    fell short, until it is right.
    """
    asked, before, found = by, measure(draft), alter(draft, by)
    for _ in range(TRIES):
        got = measure(found.draft) - before
        if abs(got - by) < RIGHT or abs(got) < RIGHT:
            break
        asked *= by / got
        found = alter(draft, asked)
    return found


TRIES, RIGHT = 4, 1e-6
"""How often an alteration is asked again, and within how many mm it is right."""
