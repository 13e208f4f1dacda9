"""What goes over the middle where the hands differ: half of it lies along the left, half along the right. mm."""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.draft import Draft, Girth, Notion


def one_of_both(left: Draft, right: Draft) -> tuple[Draft, Draft]:
    """Return both hands with what goes over their middle as long in each: a bone or braid round a hem, an elastic.

    Each hand has it twice as long as its own half; it is as long as both halves.
    """
    mine, theirs = _counted_once(left), _counted_once(right)
    both = {key: _between(mine[key], theirs[key]) for key in mine if key in theirs}
    return _with(left, both), _with(right, both)


_Key = tuple[str, str, str, str]


def _key(notion: Notion) -> _Key:
    return notion.what, notion.where, notion.kind, notion.mark


def _counted_once(draft: Draft) -> dict[_Key, Notion]:
    once = [one for one in draft.notions if one.count == 1 and not one.piece and not one.hand]
    return {_key(one): one for one in once}


def _between(one: Notion, other: Notion) -> Notion:
    return replace(one, cut_length=_mean(one.cut_length, other.cut_length), loop=_mean(one.loop, other.loop))


def _mean(one: float | None, other: float | None) -> float | None:
    return one if one is None or other is None else (one + other) / 2


def _with(draft: Draft, both: dict[_Key, Notion]) -> Draft:
    def settled(notion: Notion) -> Notion:
        found = both.get(_key(notion))
        if found is None:
            return notion
        return replace(notion, cut_length=found.cut_length, loop=found.loop)

    return replace(draft, notions=tuple(map(settled, draft.notions)))


def girths_of_both(left: tuple[Girth, ...], right: tuple[Girth, ...]) -> tuple[Girth, ...]:
    """A limb's girth stands once a side; one round the body once, the mean of its two halves."""
    theirs = {(girth.level, girth.side): girth for girth in right}
    found = []
    for a in left:
        b = theirs.get((a.level, a.side), a)
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
