"""The printed sheets and the interchange file of every garment, ready to be written."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from drafting.costume.leaning import leaning
from drafting.costume.make import Made, MadeGarment
from drafting.draft.named import called
from drafting.draft.pattern import CutPiece
from drafting.export.dxf import DxfPiece, dxf_text
from drafting.finish.label import Label, label_lines, spoken
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import clean_text
from drafting.printing.imposed import Imposed
from drafting.printing.pages_made import imposed, sheet_pdf
from drafting.printing.paper import PAPERS, Paper
from drafting.printing.piece_on_paper import model_drawing, piece_on_paper
from drafting.printing.wishes import PrintWishes


@dataclass(frozen=True)
class PrintedSheet:
    """One PDF: its garment, paper and file, the page with instructions counted in `pages`.

    `least` is how many pages of pieces their area alone would take; `length` mm of a roll.
    """

    garment: str
    paper: Paper
    file: str
    pages: int
    least: int
    length: float | None
    data: bytes
    work: Imposed
    warnings: tuple[str, ...]


def sheet_file(garment: str, paper: str) -> str:
    """Return where a garment's printed sheet lies, relative to the output folder."""
    return f"sheets/{garment}-{paper}.pdf"


def exchange_file(garment: str) -> str:
    """Return where a garment's interchange file lies, relative to the output folder."""
    return f"exchange/{garment}.dxf"


def piece_label(made: Made, garment: MadeGarment) -> Label:
    """Return what every piece of this garment is labelled with."""
    costume, wearer = made.costume, made.costume.wearer
    cloth = costume.fabrics.get(garment.fabric)
    guessed = {name: m for name, m in wearer.measures.items() if m.source == "estimated"}
    return Label(
        costume=costume.title,
        garment=garment.name,
        fabric=cloth.title if cloth else garment.fabric,
        wearer=wearer.title,
        measured_on=wearer.measured_on,
        estimated=tuple(guessed),
        off=tuple(None if m.sd is None else 2 * m.sd for m in guessed.values()),
        one_way=cloth is not None and cloth.one_way,
        unit=costume.told_in,
        leaning=leaning(made, garment.name),
    )


LabelOf = Callable[[Made, MadeGarment], Label]
"""Says what every piece of a garment is labelled with."""


def printed_sheets(made: Made, label_of: LabelOf = piece_label) -> Iterator[PrintedSheet]:
    """Yield the PDFs that the costume file asks for, garment by garment."""
    wishes = made.costume.prints
    for place, garment in enumerate(made.garments):
        pieces = pieces_asked_for(garment, wishes)
        if not pieces:
            continue
        label = label_of(made, garment)
        title = f"{clean_text(made.costume.title)} - {spoken(garment.name)}"
        drawings = tuple(piece_on_paper(cut, label, place) for cut in pieces)
        for paper in wishes.papers:
            yield _printed(garment.name, paper.name, imposed(title, drawings, paper), label)
        if wishes.model:
            small = tuple(model_drawing(cut, wishes.model, place) for cut in pieces)
            work = imposed(f"{title}, paper model 1:{wishes.model}", small, PAPERS["a4-or-letter"])
            yield _printed(garment.name, f"model-{wishes.model}", work, label)


def pieces_asked_for(garment: MadeGarment, wishes: PrintWishes) -> tuple[CutPiece, ...]:
    """Return the pieces of a garment that are asked for."""
    cuts = garment.pattern.pieces
    return tuple(cut for cut in cuts if wishes.wants(garment.name, called(cut.piece)))


def _printed(garment: str, name: str, work: Imposed, label: Label) -> PrintedSheet:
    tiling, count = work.tiling, len(work.tiling.used)
    kind = tiling.paper
    roll = name.startswith("roll")
    length = kind.height * tiling.rows if roll and kind.height is not None else None
    about = ", ".join(
        filter(
            None,
            (
                f"{len(work.drawings)} pieces" if len(work.drawings) > 1 else work.drawings[0].title,
                _pages(count, kind),
                label.wearer and f"for {clean_text(label.wearer, 60)}",
                label.measured_on and f"measured {clean_text(label.measured_on, 30)}",
            ),
        )
    )
    printed = sheet_pdf(work, about)
    file = sheet_file(garment, name)
    return PrintedSheet(
        garment=garment,
        paper=kind,
        file=file,
        pages=count + printed.first,
        least=work.least,
        length=length,
        data=printed.data,
        work=work,
        warnings=printed.said,
    )


def _pages(count: int, paper: Paper) -> str:
    return f"{count} page{'s' if count > 1 else ''} of {paper.title} beside the first ones"


def sheets_said(sheets: list[PrintedSheet]) -> Iterator[Finding]:
    """Yield for each garment how many pages its sheets take, and what they cannot print."""
    for garment in dict.fromkeys(sheet.garment for sheet in sheets):
        own = [sheet for sheet in sheets if sheet.garment == garment]
        counts = ", ".join(_counted(sheet) for sheet in own)
        message = f"Printed sheets: {counts}; pages of instructions and the list of pieces come first."
        first = own[0]
        yield Finding("pages", "note", garment, first.work.printed, first.least, message)
        for warning in dict.fromkeys(w for sheet in own for w in sheet.warnings):
            yield Finding("typeface", "warning", garment, None, None, warning)


def _counted(sheet: PrintedSheet) -> str:
    if sheet.length is not None:
        return f"{told(10 * math.ceil(sheet.length / 10), 'bought')} of {sheet.paper.title}"
    count, what = sheet.work.printed, "paper model, " if "-model-" in sheet.file else ""
    pages = f"{count} page{'s' if count > 1 else ''} of {sheet.paper.title}"
    return f"{what}{pages} ({sheet.least} by area alone)"


def sheet_row(sheet: PrintedSheet) -> dict[str, object]:
    """Return a printed sheet as the record has it."""
    return {
        "garment": sheet.garment,
        "file": sheet.file,
        "paper": sheet.paper.title,
        "pages": sheet.pages,
        "joins": sheet.work.tiling.joins,
        "least": sheet.least,
        "length": sheet.length,
    }


def interchange_files(made: Made) -> Iterator[tuple[str, str]]:
    """Yield each interchange file and its text."""
    wishes = made.costume.prints
    for garment in made.garments:
        label = replace(piece_label(made, garment), estimated=(), off=())
        pieces = [
            DxfPiece(cut, _annotation(cut, label), fabric=label.fabric, size=label.wearer)
            for cut in pieces_asked_for(garment, wishes)
        ]
        if pieces:
            yield exchange_file(garment.name), dxf_text(garment.name, pieces, wishes.dxf)


def _annotation(cut: CutPiece, label: Label) -> tuple[str, ...]:
    lines = label_lines(cut, label, 60)
    return (*lines.head, *lines.body, "unit: 1 mm")
