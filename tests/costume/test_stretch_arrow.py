"""Every piece of a cloth that stretches 5 % or more along or across carries the arrow, by its own cloth's test."""

from __future__ import annotations

import cmath
import math
from dataclasses import replace
from pathlib import Path

import ezdxf
import pytest

from drafting import make, read_costume, write_output
from drafting.costume.make import Made
from drafting.draft.pattern import CutPiece
from drafting.ground.shipped import shipped
from drafting.output.sheets import piece_label
from drafting.sheet import Layer
from drafting.sheet.overview import overview_sheet
from drafting.sheet.piece import piece_drawing


def costume_made(name: str) -> Made:
    return make(read_costume(shipped("measurements") / "costumes" / f"{name}.toml"))


def off_warp(cut: CutPiece) -> float:
    """Return the angle (0..90 degrees) between the arrow as drawn and the grainline as drawn."""
    assert cut.stretch_arrow is not None
    assert cut.grainline is not None
    angle = abs(math.degrees(cmath.phase(cut.stretch_arrow.leave / cut.grainline.leave))) % 180
    return min(angle, 180 - angle)


@pytest.mark.parametrize("name", ["lamplighter", "kite"])
def test_the_pieces_of_both_shipped_costumes_carry_it_by_the_rule(name: str) -> None:
    # It was a switch that is off by default: the knit breeches and the whole kite had none.
    made = costume_made(name)
    marked = []
    for garment in made.garments:
        for cut in garment.pattern.pieces:
            cloth = made.costume.fabrics.get(cut.piece.material or garment.fabric)
            wanted = cloth is not None and max(cloth.stretch_along, cloth.stretch_across) >= 0.05
            assert (cut.stretch_arrow is not None) == wanted, f"{garment.name}.{cut.piece.name}"
            if wanted and cloth is not None:
                marked.append(cut)
                assert off_warp(cut) == pytest.approx(
                    0 if cloth.stretch_along > cloth.stretch_across else 90, abs=0.1
                )
    assert marked


def test_the_overview_and_the_printed_sheet_show_it() -> None:
    made = costume_made("kite")
    garment = made.garments[0]
    for cut in garment.pattern.pieces:
        strokes, _ = piece_drawing(cut, piece_label(made, garment))
        assert any(stroke.layer is Layer.STRETCH for stroke in strokes), cut.piece.name
    sheet = overview_sheet([g.pattern for g in made.garments])
    shown = [stroke.id for stroke in sheet.strokes if stroke.layer is Layer.STRETCH]
    assert len([n for n in shown if n.endswith("stretch-arrow")]) >= len(garment.pattern.pieces)


def test_the_exchange_file_holds_it_read_back_by_another_library(tmp_path: Path) -> None:
    made = costume_made("kite")
    write_output(made, tmp_path / "out")
    for garment in made.garments:
        document = ezdxf.readfile(tmp_path / "out" / "exchange" / f"{garment.name}.dxf")
        blocks = [b for b in document.blocks if b.name.startswith(f"{garment.name}-")]
        assert len(blocks) == len(garment.pattern.pieces)
        for block in blocks:
            assert "stretch" in [text.dxf.text for text in block.query("TEXT")], block.name


def test_a_lining_goes_by_its_own_cloth_and_the_bias_of_a_woven_does_not_count() -> None:
    costume = read_costume(shipped("measurements") / "costumes" / "lamplighter.toml")
    stretchy = replace(costume.fabrics["lining"], stretch_along=0.12, stretch_across=0.02)
    shell = costume.garments[0].fabric
    velvet = replace(costume.fabrics[shell], stretch_bias=0.30)
    changed = replace(costume, fabrics={**costume.fabrics, "lining": stretchy, shell: velvet})
    (coat,) = [g for g in make(changed).garments if g.name == "coat"]
    for cut in coat.pattern.pieces:
        lined = cut.piece.material == "lining"
        assert (cut.stretch_arrow is not None) == lined, cut.piece.name
        if lined:
            assert off_warp(cut) == pytest.approx(0, abs=0.1)


@pytest.mark.parametrize(("stretch", "carries"), [(0.049, False), (0.05, True)])
def test_five_percent_is_the_line(stretch: float, carries: bool) -> None:
    costume = read_costume(shipped("measurements") / "costumes" / "lamplighter.toml")
    role = costume.garments[1].fabric
    cloth = replace(costume.fabrics[role], stretch_along=0.0, stretch_across=stretch)
    shirt = make(
        replace(costume, garments=costume.garments[1:2], fabrics={**costume.fabrics, role: cloth})
    ).garments[0]
    own = [cut for cut in shirt.pattern.pieces if not cut.piece.material]
    assert {cut.stretch_arrow is not None for cut in own} == {carries}
