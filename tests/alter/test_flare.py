"""Slash and spread, evenly bent: one edge grows by exactly what was let in, nothing else changes.

Bodies: drawn and far ones, bdims and the chart woman (tests/drawn_bodies.py, tests/bodies.py).
Choices and panels are invented.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.alter.fan import edge_across
from drafting.alter.fullness import Wish, filled, flared, fuller
from drafting.body import Body
from drafting.checks import check_draft
from drafting.draft.draft import Draft, EdgeRef, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.walk import notched, walk
from drafting.fabric import Fabric
from drafting.geometry import Path, curve_through, line
from drafting.geometry.area import is_simple
from drafting.ground.errors import DraftError
from tests.blocks.figures import chart_woman, pair
from tests.bodies import bdims
from tests.drawn_bodies import drawn, far
from tests.published import named, single

SAME = 0.01
"""mm: an edge that is not opened keeps its length (common practice: 0.1 is asked for)."""


def panel(width: float = 400.0, length: float = 550.0, dip: float = 0.0, lean: float = 0.0) -> Piece:
    """Return a skirt panel: waist dipping by `dip`, sides leaning out by `lean`, hem straight."""
    a, b = complex(-lean, 0), complex(width + lean, 0)
    c, d = complex(width, length), complex(0, length)
    waist = line(c, d)
    if dip:
        waist = curve_through(c, complex(width / 2, length - dip), d, complex(-1, -0.1), complex(-1, 0.1))
    return Piece(
        "panel",
        (
            Edge("hem", line(a, b), EdgeKind.HEM),
            Edge("right", line(b, c)),
            Edge("waist", waist),
            Edge("left", line(d, a)),
        ),
        levels=(Level("middle", (line(complex(0, length / 2), complex(width, length / 2)),)),),
    )


def opened(piece: Piece, cuts: int, each: float, edge: str = "hem", pivot: str = "waist") -> Piece:
    return flared(Draft((piece,)), (piece.name, edge), (pivot,), cuts=cuts, each=each)[piece.name]


def kinks(path: Path) -> list[float]:
    """Return the turn (degrees) at every joint of a path."""
    return [abs(math.degrees(cmath.phase(b.tangent(0.0) / a.tangent(1.0)))) for a, b in pairwise(path.segments)]


def unchanged(old: Piece, new: Piece, edge: str) -> None:
    """Every other edge as long, every corner as it was, one simple ring, the same order of edges."""
    assert [e.name for e in new.edges] == [e.name for e in old.edges]
    for index, one in enumerate(old.edges):
        if one.name != edge:
            assert new[one.name].length == pytest.approx(one.length, abs=SAME)
        assert new.corner(index) == pytest.approx(old.corner(index), abs=0.01)
    assert is_simple(new.outline)
    assert new.area > old.area


def test_six_cuts_of_four_centimetres_add_twenty_four() -> None:
    # Common practice: n cuts opened by d add n x d to the hem and 0 at the pivot edge.
    old = panel()
    new = opened(old, 6, 40.0)
    grown = new["hem"].length - old["hem"].length
    assert grown == pytest.approx(10 * single("six-cuts"), abs=0.1)
    assert new["waist"].length == pytest.approx(old["waist"].length, abs=0.1)
    unchanged(old, new, "hem")


def test_a_strip_spread_to_a_cones_edges_is_the_cones_sector() -> None:
    # Plane geometry: top 40, bottom 100, slant 55 has the angle 1.09091, inner radius 36.6667.
    cone = named("cone")
    new = opened(panel(400.0, 550.0), 10, 60.0)
    turned = cmath.phase(new["right"].path.leave / -new["left"].path.leave)
    assert abs(turned) == pytest.approx(cone["angle_rad"], abs=1e-4)
    waist = new["waist"].path
    for share in (0.1, 0.5, 0.9):
        radius = 1 / abs(waist.curvature(share * waist.length))
        assert radius == pytest.approx(10 * cone["radius"], rel=0.003)
    # plane geometry: half way down the sector the arc is the mean of top and bottom
    assert new.levels[0].length == pytest.approx(700.0, abs=0.5)


def test_no_line_gets_a_kink() -> None:
    # Joined corners are smooth (common practice); here: no joint within an edge turns.
    new = opened(panel(dip=12.0, lean=60.0), 4, 70.0)
    for name in ("waist", "hem"):
        assert max(kinks(new[name].path), default=0.0) < 0.05, name


@settings(max_examples=25, deadline=None)
@given(
    width=st.floats(150, 700),
    length=st.floats(200, 1000),
    dip=st.floats(0, 15),
    lean=st.floats(0, 80),
    cuts=st.integers(1, 8),
    each=st.floats(2, 50),
)
def test_any_panel_grows_by_the_sum_and_keeps_the_rest(
    width: float, length: float, dip: float, lean: float, cuts: int, each: float
) -> None:
    # The same as a property; panels invented.
    old = panel(width, length, dip, lean)
    new = opened(old, cuts, each)
    assert new["hem"].length - old["hem"].length == pytest.approx(cuts * each, abs=0.01)
    unchanged(old, new, "hem")


def people() -> Iterator[Body]:
    yield chart_woman()
    yield from (*drawn(2), *far()[::13], *bdims(6))


@pytest.mark.parametrize(
    "wish",
    [
        Wish(("front", "hem"), "shoulder", 4, 160.0),
        Wish(("back", "hem"), "", 4, 160.0),
        Wish(("sleeve", "hem"), ratio=2.2, gather=True),
        Wish(("back", "side"), "centre", 3, 60.0),
    ],
    ids=lambda wish: ".".join(wish.edge),
)
def test_flared_pieces_of_many_bodies_have_no_error(wish: Wish) -> None:
    # By the checks: seams walk, corners join, girths and darts hold.
    for body in people():
        plain = pair(body, length="hip")
        if wish.edge == ("back", "side"):
            with pytest.raises(DraftError, match="fold"):
                fuller(plain, wish)
            continue
        full = notched(fuller(plain, wish))
        assert [f.message for f in check_draft(full, body) if f.level == "error"] == [], body.title
        unchanged(plain[wish.edge[0]], full[wish.edge[0]], wish.edge[1])


def test_a_fold_stays_where_it_lay() -> None:
    plain = pair(chart_woman(), length="hip")
    full = flared(plain, ("front", "hem"), ("shoulder",), cuts=4, each=40.0)
    old, new = plain["front"]["centre"].path, full["front"]["centre"].path
    assert abs(new.start - old.start) + abs(new.end - old.end) < 1e-6


def test_the_bust_point_stays_with_its_dart() -> None:
    # Common practice: the dart's tip stays 20-35 mm short of the bust point.
    plain = pair(chart_woman(), length="hip")
    full = flared(plain, ("front", "hem"), ("shoulder",), cuts=4, each=40.0)

    def gap(draft: Draft) -> float:
        front = draft["front"]
        return abs(front["bust_dart_in"].path.end - front.points["bust_point"])

    assert gap(full) == pytest.approx(gap(plain), abs=SAME)


def band_and_panel() -> Draft:
    """Return a panel whose waist is sewn to a band of the same length, 320 mm, with a notch."""
    piece = panel(320.0)
    low, high = 0j, 320 + 0j
    band = Piece(
        "band",
        (
            Edge("panel", line(low, high)),
            Edge("end", line(high, high + 40j)),
            Edge("top", line(high + 40j, low + 40j)),
            Edge("far", line(low + 40j, low)),
        ),
    )
    seam = Seam(
        "band",
        (("panel", "waist"),),
        (("band", "panel"),),
        start=None,
        end=None,
        notches=(SeamNotch("side", 80.0, 80.0),),
    )
    return Draft((piece, band), (seam,))


def test_a_waist_of_eighty_is_marked_in_quarters_facing_the_band_of_thirty_two() -> None:
    # Common practice: band 32.0, ratio 2.5: exactly 80.0, 20/40/60 facing 8/16/24.
    full = notched(filled(band_and_panel(), ("panel", "waist"), ("hem",), ratio=2.5))
    found = walk(full, full.seams[0])
    assert (found.a_length, found.a_sewn, found.b_length) == pytest.approx((800.0, 320.0, 320.0))
    assert found.gather_ratio == pytest.approx(2.5)
    marks = [(n.a, n.b) for n in full.seams[0].notches if n.name.startswith("quarter")]
    wide, narrow = zip(*marks, strict=True)
    assert wide == pytest.approx((200.0, 400.0, 600.0))
    assert narrow == pytest.approx((80.0, 160.0, 240.0))
    side = next(n for n in full.seams[0].notches if n.name == "side")
    assert (side.a, side.b) == pytest.approx((200.0, 80.0))  # an old notch keeps its share
    on_band = {n.name: n.at for n in full["band"]["panel"].notches}
    # outlines run against each other: 240 mm from the seam's start is 80 mm along the band's edge
    assert on_band["quarter_3"] == pytest.approx(80.0)


@pytest.mark.parametrize(
    ("wish", "flat"), [({"ratio": 1.5}, 480.0), ({"flat": 640.0}, 640.0), ({"percent": 100}, 640.0)]
)
def test_gathers_by_ratio_flat_length_and_percentage(wish: dict[str, float], flat: float) -> None:
    # Common practice: flat = ratio x finished; a theatre's 100 % is as much again.
    full = filled(band_and_panel(), ("panel", "waist"), ("hem",), **wish)
    assert full.edge(("panel", "waist")).length == pytest.approx(flat, abs=0.01)
    assert full.edge(("panel", "waist")).sewn_length == pytest.approx(320.0)


def test_an_edge_that_is_sewn_on_is_gathered_even_where_only_flare_was_asked() -> None:
    full = flared(band_and_panel(), ("panel", "waist"), ("hem",), cuts=4, each=40.0)
    assert walk(full, full.seams[0]).difference == pytest.approx(0.0, abs=1e-6)


def test_thick_cloth_gathered_is_warned_of_and_thin_is_not() -> None:
    # Common practice: coating of 2 mm at 3.0 is about 6 mm before the band; chiffon 0.2.
    for thickness, warned in ((2.0, True), (0.2, False)):
        full = fuller(
            band_and_panel(),
            Wish(("panel", "waist"), "hem", ratio=3.0, gather=True),
            Fabric("cloth, invented", thickness=thickness),
        )
        said = [f for f in full.findings if f.level == "warning"]
        assert bool(said) is warned
        if warned:
            assert "6 mm" in said[0].message


def test_both_hands_are_opened_where_they_are_drafted_apart() -> None:
    piece = panel()
    right = replace(piece.mirrored(), name="panel-right", hand="right", base="panel")
    left = replace(piece, name="panel-left", hand="left", base="panel")
    full = fuller(Draft((left, right)), Wish(("panel", "hem"), "waist", 3, 90.0))
    for name in ("panel-left", "panel-right"):
        assert full[name]["hem"].length == pytest.approx(490.0, abs=0.01)
    assert full["panel-right"].area == pytest.approx(full["panel-left"].area)


def test_girths_count_what_was_let_in_at_their_level() -> None:
    plain = pair(chart_woman(), length="hip")
    full = flared(plain, ("back", "hem"), ("shoulder",), cuts=4, each=40.0)
    old, new = ({g.level: g for g in d.girths}["hip"] for d in (plain, full))
    assert new.settled_ease - old.settled_ease == pytest.approx(2 * 160.0, abs=2.0)
    assert new.asked_ease - old.asked_ease == pytest.approx(new.settled_ease - old.settled_ease)


def test_what_lies_across_is_the_pivot_where_none_is_named() -> None:
    draft = pair(chart_woman(), length="hip")
    assert sorted(edge_across(draft["sleeve"], "hem")) == ["cap_back", "cap_front"]
    assert edge_across(draft["back"], "hem") == ("shoulder",)
    assert edge_across(panel(), "waist") == ("hem",)


REFUSED: list[tuple[EdgeRef, str, str]] = [
    (("panel", "top"), "waist", r"no edge top; known are hem, right, waist and left"),
    (("panel", "hem"), "middle", r"no edge middle.*waist"),
    (("panel", "hem"), "hem", "two edges across"),
    (("panel", "hem"), "left, right", "beside each other"),
]


@pytest.mark.parametrize(("edge", "pivot", "said"), REFUSED)
def test_what_cannot_be_opened_is_refused_with_what_would_be_right(edge: EdgeRef, pivot: str, said: str) -> None:
    with pytest.raises(DraftError, match=said):
        fuller(Draft((panel(),)), Wish(edge, pivot, 4, 100.0))


def test_a_piece_that_would_lie_over_itself_is_refused_with_the_way_out() -> None:
    with pytest.raises(DraftError, match="gores"):
        opened(panel(400.0, 200.0), 10, 200.0)


def test_a_cap_that_is_eased_in_is_sent_to_the_puff() -> None:
    # Common practice: below the notches the ratio is 1.
    with pytest.raises(DraftError, match="puff_width"):
        fuller(pair(chart_woman()), Wish(("sleeve", "cap_front"), "hem", ratio=1.5, gather=True))
