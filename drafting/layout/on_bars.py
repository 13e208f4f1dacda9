"""Bars that run on: on which line of each piece a repeat along the cloth is matched."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from drafting.draft.by_role import edges_as
from drafting.draft.piece import Edge, Level
from drafting.draft.roles import EdgeRole, Half, PieceRole
from drafting.geometry import Path
from drafting.layout.cloth import LEVELS
from drafting.layout.outlines import Outline


def level_matched(outline: Outline, names: tuple[str, ...]) -> Level | None:
    """Return the level of a piece that a repeat along the cloth is matched on; None where it has none of them."""
    levels = {level.name: level for level in outline.part.cut.piece.levels if level.paths}
    return next((levels[name] for name in names if name in levels), None)


def levels_to_match(outlines: Iterable[Outline], wanted: str) -> Mapping[tuple[str, str], tuple[str, ...]]:
    """Return by garment the levels that a repeat may be matched on: the one asked for, else those that lie square.

    A line that slants in one piece, as the waist of a trouser's back, has no one place on the cloth: pieces that
    were laid by its middle would not meet at their seams. Where all slant, all are left.
    """
    if wanted != "auto":
        return defaultdict(lambda: (wanted,))
    slanting: dict[tuple[str, str], set[str]] = defaultdict(set)
    for outline in outlines:
        for level in outline.part.cut.piece.levels:
            if any(_slants(outline, path) for path in level.paths):
                slanting[outline.part.worn_as].add(level.name)
    return defaultdict(lambda: LEVELS, {garment: _others(names) for garment, names in slanting.items()})


@dataclass(frozen=True)
class Matched:
    """What a repeat along the cloth is matched on: `levels` by name; `notched`, that sleeves lie by their front
    notches; `without`, the outlines that have no such line."""

    levels: tuple[str, ...]
    notched: bool
    without: tuple[Outline, ...]


def matched_on(outlines: Iterable[Outline], wanted: str) -> Matched:
    """Return what a repeat is matched on."""
    laid = tuple(outlines)
    levels, sleeves = levels_to_match(laid, wanted), sleeves_by_notch(laid, wanted)
    found = {outline: level_matched(outline, levels[outline.part.worn_as]) for outline in laid}
    names = (level.name for outline, level in found.items() if level is not None and outline not in sleeves)
    without = tuple(outline for outline, level in found.items() if level is None)
    return Matched(tuple(dict.fromkeys(names)), bool(sleeves), without)


def sleeves_by_notch(outlines: Iterable[Outline], wanted: str) -> dict[Outline, float]:
    """Return how far along the cloth, mm, the level of each set-in sleeve has to be counted from where it lies, so
    that the front notch of its cap comes onto the bar on which the front's armhole has its own.

    Elsewhere round an armhole no bar can meet (common practice). Empty where a level was asked for by name.
    """
    laid = tuple(outlines)
    levels = levels_to_match(laid, wanted)
    found = {}
    for sleeve in laid if wanted == "auto" else ():
        front = next((o for o in laid if _beside(o, sleeve)), None)
        if sleeve.part.cut.piece.role is not PieceRole.SLEEVE or front is None:
            continue
        names = levels[sleeve.part.worn_as]
        by = [_over_level(o, names, e) for o, e in ((sleeve, _half_cap(sleeve)), (front, _armhole(front)))]
        if by[0] is not None and by[1] is not None:
            found[sleeve] = by[0] - by[1]
    return found


def _beside(front: Outline, sleeve: Outline) -> bool:
    """Return whether an outline is the front that a sleeve is sewn to, its warp the same way."""
    own, other = front.part, sleeve.part
    return (
        own.worn_as == other.worn_as
        and own.cut.piece.role is PieceRole.FRONT
        and own.cut.piece.hand in ("", other.cut.piece.hand)
        and own.cut.piece.grain == other.cut.piece.grain
        and _armhole(front) is not None
    )


def _half_cap(sleeve: Outline) -> Edge | None:
    caps = edges_as(sleeve.part.cut.piece, EdgeRole.CAP)
    return next((edge for edge in caps if edge.half is Half.FRONT and edge.notches), None)


def _armhole(front: Outline) -> Edge | None:
    return next((edge for edge in edges_as(front.part.cut.piece, EdgeRole.ARMHOLE) if edge.notches), None)


def _over_level(outline: Outline, names: tuple[str, ...], edge: Edge | None) -> float | None:
    """Return how far along the cloth an edge's lowest notch lies from the level that is matched, mm."""
    level = level_matched(outline, names)
    if level is None or edge is None:
        return None
    low = min((edge.path.at(notch.at) for notch in edge.notches), key=lambda p: p.imag)
    path = level.paths[0]
    return (outline.base(low) - outline.base(path.at(path.length / 2))).real


def _slants(outline: Outline, path: Path) -> bool:
    along = [outline.base(path.at(path.length * share / 4)).real for share in range(5)]
    return max(along) - min(along) > SQUARE


def _others(slanting: set[str]) -> tuple[str, ...]:
    square = tuple(name for name in LEVELS if name not in slanting)
    return (*square, *(name for name in LEVELS if name in slanting))


SQUARE = 1.0
"""mm along the cloth within which a level lies square to the selvedge: no eye sees a bar off by it (ours)."""
