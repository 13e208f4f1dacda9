"""A style line through a piece that is stiffened: its interfacing is cut along the same line.

Areas and where a part lies are asked of shapely; that each part has an interfacing of its own is common practice.
"""

from __future__ import annotations

import itertools

import pytest
from shapely.geometry import Polygon

from drafting.draft.piece import EdgeKind, Piece
from drafting.ground.errors import InputError
from drafting.making.rules import unsound
from drafting.reading.style import CutWish
from drafting.reading.style_places import OutlinePlace
from tests.blocks.figures import chart_woman, errors
from tests.making.orders import WOVEN, costume_of, order_of, uneven
from tests.making.test_read_cold import made


def polygon(piece: Piece) -> Polygon:
    return Polygon([(p.real, p.imag) for p in piece.outline.flattened(0.05)])


def cut(piece: str, start: str, end: str, at: float = 0.5) -> CutWish:
    return CutWish(piece, OutlinePlace(start, share=at), OutlinePlace(end, share=0.5), "part")


@pytest.mark.parametrize(
    ("block", "asked", "wish"),
    [
        ("waistcoat", {}, cut("front", "side", "edge")),
        ("spencer", {}, cut("front", "panel", "edge")),
        ("cape", {}, cut("cape-stand", "neck", "top")),
        ("knee-breeches", {"fall_front": True}, cut("fall-facing", "fall_side", "centre", 0.9)),
    ],
)
def test_each_part_of_a_cut_piece_has_its_own_interfacing(
    block: str, asked: dict[str, object], wish: CutWish
) -> None:
    """One whole interfacing was to be fused onto both parts, one after the other."""
    whole = made(chart_woman(), block, asked=asked).draft
    stiff = [p for p in whole.pieces if p.material == "interfacing" and wish.piece in p.stiffens]
    garment = made(chart_woman(), block, asked=asked, style=(wish,))
    assert errors(garment) == []
    parts = [
        p for p in garment.draft.pieces if p.material == "interfacing" and {wish.piece, "part"} & {*p.stiffens}
    ]
    assert sorted(p.stiffens for p in parts) == sorted([(wish.piece,), ("part",)] * len(stiff))
    for part in parts:
        behind = polygon(garment.draft[part.stiffens[0]])
        assert (
            polygon(part).difference(behind).area <= 0.1 * polygon(part).area
        )  # it may lie under a dart that is closed
        assert [n.count for n in garment.draft.notions if n.piece == part.name] == [part.count]
    assert sum(polygon(p).area for p in parts) == pytest.approx(sum(polygon(p).area for p in stiff), rel=1e-3)
    costume = costume_of(garment, WOVEN)
    assert unsound(costume, order_of(costume)) == ()


def test_an_interfacing_that_the_line_does_not_reach_stays_whole() -> None:
    """The lapel's, where the line runs below the break."""
    garment = made(chart_woman(), "coat", asked={"stiff_front": "lapel"}, style=(cut("front", "panel", "edge"),))
    lapels = [p for p in garment.draft.pieces if p.material == "interfacing" and "lapel" in p.name]
    (before,) = [
        p
        for p in made(chart_woman(), "coat", asked={"stiff_front": "lapel"}).draft.pieces
        if p.material == "interfacing" and "lapel" in p.name
    ]
    assert len(lapels) == 1
    assert len(lapels[0].stiffens) == 1
    assert polygon(lapels[0]).area == pytest.approx(polygon(before).area)


@pytest.mark.parametrize("block", ["spencer", "tailcoat", "coat", "waistcoat", "shirt"])
def test_no_line_through_a_front_of_uneven_hands_breaks_the_row_of_its_buttons(block: str) -> None:
    """Where a line left the holes on one part and the buttons on the other the draft broke with no word said."""
    body = uneven(chart_woman())
    front = made(chart_woman(), block).draft["front"]
    names = [e.name for e in front.edges if e.kind in (EdgeKind.SEAM, EdgeKind.HEM) and e.length > 90]
    drafted = 0
    for start, end in itertools.combinations(names, 2):
        try:
            garment = made(body, block, style=(cut("front", start, end),))
        except InputError:
            continue
        drafted += 1
        assert garment.draft.pieces
    assert drafted


def test_a_band_along_a_hem_stays_whole_behind_the_part_that_has_the_hem() -> None:
    wish = CutWish(
        "tail-2", OutlinePlace("front", share=0.4), OutlinePlace("back", share=0.4), "part", holds="waist"
    )
    garment = made(chart_woman(), "tailcoat", style=(wish,))
    (band,) = [p for p in garment.draft.pieces if p.name == "tail-2-band"]
    hem = next(p.name for p in garment.draft.pieces if p.name in ("tail-2", "part") and "hem" in p)
    assert band.stiffens == (hem,)
