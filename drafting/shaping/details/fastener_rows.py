"""Fasteners in a row down a centre: buttons, hooks and eyes, eyelets with their lacing. mm.

Lines are those of a front drawn as the wearer's left: its centre on x = 0, the cloth at x > 0.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass, replace

from drafting.draft.draft import Notion
from drafting.draft.piece import Piece, Placement
from drafting.draft.roles import LevelKind, PieceRole
from drafting.geometry import line
from drafting.ground.findings import Finding
from drafting.ground.lengths import apart_said, counted, told
from drafting.ground.scale import allowance_scale
from drafting.shaping.details.button_stand import FrontLines
from drafting.shaping.details.buttons import Button, button_mark, button_notion, button_row, hole_mark

HOOK_LAP, HOOK, HOOK_SPACE = 15.0, 8.0, 25.0
"""mm at adult scale: how far edges with hooks reach past the centre, a hook, and the space between two
(common practice: 12 to 20, size 2 or 3, 20 to 30)."""

EYELET, EYELET_IN, EYELET_SPACE = 5.0, 12.0, 25.0
"""mm at adult scale: an eyelet, its distance from the edge, and between two (common practice: 20 to 30)."""

CROWDED = 1.25
"""Two fasteners stand at least so many of their widths apart (ours: nearer they touch)."""

BUTTON_SPACE = 70.0
"""mm at adult scale between two buttons (common practice: 60 to 90 on a bodice)."""

AT_ENDS = 10.0
"""mm at adult scale: the first and last fastener stand so far from neck and hem (common practice)."""

OPENED = 150.0
"""mm at adult scale that laced edges come apart to dress and undress, the cord still in its eyelets (from memory:
4.5 to 5.5 m of lace for 12 to 14 pairs of eyelets)."""

CORD_END = 350.0
"""mm: what each end of a lacing needs to be held and tied (ours)."""


@dataclass(frozen=True)
class Fasteners:
    """What is asked for: greatest `space` (0: the usual), the hand on top and the one beneath, the
    `button` and its `stand` (0: the button's own), how far down one button stands (`level`, 0: on the bust line),
    and the body's scale."""

    space: float
    hands: tuple[str, str]
    button: Button
    stand: float
    level: float
    scale: float

    def apart(self, usual: float, width: float) -> float:
        """Return the space between two fasteners `width` mm wide, so that they do not touch."""
        return max(self.space, CROWDED * width) if self.space else usual * self.scale


@dataclass(frozen=True)
class FastenerRow:
    """What stands in a row down a closing: the `stand` beyond the centre, places, marks, what to buy; `level` mm
    down one was asked to stand."""

    stand: float
    places: tuple[float, ...]
    marks: tuple[Placement, ...]
    notions: tuple[Notion, ...]
    said: str
    level: float = 0.0


def buttoned(front: Piece, lines: FrontLines, asked: Fasteners) -> FastenerRow:
    """Return buttons on the centre, and level holes, one of them on the bust line of a front."""
    button, (over, under), scale = asked.button, asked.hands, asked.scale
    stand = asked.stand or button.stand
    first, last = max(AT_ENDS * scale, button.diameter), _length(lines) - 3 * AT_ENDS * scale
    count = len(evenly(first, last, asked.apart(BUTTON_SPACE, button.diameter)))
    level = asked.level or bust_below(front, lines)
    places = button_row(first, last, count, level)
    marks = []
    for number, down in enumerate(places, 1):
        at = lines.top - 1j * down
        marks.append(button_mark(f"button_{under}_{number}", at, button.diameter, under))
        marks.append(hole_mark(f"buttonhole_{over}_{number}", at, -1 + 0j, button.hole, over))
    note = f"buttonholes level, on the {over}"
    said = f"{counted(len(places), 'buttonhole', 'buttonholes')} of {told(button.hole, 'small')} "
    said += f"on the wearer's {over}, the {'button' if len(places) == 1 else 'buttons'} on the {under}"
    return FastenerRow(
        stand,
        tuple(places),
        tuple(marks),
        (button_notion(front.name, len(places), button, note),),
        said,
        level or 0.0,
    )


def bust_below(front: Piece, lines: FrontLines) -> float | None:
    """Return how far below the neck the bust line of a front lies; None at a back."""
    if front.role is not PieceRole.FRONT:
        return None
    bust = next((v.paths[0].start.imag for v in front.levels if v.kind is LevelKind.BUST), None)
    return None if bust is None else lines.top.imag - bust


def hooks(front: Piece, lines: FrontLines, asked: Fasteners) -> FastenerRow:
    """Return hooks under the edge on top, and eyes on the other hand where that edge comes to lie."""
    scale = asked.scale
    lap, end, size = HOOK_LAP * scale, AT_ENDS * scale, HOOK * allowance_scale(scale)
    places = evenly(end, _length(lines) - end, asked.apart(HOOK_SPACE, size))
    marks = [
        mark
        for number, down in enumerate(places, 1)
        for mark in hook_marks(lines, down, number, asked.hands, lap - 3 * scale, size)
    ]
    over, under = asked.hands
    note = f"hooks under the {over} edge, {told(3.0)} in, through the facing alone; eyes on the {under} below them"
    notion = Notion(
        "hook and eye", front.name, len(places), note=note, kind="hook and eye", size=size, piece=front.name
    )
    said = f"{counted(len(places), 'hook', 'hooks')} under the edge of the wearer's {over}, "
    said += f"the {'eye' if len(places) == 1 else 'eyes'} on the {under}"
    return FastenerRow(lap, tuple(places), tuple(marks), (notion,), said)


def laced(front: Piece, lines: FrontLines, asked: Fasteners) -> FastenerRow:
    """Return eyelets along two edges that meet, and the cord that crosses between them."""
    scale = asked.scale
    end, inside, size = AT_ENDS * scale, EYELET_IN * scale, EYELET * scale
    places = evenly(end, _length(lines) - end, asked.apart(EYELET_SPACE, size))
    marks = tuple(eyelet_mark(lines, down, number, inside, size) for number, down in enumerate(places, 1))
    count = 2 * len(places)
    cord = cord_length(places, inside, OPENED * scale)
    eyelets = Notion(
        what="eyelet",
        where=front.name,
        count=count,
        note="through cloth, interfacing and facing",
        kind="eyelet",
        size=size,
        piece=front.name,
    )
    notion = Notion("cord", front.name, 1, cord, "lacing, both ends tipped", "lacing cord", piece=front.name)
    apart = f"which lets the edges {told(OPENED * scale)} apart to dress"
    said = f"{counted(len(places), 'eyelet', 'eyelets')} on each side, laced with {told(cord)} of cord, {apart}"
    return FastenerRow(0.0, tuple(places), marks, (eyelets, notion), said)


def row_said(side: str, closing: str, row: FastenerRow) -> Finding:
    """Return the sentence that tells how a centre closes."""
    apart = apart_said(len(row.places), row.places[1] - row.places[0] if len(row.places) > 1 else 0.0)
    laps = f"The edges lie {told(2 * row.stand)} over each other" if row.stand else "The edges meet on the centre"
    how = f"closes {closing}" if row.stand else "is laced"
    return Finding(
        "closing",
        "note",
        side,
        float(len(row.places)),
        None,
        f"The {side} {how}: {row.said}{apart}. {laps}; their facings are folded back.",
    )


def _length(lines: FrontLines) -> float:
    return abs(lines.top - lines.low)


def evenly(first: float, last: float, widest: float) -> list[float]:
    """Return places from `first` to `last`, evenly and no wider apart than `widest`, mm.

    >>> evenly(10, 70, 25)
    [10.0, 30.0, 50.0, 70.0]
    """
    steps = max(1, math.ceil((last - first) / widest - 1e-9))
    return [first + (last - first) * i / steps for i in range(steps + 1)]


def hook_marks(
    lines: FrontLines, down: float, number: int, hands: tuple[str, str], lap: float, size: float
) -> tuple[Placement, Placement]:
    """Return a hook on the hand on top and its eye beneath: short strokes, `lap` mm beyond the centre."""
    over, under = hands
    at = lines.top - 1j * down
    hook = Placement(f"hook_{over}_{number}", line(at - lap, at - lap + size), "hook", over)
    return hook, Placement(f"eye_{under}_{number}", line(at + lap, at + lap - size), "hook", under)


def eyelet_mark(lines: FrontLines, down: float, number: int, inside: float, size: float) -> Placement:
    """Return an eyelet in its true size, `inside` mm from the centre, on both hands."""
    ring = button_mark(f"eyelet_{number}", lines.top - 1j * down + inside, size)
    return replace(ring, what="eyelet")


def cord_length(places: list[float], inside: float, opened: float) -> float:
    """Return what a cord takes that crosses from eyelet to eyelet while the edges stand `opened` mm apart, mm.

    Two ends cross each space, and each is left `CORD_END` long to be held and tied. `inside` is how far an eyelet
    lies from its edge.
    """
    wide = 2 * inside + opened
    crossed = sum(math.hypot(wide, b - a) for a, b in itertools.pairwise(places))
    return 2 * crossed + wide + 2 * CORD_END
