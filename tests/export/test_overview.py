"""The overview shows every piece once, apart from the others, and always the same way."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations, groupby
from pathlib import Path

import pytest
from matplotlib.image import imread
from shapely import Polygon

from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.draft.pattern import Pattern
from drafting.export.figure import overview_png
from drafting.export.svg import svg_text
from drafting.geometry import Path as Drawn
from drafting.sheet import Layer
from drafting.sheet.overview import overview, overview_sheet
from tests.export import invented
from tests.export.reading import length, shapes

COSTUMES = Path(__file__).parents[2] / "measurements" / "costumes"


def polygon(path: Drawn) -> Polygon:
    return Polygon([(p.real, p.imag) for p in path.flattened(0.1)])


def test_every_piece_is_there_once_and_none_touches_another() -> None:
    sheet = overview_sheet(invented.patterns(), "The kite")
    cuts = [polygon(s.paths[0]) for s in sheet.on(Layer.CUT)]
    assert len(cuts) == 3
    for one, other in combinations(cuts, 2):
        assert one.distance(other) > 20


def test_the_sleeve_lies_with_its_upper_arm_line_on_the_bust_line() -> None:
    levels = {s.id: s.bounds for s in overview_sheet(invented.patterns()).on(Layer.LEVEL)}
    assert levels["bodice.front.level.bust"][1] == pytest.approx(
        levels["bodice.sleeve.level.upper_arm"][1], abs=1e-9
    )


def test_the_scale_bar_is_as_long_as_it_says() -> None:
    text = svg_text(overview_sheet(invented.patterns(), "The kite"))
    x0, _, x1, _ = shapes(text, "scale-check")["scale-check.bar"].bbox()
    assert x1 - x0 == pytest.approx(100.0, abs=1e-3)
    assert ">10 cm<" in text


def test_edges_keep_their_length_on_the_overview() -> None:
    read = shapes(svg_text(overview_sheet(invented.patterns())), "stitch-line")
    for cut_piece in invented.patterns()[0].pieces:
        for edge in cut_piece.piece.edges:
            name = f"bodice.{cut_piece.piece.name}.{edge.name}"
            assert length(read[name]) == pytest.approx(edge.length, abs=0.01)


def test_two_garments_may_have_pieces_of_one_name() -> None:
    bodice, coat = invented.patterns()[0], Pattern("coat", "shell", (invented.front(),))
    ids = [stroke.id for stroke in overview_sheet((bodice, coat)).strokes]
    assert len(ids) == len(set(ids))


def test_a_costume_without_a_piece_still_gives_a_page() -> None:
    assert overview_sheet((Pattern("bodice", "shell"),), "Nothing yet").width > 0


def test_the_picture_is_the_same_byte_for_byte_and_not_empty(tmp_path: Path) -> None:
    sheet = overview_sheet(invented.patterns(), "The kite $x^2$ \u70b9")
    for name in ("one.png", "two.png"):
        overview_png(sheet, tmp_path / name, dpi=40)
    assert (tmp_path / "one.png").read_bytes() == (tmp_path / "two.png").read_bytes()
    picture = imread(tmp_path / "one.png")
    assert picture.shape[1] / picture.shape[0] == pytest.approx(sheet.width / sheet.height, rel=0.01)
    assert 0.005 < (picture[..., :3].min(axis=2) < 0.5).mean() < 0.3  # ink, as a share of the page


def test_a_row_holds_one_cloth_after_another_and_both_hands_side_by_side() -> None:
    # Common practice: a cutter takes up all that lies on one cloth before the next.
    costume = read_costume(COSTUMES / "lamplighter.toml")
    uneven = replace(costume, wearer=costume.wearer.changed(shoulder_drop=(36.0, 51.0)))
    page = overview([garment.pattern for garment in make(uneven).garments])
    for garment in ("coat", "shirt"):
        own = [item.cut_piece.piece for item in page.laid if item.garment == garment]
        cloths = [piece.material for piece in own]
        assert len(list(groupby(cloths))) == len(set(cloths)) > 1
        hands = [(piece.base or piece.name, piece.material) for piece in own]
        assert len(list(groupby(hands))) == len(set(hands)) < len(hands)
    filled = sum(polygon(item.cut_piece.cut).area for item in page.laid) / (page.width * page.height)
    assert filled > 0.2  # 0.17 with a row for each garment, in the draft's order: half the page stood empty
