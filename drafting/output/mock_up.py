"""`drafting mock-up`: pieces, printed sheets, lays and fitting sheets of a first try, in a folder of their own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

from drafting.costume.make import MadeGarment
from drafting.costume.mock_up import MockUp, mock_length
from drafting.costume.telling import Tell, tell_nobody
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, Piece
from drafting.export.figure import overview_png
from drafting.finish.label import Label, cut_count
from drafting.fitting.to_write_on import seam_lines
from drafting.fitting.wide import wide_allowance
from drafting.ground.lengths import in_unit, told
from drafting.ground.sources import printed
from drafting.output.fit_record import fit_record
from drafting.output.fitting_pages import sheets_to_write_on
from drafting.output.folder import MOCK_UP, swap_in
from drafting.output.report import piece_file
from drafting.output.sheets import PrintedSheet, piece_label, printed_sheets, sheet_row
from drafting.output.write import write_lays, write_pieces, write_sheets
from drafting.printing.single_page import single_pages_pdf

SCHEMA = 1

FOOT = ("Mock-up. Draw every line", "on both faces of the cloth.")


def write_mock_up(mock: MockUp, out: Path | str, tell: Tell = tell_nobody) -> None:
    """Write the mock-up beside `out` and swap it in whole; what was there stays if anything fails.

    Raises `InputError` where `out` is a file, or a folder that holds anything else.
    """
    sheets = list(printed_sheets(mock.made, lambda _, garment: _label(mock, garment)))
    swap_in(Path(out), lambda folder: _fill(mock, sheets, folder, tell), MOCK_UP)


def fitting_file(garment: str) -> str:
    """Return where a garment's fitting sheet lies, relative to the output folder."""
    return f"fitting/{garment}.pdf"


def _label(mock: MockUp, garment: MadeGarment) -> Label:
    label = piece_label(mock.real, mock.real[garment.name])
    cloth = mock.cloths[garment.name].fabric.title
    return replace(label, fabric=cloth, one_way=False, foot=FOOT, hands=True)


def _fill(mock: MockUp, sheets: list[PrintedSheet], folder: Path, tell: Tell) -> dict[str, Any]:
    """Fill a folder; return its record."""
    write_pieces(mock.made, folder, tell, lambda _, garment: _label(mock, garment))
    tell("Drawing the lays", 0.7)
    write_lays(mock.made, folder)
    write_sheets(sheets, folder, tell)
    tell("Drawing the fitting sheets", 0.95)
    (folder / "fitting").mkdir()
    for name, pages in sheets_to_write_on(mock):
        file = folder / fitting_file(name)
        file.write_bytes(single_pages_pdf(pages))
        overview_png(pages[0], file.with_suffix(".png"))
    return mock_record(mock, sheets)


def mock_record(mock: MockUp, sheets: list[PrintedSheet]) -> dict[str, Any]:
    """Return `mock-up.json` as plain data, lengths in mm."""
    made, unit = mock.made, mock.made.costume.told_in
    return {
        "schema": SCHEMA,
        "costume": made.costume.title,
        "wearer": made.costume.wearer.title,
        "cloths": list(_cloths(mock)),
        "garments": [_garment(mock, garment) for garment in made.garments],
        "sheets": [sheet_row(sheet) for sheet in sheets],
        "findings": [
            {"check": f.check, "level": f.level, "where": f.where, "sentence": f.said(unit)} for f in made.findings
        ],
    }


def _cloths(mock: MockUp) -> Iterator[dict[str, Any]]:
    """Yield each cloth of the mock-up once: for which garments, what to ask for, why, how much."""
    for lay in mock.made.lays:
        names = [garment.name for garment in mock.made.garments if garment.fabric == lay.role]
        cloth = mock.cloths[names[0]]
        yield {
            "cloth": lay.role,
            "garments": names,
            "ask_for": cloth.ask_for,
            "why": cloth.why,
            "source": printed(cloth.source),
            "width": lay.cloth.width,
            "lay_length": lay.cloth_length,
            "take": mock_length(lay),
        }


def _garment(mock: MockUp, garment: MadeGarment) -> dict[str, Any]:
    return {
        "garment": garment.name,
        "fitting_sheet": fitting_file(garment.name),
        "fit": fit_record(mock.real, mock.real[garment.name]),
        "left_out": [piece.name for piece in mock.without[garment.name]],
        "pieces": [_piece(garment, cut) for cut in garment.pattern.pieces],
        "seams": [
            {
                "seam": line.name,
                "edges": list(line.edges),
                "allowance": line.allowance,
                "lets_out": line.lets_out,
                "hand": line.hand,
            }
            for line in seam_lines(garment.draft)
        ],
    }


def _piece(garment: MadeGarment, cut: CutPiece) -> dict[str, Any]:
    return {
        "piece": cut.piece.name,
        "role": cut.piece.role,
        "file": piece_file(garment.name, cut.piece.name),
        "cut": cut_count(cut.piece),
        "edges": [_edge(cut.piece, edge, cut.allowances[edge.name]) for edge in cut.piece.edges],
        "marks": [mark.name for mark in cut.piece.placements],
    }


def _edge(piece: Piece, edge: Edge, allowance: float) -> dict[str, Any]:
    source = printed(wide_allowance(piece, edge).source)
    return {"edge": edge.name, "role": edge.role, "allowance": allowance, "source": source}


def mock_up_text(mock: MockUp, out: Path) -> str:
    """Return what `drafting mock-up` says in the end, in the maker's unit."""
    lines: list[str] = []
    for row in _cloths(mock):
        take = in_unit(told(row["take"], "bought"), mock.made.costume.told_in)
        lines += [f"{', '.join(row['garments'])}: {take} of {row['ask_for']}", f"  {row['why']} ({row['source']})"]
    lines += ["", f"Pieces:        {out / 'pieces'}", f"To print:      {out / 'sheets'}"]
    lines += [f"Fitting sheet: {out / 'fitting'}", f"Record:        {out / MOCK_UP}"]
    return "\n".join(lines)
