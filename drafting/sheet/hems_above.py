"""Hems from above, one beside the other: how wide each treatment makes them stand, and the seat they hang from."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from drafting.geometry import Path, line
from drafting.sheet import Layer, Sheet, Stroke, Text, assembled
from drafting.worn.nouns import Reals

GAP, MARGIN, SIZE = 90.0, 45.0, 26.0
"""mm between two hems, round all of them, and of the words (by eye: they are read on a screen)."""

TICK = 14.0
"""mm: half the height of the ends of the line that tells a width."""


@dataclass(frozen=True, eq=False)
class HemFromAbove:
    """`lines` (N, 2) mm, x to the left hand and y to the back, under a heading with `words` below it."""

    heading: str
    words: tuple[str, ...]
    lines: tuple[Reals, ...]


def hems_sheet(hems: Sequence[HemFromAbove], seat: Reals, title: str, back: str, front: str) -> Sheet:
    """Return hems side by side, true to one scale, each over the outline of the `seat` (N, 2).

    `back` and `front` are the words at the top and at the foot; the wearer's back is up.
    """
    wide = max(_reach(hem, seat) for hem in hems)
    every = [point for hem in hems for one in hem.lines for point in one] + list(seat)
    top, foot = max(p[1] for p in every), min(p[1] for p in every)
    strokes: list[Stroke] = []
    texts: list[Text] = []
    for number, hem in enumerate(hems):
        middle = complex(number * (2 * wide + GAP), 0)
        strokes += _strokes(hem, seat, middle, foot, number)
        texts += _texts(hem, middle, top, foot)
    edge = complex(-wide, 0)
    texts.append(Text(edge + 1j * (top + 3.4 * SIZE), 0.8 * SIZE, (back,), layer=Layer.GUIDE))
    texts.append(Text(edge + 1j * (foot - 7.6 * SIZE), 0.8 * SIZE, (front,), layer=Layer.GUIDE))
    told = "; ".join(" ".join((hem.heading, *hem.words)) for hem in hems)
    return assembled(title, strokes, texts, MARGIN, told)


def _reach(hem: HemFromAbove, seat: Reals) -> float:
    return max(float(np.abs(one[:, 0]).max()) for one in (*hem.lines, seat))


def _strokes(hem: HemFromAbove, seat: Reals, middle: complex, foot: float, number: int) -> Iterator[Stroke]:
    yield Stroke(Layer.PLACEMENT, (_drawn(seat, middle),), f"seat-{number}", closed=True)
    yield Stroke(Layer.CUT, tuple(_drawn(one, middle) for one in hem.lines), f"hem-{number}")
    across = np.concatenate(hem.lines)[:, 0]
    at = middle + 1j * (foot - 1.2 * SIZE)
    low, high = at + float(across.min()), at + float(across.max())
    ends = [line(end - 1j * TICK, end + 1j * TICK) for end in (low, high)]
    yield Stroke(Layer.GUIDE, (line(low, high), *ends), f"width-{number}")


def _texts(hem: HemFromAbove, middle: complex, top: float, foot: float) -> Iterator[Text]:
    yield Text(middle + 1j * (top + 1.2 * SIZE), SIZE, (hem.heading,), "middle", bold=True)
    yield Text(middle + 1j * (foot - 2.9 * SIZE), SIZE, hem.words, "middle")


def _drawn(points: Reals, middle: complex) -> Path:
    """Return points as a path, seen from above with the back up: the wearer faces the reader."""
    return line(*(middle + complex(float(x), float(y)) for x, y in points))
