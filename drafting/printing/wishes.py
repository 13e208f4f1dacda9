"""What a costume file may ask of its printed sheets: the table `[print]`.

[print]
papers = ["a3", "roll 61 cm"]     # beside A4, Letter and the 36 in roll
pieces = ["shirt.front"]          # only these; otherwise all
model = "1:4"                     # a small copy of each garment for a paper model
dxf = "R12"                       # for machines that read nothing newer
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

from drafting.ground.dxf_versions import VERSIONS
from drafting.ground.errors import InputError
from drafting.printing.paper import PAPERS, Paper, paper_named
from drafting.reading.given import Faults

KEYS = ("papers", "pieces", "model", "dxf")
MODELS = {"1:4": 4, "1:5": 5}
ALWAYS = ("a4", "letter", "roll")


@dataclass(frozen=True)
class PrintWishes:
    """Papers to print on, names of the pieces wanted (`garment.piece`; none: all), the model's scale.

    `model` is the 4 of 1:4, 0 for none; `dxf` the version of the interchange file.
    """

    papers: tuple[Paper, ...] = tuple(PAPERS[name] for name in ALWAYS)
    pieces: tuple[str, ...] = ()
    model: int = 0
    dxf: str = "R2000"

    def wants(self, garment: str, piece: str) -> bool:
        return not self.pieces or f"{garment}.{piece}" in self.pieces


def read_print(
    table: Mapping[str, Any], line: Callable[..., int | None], garments: Sequence[str], faults: Faults
) -> PrintWishes:
    """Return the wishes of a `[print]` table; what is wrong joins `faults`."""
    at = partial(line, "print")
    for key in table:
        if key not in KEYS:
            faults.unknown(key, KEYS, f"print.{key}", at(key))
    papers = {paper.name: paper for paper in PrintWishes().papers}
    for text in _texts(table, "papers", 'papers = ["a3", "roll 61 cm"]', at, faults):
        try:
            paper = paper_named(text)
        except InputError as refused:
            faults.add(refused.faults[0].what, refused.faults[0].right, "print.papers", at("papers"))
        else:
            papers[paper.name] = paper
    pieces = _texts(table, "pieces", 'pieces = ["shirt.front"]', at, faults)
    for name in pieces:
        if name.partition(".")[0] not in garments or not name.partition(".")[2]:
            right = f"write garment and piece, as in '{[*garments, 'shirt'][0]}.front'"
            faults.add(f"'{name[:40]}' is no piece of a garment here", right, "print.pieces", at("pieces"))
    model = _word(table, "model", tuple(MODELS), at, faults)
    dxf = _word(table, "dxf", VERSIONS, at, faults) or VERSIONS[0]
    return PrintWishes(tuple(papers.values()), tuple(pieces), MODELS.get(model, 0), dxf)


def _texts(
    table: Mapping[str, Any], key: str, form: str, at: Callable[..., int | None], faults: Faults
) -> list[str]:
    value = table.get(key, [])
    if isinstance(value, list) and all(isinstance(text, str) for text in value):
        return value
    faults.add("is not a list of names", f"write it like {form}", f"print.{key}", at(key))
    return []


def _word(
    table: Mapping[str, Any], key: str, words: tuple[str, ...], at: Callable[..., int | None], faults: Faults
) -> str:
    value = table.get(key, "")
    if value == "" or value in words:
        return str(value)
    faults.add(f"'{str(value)[:40]}' is not known", f"one of {', '.join(words)}", f"print.{key}", at(key))
    return ""
