"""Buttons: how far apart, how long a hole, how wide a stand, and the marks on the cloth. mm."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from drafting.draft.draft import Notion
from drafting.draft.piece import Placement
from drafting.geometry import Cubic, Path, line, turn
from drafting.ground.lengths import told

PAST_CENTRE = 3.0
"""mm by which a buttonhole reaches past the button's middle towards the edge (common practice)."""

VERY_SMALL = 12.0
"""mm: up to this a button counts as very small and gets a wider stand (ours)."""

LEAST_SPACING = 0.5
"""Share of the plain spacing under which the first two buttons would crowd (ours)."""


@dataclass(frozen=True, slots=True)
class Button:
    """A button's `diameter` and `thickness`, mm, and its `shape`.

    `flat` is sewn through, `shank` stands on its own shank, `ball` is round all over.
    """

    diameter: float
    thickness: float
    shape: str = "flat"

    @property
    def hole(self) -> float:
        """Length of its buttonhole: diameter + thickness, half the girth of a ball (common practice)."""
        if self.shape == "ball":
            return math.pi * self.diameter / 2
        return self.diameter + self.thickness

    @property
    def stand(self) -> float:
        """Least width beyond the centre line: the diameter, 1.5 of it if very small (common practice)."""
        return self.diameter * (1.5 if self.diameter <= VERY_SMALL else 1.0)

    @property
    def bought(self) -> str:
        """Return what to buy and how it is sewn on, for a list."""
        sewn = {
            "flat": "flat, sewn on with a thread shank as high as the cloth it closes is thick",
            "shank": "on its own shank",
            "ball": "ball",
        }
        return f"{told(self.diameter, 'small')}, {sewn[self.shape]}"

    @property
    def words(self) -> str:
        """Return what to buy and how long to make the hole, for a list."""
        return f"{self.bought}; buttonhole {told(self.hole, 'small')}"


def button_notion(where: str, count: int, button: Button, note: str = "", *, holes: bool = True) -> Notion:
    """Return the line of the list that tells to buy and sew on `count` buttons, on the piece `where`.

    Without `holes` they are for show.
    """
    words = button.words if holes else f"{button.bought}; for show, without a buttonhole"
    said = f"{words}; {note}" if note else words
    return Notion(
        "button", where, count, cut_length=None, note=said, kind=button.shape, size=button.diameter, piece=where
    )


def button_row(first: float, last: float, count: int, level: float | None = None) -> list[float]:
    """Return where `count` buttons stand, mm down an edge, one of them on `level` (the bust line).

    Without a level they stand evenly from first to last, span / (count - 1) apart. With one
    the spacing is the greatest that is no wider and meets the level; the last then moves up, and a
    further button is added where there is room for it (common practice).

    >>> button_row(2, 50, 5, 24)
    [2.0, 13.0, 24.0, 35.0, 46.0]
    """
    if count < 2:
        return [first if level is None else level]
    step = (last - first) / (count - 1)
    if level is not None and first < level < last:
        if level - first < LEAST_SPACING * step:  # the first button goes down to the level
            first, step = level, (last - level) / (count - 1)
        else:
            step = (level - first) / math.ceil((level - first) / step - 1e-9)
    more = int((last - first) / step + 1e-9) + 1
    return [first + step * i for i in range(more)]


def inner_hook(front: str, under: str) -> Notion:
    """Return the hook that holds the corner of a double-breasted front inside, on the hand that lies `under`."""
    note = f"inside, at the corner of the {under} front, which lies beneath; its loop on the inside of the other"
    return Notion("hook and eye", front, 1, None, note, kind="hook with a thread loop", piece=front, hand=under)


SPACED = (80.0, 100.0)
"""mm at adult scale: how far apart the buttons of a shirt's front stand (common practice: 8 to 10 cm)."""

SLACK = 15.0
"""mm at adult scale by which a row may run on past where its last button was asked for (ours)."""


def spaced_row(first: float, last: float, level: float | None, scale: float) -> list[float]:
    """Return where buttons stand, mm down an edge, `SPACED` apart, one of them on `level` (the bust line).

    First and last move as far as that takes; without a level the row runs evenly from first to last.

    >>> spaced_row(50.0, 510.0, 230.0, 1.0)
    [50.0, 140.0, 230.0, 320.0, 410.0, 500.0]
    """
    low, high = (scale * end for end in SPACED)
    middle, span = (low + high) / 2, last - first
    if level is None or not first < level < last:
        spaces = range(max(1, math.ceil(span / high)), int(span / low) + 1)
        count = min(spaces or [max(1, round(span / middle))], key=lambda n: abs(span / n - middle))
        return [first + span / count * n for n in range(count + 1)]

    def row(step: float, above: int) -> list[float]:
        below = int((last + SLACK * scale - level) / step + 1e-9)
        return [level + step * n for n in range(-above, below + 1)]

    def cost(found: list[float]) -> float:
        step = found[1] - found[0] if len(found) > 1 else high
        return abs(found[0] - first) + abs(found[-1] - last) / 2 + abs(step - middle) / 3

    steps = [low + (high - low) * n / STEPS for n in range(STEPS + 1)]
    rows = (row(step, above) for step in steps for above in range(int(level / step) + 1))
    return min((found for found in rows if found[0] > first / 3), key=cost)


def counted_row(first: float, last: float, count: int, level: float | None, scale: float) -> list[float]:
    """Return where `count` buttons stand evenly, mm down an edge, one of them on `level` (the bust line).

    First and last move as little as that takes. Without a level the row runs from first to last.

    >>> counted_row(50.0, 560.0, 4, 250.0, 1.0)
    [95.0, 250.0, 405.0, 560.0]
    >>> counted_row(50.0, 560.0, 9, 250.0, 1.0)
    [55.0, 120.0, 185.0, 250.0, 315.0, 380.0, 445.0, 510.0, 575.0]
    """
    if level is None or count < 2 or not first < level < last:
        return button_row(first, last, count, level)
    lowest = last + SLACK * scale

    def rows() -> Iterator[list[float]]:
        for above in range(count):
            below = count - 1 - above
            steps = [(level - top) / above for top in (first, first / 3) if above]
            steps += [(end - level) / below for end in (last, lowest) if below]
            yield from ([level + step * n for n in range(-above, below + 1)] for step in steps)

    within = (row for row in rows() if row[0] > first / 3 - 1e-9 and row[-1] < lowest + 1e-9)
    return min(within, key=lambda row: abs(row[0] - first) + abs(row[-1] - last) / 2)


STEPS = 20
"""Distances within `SPACED` that are tried (ours)."""


def button_mark(name: str, at: complex, diameter: float, hand: str = "") -> Placement:
    """Return a button drawn in its true size: a circle of four cubics (0.03 % off, from memory)."""
    r, k = diameter / 2, 0.5522847498 * diameter / 2
    quarter = Cubic(complex(r, 0), complex(r, k), complex(k, r), complex(0, r))
    quarters = [Path((quarter,)).turned(0j, turn(90.0 * i)) for i in range(4)]
    ring = [s for path in quarters for s in path.moved(at)]
    return Placement(name, Path(tuple(ring)), "button", hand)


def hole_mark(name: str, button: complex, towards_edge: complex, length: float, hand: str = "") -> Placement:
    """Return a buttonhole: from just past the button's middle, back away from the edge.

    `towards_edge` is the unit direction of the pull: the button draws to the hole's end there.
    """
    start = button + PAST_CENTRE * towards_edge
    return Placement(name, line(start, start - length * towards_edge), "buttonhole", hand)
