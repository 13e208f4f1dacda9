"""The lining of skirts and capes: as wide as the shell, so much shorter, its hem free; by shapely and a ruler.

That such a lining ends 20 to 30 mm above the hem, is 3 mm wider at every seam and a hem of its own of 15 to 25 mm
is common practice.
"""

from __future__ import annotations

import pytest
from shapely.geometry import LineString, Point

from drafting.body import Body
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.stand_in import stand_ins
from drafting.draft.by_role import edges_as
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole
from drafting.ground.errors import DraftError
from drafting.making.rules import unsound
from tests.alter.styles import ring
from tests.blocks.figures import chart_woman, errors
from tests.drawn_bodies import drawn, far
from tests.making.orders import WOVEN, costume_of, order_of
from tests.worn.unusual import child

GARMENTS: dict[str, dict[str, object]] = {
    "straight": {"skirt_cut": "straight", "hem_more": 160.0},
    "gored": {"skirt_cut": "gored"},
    "half circle": {"skirt_cut": "half circle"},
    "cape": {},
}


def lined(body: Body, garment: str, **more: object) -> MadeGarment:
    block = "cape" if garment == "cape" else "skirt"
    return draft_garment(body, WOVEN, block, {"lining": "whole", **GARMENTS[garment], **more})


def sample() -> tuple[Body, ...]:
    return (chart_woman(), *drawn(2), *far()[::16], child(1160.0))


def hem_line(piece: Piece) -> LineString:
    points = [p for edge in edges_as(piece, EdgeRole.HEM) for p in edge.path.points(0.05)]
    return LineString([(p.real, p.imag) for p in points])


@pytest.mark.parametrize("garment", GARMENTS)
def test_a_lining_is_its_shell_so_much_shorter(garment: str) -> None:
    for body in sample():
        made = lined(body, garment, lining_shorter=40.0)
        assert errors(made) == [], (body.title, errors(made))
        linings = [piece for piece in made.draft.pieces if piece.material == "lining"]
        assert linings
        for lining in linings:
            (name,) = lining.lines
            shell = made.draft[name]
            assert lining.count == shell.count
            assert ring(shell).buffer(0.2).contains(ring(lining))
            hem = hem_line(shell)
            away = [
                hem.distance(Point(p.real, p.imag))
                for e in edges_as(lining, EdgeRole.HEM)
                for p in e.path.evenly(9)
            ]
            assert away == pytest.approx([40.0] * len(away), abs=0.3)
            waists = [sum(e.length for e in edges_as(p, EdgeRole.WAIST, EdgeRole.NECK)) for p in (shell, lining)]
            assert waists[0] == pytest.approx(waists[1], abs=0.01)
            assert all(15 <= (e.allowance or 0.0) <= 25 for e in edges_as(lining, EdgeRole.HEM))


@pytest.mark.parametrize("garment", GARMENTS)
def test_it_is_made_by_the_seams_of_the_shell_and_felled_in_once(garment: str) -> None:
    costume = costume_of(lined(chart_woman(), garment), WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    keys = [said.key for step in steps for said in step.say]
    assert keys.count("do.line_hung") == 1
    assert keys.count("do.lining") == 1


def test_tiers_are_told_that_a_plain_skirt_lines_them() -> None:
    made = draft_garment(chart_woman(), WOVEN, "skirt", {"lining": "whole", "skirt_cut": "tiered"})
    assert not any(piece.material == "lining" for piece in made.draft.pieces)
    assert any(f.check == "lining" and f.level == "warning" for f in made.findings)


def test_an_uneven_wearer_has_a_lining_for_each_hand() -> None:
    made = lined(stand_ins()[1], "straight")
    assert errors(made) == []
    assert any(piece.material == "lining" for piece in made.draft.pieces)


def slit_skirt(shorter: float) -> MadeGarment:
    """Return a straight skirt lined, so narrow at its hem that it has a slit to walk in."""
    chosen = {"lining": "whole", "skirt_cut": "straight", "lining_shorter": shorter}
    return draft_garment(chart_woman(), WOVEN, "skirt", chosen)


@pytest.mark.parametrize("shorter", [140.0, 149.0, 150.0, 300.0])
def test_a_lining_that_ends_above_the_slit_has_none_and_its_seam_runs_through(shorter: float) -> None:
    """By a ruler: the lining's centre below the zip is the shell's seam and slit, less what it is shorter."""
    made = slit_skirt(shorter)
    assert errors(made) == []
    (shell,) = (p for p in made.draft.pieces if not p.material and edges_as(p, EdgeRole.SLIT))
    (lining,) = (p for p in made.draft.pieces if p.lines == (shell.name,))
    (slit,) = edges_as(shell, EdgeRole.SLIT)
    assert slit.length == pytest.approx(150.0, abs=0.1)
    assert not edges_as(lining, EdgeRole.SLIT)
    assert lining["centre_seam"].length == pytest.approx(shell["centre_seam"].length + 150.0 - shorter, abs=0.5)
    costume = costume_of(made, WOVEN)
    assert unsound(costume, order_of(costume)) == ()


def test_a_lining_keeps_a_slit_that_its_shell_still_shows_above_its_hem() -> None:
    made = slit_skirt(100.0)
    slits = [e for p in made.draft.pieces if p.material == "lining" for e in edges_as(p, EdgeRole.SLIT)]
    assert [e.length for e in slits] == pytest.approx([50.0], abs=0.5)


def test_a_lining_that_finds_no_room_is_refused_in_the_maker_s_own_words() -> None:
    with pytest.raises(DraftError) as refused:
        lined(chart_woman(), "cape", cape_ends="elbow", lining_shorter=300.0, cape_length=280.0)
    assert "tail" not in str(refused.value)
    assert "lining_shorter" in str(refused.value)


def test_a_hood_is_lined_with_its_cape_and_shows_no_lining_at_the_face() -> None:
    """A lined cape's hood showed its bare inside. Common practice: the lining is felled to what is turned in."""
    for body in sample():
        made = lined(body, "cape", cape_neck="hood")
        hood, lining = made.draft["hood"], made.draft["hood-lining"]
        assert (lining.material, lining.count) == ("lining", hood.count)
        assert ring(hood).buffer(0.2).contains(ring(lining))
        face = LineString([(z.real, z.imag) for z in hood["face"].path.points(0.5)])
        turned = hood["face"].allowance
        assert turned is not None
        assert 5.0 <= turned - ring(lining).distance(face) <= 15.0  # it covers the raw edge of what is turned in
        assert errors(made) == [], body.title
    costume = costume_of(made, WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    keys = [said.key for step in steps for said in step.say]
    assert (keys.count("do.line_hooded"), keys.count("do.line_hung")) == (1, 0)
    bare = draft_garment(body, WOVEN, "cape", {"cape_neck": "hood"}).draft
    assert "hood-lining" not in [piece.name for piece in bare.pieces]
