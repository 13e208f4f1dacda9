"""Facings: one piece across darts, panels and yokes, as deep as chosen all along, every end sewn."""

from __future__ import annotations

import cmath
import itertools
import math
from functools import cache

import pytest
import shapely

from drafting.blocks import names
from drafting.body import Body, wearer
from drafting.costume.choices import block_named
from drafting.costume.garment import draft_garment
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.geometry import Path
from drafting.ground.choices import Choice
from tests.blocks.figures import errors
from tests.blocks.test_rounded_backs import fitted_front, longer_back


@cache
def rounded() -> Body:
    return longer_back(fitted_front(), 28.0)


def choices_of(block: str) -> dict[str, Choice]:
    return {choice.name: choice for choice in block_named(block).choices}


FACED = [name for name in names(alone=True) if "facings" in choices_of(name)]
SHAPED = ("back_shaping", "bust_dart", "facings")


def asked(block: str) -> list[dict[str, str]]:
    """Return every back, bust shaping and facing of a block with each other, its openings in turn."""
    known = choices_of(block)
    words = [known[name].words for name in SHAPED if name in known]
    openings = itertools.cycle(known["opening"].words if "opening" in known else ("",))
    kept = [name for name in SHAPED if name in known]
    made = [dict(zip(kept, one, strict=True)) for one in itertools.product(*words)]
    return [one | {"opening": opening} if opening else one for one, opening in zip(made, openings, strict=False)]


def test_some_blocks_are_faced() -> None:
    assert {"sleeveless-top", "fitted-top"} <= set(FACED)


@pytest.mark.parametrize("block", FACED)
def test_every_seam_of_a_faced_garment_is_sewn_once_however_it_is_shaped(block: str) -> None:
    """A third of all ways: each two of back, bust shaping and facing stand together in one of them."""
    sewn_once(block, [one for n, one in enumerate(asked(block)) if (n // 21 + n // 3 + n) % 3 == 0])


@pytest.mark.population
@pytest.mark.parametrize("block", FACED)
def test_every_seam_of_a_faced_garment_is_sewn_once_in_every_way_of_shaping_it(block: str) -> None:
    sewn_once(block, asked(block))


def sewn_once(block: str, ways: list[dict[str, str]]) -> None:
    # The ends of armhole facings at a yoke and at a panel seam were sewn to nothing.
    for choices in ways:
        garment = draft_garment(rounded(), None, block, choices)
        sewn = [ref for seam in garment.draft.seams for ref in (*seam.a, *seam.b)]
        for piece in garment.draft.pieces:
            for edge in piece.edges:
                if edge.kind in (EdgeKind.SEAM, EdgeKind.DART):
                    assert (piece.name, edge.name) in sewn, (choices, piece.name, edge.name)
        assert errors(garment) == [], choices
        if block == "sleeveless-top":
            assert "facing" not in {f.check for f in garment.findings}, choices


def string(path: Path) -> shapely.LineString:
    return shapely.LineString([(p.real, p.imag) for p in path.evenly(300)])


@pytest.mark.parametrize(
    ("facing", "edge", "choices"),
    [
        ("back-armhole-facing", "armhole", {"back_shaping": "yoke"}),
        ("front-armhole-facing", "armhole", {"bust_dart": "armhole-princess"}),
        ("front-armhole-facing", "armhole", {"bust_dart": "armhole"}),
        ("front-neck-facing", "neck", {"bust_dart": "neck"}),
        ("back-neck-facing", "neck", {"back_shaping": "neck dart"}),
    ],
)
def test_a_facing_goes_through_what_parts_its_edge(facing: str, edge: str, choices: dict[str, str]) -> None:
    # Common practice: darts and panels are laid shut, and the facing is cut over them in one piece.
    garment = draft_garment(rounded(), None, "sleeveless-top", {"opening": "none", **choices})
    piece = garment.draft[facing]
    (seam,) = [s for s in garment.draft.seams if (facing, edge) in (*s.a, *s.b)]
    parts = seam.a if (facing, edge) in seam.b else seam.b
    assert len(parts) == 2
    whole = sum(garment.draft.edge(ref).length for ref in parts)
    assert piece[edge].length == pytest.approx(whole, abs=0.01)
    inner = piece["inner"].path.evenly(40)[5:-5]  # at its ends it runs on past a corner that is not square
    deep = [string(piece[edge].path).distance(shapely.Point(p.real, p.imag)) for p in inner]
    assert min(deep) == pytest.approx(45, abs=0.5)
    assert max(deep) == pytest.approx(45, abs=0.5)


@pytest.mark.parametrize("depth", [45.0, 90.0, 112.0])
def test_front_and_back_facing_meet_where_the_shoulder_is_eased(depth: float) -> None:
    # Common practice: ease lies in the garment's back shoulder alone. Deep facings reached into it, 0.6 mm apart.
    body = wearer({"height": 1592.0, "bust_girth": 806.0, "waist_girth": 692.0, "hip_girth": 894.0})
    garment = draft_garment(body, None, "fitted-top", {"facing_depth": depth})
    ends = [
        string(edge.path).length
        for piece in garment.draft.pieces
        if piece.role is PieceRole.FACING and not piece.material
        for edge in piece.edges
        if edge.role is EdgeRole.SHOULDER
    ]
    assert len(ends) == 2
    assert ends[0] == pytest.approx(ends[1], abs=0.05)
    assert errors(garment) == []


@pytest.mark.parametrize("opening", ["front", "back"])
@pytest.mark.parametrize("bust_dart", ["neck", "waist", "shoulder-princess"])
def test_a_facings_middle_lies_on_the_warp(bust_dart: str, opening: str) -> None:
    """Common practice: a facing has the grain of what it lies behind, its fold on the warp. Over a neck dart
    it lay as the shoulder does: 8 degrees off on a usual figure, 40 off on a full one."""
    body = wearer(
        {"height": 1600, "bust_girth": 1140, "high_bust_girth": 960, "waist_girth": 820, "hip_girth": 1050}
    )
    choices = {"bust_dart": bust_dart, "opening": opening, "facings": "neck and armholes"}
    draft = draft_garment(body, None, "sleeveless-top", choices).draft
    middles = [
        (piece.grain, edge.path)
        for piece in draft.pieces
        if piece.role is PieceRole.FACING
        for edge in piece.edges
        if edge.role is EdgeRole.CENTRE or edge.kind is EdgeKind.FOLD
    ]
    assert len(middles) >= 4
    for grain, path in middles:
        off = math.degrees(cmath.phase(path.end - path.start)) - grain
        assert abs((off + 90) % 180 - 90) < 0.1
