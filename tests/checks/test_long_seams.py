"""Notches on long seams: where they are added, where not, and what the checks say of missing ones.

The 250 mm, the levels and the strokes are the kit's demands (single front, double back: common practice).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

import pytest

from drafting.body.wearer import wearer
from drafting.checks.notches import long_seams_notched, notches_apart
from drafting.costume.garment import draft_garment
from drafting.draft.draft import Draft, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Level, Notch, Piece
from drafting.draft.roles import LevelKind, NotchKind, PieceRole, SeamKind
from drafting.draft.walk import marked, notched
from drafting.geometry import line
from drafting.ground.findings import Finding

BODY = wearer({"height": 1700, "bust_girth": 920, "waist_girth": 760, "hip_girth": 990})


def panel(name: str, height: float, role: PieceRole, *levels: tuple[LevelKind, float]) -> Piece:
    """Return a plain upright panel, 200 mm wide; its right side is `side`, its left one `far`."""
    corners = (0j, 200 + 0j, complex(200, height), complex(0, height), 0j)
    names = ("hem", "side", "top", "far")
    kinds = (EdgeKind.HEM, EdgeKind.SEAM, EdgeKind.HEM, EdgeKind.SEAM)
    edges = (Edge(n, line(a, b), k) for n, a, b, k in zip(names, corners, corners[1:], kinds, strict=False))
    across = tuple(Level(k.value, (line(1j * y, 200 + 1j * y),), k) for k, y in levels)
    return Piece(name, tuple(edges), levels=across, role=role)


def joined(front: Piece, back: Piece, **about: Any) -> Draft:
    seam = Seam("side", ((front.name, "side"),), ((back.name, "far"),), start=None, end=None, **about)
    return Draft((front, back), (seam,))


def two(height: float, *levels: tuple[LevelKind, float], kind: SeamKind = SeamKind.SIDE, **about: Any) -> Draft:
    front = panel("front", height, PieceRole.FRONT, *levels)
    return joined(front, panel("back", height, PieceRole.BACK, *levels), kind=kind, **about)


def at(draft: Draft, piece: str, edge: str) -> list[tuple[str, float, int]]:
    return [(n.name, n.at, n.count) for n in draft[piece][edge].notches]


def errors(found: Iterator[Finding]) -> list[Finding]:
    return [one for one in found if one.level == "error"]


def test_a_long_seam_is_marked_where_a_level_crosses_it_on_both_its_edges() -> None:
    draft = notched(two(400, (LevelKind.WAIST, 150.0)))
    assert at(draft, "front", "side") == [("waist", pytest.approx(150), 1)]
    assert at(draft, "back", "far") == [("waist", pytest.approx(250), 1)]  # it runs down


def test_a_level_that_only_the_other_piece_draws_is_marked_too() -> None:
    back = panel("back", 400, PieceRole.BACK, (LevelKind.HIP, 120.0))
    draft = notched(joined(panel("front", 400, PieceRole.FRONT), back))
    assert at(draft, "front", "side") == [("hip", pytest.approx(120), 1)]


def test_a_long_seam_that_no_level_crosses_has_one_notch_off_its_middle() -> None:
    draft = notched(two(400, (LevelKind.PLAIN, 150.0)))
    ((_, place, _),) = at(draft, "front", "side")
    assert 20 < abs(place - 200) < 100
    assert at(draft, "back", "far")[0][1] == pytest.approx(400 - place)


def test_a_seam_of_250_mm_or_less_is_left_alone_and_one_a_little_longer_is_not() -> None:
    assert at(notched(two(250)), "front", "side") == []
    assert len(at(notched(two(251)), "front", "side")) == 1


def test_a_level_at_the_very_end_or_beside_a_notch_that_stands_adds_none() -> None:
    ends = two(400, (LevelKind.HIP, 0.0), (LevelKind.WAIST, 190.0), notches=(SeamNotch("mine", 200, 200),))
    assert at(notched(ends), "front", "side") == [("mine", 200, 1)]


def test_levels_along_a_facing_band_are_no_notches_and_darts_have_none() -> None:
    for kind in (SeamKind.DART, SeamKind.ATTACHED):
        names = [
            name for name, _, _ in at(notched(two(400, (LevelKind.WAIST, 150.0), kind=kind)), "front", "side")
        ]
        assert "waist" not in names
    assert at(notched(two(400, kind=SeamKind.DART)), "front", "side") == []


def test_a_seam_with_the_quarters_of_gathers_gets_no_more() -> None:
    quarters = tuple(SeamNotch(f"q{i}", 100.0 * i, 100.0 * i, kind=NotchKind.QUARTER) for i in (1, 2, 3))
    draft = notched(two(400, (LevelKind.WAIST, 150.0), notches=quarters))
    assert [name for name, _, _ in at(draft, "front", "side")] == ["q1", "q2", "q3"]


def test_notches_are_double_where_the_seam_lies_behind() -> None:
    back, tail = panel("back", 400, PieceRole.BACK), panel("side", 400, PieceRole.SIDE_BODY)
    ((_, _, strokes),) = at(notched(joined(back, tail)), "back", "side")
    assert strokes == 2


def test_ease_lies_where_the_seam_says_so_and_the_notch_outside_it_meets_exactly() -> None:
    front = panel("front", 400, PieceRole.FRONT, (LevelKind.WAIST, 300.0))
    draft = joined(front, panel("back", 394, PieceRole.BACK), ease=6.0, eased=(0.0, 150.0))
    (notch,) = notched(draft).seams[0].notches
    assert (notch.a, notch.b) == pytest.approx((300, 294))


def test_two_seams_that_mark_one_place_of_an_edge_mark_it_once() -> None:
    """An edge of a pair is sewn to a left piece and to a right one, each seam with its own quarters."""
    pieces = [panel(n, 400, PieceRole.FRONT) for n in ("front", "left", "right")]
    quarter = (SeamNotch("quarter", 100.0, 100.0, kind=NotchKind.QUARTER),)
    seams = [Seam(n, (("front", "side"),), ((n, "far"),), notches=quarter) for n in ("left", "right")]
    seams[1] = replace(seams[1], notches=(replace(quarter[0], name="other", a=101.0),))
    draft = marked(Draft(tuple(pieces), tuple(seams)))
    assert at(draft, "front", "side") == [("quarter", 100.0, 1)]
    assert len(at(draft, "right", "far")) == 1


def test_a_piece_sewn_to_its_own_twin_is_marked_once() -> None:
    front = panel("front", 400, PieceRole.FRONT)
    twin = Seam("centre", (("front", "side"),), (("front", "side"),), kind=SeamKind.CENTRE)
    assert len(at(notched(Draft((front,), (twin,))), "front", "side")) == 1


# ---------------------------------------------------------------------------------- the checks


def test_a_long_seam_without_notches_on_one_edge_is_an_error() -> None:
    draft = notched(two(400))
    assert not errors(long_seams_notched(draft))
    bare = draft.with_pieces([draft["back"].with_edges(replace(draft["back"]["far"], notches=()))])
    (found,) = errors(long_seams_notched(bare))
    assert "back far" in found.message
    assert not errors(long_seams_notched(two(250)))


def test_two_notches_at_one_place_are_an_error() -> None:
    draft = two(400)
    close = (Notch("one", 100.0), Notch("other", 101.5))
    crowded = draft.with_pieces([draft["front"].with_edges(replace(draft["front"]["side"], notches=close))])
    (found,) = errors(notches_apart(crowded))
    assert found.where == "front.side"
    assert not errors(notches_apart(draft))


# ---------------------------------------------------------------------------------- the garments


def _named(garment: str, seam: str, **choices: Any) -> list[tuple[str, int]]:
    made = draft_garment(BODY, None, garment, choices)
    (found,) = (s for s in made.draft.seams if s.name == seam)
    for chain, backwards in ((found.a, False), (found.b, True)):
        assert any(made.draft.edge(ref).notches for ref in chain), (seam, backwards)
    return [(n.name, n.count) for n in found.notches]


CASES: dict[str, Callable[[], list[tuple[str, int]]]] = {
    "waist side": lambda: _named("shirt", "side"),
    "balance shoulder": lambda: _named("bodice", "shoulder"),
    "hip front crotch": lambda: _named("breeches", "front crotch"),
    "hip back crotch": lambda: _named("trousers", "back crotch"),
    "side waistband": lambda: _named("trousers", "waistband"),
    "knee inside leg": lambda: _named("trouser", "inside leg"),
    "bust princess": lambda: _named("bodice", "princess", length="hip", bust_dart="shoulder-princess"),
    "waist princess": lambda: _named("bodice", "princess", length="hip", bust_dart="shoulder-princess"),
    "balance centre back": lambda: _named("tailcoat", "centre back"),
}


@pytest.mark.parametrize("case", CASES)
def test_the_seams_of_the_garments_carry_what_a_cutter_marks(case: str) -> None:
    wanted = case.split()[0]
    found = dict(CASES[case]())
    assert wanted in found
    assert found[wanted] == (2 if "back" in case else 1)
