"""What a costume file may ask of its printed sheets: the table `[print]`.

[print]
papers = ["a3", "roll 61 cm"]     # in place of the one file that prints true on A4 and on Letter
pieces = ["shirt.front"]          # only these; otherwise all
model = "1:4"                     # a small copy of each garment for a paper model
dxf = "R2000"                     # where R12, which every machine reads, is not wanted
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import partial

from drafting.ground.dxf_versions import VERSIONS
from drafting.ground.errors import Fault, InputError
from drafting.ground.names import clean_text
from drafting.ground.nearest import meant
from drafting.ground.units import SHOWN, BadValue, as_written
from drafting.printing.paper import PAPERS, Paper, paper_named
from drafting.reading.cursor import TableReader
from drafting.reading.given import FilePlace

MODELS = {"1:4": 4, "1:5": 5}
USUAL = ("a4-or-letter",)
"""What is printed where no paper is asked for: one file that prints true on either."""


@dataclass(frozen=True)
class PrintWishes:
    """Papers to print on, names of the pieces wanted (`garment.piece`; none: all), the model's scale.

    `model` is the 4 of 1:4, 0 for none; `dxf` the version of the interchange file; `spots` is where
    each of the `pieces` was written.
    """

    papers: tuple[Paper, ...] = tuple(PAPERS[name] for name in USUAL)
    pieces: tuple[str, ...] = ()
    model: int = 0
    dxf: str = VERSIONS[0]
    spots: tuple[FilePlace, ...] = field(default=(), compare=False)

    def wants(self, garment: str, names: Iterable[str]) -> bool:
        """Return whether a piece is to be printed that goes by one of these names."""
        return not self.pieces or any(f"{garment}.{name}" in self.pieces for name in names)


def read_print(table: TableReader, garments: tuple[str, ...]) -> PrintWishes:
    """Return the wishes of a `[print]` table; what is wrong goes to the faults of its file."""
    papers: dict[str, Paper] = {}
    for given, spot in table.texts("papers", 'papers = ["a3", "roll 61 cm"]'):
        paper = table.faults.value(_paper, given, spot.field)
        if paper is not None:
            papers[paper.name] = paper
    pieces = {}
    for given, spot in table.texts("pieces", 'pieces = ["shirt.front"]'):
        name = table.faults.value(partial(_piece, garments), given, spot.field)
        if name is not None:
            pieces[name] = spot
    model = table.word("model", ("", *MODELS))
    dxf = table.word("dxf", ("", *VERSIONS)) or VERSIONS[0]
    table.close()
    spots = tuple(pieces.values())
    asked = tuple(papers.values()) or PrintWishes().papers
    return PrintWishes(asked, tuple(pieces), MODELS.get(model, 0), dxf, spots)


def _paper(value: object) -> Paper:
    try:
        return paper_named(str(value))
    except InputError as refused:
        raise BadValue(refused.faults[0].what, refused.faults[0].right) from None


def _piece(garments: tuple[str, ...], value: object) -> str:
    """Return `garment.piece` where there is such a garment; its pieces are known once it is drafted."""
    garment, _, piece = str(value).partition(".")
    if garment in garments and piece:
        return str(value)
    if garment in garments:
        right = f"write garment and piece, as in '{garment}.front'"
    else:
        right = f"write garment and piece; {meant(garment, garments)}"
    raise BadValue(f"{as_written(value)} is no piece of a garment here", right)


def unprinted(wishes: PrintWishes, pieces: Mapping[str, Collection[str]]) -> Iterator[Fault]:
    """Yield a fault for each piece asked for that its garment has not; `pieces` by garment."""
    for name, spot in zip(wishes.pieces, wishes.spots, strict=False):
        garment, _, piece = name.partition(".")
        if garment in pieces and piece not in pieces[garment]:
            what = f"the {garment} has no piece {clean_text(piece, SHOWN)}"
            yield spot.fault(what, meant(piece, pieces[garment], "report.json lists them all"))
