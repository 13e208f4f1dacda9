"""A small picture of what one choice changes: the same piece drafted low and high. No widgets."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from drafting.checks.words import plain
from drafting.costume.make import Made, finished
from drafting.draft.landmark import landmarks
from drafting.draft.pattern import CutPiece
from drafting.draft.roles import PieceRole
from drafting.export.svg_writer import Pen, Svg, element, number, path_data, path_element
from drafting.geometry.path import Path
from drafting.ground.choices import Choice
from drafting.ground.errors import DraftError
from drafting.ground.units import LengthUnit
from drafting.notebook.bench import state as st
from drafting.notebook.bench.controls import label, value_shown
from drafting.sheet import box_around, moved_box

REACH = 0.3
"""Share of a choice's range, or of its value where it states none, that a picture moves it by (ours)."""

TRIES = 4
"""Times the reach is halved until both ends can be drafted (ours)."""

LEAST = 0.5
"""mm: what moved by less is not seen (ours)."""

STRIPS = frozenset({PieceRole.CASING, PieceRole.BONE_CASING, PieceRole.BINDING})
"""Long strips, which only follow the edge they are sewn to: shown where nothing else moves."""

PEN = Pen(places=1)
"""A tenth of a mm is more than enough in a picture of some sixty pixels."""


def sample(made: Made, choice: Choice, unit: LengthUnit = "cm") -> Svg | None:
    """Return the outlines of the piece that a choice moves most: dashed at a low value, full at a high one.

    `made` holds one garment as it stands; the other choices stay. None where no outline moves or where
    neither end can be drafted.
    """
    garment = made.garments[0].name
    value = st.values_of(made, garment)[choice.name]
    for low, high in _ends(choice, value):
        try:
            was, now = (finished(st.with_choice(made.costume, garment, choice.name, v)) for v in (low, high))
        except DraftError:
            continue
        words = f"{label(choice)}: dashed {value_shown(choice, low, unit)}, full {value_shown(choice, high, unit)}"
        return _drawn(was.garments[0].pattern.pieces, now.garments[0].pattern.pieces, words)
    return None


def _ends(choice: Choice, value: Any) -> Iterator[tuple[Any, Any]]:
    """Yield two values to be drafted, the farthest apart first."""
    if choice.unit == "word":
        yield from ((value, word) for word in choice.words if word != value)
    elif choice.unit == "yes/no":
        yield False, True
    else:
        least, most = choice.low, choice.high
        whole = abs(value) if least is None or most is None else most - least
        reaches = [max(REACH * whole / 2**halved, choice.step) for halved in range(TRIES)]
        for down, up in ((1, 1), (0, 1), (1, 0)):  # where one side cannot be drafted, from the value to the other
            for reach in reaches:
                low, high = value - down * reach, value + up * reach
                ends = (low if least is None else max(low, least)), (high if most is None else min(high, most))
                yield tuple(map(round, ends)) if choice.unit == "count" else ends


def _drawn(was: tuple[CutPiece, ...], now: tuple[CutPiece, ...], words: str) -> Svg | None:
    """Return both outlines of the piece that moves most, or a piece that only one of them has."""
    earlier, later = ({cut.piece.name: cut for cut in cuts} for cuts in (was, now))
    both = ((name, cut, _moved(earlier[name], cut)) for name, cut in later.items() if name in earlier)
    moved = [(cut.piece.role not in STRIPS, far, name) for name, cut, far in both if far >= LEAST]
    alone = [cut for name, cut in (earlier | later).items() if (name in earlier) != (name in later)]
    if moved:
        name = max(moved)[-1]
        return _picture(earlier[name], later[name], f"{words}, on the {plain(name)}")
    if alone:
        cut = alone[0]
        gone = cut.piece.name in earlier
        return _picture(cut if gone else None, None if gone else cut, f"{words}, {plain(cut.piece.name)}")
    return None


def _moved(was: CutPiece, now: CutPiece) -> float:
    """Return how far a piece's box moves about its landmark, mm, and its marks with it; a lining last."""
    if was is now:
        return 0.0
    here, there = landmarks(now.piece, was.piece)
    pairs = zip(now.cut.bounds, moved_box(was.cut.bounds, here - there), strict=True)
    far = [abs(a - b) for a, b in pairs] + [abs(now.cut.length - was.cut.length)]
    marks = [[mark.path.start for mark in cut.piece.placements] for cut in (was, now)]
    far += [abs(new - old - here + there) for old, new in zip(*marks, strict=False)]
    more = LEAST if len(marks[0]) != len(marks[1]) else 0.0
    return max(*far, more) * (0.5 if now.piece.material else 1.0)


def _picture(was: CutPiece | None, now: CutPiece | None, words: str) -> Svg:
    shift = 0j
    if was and now:
        here, there = landmarks(now.piece, was.piece)
        shift = here - there
    lines: list[tuple[str, Path]] = []
    for name, cut, by in (("was", was, shift), ("now", now, 0j)):
        if cut:
            lines += [(name, cut.cut.moved(by)), *((name, mark.path.moved(by)) for mark in cut.piece.placements)]
    x0, y0, x1, y1 = box_around(line.bounds for _, line in lines)
    edge = 0.03 * max(x1 - x0, y1 - y0)
    box = (x0 - edge, -y1 - edge, x1 - x0 + 2 * edge, y1 - y0 + 2 * edge)
    drawn = (path_element(name, path_data(line, PEN)) for name, line in lines)
    return element("svg", *drawn, role="img", aria_label=words, viewBox=" ".join(number(n, 1) for n in box))
