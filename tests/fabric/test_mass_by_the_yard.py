"""A cloth's mass as it is sold where cloth is sold by the yard."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.fabric import read_fabric
from drafting.ground.errors import InputError


def mass_of(folder: Path, written: str) -> float:
    path = folder / "cloth.toml"
    path.write_text(f'title = "Cloth"\nunit = "in"\nwidth = 45\nmass = {written}\n', "utf-8")
    return read_fabric(path).mass or 0.0


@pytest.mark.parametrize(
    ("written", "grams"),
    [
        ('"7 oz/yd2"', 237.34),
        ('"7 oz per sq yd"', 237.34),
        ('"4 1/2 oz/yd²"', 152.58),
        ('"237 g/m2"', 237.0),
        ("140", 140.0),
    ],
)
def test_a_mass_is_read_by_the_square_metre_or_the_square_yard(tmp_path: Path, written: str, grams: float) -> None:
    """An ounce a square yard is 33.906 g/m2: the international pound and yard of 1959."""
    assert mass_of(tmp_path, written) == pytest.approx(grams, abs=0.01)


@pytest.mark.parametrize("written", ['"7 oz"', '"oz/yd2"', '"7 oz/yd"', '"-7 oz/yd2"', '"9000 oz/yd2"'])
def test_a_mass_that_says_no_area_is_refused(tmp_path: Path, written: str) -> None:
    with pytest.raises(InputError):
        mass_of(tmp_path, written)
