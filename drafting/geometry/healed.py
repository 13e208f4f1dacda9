"""A path that was split and laid together again, with its parts as the one curve that they were.

Splitting a cubic at t leaves two whose handles beside the split are as t to 1 - t, and whose outer handles are
t and 1 - t of the whole's (de Casteljau); so the whole is read back off them.
"""

from __future__ import annotations

from drafting.geometry.curve import Cubic, Line, Segment
from drafting.geometry.path import Path

SAME = 1e-7
"""mm: control points no farther apart are one."""


def healed(path: Path) -> Path:
    """Return the path with neighbouring segments that are two parts of one as that one.

    >>> whole = Path((Cubic(0j, 10 + 30j, 60 + 40j, 90 + 0j),))
    >>> parts = Path.joined(whole.split(20.0))
    >>> len(parts.segments), len(healed(parts).segments)
    (2, 1)
    """
    found: list[Segment] = []
    for segment in path.segments:
        whole = _whole(found[-1], segment) if found else None
        found[-1:] = [whole] if whole is not None else [*found[-1:], segment]
    return Path(tuple(found))


def _whole(first: Segment, second: Segment) -> Segment | None:
    """Return the segment of which two are the parts, or None."""
    if isinstance(first, Cubic) and isinstance(second, Cubic):
        before, after = abs(first.d - first.c), abs(second.b - second.a)
        if min(before, after) < SAME:
            return None
        t = before / (before + after)
        b, c = first.a + (first.b - first.a) / t, second.d + (second.c - second.d) / (1 - t)
        return _if_parts(Cubic(first.a, b, c, second.d), t, first, second)
    if isinstance(first, Line) and isinstance(second, Line) and first.length + second.length > SAME:
        t = first.length / (first.length + second.length)
        return _if_parts(Line(first.a, second.b), t, first, second)
    return None


def _if_parts(whole: Segment, t: float, *parts: Segment) -> Segment | None:
    """Return the segment where splitting it at t gives these parts, else None."""
    same = all(
        abs(p - q) < SAME
        for one, other in zip(whole.split(t), parts, strict=True)
        for p, q in zip(one, other, strict=True)
    )
    return whole if same else None
