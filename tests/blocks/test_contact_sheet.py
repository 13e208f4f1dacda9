"""Six very different bodies on one sheet, and their stored lengths and outlines.

The figures are invented. `DRAFTING_REWRITE_GOLDEN=1` rewrites the stored numbers and the picture
after a wanted change of shape; without it nothing is written but the picture of the present draft.
"""

from __future__ import annotations

import json
from pathlib import Path as FilePath
from typing import Any

import pytest

from drafting.body import wearer
from drafting.costume.garment import MadeGarment
from drafting.draft.piece import Piece
from drafting.geometry import Cubic, Line, Path
from drafting.geometry.area import difference
from drafting.sheet import Sheet, Stroke, Text, assembled
from drafting.sheet.overview import overview_sheet
from tests.blocks.contact_pictures import GOLDEN, REWRITE, drawn_and_stored
from tests.blocks.figures import made

NUMBERS = GOLDEN / "bodice-sleeve.json"

SAME_LENGTH = 0.05
"""mm an edge may differ from the stored one."""

SAME_AREA = 5.0
"""mm2 between a stored outline and the present one: a line along every edge, 0.002 mm wide."""

SIX = {
    "smallest": {
        "height": 1465,
        "bust_girth": 745,
        "high_bust_girth": 725,
        "waist_girth": 585,
        "hip_girth": 790,
        "shoulder_length": 108,
        "across_back_width": 298,
        "upper_arm_girth": 225,
        "back_waist_length": 352,
    },
    "largest": {
        "height": 1960,
        "bust_girth": 1330,
        "high_bust_girth": 1310,
        "waist_girth": 1190,
        "hip_girth": 1290,
        "shoulder_length": 166,
        "across_back_width": 486,
        "upper_arm_girth": 430,
        "back_waist_length": 510,
    },
    "waist-largest": {
        "height": 1700,
        "bust_girth": 1080,
        "high_bust_girth": 1070,
        "waist_girth": 1160,
        "hip_girth": 1090,
        "shoulder_length": 132,
        "across_back_width": 405,
        "upper_arm_girth": 345,
        "back_waist_length": 440,
    },
    "full-bust": {
        "height": 1640,
        "bust_girth": 1120,
        "high_bust_girth": 995,
        "waist_girth": 850,
        "hip_girth": 1090,
        "shoulder_length": 122,
        "across_back_width": 368,
        "upper_arm_girth": 330,
        "back_waist_length": 395,
    },
    "sloped-shoulder": {
        "height": 1730,
        "bust_girth": 905,
        "high_bust_girth": 880,
        "waist_girth": 720,
        "hip_girth": 970,
        "shoulder_length": 128,
        "shoulder_drop": 67,
        "across_back_width": 352,
        "upper_arm_girth": 280,
        "back_waist_length": 412,
    },
    "long-torso": {
        "height": 1820,
        "bust_girth": 915,
        "high_bust_girth": 905,
        "waist_girth": 790,
        "hip_girth": 950,
        "shoulder_length": 146,
        "shoulder_drop": 42,
        "across_back_width": 382,
        "upper_arm_girth": 285,
        "back_waist_length": 490,
    },
}
"""Invented figures in typical proportions, mm."""


@pytest.fixture(scope="module")
def garments() -> dict[str, MadeGarment]:
    return {
        title: made(wearer({n: float(mm) for n, mm in body.items()}, title=title), name=title)
        for title, body in SIX.items()
    }


def numbers(piece: Piece) -> dict[str, Any]:
    """Return a piece's edge lengths and its outline's control points, rounded to 0.1 micrometre."""
    outline = [[[round(p.real, 4), round(p.imag, 4)] for p in s] for s in piece.outline.segments]
    lengths = {edge.name: round(edge.length, 4) for edge in piece.edges}
    return {"lengths": lengths, "outline": outline}


def stored_path(outline: list[list[list[float]]]) -> Path:
    """Return a stored outline as a path."""
    kinds = {2: Line, 4: Cubic}
    return Path(tuple(kinds[len(s)](*(complex(x, y) for x, y in s)) for s in outline))


@pytest.fixture(scope="module")
def stored(garments: dict[str, MadeGarment]) -> dict[str, Any]:
    if REWRITE:
        now = {
            title: {piece.name: numbers(piece) for piece in garment.draft.pieces}
            for title, garment in garments.items()
        }
        NUMBERS.write_text(json.dumps(now, indent=None, separators=(",", ":")) + "\n")
    found: dict[str, Any] = json.loads(NUMBERS.read_text())
    return found


def in_columns(sheets: list[Sheet], columns: int) -> Sheet:
    """Return the sheets side by side at one scale, row by row."""
    strokes: list[Stroke] = []
    texts: list[Text] = []
    wide = max(sheet.width for sheet in sheets)
    top = 0.0
    for i in range(0, len(sheets), columns):
        row = sheets[i : i + columns]
        top -= max(sheet.height for sheet in row)
        for j, sheet in enumerate(row):
            by = complex(j * wide, top)
            strokes += [stroke.moved(by) for stroke in sheet.strokes]
            texts += [text.moved(by) for text in sheet.texts]
    return assembled("Bodice and sleeve on six invented bodies", strokes, texts, 20)


@pytest.mark.parametrize("title", list(SIX))
def test_the_draft_is_the_stored_one(title: str, garments: dict[str, MadeGarment], stored: dict[str, Any]) -> None:
    pieces = garments[title].draft.pieces
    assert {piece.name for piece in pieces} == set(stored[title])
    for piece in pieces:
        then = stored[title][piece.name]
        now = {edge.name: edge.length for edge in piece.edges}
        assert now == pytest.approx(then["lengths"], abs=SAME_LENGTH), piece.name
        assert difference(piece.outline, stored_path(then["outline"])) <= SAME_AREA, piece.name


@pytest.mark.parametrize("title", list(SIX))
def test_every_one_of_the_six_has_no_error_finding(title: str, garments: dict[str, MadeGarment]) -> None:
    assert [f.message for f in garments[title].findings if f.level == "error"] == []


def test_the_contact_sheet_shows_all_eighteen_pieces(garments: dict[str, MadeGarment], tmp_path: FilePath) -> None:
    patterns = [garment.pattern for garment in garments.values()]
    sheet = in_columns([overview_sheet([p], p.garment) for p in patterns], 2)
    shown = " ".join(line for text in sheet.texts for line in text.lines)
    assert shown.count("Sleeve") == len(SIX)
    for title in SIX:
        assert title.split("-")[0] in shown.lower()
    drawn_and_stored(sheet, "contact-bodice-sleeve.png", tmp_path, dpi=200, least=50_000)
