"""Pictures, read back by a general image library: what a sheet draws is there, where and as wide as it says."""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pytest
from fontTools.ttLib import TTFont
from matplotlib.image import imread

from drafting.export.figure import LIVELY, overview_png
from drafting.geometry import Path as Drawn
from drafting.geometry import line
from drafting.geometry.arc import arc
from drafting.ground.palette import Colour
from drafting.ground.typeface import typeface
from drafting.sheet import Anchor, Layer, Sheet, Stroke, Text
from drafting.sheet.style import STYLES

SIDE, DPI = 120.0, 100
PIXELS = 12 * DPI / SIDE  # arithmetic: twelve inches of dots over the sheet's side


def picture(sheet: Sheet, tmp_path: Path) -> np.ndarray:
    overview_png(sheet, tmp_path / "a.png", DPI)
    read: np.ndarray = imread(tmp_path / "a.png")[..., :3]
    return read


def level(y: float) -> Drawn:
    return line(complex(20, y), complex(100, y))


@pytest.mark.parametrize("layer", [Layer.CUT, Layer.STITCH])
def test_a_line_lies_where_it_is_drawn_and_is_as_wide_as_its_layer_says(layer: Layer, tmp_path: Path) -> None:
    # Arithmetic: what a line takes from the light of each column is its width in dots, times how dark it is.
    sheet = Sheet("a", SIDE, SIDE, (Stroke(layer, (level(30),), "a"),), ())
    red = 1 - picture(sheet, tmp_path)[..., 0]
    inked = red.sum(axis=0)
    dark = 1 - int(STYLES[layer].colour[1:3], 16) / 255
    wide = STYLES[layer].width * LIVELY * DPI / 72
    assert inked.max() == pytest.approx(wide * dark, rel=0.05)
    rows = (red * np.arange(len(red))[:, None]).sum() / red.sum()
    assert rows + 0.5 == pytest.approx((SIDE - 30) * PIXELS, abs=0.3)
    along = np.flatnonzero(inked > 0.1)
    assert along[0] == pytest.approx(20 * PIXELS, abs=1.5)
    gaps = inked[along[0] : along[-1]].min()
    assert (gaps < 0.1) == bool(STYLES[layer].dash)  # dashed, or not


def test_a_tinted_circle_covers_what_a_circle_covers(tmp_path: Path) -> None:
    # Arithmetic: pi r^2, the line round it half outside; cubics of an arc are within 0.03 %.
    circle = arc(complex(60, 60), complex(100, 60), 360)
    sheet = Sheet("a", SIDE, SIDE, (Stroke(Layer.CUT, (circle,), "a", True, Colour.INK),), ())
    shown = picture(sheet, tmp_path)[..., 0]
    radius = 40 * PIXELS + STYLES[Layer.CUT].width * LIVELY * DPI / 72 / 2
    ink = shown[len(shown) // 2, len(shown) // 2]
    assert ((1 - shown) / (1 - ink)).sum() == pytest.approx(math.pi * radius**2, rel=2e-3)


@pytest.mark.parametrize(("anchor", "share"), [("start", 0.0), ("middle", 0.5), ("end", 1.0)])
def test_words_stand_on_their_baseline_and_begin_where_their_anchor_says(
    anchor: Anchor, share: float, tmp_path: Path
) -> None:
    # The typeface's own outlines, read by fontTools: H stands on the baseline, so high and so far apart.
    sheet = Sheet("a", SIDE, SIDE, (), (Text(complex(60, 40), 12.0, ("HHHH",), anchor),))
    ink = 1 - picture(sheet, tmp_path)[..., 0] > 0.5
    rows, columns = np.flatnonzero(ink.any(axis=1)), np.flatnonzero(ink.any(axis=0))
    face = TTFont(typeface())
    em, advance = face["head"].unitsPerEm, 4 * face["hmtx"]["H"][0]
    dots = 12.0 * PIXELS / em
    assert rows[-1] + 1 == pytest.approx((SIDE - 40) * PIXELS, abs=1.5)
    assert rows[-1] + 1 - rows[0] == pytest.approx(face["glyf"]["H"].yMax * dots, abs=2)
    begins = 60 * PIXELS - share * advance * dots + face["hmtx"]["H"][1] * dots
    assert columns[0] == pytest.approx(begins, abs=2.5)


def test_words_too_small_for_a_dot_are_left_out_and_the_lines_are_there(tmp_path: Path) -> None:
    """Plain arithmetic: eight circle capes in one lay, 54 m, have 0.02 dots for each mm."""
    cut = Stroke(Layer.CUT, (line(1000 + 700j, 53000 + 700j),), "a")
    sheet = Sheet("a", 54000.0, 1400.0, (cut,), (Text(100 + 200j, 9.4, ("4",)), Text(100 + 900j, 400.0, ("H",))))
    dark = 1 - picture(sheet, tmp_path)[..., 0] > 0.3
    assert dark[:, 100:].any()
    assert dark[:, :20].any()
