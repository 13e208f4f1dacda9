"""Worn girths beside the drafted ones, in a finer mesh, and from another start."""

from __future__ import annotations

import pytest

from drafting.worn.nouns import AtRest
from tests.worn.dressed import dressed, hem_height, levels, the_form

LOOSE = {
    "shirt": ("bust", "waist", "hip", "upper_arm"),
    "fitted-top": ("bust", "waist", "hip", "upper_arm"),
    "trousers": ("hip", "thigh", "knee"),
}
HEMS = {
    "bodice": (("front", "waist_centre"), ("front", "waist_side"), ("back", "waist_centre")),
    "shirt": (("front", "hem"), ("back", "hem")),
    "trousers": (("front", "hem"), ("back", "hem")),
}


def girths(rest: AtRest) -> dict[str, float]:
    assert rest.settled
    return {name: one.worn for name, one in levels(rest, the_form()).items()}


def hangs_at(block: str, rest: AtRest) -> float:
    return hem_height(rest, *HEMS[block])


@pytest.mark.parametrize("block", LOOSE)
def test_a_loose_garment_is_worn_as_wide_as_it_was_drafted(block: str) -> None:
    rest = dressed(block)
    assert rest.settled
    found = levels(rest, the_form())
    off = {name: found[name].worn - found[name].drafted for name in LOOSE[block]}
    assert max(map(abs, off.values())) <= 6.0, off


BY_HAND = (pytest.mark.population, pytest.mark.timeout(0))


@pytest.mark.parametrize(
    "block", ["bodice", *(pytest.param(block, marks=BY_HAND) for block in ("shirt", "trousers"))]
)
def test_a_mesh_of_12_mm_finds_what_one_of_20_mm_finds(block: str) -> None:
    rest, fine = dressed(block), dressed(block, mesh=12.0)
    found, again = girths(rest), girths(fine)
    apart = {name: round(again[name] - found[name], 1) for name in found}
    print(block, apart, f"hem {hangs_at(block, fine) - hangs_at(block, rest):+.1f} mm")
    assert max(abs(found[name] - again[name]) for name in found) <= 3.0
    assert hangs_at(block, rest) == pytest.approx(hangs_at(block, fine), abs=5.0)


@pytest.mark.parametrize("block", ["bodice", "close-top"])
def test_from_a_start_shaken_by_3_mm_the_girths_are_the_same(block: str) -> None:
    found, again = girths(dressed(block)), girths(dressed(block, shaken=3.0))
    assert max(abs(found[name] - again[name]) for name in found) <= 4.0


def test_trousers_come_to_the_same_girths_above_a_hem_that_hangs_free() -> None:
    """Nothing opens a limp hem: shaken, it keeps a crumple of 4 to 5 mm, and its girth is no number to rely on."""
    found, again = girths(dressed("trousers")), girths(dressed("trousers", shaken=3.0))
    assert max(abs(found[name] - again[name]) for name in ("waist", "hip", "thigh", "knee")) <= 4.0
