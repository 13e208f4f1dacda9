"""Write what was made into its folder: record, overview, one SVG a piece, one a cloth. Layer 5."""

from __future__ import annotations

import json
import time
from pathlib import Path

from drafting.costume import Made, MadeGarment
from drafting.export.figure import overview_png
from drafting.export.folder import swap_in
from drafting.export.svg import svg_text
from drafting.label import Label
from drafting.report import piece_file, report
from drafting.sheet_layout import layout_sheet
from drafting.sheet_overview import overview_sheet
from drafting.sheet_piece import piece_sheet


def write_output(made: Made, out: Path) -> None:
    """Write `made` beside `out` and swap it in whole; what was there stays if anything fails.

    Raises `InputError` where `out` is a file or a folder that this kit did not make.
    """
    swap_in(Path(out), lambda folder: _fill(made, folder))


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
    )


def _write_lays(made: Made, folder: Path) -> None:
    if made.lays:
        (folder / "layout").mkdir()
    garments = [garment.name for garment in made.garments]
    for lay in made.lays:
        sheet = layout_sheet(lay, made.costume.title, garments)
        file = folder / "layout" / f"{lay.role}.svg"
        file.write_text(svg_text(sheet), encoding="utf-8", newline="\n")
        overview_png(sheet, file.with_suffix(".png"))


def _fill(made: Made, folder: Path) -> None:
    start = time.perf_counter()
    (folder / "pieces").mkdir()
    for garment in made.garments:
        label = piece_label(made, garment)
        for cut in garment.pattern.pieces:
            text = svg_text(piece_sheet(cut, label))
            file = folder / piece_file(garment.name, cut.piece.name)
            file.write_text(text, encoding="utf-8", newline="\n")
    patterns = [garment.pattern for garment in made.garments]
    overview_png(overview_sheet(patterns, made.costume.title), folder / "overview.png")
    _write_lays(made, folder)
    data = report(made)
    data["timings"]["draw"] = time.perf_counter() - start
    text = json.dumps(data, indent=1, ensure_ascii=False, allow_nan=False)
    (folder / "report.json").write_text(text + "\n", encoding="utf-8", newline="\n")
