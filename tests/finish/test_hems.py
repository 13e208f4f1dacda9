"""Hems: how deep by part, cut and cloth; whether they lie flat; what a child grows into (common practice)."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

import pytest
import shapely

from drafting.blocks import names
from drafting.body import Body
from drafting.body.wearer import wearer
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.draft import Draft
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.finish import FinishChoices
from drafting.finish.corners import HEM_ANGLES
from drafting.finish.hems import flat_depth, turned_up
from drafting.geometry import Path, line
from drafting.geometry.arc import arc
from drafting.ground.errors import DraftError
from tests.bodies import ansur
from tests.drawn_bodies import drawn
from tests.population import KNIT
from tests.published import named, span_mm

ADULT = wearer({"height": 1700, "bust_girth": 920, "waist_girth": 760, "hip_girth": 990})
CHILD = wearer({"height": 1160, "bust_girth": 590, "waist_girth": 550, "hip_girth": 620})
DOLL = wearer({"height": 400, "bust_girth": 180, "waist_girth": 160, "hip_girth": 190})
WOVEN, SHEER = Fabric(title="plain cotton, invented", mass=140.0), Fabric(title="organza, invented", mass=40.0)


def made(garment: str, body: Body = ADULT, fabric: Fabric | None = WOVEN, **choices: Any) -> MadeGarment:
    return draft_garment(body, fabric, garment, choices)


def hems(garment: MadeGarment) -> dict[str, float]:
    """Return the depth of each hem by piece and edge."""
    return {
        f"{cut.piece.name}.{edge.name}": cut.allowances[edge.name] - edge.drops
        for cut in garment.pattern.pieces
        for edge in cut.piece.edges
        if edge.kind is EdgeKind.HEM and edge.role is EdgeRole.HEM
    }


CASES: dict[str, tuple[str, str, Mapping[str, Any]]] = {
    "straight legs": ("hem-trousers", "trousers", {}),
    "tapered legs": ("hem-trousers", "trouser", {"leg": "tapered"}),
    "flared legs": ("hem-curved", "trouser", {"leg": "flared"}),
    "flared tails": ("hem-curved", "tailcoat", {"flare": 120.0}),
}


@pytest.mark.parametrize("case", CASES)
def test_hems_are_as_deep_as_the_trade_makes_them(case: str) -> None:
    part, garment, choices = CASES[case]
    low, high = span_mm(part)
    tails_or_legs = [w for n, w in hems(made(garment, **choices)).items() if "sleeve" not in n]
    assert tails_or_legs
    assert all(low <= width <= high for width in tails_or_legs)


@pytest.mark.parametrize(("part", "role"), [("hem-coat", PieceRole.TAIL), ("hem-skirt", PieceRole.PLAIN)])
def test_a_straight_hem_has_the_trades_depth(part: str, role: PieceRole) -> None:
    corners = (0j, 200 + 0j, 200 + 600j, 600j, 0j)
    kinds = (EdgeKind.HEM, *(EdgeKind.SEAM,) * 3)
    roles = (EdgeRole.HEM, *(EdgeRole.PLAIN,) * 3)
    sides = zip("abcd", itertools.pairwise(corners), kinds, roles, strict=True)
    piece = Piece(
        "panel", tuple(Edge(n, line(*ends), kind, role=what) for n, ends, kind, what in sides), role=role
    )
    (panel,) = turned_up(Draft((piece,)), None, FinishChoices(), 1.0).pieces
    low, high = span_mm(part)
    assert low <= (panel["a"].allowance or 0) <= high


def test_a_coats_sleeve_is_turned_up_as_a_sleeve() -> None:
    low, high = span_mm("hem-sleeve")
    cuffs = [width for name, width in hems(made("tailcoat")).items() if "sleeve" in name]
    assert len(cuffs) == 2
    assert all(low <= width <= high for width in cuffs)


def test_a_full_circle_lies_flat_at_the_trades_narrow_hem_only() -> None:
    figures = named("full-circle")
    radius = 10 * (figures["radius"] + 60)
    low, high = span_mm("hem-curved")
    assert low <= flat_depth(arc(0j, -radius * 1j, 90)) <= high
    assert flat_depth(line(0j, 400 + 0j)) > 1000


def test_a_hem_that_curves_more_is_never_deeper() -> None:
    depths = [flat_depth(arc(0j, -r * 1j, 200 / r * 180 / math.pi)) for r in (300.0, 600.0, 1200.0, 2400.0)]
    assert depths == sorted(depths)
    assert depths[0] == pytest.approx(depths[1] / 2, rel=1e-4)


def test_all_hems_that_are_sewn_to_each_other_are_equally_deep() -> None:
    widths = hems(made("tailcoat", flare=120.0))
    assert len({w for name, w in widths.items() if "sleeve" not in name}) == 1


def test_a_knit_is_turned_up_once_and_a_sheer_cloth_narrow() -> None:
    knit, sheer = hems(made("trousers", fabric=KNIT)), hems(made("trousers", fabric=SHEER))
    assert set(knit.values()) == {25.0}
    assert set(sheer.values()) == {10.0}


@pytest.mark.parametrize("garment", ["trousers", "tailcoat", "shirt"])
def test_a_depth_that_was_typed_is_every_hems(garment: str) -> None:
    assert set(hems(made(garment, hem_allowance=33.0)).values()) == {33.0}
    assert set(hems(made(garment, CHILD, hem_allowance=33.0)).values()) == {33.0}


def test_why_a_curved_hem_is_narrow_is_said() -> None:
    flared = [f for f in made("trouser", leg="flared").findings if f.check == "curved hem"]
    assert len(flared) == 1
    assert "face it" in flared[0].message
    assert not [f for f in made("trousers").findings if f.check == "curved hem"]


# ------------------------------------------------------------------------------------ a child


@pytest.mark.parametrize("garment", ["shirt", "trousers", "tailcoat", "bodice"])
def test_no_allowance_of_a_child_is_narrower_than_an_adults(garment: str) -> None:
    big, small = (
        {(c.piece.name, n): w for c in made(garment, body).pattern.pieces for n, w in c.allowances.items()}
        for body in (ADULT, CHILD)
    )
    edges = {(c.piece.name, e.name): e for c in made(garment, CHILD).pattern.pieces for e in c.piece.edges}
    drawn = {EdgeRole.VENT, EdgeRole.HEM} if garment == "tailcoat" else set()  # a lap; hems that curve
    less = {
        key: (big[key], small[key])
        for key in big.keys() & small.keys()
        if small[key] < big[key] and edges[key].role not in drawn
    }
    assert less == {}


def test_a_childs_straight_hems_can_be_let_down_and_an_adults_need_not() -> None:
    big, small = hems(made("trousers")), hems(made("trousers", CHILD))
    assert all(small[name] >= big[name] + 25 for name in big)
    assert hems(made("trousers", CHILD, hem_growth=0.0)) == big


def test_a_knit_grows_along_with_a_child() -> None:
    assert made("close-top", CHILD, KNIT).choices["let_out"] == (0.0, "default")
    assert made("shirt", CHILD).choices["let_out"][0] > 0


def test_a_dolls_allowances_are_those_that_can_still_be_sewn() -> None:
    """6 mm (1/4 in) is the least (common practice)."""
    doll = made("shirt", DOLL)
    widths = [
        w
        for c in doll.pattern.pieces
        for e in c.piece.edges
        if (w := c.allowances[e.name]) and not c.piece.material
    ]
    assert min(widths) == 6.0
    assert doll.choices["let_out"][0] == 0.0


# ---------------------------------------------------------------------------------- letting out


@pytest.mark.parametrize(
    ("garment", "body", "choices"),
    [
        ("shirt", CHILD, {}),
        ("trousers", CHILD, {"seam_allowance": 14.0}),
        ("tailcoat", ADULT, {"let_out": 30.0}),
        ("tailcoat", CHILD, {}),
        ("bodice", ADULT, {"let_out": 20.0}),
    ],
)
def test_what_is_said_to_be_let_out_lies_in_the_edges(garment: str, body: Body, choices: dict[str, float]) -> None:
    done = made(garment, body, **choices)
    (said,) = (f for f in done.findings if f.check == "let out")
    seam = float(done.choices["seam_allowance"][0])
    roles = said.where.split(" and ")
    edges = [
        cut.allowances[edge.name]
        for cut in done.pattern.pieces
        for edge in cut.piece.edges
        if edge.role.value in roles and edge.kind is EdgeKind.SEAM
    ]
    assert edges
    assert float(said.value or 0) > 0
    assert min(edges) >= float(said.value or 0) + seam


def test_nothing_is_said_to_be_let_out_where_no_edge_holds_more() -> None:
    for garment in ("tailcoat", "shirt", "trousers"):
        assert not [f for f in made(garment).findings if f.check == "let out"]


def test_a_childs_seam_reaches_what_costumes_are_let_out_by() -> None:
    low, high = span_mm("let-out")
    cut = made("shirt", CHILD).pattern["front"]
    (side,) = {cut.allowances[e.name] for e in cut.piece.edges if e.role is EdgeRole.SIDE}
    assert low <= side <= high


# --------------------------------------------------------------------------------- folded up


def corners(cut: CutPiece) -> Iterator[tuple[complex, complex, float]]:
    """Yield the stitching corner, the hem's way from it, and the hem's depth, of each hem beside a seam."""
    edges = cut.piece.edges
    for before, after in zip(edges, (*edges[1:], edges[0]), strict=True):
        if {before.kind, after.kind} != {EdgeKind.HEM, EdgeKind.SEAM}:
            continue
        hem = before if before.kind is EdgeKind.HEM else after
        turn = abs(
            math.atan2((after.path.leave / before.path.arrive).imag, (after.path.leave / before.path.arrive).real)
        )
        if HEM_ANGLES[0] < turn < HEM_ANGLES[1]:
            along = after.path.leave if hem is after else -before.path.arrive
            yield after.path.start, along, cut.allowances[hem.name]


def ring(path: Path) -> shapely.Polygon:
    return shapely.Polygon([(p.real, p.imag) for p in path.flattened(0.02)])


def sticking_out(cut: CutPiece) -> Iterator[float]:
    """Yield how much (mm2) of each folded-up hem corner lies outside the cloth it is folded onto."""
    whole = ring(cut.cut)
    for at, along, depth in corners(cut):
        out = -1j * along if _is_outside(cut, at + (5 - 1j) * along) else 1j * along
        corner = shapely.Polygon(
            [
                (p.real, p.imag)
                for p in (
                    at - 200 * along,
                    at + 15 * along,
                    at + 15 * along + 2 * depth * out,
                    at - 200 * along + 2 * depth * out,
                )
            ]
        )
        under = whole.intersection(corner)
        folded = shapely.transform(under, lambda xy, at=at, along=along: _mirrored(xy, at, along))
        yield folded.difference(whole.buffer(0.05)).area


def _is_outside(cut: CutPiece, at: complex) -> bool:
    return not ring(cut.piece.outline).buffer(-0.01).contains(shapely.Point(at.real, at.imag))


def _mirrored(xy: Any, at: complex, along: complex) -> Any:
    z = xy[:, 0] + 1j * xy[:, 1]
    z = at + ((z - at) / along).conjugate() * along
    return shapely.get_coordinates(shapely.points(z.real, z.imag))


FOLDED = [(name, fabric) for name in names(alone=True) for fabric in (None, KNIT)]


def judged(bodies: tuple[Body, ...], garment: str, fabric: Fabric | None) -> None:
    wrong = []
    for body in bodies:
        try:
            done = draft_garment(body, fabric, garment)
        except DraftError:
            continue
        for cut in done.pattern.pieces:
            wrong += [f"{body.title} {cut.piece.name}: {area:.1f} mm2" for area in sticking_out(cut) if area > 3.0]
    assert not wrong, "\n".join(wrong[:20])


@pytest.mark.parametrize("number", range(len(FOLDED)), ids=lambda i: f"{FOLDED[i][0]}-{i}")
def test_hems_lie_flat_at_their_seams_when_folded_up(number: int) -> None:
    judged((CHILD, *drawn(120)[number :: 3 * len(FOLDED)]), *FOLDED[number])


@pytest.mark.population
@pytest.mark.parametrize("number", range(len(FOLDED)), ids=lambda i: f"{FOLDED[i][0]}-{i}")
def test_hems_of_every_measured_body_lie_flat_at_their_seams(number: int) -> None:
    judged(ansur(), *FOLDED[number])


def test_a_hem_corner_that_runs_straight_on_would_stick_out() -> None:
    """The measure above tells: the coat's tails lean, and a corner cut square to the hem does not lie flat."""
    cut = made("tailcoat").pattern["tail-4"]
    assert max(sticking_out(cut)) < 1.0
    wide = ring(cut.piece.outline).buffer(13.0, join_style="mitre")
    square = Path.polygon(*(complex(x, y) for x, y in shapely.get_coordinates(wide.exterior)[:-1]))
    assert max(sticking_out(replace(cut, cut=square))) > 3.0
