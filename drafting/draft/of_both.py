"""What goes over the middle where the hands differ: half of it lies along the left, half along the right. mm."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from drafting.draft.draft import Draft, Girth, Notion


def one_of_both(left: Draft, right: Draft) -> tuple[Draft, Draft]:
    """Return both hands with what goes over their middle as long in each: a bone or braid round a hem, an elastic.

    Each hand has it twice as long as its own half; it is as long as both halves.
    """
    mine, theirs = _counted_once(left), _counted_once(right)
    lengths = {
        key: (_mean(mine[key].cut_length, theirs[key].cut_length), _mean(mine[key].loop, theirs[key].loop))
        for key in mine
        if key in theirs
    }
    return _with(left, lengths), _with(right, lengths)


_Key = tuple[str, str, str, str]
_Lengths = tuple[float | None, float | None]
"""How long a thing is cut, and its loop once joined, mm."""


def _counted_once(draft: Draft) -> dict[_Key, Notion]:
    return {_key(one): one for one in draft.notions if one.count == 1 and not one.piece and not one.hand}


def _key(notion: Notion) -> _Key:
    return notion.what, notion.where, notion.kind, notion.mark


def _mean(one: float | None, other: float | None) -> float | None:
    return one if one is None or other is None else (one + other) / 2


def _with(draft: Draft, lengths: Mapping[_Key, _Lengths]) -> Draft:
    found = ((one, lengths.get(_key(one), (one.cut_length, one.loop))) for one in draft.notions)
    return replace(draft, notions=tuple(replace(one, cut_length=cut, loop=loop) for one, (cut, loop) in found))


def girths_of_both(left: tuple[Girth, ...], right: tuple[Girth, ...]) -> tuple[Girth, ...]:
    """A limb's girth stands once a side; one round the body once, the mean of its two halves.

    What one hand alone draws right across, as a bust line that the other's V cuts off, is no girth.
    """
    theirs = {(girth.level, girth.side): girth for girth in right}
    found = []
    for a in left:
        b = theirs.get((a.level, a.side))
        if b is None:
            continue
        if a.limb:
            found += [replace(a, side="left"), replace(b, side="right")]
        else:
            found.append(
                replace(
                    a,
                    body=(a.body + b.body) / 2,
                    asked_ease=(a.asked_ease + b.asked_ease) / 2,
                    settled_ease=(a.settled_ease + b.settled_ease) / 2,
                )
            )
    return tuple(found)
