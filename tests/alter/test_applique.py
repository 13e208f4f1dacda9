"""Shapes sewn onto pieces: sizes and areas by plain geometry, refusals, and a costume file with both tables."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from shapely.geometry import Polygon

from drafting.alter.applique import appliqued, shape
from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.ground.errors import DraftError, InputError
from drafting.reading.trimming import AppliqueWish
from tests.making.figures import ROOT, made

COAT = made("lamplighter").garments[0].draft
STAR = AppliqueWish("tail-2", "star", 60.0, 60.0, "hem", 120.0)


@pytest.mark.parametrize(("name", "area"), [("circle", math.pi * 30 * 20), ("diamond", 60 * 40 / 2)])
def test_a_shape_has_its_size_and_area(name: str, area: float) -> None:
    """An ellipse's area is pi a b, a rhombus's half the product of its diagonals."""
    path = shape(name, 60.0, 40.0)
    x0, y0, x1, y1 = path.bounds
    assert (x1 - x0, y1 - y0) == pytest.approx((60.0, 40.0), abs=0.02)
    assert path.area == pytest.approx(area, rel=0.001)


def test_a_star_has_five_points_and_fills_its_box() -> None:
    path = shape("star", 60.0, 50.0)
    x0, y0, x1, y1 = path.bounds
    assert (x1 - x0, y1 - y0) == pytest.approx((60.0, 50.0))
    assert len(path.segments) == 10
    assert path.area > 0


def test_it_lies_on_its_piece_and_is_cut_as_often_as_that() -> None:
    """Checked with shapely: the mark lies inside the outline, 120 mm from the hem's middle."""
    draft = appliqued(COAT, STAR, 1)
    tail, star = draft["tail-2"], draft["applique-1"]
    mark = next(m for m in tail.placements if m.what == "appliqué")
    ring = Polygon([(p.real, p.imag) for p in tail.outline.flattened(0.05)])
    inner = Polygon([(p.real, p.imag) for p in mark.path.flattened(0.05)])
    assert ring.contains(inner)
    hem = tail["hem"].path.at(tail["hem"].length / 2)
    x0, y0, x1, y1 = mark.path.bounds
    assert abs(complex((x0 + x1) / 2, (y0 + y1) / 2) - hem) == pytest.approx(120.0, abs=0.1)
    assert star.count == tail.count
    assert star.area == pytest.approx(inner.area, rel=1e-3)


@pytest.mark.parametrize(
    ("wish", "words"),
    [
        (AppliqueWish("hood", "star", 60.0, 60.0, "hem", 100.0), "no piece hood"),
        (AppliqueWish("tail-2", "star", 60.0, 60.0, "tip", 100.0), "no edge tip"),
        (AppliqueWish("tail-2", "star", 60.0, 60.0, "hem", 10.0), "sticks out"),
        (AppliqueWish("tail-2", "circle", 400.0, 400.0, "hem", 250.0), "sticks out"),
    ],
)
def test_what_cannot_be_sewn_on_is_refused_in_words(wish: AppliqueWish, words: str) -> None:
    with pytest.raises(DraftError, match=words):
        appliqued(COAT, wish, 1)


def costume_with(tmp_path: Path, tables: str) -> Path:
    text = (ROOT / "measurements" / "costumes" / "lamplighter.toml").read_text("utf-8")
    file = tmp_path / "trimmed.toml"
    file.write_text(text.replace("../", f"{ROOT / 'measurements'}/") + tables, "utf-8")
    return file


def test_a_costume_file_with_trims_and_appliques_is_made(tmp_path: Path) -> None:
    file = costume_with(
        tmp_path,
        """
[[garments.coat.trims]]
edge = "front.lapel"
kind = "braid"
width = "12 mm"

[[garments.coat.appliques]]
piece = "tail-2"
shape = "diamond"
width = 6
height = "8 cm"
edge = "hem"
inside = 14
""",
    )
    costume = make(read_costume(file))
    coat = costume.garments[0]
    assert coat.trims[0].width == 12.0
    assert "applique-1" in coat.draft
    assert not [f for f in coat.findings if f.level == "error"]


def test_wrong_trims_are_refused_with_file_and_field(tmp_path: Path) -> None:
    file = costume_with(
        tmp_path,
        """
[[garments.coat.trims]]
edge = "lapel"
kind = "braid"
width = "12 mm"

[[garments.coat.appliques]]
piece = "tail-2"
shape = "banana"
width = 6
edge = "hem"
inside = 14
colour = "red"
""",
    )
    with pytest.raises(InputError) as refused:
        read_costume(file)
    fields = {fault.field for fault in refused.value.faults}
    assert fields == {
        "garments.coat.trims[1].edge",
        "garments.coat.appliques[1].shape",
        "garments.coat.appliques[1].colour",
    }


def test_a_trim_along_no_edge_is_refused_when_the_garment_is_made(tmp_path: Path) -> None:
    file = costume_with(tmp_path, '\n[[garments.coat.trims]]\nedge = "front.hem"\nwidth = "12 mm"\n')
    with pytest.raises(InputError, match=r"trims\[1\]: the front has no edge hem; known are bottom, waist, panel"):
        make(read_costume(file))
