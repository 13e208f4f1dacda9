"""What is bought, reckoned by a stranger: from the drawn SVG, the cloths' own files and the words of the steps.

The SVG is read by svgelements, the cloths by tomllib; every ratio is written down anew (those of a thread maker's
guide, common practice, or plain geometry). Nothing here asks the kit how long, how often or how much.
"""

from __future__ import annotations

import json
import math
import re
import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from drafting.export.svg import svg_text
from drafting.making import planned
from drafting.making.words import plan_sentence
from drafting.output.report import report
from drafting.output.sheets import piece_label
from drafting.sheet.piece import piece_sheet
from tests.export.reading import length, shapes
from tests.making.figures import ROOT, laid

Record = dict[str, Any]


@dataclass(frozen=True)
class Told:
    """What a stranger holds: the record, lengths by (garment, piece) and id, the list as (what, words, amount)."""

    record: Record
    lines: dict[tuple[str, str], dict[str, float]]
    list: tuple[tuple[str, str, float], ...]

    def bought(self, what: str, word: str = "") -> float:
        return math.fsum(amount for kind, words, amount in self.list if kind == what and word in words)


@cache
def told(name: str) -> Told:
    made = laid(name)
    plan = planned(made)
    lines: dict[tuple[str, str], dict[str, float]] = {}
    for garment in made.garments:
        for cut in garment.pattern.pieces:
            text = svg_text(piece_sheet(cut, piece_label(made, garment)))
            drawn = {**shapes(text, "stitch-line"), **shapes(text, "placement")}
            lines[garment.name, cut.piece.name] = {
                key.removeprefix(f"{cut.piece.name}."): length(shape) for key, shape in drawn.items()
            }
    record = json.loads(json.dumps(report(made, plan), default=str))
    return Told(record, lines, tuple((r.what, plan_sentence(r.detail), r.amount) for r in plan.shopping))


def marks(name: str, garment: str, word: str) -> list[tuple[str, float]]:
    """Return each mark of a kind in a garment's own cloth with its length, once for every hand that has it."""
    found = []
    for piece in told(name).record["pieces"]:
        if piece["garment"] != garment or "-interfacing" in piece["piece"] or "-lining" in piece["piece"]:
            continue
        for key, long in told(name).lines[garment, piece["piece"]].items():
            if key.startswith("placement.") and word in key:
                one_hand = re.search(r"left|right", key) or not piece["mirrored_pair"]
                found += [(piece["piece"], long)] * (1 if one_hand else 2)
    return found


def steps(name: str, garment: str) -> list[Record]:
    return [step for step in told(name).record["steps"] if step["garment"] == garment]


def test_bones_are_as_long_as_the_lines_drawn_for_them() -> None:
    """Each ends 5 to 7.5 mm short of its channel at both ends; cutting loses 10 mm a bone (common practice)."""
    drawn = math.fsum(long for _, long in marks("lamplighter", "coat", "bone"))
    bones = 2  # one through the tails of each hand
    assert drawn > 500
    assert drawn - 15 * bones <= told("lamplighter").bought("boning") <= drawn + 10 * bones + 100


@pytest.mark.parametrize("garment", ["coat", "shirt", "breeches"])
def test_the_words_work_the_buttonholes_that_the_svg_shows(garment: str) -> None:
    drawn = marks("lamplighter", garment, "buttonhole")
    words = " ".join(step["do"] for step in steps("lamplighter", garment))
    asked = [(int(n), float(mm)) for n, mm in re.findall(r"(\d+) × ([\d.]+) mm", words)]
    assert sum(n for n, _ in asked) == len(drawn)
    assert sorted(mm for n, mm in asked for _ in range(n)) == pytest.approx(
        sorted(long for _, long in drawn), abs=0.3
    )


@pytest.mark.parametrize("name", ["lamplighter", "kite"])
def test_elastic_is_as_long_as_the_edges_it_draws_up_and_its_laps(name: str) -> None:
    """At a limb what its edge is drawn up to, at a waist 85 to 100 % of the tape (common practice); 20 mm laps."""
    loops = [n for n in told(name).record["notions"] if n["what"] == "elastic"]
    wearer = tomllib.loads(Path(ROOT / "measurements" / "bodies" / f"{name}.toml").read_text("utf-8"))
    waist = 10.0 * wearer["measures"]["waist_girth"] * sum("waist" in n["where"] for n in loops)
    limbs = 0.0
    for piece in told(name).record["pieces"]:
        for edge in piece["edges"]:
            svg = told(name).lines[piece["garment"], piece["piece"]][edge["edge"]]
            if edge["sewn_length"] < 0.999 * svg and edge["kind"] == "hem":
                limbs += edge["sewn_length"] * piece["count"] * (2 if piece["fold_edge"] else 1)
    laps, sold = 20.0 * sum(n["count"] for n in loops), 100.0 * len({n["size"] for n in loops})
    assert waist > 500
    assert limbs > 300
    assert limbs + 0.85 * waist + laps <= told(name).bought("elastic") <= limbs + waist + 2 * laps + sold


def test_tape_goes_along_both_roll_lines_at_least() -> None:
    drawn = math.fsum(long for piece, long in marks("lamplighter", "coat", "roll_line") if piece == "front")
    assert drawn > 600
    assert told("lamplighter").bought("tape", "stay tape") >= drawn + 40.0
