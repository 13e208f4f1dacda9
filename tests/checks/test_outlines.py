"""Broken outlines are found: crossing, clockwise, slivers, a point on the fold."""

from __future__ import annotations

from dataclasses import replace

from drafting.checks import check_draft, outlines
from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import line
from drafting.ground.findings import Finding
from tests.checks.figures import ADULT, sound, with_edge


def errors(draft: Draft, check: str) -> list[Finding]:
    found = check_draft(draft, ADULT)
    return [f for f in found if f.level == "error" and f.check == check]


def ring(*corners: complex, kind: EdgeKind = EdgeKind.FREE, names: str = "abcdefgh") -> Piece:
    ends = [*corners[1:], corners[0]]
    edges = (Edge(n, line(p, q), kind) for n, p, q in zip(names, corners, ends, strict=False))
    return Piece("flap", tuple(edges))


def test_an_outline_that_crosses_itself_is_an_error() -> None:
    bow = ring(0j, 100 + 0j, 100 + 80j, 50 - 20j)
    assert [f.where for f in errors(Draft((bow,)), "outline")] == ["flap"]
    assert not errors(Draft((ring(0j, 100 + 0j, 100 + 80j, 50 + 90j),)), "outline")


def test_an_outline_that_runs_clockwise_is_an_error() -> None:
    clockwise = ring(0j, 80j, 100 + 80j, 100 + 0j)
    (found,) = errors(Draft((clockwise,)), "area")
    assert found.value == -8000.0


def test_a_sliver_of_an_edge_is_an_error_unless_it_is_declared_short() -> None:
    corners = (0j, 100 + 0j, 102.5 + 0j, 102.5 + 80j)
    (found,) = errors(Draft((ring(*corners),)), "edge length")
    assert (found.where, found.value) == ("flap.b", 2.5)
    flap = ring(*corners)
    declared = flap.with_edges(replace(flap["b"], role=EdgeRole.SHORT))
    assert not errors(Draft((declared,)), "edge length")


def test_the_least_edge_shrinks_with_a_doll() -> None:
    # Ours: constants shrink with bust / 900 below a bust of 700 mm.
    flap = Draft((ring(0j, 100 + 0j, 102.5 + 0j, 102.5 + 80j),))
    doll = check_draft(flap, {"bust_girth": 400.0})
    assert [f for f in doll if f.check == "edge length"] == []


def test_a_neckline_that_comes_to_a_point_on_the_fold_is_an_error() -> None:
    front = sound()["front"]
    slanted = line(80 + 400j, 330j)
    draft = with_edge(sound(), "front", replace(front["neck"], path=slanted))
    (found,) = errors(draft, "fold corner")
    assert found.where == "front.neck"
    assert "so the whole piece has a point there" in found.message


def test_outline_checks_hold_on_the_sound_draft() -> None:
    every = (
        *outlines.outlines_simple(sound()),
        *outlines.outlines_anticlockwise(sound()),
        *outlines.edges_long_enough(sound(), 1.0),
        *outlines.folds_square(sound()),
    )
    assert {f.level for f in every} == {"ok"}
