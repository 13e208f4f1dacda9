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


def test_a_cool_cloth_is_told_what_fusible_to_take_and_one_that_takes_none_is_not() -> None:
    (cool,) = cannot_fuse(Fabric("Nylon, invented", fibre="nylon"), "collar")
    assert cool.level == "warning"
    assert all(word in cool.message for word in ("Nylon", "1 dot", "sew the interfacing in"))
    assert list(cannot_fuse(Fabric("Old velvet", fibre="nylon", takes_fusible=False), "collar")) == []


def test_a_shirt_in_cloth_that_takes_no_fusible_is_cut_and_bought_with_another_interfacing() -> None:
    """Common practice: a sewn-in woven, or organza behind what is sheer."""
    plain = Fabric("Plain cotton", fibre="cotton", eases="well")
    vinyl = Fabric("Vinyl", fibre="polyester", takes_fusible=False, eases="well")
    voile = Fabric("Voile", fibre="cotton", sort="sheer", eases="well")
    made = {cloth.title: draft_garment(chart_woman(), cloth, "shirt") for cloth in (plain, vinyl, voile)}
    kinds = {title: {n.kind for n in one.draft.notions if n.what == "interfacing"} for title, one in made.items()}
    assert all("fusible" in kind for kind in kinds["Plain cotton"])
    assert all("sewn-in" in kind for kind in kinds["Vinyl"])
    assert all("organza" in kind for kind in kinds["Voile"])
    for one in made.values():
        assert [f.message for f in one.findings if f.level == "error"] == []
    (said,) = (f.message for f in made["Vinyl"].findings if f.value == "sewn in")
    assert all(word in said for word in ("Vinyl", "takes no fusible", "sewn-in"))


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


@pytest.mark.parametrize(("unit", "word"), [("cm", " cm"), ("in", " in")])
def test_what_a_cloth_eases_is_told_in_the_makers_unit_throughout(unit: str, word: str) -> None:
    """An inch file was told "The sleeve is drafted with 15: choose that"."""
    cloth = Fabric("Firm, invented", eases="little")
    garment = draft_garment(chart_woman(), cloth, "fitted-top", {"cap_ease": 32.0})
    (told,) = (one.said(unit) for one in garment.findings if "eases at most" in one.message)
    assert told.split("drafted with ")[1].split(": choose")[0].endswith(word)
