"""What is printed on a piece: whose it is, how it is cut, how wide its allowances are."""

from __future__ import annotations

import textwrap
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from drafting.draft.pattern import CutPiece
from drafting.draft.piece import EdgeKind, Piece
from drafting.ground.frozen import freeze
from drafting.ground.lengths import in_unit, told
from drafting.ground.names import clean_text
from drafting.ground.remembered import remembered
from drafting.ground.units import ShownUnit, show_length

CAUTION = ("A starting draft.", "Make a mock-up first.")
"""Common practice of the trade: no good cloth is cut before a toile has been tried on."""

FIELD_LIMIT = 60
"""Characters kept of one name on a label (ours)."""

NAMED_ESTIMATES = 8
"""Estimated measures named on a piece; further ones are counted (ours: two printed lines)."""

NAMED_EDGES = 4
"""Edges named behind one allowance width; further ones are counted (ours)."""

_PLAIN_GRAIN = {90: "upright", 0: "level", 45: "true bias", 135: "true bias"}


@dataclass(frozen=True, slots=True)
class Label:
    """What a label says beyond the piece itself.

    `fabric` is the cloth's name for the maker, `measured_on` the date as text, `estimated` the body
    dimensions (snake case) that no tape gave, `off` by how many mm each may be off for 19 of 20
    people (None where nobody knows; as many as `estimated`, or none at all). `one_way` says that
    the cloth has one right way up, `unit` what its maker reads. `leaning` holds by
    piece those of `estimated` that its lines lean on; a piece that is not in it leans on all. `foot` is what
    the label ends in; with `hands` its head says in capitals for which hand each cut piece is.
    """

    costume: str
    garment: str
    fabric: str = ""
    wearer: str = ""
    measured_on: str = ""
    estimated: tuple[str, ...] = ()
    off: tuple[float | None, ...] = ()
    one_way: bool = False
    unit: ShownUnit = "mm"
    leaning: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    foot: tuple[str, ...] = CAUTION
    hands: bool = False

    def __post_init__(self) -> None:
        freeze(self, "leaning")

    def guessed(self, piece: str) -> dict[str, float | None]:
        """Return the estimated measures that concern a piece, and by how many mm each may be off."""
        off = {name: self.off[i] if i < len(self.off) else None for i, name in enumerate(self.estimated)}
        concern = self.leaning.get(piece, self.estimated)
        return {name: reach for name, reach in off.items() if name in concern}


@dataclass(frozen=True, slots=True)
class LabelLines:
    """The lines of a label: `head` names the piece, `body` says the rest, `foot` warns."""

    head: tuple[str, ...]
    body: tuple[str, ...]
    foot: tuple[str, ...]


def label_lines(cut_piece: CutPiece, label: Label, width: int = 40) -> LabelLines:
    """Return what is printed on a piece, lines of at most `width` characters."""
    piece, head = cut_piece.piece, f"{cut_piece.number} {piece_title(cut_piece.piece)}"
    return LabelLines(
        head=(*_wrapped(head, int(width * 0.7)), *((hand_words(piece),) if label.hands else ())),
        body=tuple(row for fact in _facts(cut_piece, label) for row in _wrapped(fact, width)),
        foot=label.foot,
    )


@remembered(256)
def _facts(cut_piece: CutPiece, label: Label) -> tuple[str, ...]:
    """Return what is said of a piece below its name, a text a fact."""
    piece = cut_piece.piece
    guessed = label.guessed(piece.name)
    facts = (
        _joined(" - ", label.costume, spoken(label.garment)),
        _joined(", ", cut_count(piece), piece.cut_from or label.fabric),
        "" if label.hands else hand_line(piece),
        grain_line(piece, label.one_way),
        allowance_line(cut_piece, label.unit),
        label.wearer and f"for {clean_text(label.wearer, FIELD_LIMIT)}",
        label.measured_on and f"measured {clean_text(label.measured_on, FIELD_LIMIT)}",
        estimated_line(tuple(guessed), tuple(guessed.values()), label.unit),
    )
    return tuple(fact for fact in facts if fact)


def spoken(name: str) -> str:
    """Return a snake-case or hyphened name as words.

    >>> spoken("two-piece_sleeve")
    'two piece sleeve'
    """
    return clean_text(name.replace("_", " ").replace("-", " "), FIELD_LIMIT)


def piece_title(piece: Piece) -> str:
    """Return the piece's title, or its name as words."""
    return clean_text(piece.title, FIELD_LIMIT) or spoken(piece.name)


def cut_count(piece: Piece) -> str:
    """Return how many pieces of cloth are cut: on the fold, as pairs, or singly."""
    if piece.fold_edge is not None:
        return f"cut {piece.count} on fold"
    if piece.pair:
        return "cut 1 pair" if piece.copies == 1 else f"cut {piece.copies} pairs"
    return f"cut {piece.copies}"


def cutting_line(piece: Piece, fabric: str = "") -> str:
    """Return in one line how a piece is cut: how many, from which cloth, for which hand."""
    return _joined(", ", cut_count(piece), piece.cut_from or fabric, hand_line(piece))


def hand_line(piece: Piece) -> str:
    """Return which side of the wearer the piece is for ("" where it is for both or neither)."""
    if piece.hand:
        return f"{spoken(piece.hand)} side of the wearer only"
    return "one left, one right (turned over)" if piece.pair else ""


def hand_words(piece: Piece) -> str:
    """Return what is written on each cut piece, so that left and right are never mistaken.

    A piece is drawn as the wearer's left hand, seen from outside.
    """
    if piece.hand:
        return piece.hand.upper()
    if piece.fold_edge is not None:
        return "L this half, R the other"
    return "L; turned over: R" if piece.pair else "whole"


def grain_line(piece: Piece, one_way: bool) -> str:
    """Return how the warp lies on the piece as drawn."""
    degrees = round(piece.grain) % 180
    lie = _PLAIN_GRAIN.get(degrees, f"{degrees} degrees from level")
    return f"grain: {lie}" + (", arrow to the top of the cloth" if one_way else "")


def allowance_line(cut_piece: CutPiece, unit: ShownUnit = "mm") -> str:
    """Return the widths of the allowances: the one most edges have first, the others by edge."""
    edges = [e for e in cut_piece.piece.edges if e.kind not in (EdgeKind.FOLD, EdgeKind.DART)]
    by_width: dict[float, list[str]] = defaultdict(list)
    for edge in edges:
        by_width[round(cut_piece.allowances.get(edge.name, 0.0), 1)].append(spoken(edge.name))
    most_first = sorted(by_width.items(), key=lambda item: (-len(item[1]), item[0]))
    parts = [show_length(width, unit) + _edges_named(names) for width, names in most_first]
    if len(parts) > 1:
        parts[0] = show_length(most_first[0][0], unit)
    fold = ["none on the fold"] if cut_piece.piece.fold_edge is not None else []
    if len(by_width) == 1:
        parts = [f"{show_length(most_first[0][0], unit)} all round"]
    return "allowance: " + "; ".join(parts + fold)


def estimated_line(estimated: tuple[str, ...], off: tuple[float | None, ...] = (), unit: ShownUnit = "mm") -> str:
    """Return the measures that were estimated and how far off they may be ("" where none was).

    >>> estimated_line(("neck_base_girth", "across_back_width"), (50.0, None))
    'estimated: neck base +/- 50 mm, across back'
    """
    if not estimated:
        return ""
    names = [spoken(name.removesuffix("_girth").removesuffix("_width")) for name in estimated]
    known = [*off, *[None] * len(names)]
    shown = [
        name if reach is None else f"{name} +/- {in_unit(told(reach), unit)}"
        for name, reach in zip(names, known, strict=False)
    ]
    return "estimated: " + _first(shown, NAMED_ESTIMATES)


def _edges_named(names: list[str]) -> str:
    return f" at {_first(names, NAMED_EDGES)}"


def _first(names: list[str], count: int) -> str:
    rest = len(names) - count
    if rest <= 1:  # to name the last one is as short as to count it
        return ", ".join(names)
    return f"{', '.join(names[:count])} and {rest} more"


def _joined(between: str, *parts: str) -> str:
    return between.join(part for part in (clean_text(p, FIELD_LIMIT) for p in parts) if part)


@lru_cache(maxsize=4096)
def _wrapped(text: str, width: int) -> tuple[str, ...]:
    return tuple(textwrap.wrap(text, width, break_on_hyphens=False))
