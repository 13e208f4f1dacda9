"""Pockets of a costume that is put on another wearer: moved or made smaller, told, never a reason to refuse her.

Where they lie is asked of shapely; the least move is worked out by hand.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from shapely.geometry import Polygon

from drafting.alter.pocket import with_pocket
from drafting.costume.make import make
from drafting.costume.whole import read_whole_costume
from drafting.draft.piece import Edge, Piece
from drafting.geometry import Path as Line
from drafting.geometry import line
from drafting.ground.errors import DraftError
from drafting.reading.pockets import PocketWish
from drafting.shaping.details.moved_pocket import moved_to_fit
from tests.alter.test_pocket import made, ring
from tests.making.figures import ROOT
from tests.worn.unusual import made_up

NEAR = PocketWish("front", "shoulder", "patch", width=110.0, height=130.0, inside=10.0)


def square(side: float) -> Piece:
    corners = (0j, complex(side, 0), complex(side, side), complex(0, side))
    names = ("hem", "side", "top", "front")
    ends = (*corners[1:], corners[0])
    return Piece("front", tuple(Edge(n, line(a, b)) for n, a, b in zip(names, corners, ends, strict=True)))


def test_the_least_move_and_no_smaller_than_need_be() -> None:
    """By hand: 80 x 60 mm in a square of 200, hanging out by 12 to the left; one of 400 mm fits at no size."""

    def drawn(wish: PocketWish) -> Line:
        w, h = wish.width, wish.height
        x, y = -12.0, 100.0
        path = [complex(x, y - h), complex(x + w, y - h), complex(x + w, y), complex(x, y)]
        return Line.joined(line(a, b) for a, b in zip(path, (*path[1:], path[0]), strict=True))

    wish = PocketWish("front", "top", "patch", width=80.0, height=60.0, inside=100.0)
    moved = moved_to_fit(square(200.0), wish, drawn, 1.5)
    assert moved is not None
    assert moved.wish == wish
    assert moved.shift == pytest.approx(12.0, abs=0.2)
    assert moved_to_fit(square(200.0), replace(wish, width=400.0), drawn, 1.5) is None
    # 230 mm wide: at 0.8 of it, 184 mm, it lies inside.
    narrower = moved_to_fit(square(200.0), replace(wish, width=230.0), drawn, 1.5)
    assert narrower is not None
    assert narrower.wish.width == pytest.approx(184.0)


def test_it_gives_way_on_another_wearer_alone() -> None:
    draft = made("shirt").draft
    with pytest.raises(DraftError, match="sticks out"):
        with_pocket(draft, NEAR, 1)
    moved = with_pocket(draft, replace(NEAR, gives_way=True), 1)
    mark = next(m for m in moved["front"].placements if m.what == "pocket")
    outline = Polygon([(p.real, p.imag) for p in mark.path.flattened(0.05)])
    assert outline.difference(ring(moved["front"])).area < 2.0
    (said,) = [f for f in moved.findings if f.check == "pocket"]
    assert said.level == "warning"
    assert "would stick out" in said.message
    with pytest.raises(DraftError, match="sticks out"):  # farther off than a pocket is moved
        with_pocket(draft, replace(NEAR, gives_way=True, width=900.0), 1)


@pytest.mark.parametrize("who", ["child of 104 cm", "uneven shoulders"])
@pytest.mark.parametrize("costume", ["toll-keeper", "clock-mender", "ferrywoman"])
def test_nobody_is_refused_a_shipped_costume_for_its_pockets(costume: str, who: str, tmp_path: Path) -> None:
    """Of a cast of six, two were not drafted: a breast pocket stuck out by a millimetre."""
    body = next(body for body in made_up() if body.title == who)
    lines = [
        f"{name} = {m.mm:.1f}" for name, m in body.measures.items() if m.source == "measured" and m.left is None
    ]
    lines += [
        f"{name} = {{ left = {m.left:.1f}, right = {m.right:.1f} }}"
        for name, m in body.measures.items()
        if m.source == "measured" and m.left is not None
    ]
    wearer = tmp_path / "wearer.toml"
    wearer.write_text('title = "other"\nunit = "mm"\n[measures]\n' + "\n".join(lines) + "\n", "utf-8")
    costume_file = ROOT / f"measurements/costumes/{costume}.toml"
    for garment in make(read_whole_costume(costume_file, wearer)).garments:
        for piece in garment.draft.pieces:
            for mark in (m for m in piece.placements if m.what == "pocket"):
                outline = Polygon([(p.real, p.imag) for p in mark.path.flattened(0.05)])
                assert outline.difference(ring(piece)).area < 2.0
