"""A godet let into a hem that is stiffened is told of: bone, braid and band were measured without it."""

from __future__ import annotations

import pytest
import shapely

from drafting.body import wearer
from drafting.checks.stiff_hems import godets_stiffened
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import MadeGarment, make_garment
from drafting.draft.by_role import edges_as, pieces_as
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.ground.findings import Finding
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin
from drafting.reading.style import StyleWish
from drafting.reading.style_made import GodetWish
from tests.blocks.coats import coat, lamplighter

BODY = wearer({"height": 1700, "bust_girth": 920, "waist_girth": 760, "hip_girth": 990})


def skirt(stiff: str, *steps: StyleWish) -> MadeGarment:
    kind, asked = block_named("skirt"), {"skirt_cut": Given("gored"), "stiff_hem": Given(stiff)}
    chosen = choose(kind, asked, body_scale(BODY), Origin())
    return make_garment(BODY, None, kind, chosen, name="skirt", role="shell", style=steps)


def godet() -> GodetWish:
    return GodetWish("gore-2", "back", None, 250.0, 300.0)


def warned(made: MadeGarment) -> list[Finding]:
    return [f for f in made.findings if f.check == "stiff hem" and f.level == "warning"]


@pytest.mark.parametrize(
    ("stiff", "words"),
    [("bone", "The bone in the hem and its casing"), ("braid", "The braid along the hem"), ("band", "No band")],
)
def test_it_is_told_by_how_much_the_godets_lengthen_the_hem(stiff: str, words: str) -> None:
    made = skirt(stiff, godet())
    (piece,) = pieces_as(made.draft, PieceRole.GODET)
    (hem,) = edges_as(piece, EdgeRole.HEM)
    long = shapely.LineString([(p.real, p.imag) for p in hem.path.points(0.01)]).length
    (told,) = warned(made)
    assert told.value == pytest.approx(2 * long, abs=0.1)  # one on each hand
    assert 2 * long > 2 * 295.0  # it adds 300 to the hem, each
    assert words in told.said("cm")
    assert f"{2 * long / 10:.1f}".removesuffix(".0") in told.said("cm")


def test_nothing_is_said_without_a_godet_or_without_a_stiff_hem() -> None:
    assert warned(skirt("bone")) == []
    assert warned(skirt("none", godet())) == []


@pytest.mark.parametrize("asked", [{}, {"hem_bone": "none"}, {"stiff_tails": "none"}])
def test_the_godets_of_tails_are_boned_and_banded_with_them(asked: dict[str, str]) -> None:
    draft = coat(lamplighter(), flare_way="godets", flare=120.0, **asked)
    assert pieces_as(draft, PieceRole.GODET)
    assert list(godets_stiffened(draft)) == []
