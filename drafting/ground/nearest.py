"""The names nearest to one that nobody knows: what a maker most likely meant.

Compared by words: their order, `-` against `_`, and one or many do not count, left and right count
little. Letters are compared by `difflib`.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from difflib import SequenceMatcher
from functools import lru_cache

MOST = 5
"""Names offered at once (ours: more are a list to read, not a hint)."""

LISTED = 20
"""Names that a sentence lists where nothing else does (ours): every word that a maker may write, of any choice."""

LIKE, BEHIND = 0.6, 0.15
"""How alike a name has to be (0 to 1), and how far behind the best one it may lie (ours)."""

LONGEST = 60
"""Letters compared of a name (ours); no name of the kit is longer."""

OTHER_HAND = 0.8
"""How alike left and right are (ours): mixed up more often than misspelt."""


def nearest(name: str, known: Iterable[str]) -> tuple[str, ...]:
    """Return at most five of the names `known` that are like `name`, the likest first.

    >>> nearest("side-back", ("front", "back-side", "back")), nearest("xyzzy", ("front",))
    (('back-side',), ())
    """
    return _nearest(name[:LONGEST], tuple(dict.fromkeys(known)))


def meant(name: str, known: Iterable[str], listed: str = "") -> str:
    """Return what would be right in place of `name`: the nearest names, or where all are `listed`, or all of them.

    >>> meant("frnt", ("front", "back")), meant("x", ("front", "back"))
    ('did you mean front?', 'known are front and back')
    >>> meant("x", map(str, range(99)), "`drafting blocks` lists all")
    '`drafting blocks` lists all'
    """
    names = tuple(dict.fromkeys(known))
    near = nearest(name, names)
    if near:
        return f"did you mean {joined(near, 'or')}?"
    if not names or (listed and len(names) > MOST):
        return listed
    if len(names) > LISTED:
        names = (*names[:LISTED], f"{len(names) - LISTED} more")
    return f"known are {joined(names, 'and')}" if len(names) > 1 else f"known is {names[0]}"


def joined(names: Iterable[str], word: str) -> str:
    """Return names as a sentence lists them.

    >>> joined(("a", "b", "c"), "or")
    'a, b or c'
    """
    *most, last = names
    return f"{', '.join(most)} {word} {last}" if most else last


@lru_cache(maxsize=512)
def _nearest(name: str, known: tuple[str, ...]) -> tuple[str, ...]:
    scores = {other: _alike(name, other) for other in known}
    best = max(scores.values(), default=0.0)
    near = [other for other in known if scores[other] >= max(LIKE, best - BEHIND)]
    same = [other for other in near if scores[other] == 1.0]
    return tuple(sorted(same or near, key=lambda other: -scores[other])[:MOST])


def _alike(name: str, other: str) -> float:
    """Return how alike two names are, 1.0 for the same words in any order."""
    ours, theirs = _words(name), _words(other)
    if not ours or not theirs:
        return 0.0
    if sorted(ours) == sorted(theirs) or "".join(ours) == "".join(theirs):
        return 1.0
    letters = sum(map(len, ours + theirs))
    by_words = sum(
        len(word) * max(_ratio(word, one) for one in facing)
        for own, facing in ((ours, theirs), (theirs, ours))
        for word in own
    )
    return min(0.99, max(_ratio("".join(ours), "".join(theirs)), by_words / letters))


@lru_cache(maxsize=4096)
def _ratio(a: str, b: str) -> float:
    if {a, b} == {"left", "right"}:
        return OTHER_HAND
    return 1.0 if a == b else SequenceMatcher(None, a, b, autojunk=False).ratio()


@lru_cache(maxsize=2048)
def _words(name: str) -> tuple[str, ...]:
    parts = (part for part in re.split(r"[\W_]+", name.casefold()) if part)
    return tuple(part[:-1] if len(part) > 3 and part.endswith("s") else part for part in parts)
