"""A band along the hem of what hangs: where it lies, how often it is cut, when it is laid on; by shapely.

That a hem which drops on the bias is firmed only once it has hung and is levelled is common practice.
"""

from __future__ import annotations

import numpy as np
import pytest
from shapely import union_all
from shapely.geometry import LineString

from drafting.body import Body
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.by_role import edges_as
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.ground.errors import DraftError
from drafting.making.rules import unsound
from drafting.worn.sewn import sewn_mesh
from tests.alter.styles import ring
from tests.blocks.figures import chart_woman, errors
from tests.drawn_bodies import drawn, far
from tests.making.orders import WOVEN, costume_of, first, order_of
from tests.worn.garments import PLIES
from tests.worn.unusual import child

GARMENTS: dict[str, tuple[str, dict[str, object]]] = {
    "straight": ("skirt", {"skirt_cut": "straight"}),
    "gored": ("skirt", {"skirt_cut": "gored"}),
    "half circle": ("skirt", {"skirt_cut": "half circle"}),
    "tiers": ("skirt", {"skirt_cut": "tiered"}),
    "cape": ("cape", {}),
    "overskirt": ("overskirt", {}),
    "peplum": ("peplum-top", {}),
    "coat": ("coat", {"stiff_front": "lapel", "vent": "sides"}),
}
DEEP = 45.0


def banded(body: Body, garment: str, **more: object) -> MadeGarment:
    block, own = GARMENTS[garment]
    return draft_garment(body, WOVEN, block, {"stiff_hem": "band", "hem_band": DEEP, **own, **more})


def bands_of(made: MadeGarment) -> dict[str, list[Piece]]:
    found: dict[str, list[Piece]] = {}
    for piece in made.draft.pieces:
        if piece.role is PieceRole.HEM_BAND:
            found.setdefault(piece.stiffens[0], []).append(piece)
    return found


@pytest.mark.parametrize("garment", GARMENTS)
def test_the_parts_of_a_band_cover_the_cloth_along_the_hem_and_no_more(garment: str) -> None:
    for body in (chart_woman(), *drawn(2), *far()[::24]):
        made = banded(body, garment)
        assert errors(made) == [], body.title
        found = bands_of(made)
        assert found
        for name, parts in found.items():
            shell = made.draft[name]
            hem = [edge.path for edge in edges_as(shell, EdgeRole.HEM, EdgeRole.BOTTOM)]
            lines = [LineString([(z.real, z.imag) for z in path.points(0.2)]) for path in hem]
            along = union_all([line.buffer(DEEP, cap_style="flat") for line in lines]).intersection(ring(shell))
            laid = union_all([ring(part) for part in parts])
            assert laid.difference(ring(shell).buffer(0.5)).area < 1.0
            assert laid.symmetric_difference(along).area < 0.04 * along.area, (body.title, name)
            cut = {part.count for part in parts}
            assert cut == {shell.count} or (shell.fold_edge is not None and cut <= {1, 2})


@pytest.mark.parametrize(("garment", "late"), [("straight", False), ("half circle", True), ("cape", True)])
def test_a_hem_that_drops_is_firmed_once_it_is_level(garment: str, late: bool) -> None:
    costume = costume_of(banded(chart_woman(), garment), WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    at = {one.key: step.n for step in steps for one in step.say}
    bands = sum(len(parts) for parts in bands_of(costume.garments[0]).values())
    if late:
        hung = max(at.get("do.hang", 0), at.get("do.hang_neck", 0))
        assert 0 < hung < at["do.fuse_bands"] < at["do.hem"]
        return
    assert "do.fuse_bands" not in at
    early = [step for step in steps if step.verb == "fuse" and step.n < first(steps, "skirt", "join")]
    assert len(early) >= bands


def test_worn_the_hem_is_of_two_layers_and_the_rest_of_one() -> None:
    body = chart_woman()
    bare = sewn_mesh(draft_garment(body, WOVEN, "skirt", GARMENTS["half circle"][1]).draft, "skirt", PLIES, 40.0)
    firm = sewn_mesh(banded(body, "half circle").draft, "skirt", PLIES, 40.0)
    for mesh, heavier in ((bare, False), (firm, True)):
        hem = np.unique(np.concatenate([line for (_, edge), line in mesh.edges.items() if edge == "hem"]))
        weights = np.array([ply.weight for ply in mesh.plies])[mesh.ply]
        at_hem, panels = np.isin(mesh.sewn, hem).any(axis=1), np.array([p.name == "panel" for p in mesh.pieces])
        rest = panels[mesh.piece] & ~at_hem
        assert bool(weights[at_hem].mean() > 1.2 * np.median(weights[rest])) == heavier


def test_without_a_word_there_is_none_and_too_deep_a_band_is_refused_in_words() -> None:
    body = chart_woman()
    assert not bands_of(draft_garment(body, WOVEN, "skirt", {}))
    with pytest.raises(DraftError, match="hem_band"):
        banded(child(1040.0), "peplum", hem_band=290.0)
