"""What a cloth can take, against the care symbols' dots by fibre."""

from __future__ import annotations

import pytest

from drafting.checks.treatments import cannot_fuse, iron_limit
from drafting.costume.garment import draft_garment
from drafting.fabric import Fabric
from tests.blocks.figures import chart_woman


@pytest.mark.parametrize(
    ("fibre", "dots"),
    [
        ("nylon", 1),
        ("acetate", 1),
        ("wool", 2),
        ("polyester", 2),
        ("viscose", 2),
        ("cotton", 3),
        ("cotton, elastane", 1),
        ("wool, polyester", 2),
        ("linen", 3),
    ],
)
def test_a_blend_takes_the_lowest_fibres_heat(fibre: str, dots: int) -> None:
    # A care page and an iron's manual (common practice; for a blend take the lowest).
    assert iron_limit(Fabric("x", fibre=fibre)) == dots


def test_the_care_label_beats_a_hotter_fibre_and_nothing_is_guessed() -> None:
    assert iron_limit(Fabric("x", fibre="cotton", iron_dots=1)) == 1
    assert iron_limit(Fabric("x", fibre="moonlight")) is None


def test_a_treatment_the_cloth_cannot_take_names_cloth_treatment_and_way_out() -> None:
    velvet = Fabric("Old velvet", fibre="silk", takes_fusible=False)
    (fused,) = cannot_fuse(velvet, "collar")
    assert fused.level == "error"
    assert all(word in fused.message for word in ("Old velvet", "fusible", "sewn-in"))


def test_a_shirt_with_interfacing_in_cloth_that_takes_none_is_an_error() -> None:
    plain = Fabric("Plain cotton", fibre="cotton", eases="well")
    wrong = Fabric("Vinyl", fibre="polyester", takes_fusible=False, eases="well")
    found = {
        cloth.title: [f for f in draft_garment(chart_woman(), cloth, "shirt").findings if f.level == "error"]
        for cloth in (plain, wrong)
    }
    assert found["Plain cotton"] == []
    assert [f.check for f in found["Vinyl"]] == ["fusible"]


def test_a_cap_ease_typed_for_cloth_that_does_not_ease_is_an_error_and_a_default_is_settled() -> None:
    # Common practice: leather, vinyl or felt cannot be eased.
    felt = Fabric("Felt", fibre="wool", eases="none")
    typed = draft_garment(chart_woman(), felt, "shirt", {"cap_ease": 25})
    (said,) = (f for f in typed.findings if f.level == "error")
    assert said.check == "easing"
    assert all(word in said.message for word in ("Felt", "25 mm", "gather"))
    usual = draft_garment(chart_woman(), felt, "shirt")
    assert [f for f in usual.findings if f.level == "error"] == []
    assert any(f.check == "cap ease" and f.level == "warning" for f in usual.findings)
