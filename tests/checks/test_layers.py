"""A garment takes at least the ease of the layer it goes over (drafting practice, common)."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import make

COSTUME = """
title = "A clerk, invented"
unit = "cm"
wearer = "clerk-body.toml"
[fabrics]
cloth = "cloth.toml"
[garments.overcoat]
block = "tailcoat"
fabric = "cloth"
[garments.overcoat.choices]
bust_ease = {coat}
[garments.blouse]
block = "shirt"
fabric = "cloth"
[garments.blouse.choices]
bust_ease = {shirt}
"""
BODY = """
title = "A clerk, invented"
unit = "cm"
[measures]
height = 170
bust_girth = 96
waist_girth = 80
hip_girth = 101
"""


def notes(folder: Path, coat: float, shirt: float) -> list[str]:
    (folder / "cloth.toml").write_text('title = "Cotton, invented"\nusable_width = 140\nunit = "cm"\n', "utf-8")
    (folder / "clerk-body.toml").write_text(BODY, "utf-8")
    (folder / "clerk.toml").write_text(COSTUME.format(coat=coat, shirt=shirt), "utf-8")
    made = make(read_costume(folder / "clerk.toml"))
    return [f.said("cm") for f in made.findings if f.check == "over one another" and "bust" in f.where]


@pytest.mark.parametrize(("coat", "shirt", "told"), [(8, 12, True), (12, 12, False), (16, 10, False)])
def test_a_coat_closer_than_the_shirt_beneath_it_is_noted(
    tmp_path: Path, coat: float, shirt: float, told: bool
) -> None:
    found = notes(tmp_path, coat, shirt)
    assert bool(found) == told
    if told:
        assert "Overcoat has 8 cm of ease at the bust, blouse beneath it 12 cm" in found[0]
