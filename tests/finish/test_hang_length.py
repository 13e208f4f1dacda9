"""What hangs on the bias is cut longer, and levelled later."""

from __future__ import annotations

import shapely

from drafting.costume.garment import draft_garment
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from tests.blocks.figures import chart_woman
from tests.finish.test_hems import made


def below_hem(cut: CutPiece, edge: Edge) -> float:
    """Return how far the cut line lies below the middle of a hem, mm, found by a geometry library."""
    at, way = edge.path.at(edge.length / 2), 1j * -edge.path.tangent(edge.length / 2)
    ray = shapely.LineString([(at.real, at.imag), ((at + 200 * way).real, (at + 200 * way).imag)])
    ring = shapely.LineString([(p.real, p.imag) for p in cut.cut.points(0.01)])
    return float(shapely.Point(at.real, at.imag).distance(shapely.intersection(ray, ring)))


def test_what_hangs_on_the_bias_is_cut_longer_and_nothing_else() -> None:
    """10 to 20 mm longer (common practice); turned up no deeper: the rest is cut away when the hem is levelled."""
    plain, longer = made("tailcoat", hang_length=0.0), made("tailcoat")
    grown = {}
    for one, two in zip(plain.pattern.pieces, longer.pattern.pieces, strict=True):
        for edge in one.piece.edges:
            if edge.role is EdgeRole.HEM:
                more = below_hem(two, two.piece[edge.name]) - below_hem(one, edge)
                grown[one.piece.name] = max(grown.get(one.piece.name, 0.0), round(more, 1))
    hung = {name for name, more in grown.items() if more > 0.05}
    assert {grown[name] for name in hung} == {15.0}
    panels = {p.name for p in longer.draft.pieces if p.role is PieceRole.TAIL and not p.material}
    assert panels <= hung
    assert {p.name for p in longer.draft.pieces if p.material == "lining" and panels & set(p.lines)} <= hung
    assert hung.isdisjoint(p.name for p in longer.draft.pieces if p.role in (PieceRole.FRONT, PieceRole.SLEEVE))
    (said,) = [f for f in longer.findings if f.check == "hang length"]
    assert panels == set(said.where.split(", "))
    assert not [f for f in plain.findings if f.check == "hang length"]


def test_a_circle_in_so_many_panels_that_their_seams_lie_half_way_to_the_bias_is_levelled_after_hanging() -> None:
    """Common practice: every circle skirt hangs before it is hemmed. One in eight panels, its warp down the middle
    of each, was hemmed at once; gores, whose seams lie near the warp, do not wait.
    """
    cloth = Fabric("Narrow velvet, invented", sort="pile", one_way=True, usable_width=700.0)
    cut = {}
    for way in ("full circle", "gored"):
        garment = draft_garment(chart_woman(), cloth, "skirt", {"skirt_cut": way})
        panels = {p.name for p in garment.draft.pieces if p.role in (PieceRole.FRONT, PieceRole.BACK)}
        told = {name for f in garment.findings if f.check == "hang length" for name in f.where.split(", ")}
        cut[way] = panels, told
    assert len(cut["full circle"][0]) == 4  # a half's, each an eighth of the circle
    assert cut["full circle"][0] == cut["full circle"][1]
    assert cut["gored"][1] == set()
