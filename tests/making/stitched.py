"""A stranger counts the thread of a plan: from its words, its stitches and the drawn SVG, row by row.

Lengths come off the SVG (svgelements), what is sewn from the words of each step, and the thread of a stitch from
its own path or a thread maker's guide, written down here anew. Nothing here asks the kit how long, how often, how
much. `report.json` says which seams and edges a step sews, by which stitch (ISO 4915), how long and how wide.
"""

from __future__ import annotations

import json
import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from drafting.costume.make import Made
from drafting.export.svg import svg_text
from drafting.making import planned
from drafting.making.words import plan_sentence
from drafting.output.report import report
from drafting.output.sheets import piece_label
from drafting.sheet.piece import piece_sheet
from tests.export.reading import length, point, shapes

Record = dict[str, Any]
Ref = tuple[str, str]

GUIDE = {
    "101": 5.0,
    "103": 4.5,
    "200": 3.0,
    "202": 4.0,
    "209": 1.0,
    "301": 2.5,
    "304": 5.5,
    "401": 5.5,
    "406": 18.0,
    "504": 14.0,
    "514": 18.0,
    "three-step zigzag": 7.0,
    "buttonhole stitch": 20.0,
}
"""Thread for a length of seam: a thread maker's guide (101, 103, 301, 304), the others from memory."""

OVERCAST, LONG, BUTTON = 3.0, 5.0, 500.0
"""mm: a zigzag over one edge, a gathering stitch, the thread of one button (common practice)."""


def ratio(stitch: str, long: float, wide: float, through: float) -> float:
    """Return thread for a length of seam: along both faces and through, or the guide where it asks more."""
    slant = math.sqrt(long**2 + wide**2)
    path = {
        "301": 2 * (1 + through / long),
        "304": 2 * (slant + through) / long,
        "three-step zigzag": 2 * (slant + through) / long,
        "401": 4 + 2 * through / long,
        "209": 1 + through / long,
    }
    return max(GUIDE[stitch], path.get(stitch, 0.0))


@dataclass(frozen=True)
class Sewn:
    """A plan on record, drawn lengths and ends by (garment, piece) and id, and the shopping list in words."""

    record: Record
    lines: dict[Ref, dict[str, float]]
    list: tuple[tuple[str, str, float], ...]
    thick: dict[str, float]
    titles: dict[str, str]
    overedge: bool
    ends: dict[Ref, dict[str, tuple[complex, complex]]]

    def pieces(self, garment: str) -> dict[str, Record]:
        return {p["piece"]: p for p in self.record["pieces"] if p["garment"] == garment}

    def edge(self, garment: str, ref: Ref) -> float:
        """Return the mm of an edge on the garment, every hand and both halves, off the SVG."""
        piece = self.pieces(garment)[ref[0]]
        return self.lines[garment, ref[0]][ref[1]] * piece["count"] * (2 if piece["fold_edge"] else 1)

    def seam(self, garment: str, name: str) -> float:
        """Return the mm of a seam on the garment: its shorter side, on every hand that has it."""
        (seam,) = (s for s in self.record["seams"] if s["garment"] == garment and s["seam"] == name)
        own = self.pieces(garment)
        drawn = [math.fsum(self.lines[garment, p][e] for p, e in seam[side]) for side in ("a", "b")]
        named = [p for p, _ in (*seam["a"], *seam["b"])]
        if any(own[p]["hand"] for p in named):
            return min(drawn)
        if own[named[0]]["fold_edge"]:
            return 2 * min(drawn)
        if seam["a"] == seam["b"]:
            return min(drawn)
        return (2 if any(own[p]["mirrored_pair"] for p in named) else 1) * min(drawn)

    def one_hand(self, garment: str, name: str) -> float:
        """Return the mm of a seam as it is drawn: its shorter side, once."""
        (seam,) = (s for s in self.record["seams"] if s["garment"] == garment and s["seam"] == name)
        return min(math.fsum(self.lines[garment, p][e] for p, e in seam[side]) for side in ("a", "b"))

    def rings(self, garment: str, name: str) -> int:
        """Return how often what is told of a seam is sewn: once of one over the middle, else on every hand."""
        (seam,) = (s for s in self.record["seams"] if s["garment"] == garment and s["seam"] == name)
        if any(self._at_middle(garment, p, e) for p, e in (*seam["a"], *seam["b"])):
            return 1
        return round(self.seam(garment, name) / self.one_hand(garment, name))

    def _at_middle(self, garment: str, piece: str, edge: str) -> bool:
        """Return whether an edge, as it is drawn, ends on the line along which its piece is folded."""
        fold = self.pieces(garment)[piece]["fold_edge"]
        if not fold:
            return False
        one, middle = (self.ends[garment, piece][key] for key in (edge, fold))
        return min(abs(a - b) for a in one for b in middle) < 0.1

    def darts(self, garment: str, pieces: Iterator[str]) -> float:
        """Return the mm of the darts that lie inside these pieces, on every hand and half."""
        own = self.pieces(garment)
        each = ((own[p]["count"] * (2 if own[p]["fold_edge"] else 1), own[p]["darts"]) for p in pieces)
        return math.fsum(hands * dart["leg_a"] for hands, darts in each for dart in darts)

    def marks(self, garment: str, word: str) -> list[float]:
        """Return each mark of the own cloth whose name holds the word, once a hand."""
        found = []
        for name, piece in self.pieces(garment).items():
            if piece["fabric"] not in ("interfacing", "lining"):
                for key, long in self.lines[garment, name].items():
                    if key.startswith("placement.") and word in key:
                        one = re.search(r"left|right", key) or not piece["mirrored_pair"]
                        found += [long] * (1 if one else 2)
        return found

    def bought(self, what: str, word: str) -> float:
        return math.fsum(amount for kind, words, amount in self.list if kind == what and word in words)


def sewn(made: Made) -> Sewn:
    """Return the plan of a costume with its lays as a stranger holds it."""
    plan = planned(made)
    lines: dict[Ref, dict[str, float]] = {}
    ends: dict[Ref, dict[str, tuple[complex, complex]]] = {}
    for garment in made.garments:
        for cut in garment.pattern.pieces:
            text = svg_text(piece_sheet(cut, piece_label(made, garment)))
            drawn = {**shapes(text, "stitch-line"), **shapes(text, "placement")}
            own = {key.removeprefix(f"{cut.piece.name}."): shape for key, shape in drawn.items()}
            lines[garment.name, cut.piece.name] = {key: length(shape) for key, shape in own.items()}
            ends[garment.name, cut.piece.name] = {key: (point(s, 0), point(s, 1)) for key, s in own.items()}
    record = json.loads(json.dumps(report(made, plan), default=str))
    listed = tuple((row.what, plan_sentence(row.detail), row.amount) for row in plan.shopping)
    thick = {role: fabric.thickness or 0.5 for role, fabric in made.costume.fabrics.items()}
    titles = {role: fabric.title for role, fabric in made.costume.fabrics.items()}
    overedge = any(stitch in made.costume.workroom.stitches for stitch in ("504", "514"))
    return Sewn(record=record, lines=lines, list=listed, thick=thick, titles=titles, overedge=overedge, ends=ends)
