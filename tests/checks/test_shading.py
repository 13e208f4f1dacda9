"""Pile, nap and satin: the panels of one garment lie one way, or it is said that each will shade differently."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from drafting import draft_garment, read_fabric
from drafting.costume.garment import MadeGarment
from drafting.draft.roles import PieceRole
from drafting.fabric import Fabric
from drafting.ground.errors import InputError
from drafting.ground.shipped import shipped
from tests.blocks.figures import chart_woman
from tests.blocks.sleeves import odd_bodies

SHADES = [
    Fabric("Velvet, invented", sort="pile", one_way=True),
    Fabric("Flannel, invented", sort="napped"),
    Fabric("Satin, invented", sort="satin"),
    Fabric("One-way cloth, invented", one_way=True),
]
PLAIN = Fabric("Plain wool, invented", eases="well", sort="plain")


def coat(cloth: Fabric, **choices: object) -> MadeGarment:
    return draft_garment(odd_bodies()["chart man"], cloth, "tailcoat", choices)


def spread(garment: MadeGarment) -> float:
    """Return how far apart the warps of the tails lie, degrees."""
    warps = [p.grain % 180 for p in garment.draft.pieces if p.role is PieceRole.TAIL and not p.material]
    return max(min(abs(a - b), 180 - abs(a - b)) for a in warps for b in warps)


@pytest.mark.parametrize("cloth", SHADES, ids=lambda cloth: cloth.title)
def test_by_default_tails_of_cloth_that_shades_hang_by_the_warp(cloth: Fabric) -> None:
    # Neighbouring panels lay 90 degrees apart in warp, and only twill was warned of.
    made = coat(cloth)
    assert spread(made) <= 15
    assert not [f for f in made.findings if f.check == "shading"]


@pytest.mark.parametrize("cloth", SHADES, ids=lambda cloth: cloth.title)
def test_godets_of_cloth_that_shades_hang_by_the_warp_as_the_tails_do(cloth: Fabric) -> None:
    """Common practice: pile runs one way on all panels. Godets stayed on the bias, and were warned of."""
    made = coat(cloth, flare_way="godets")
    assert {p.grain for p in made.draft.pieces if p.role is PieceRole.GODET and not p.material} == {90.0}
    assert not [f for f in made.findings if f.check == "shading"]
    plain = coat(PLAIN, flare_way="godets")
    assert {p.grain for p in plain.draft.pieces if p.role is PieceRole.GODET and not p.material} == {45.0}


def test_on_plain_cloth_the_default_is_the_bias_as_before_and_nothing_is_said() -> None:
    made = coat(PLAIN)
    assert spread(made) > 45
    assert not [f for f in made.findings if f.check == "shading"]


@pytest.mark.parametrize("grain", ["alternate", "pairs", "mean", "centre"])
def test_another_grain_on_pile_says_that_each_panel_will_shade_differently(grain: str) -> None:
    made = coat(SHADES[0], grain=grain)
    said = [f for f in made.findings if f.check == "shading"]
    assert (spread(made) > 15) == bool(said)
    if said:
        assert said[0].level == "warning"
        assert "each panel will shade differently" in said[0].message


def test_panels_of_a_circle_are_told_a_way_out_that_their_skirt_has() -> None:
    """A skirt's warps cannot be turned plumb as a tail's can: it was told to choose a grain, and has none."""
    narrow = replace(SHADES[0], usable_width=700.0)
    said = {
        cut: [f.message for f in found.findings if f.check == "shading"]
        for cut in ("full circle", "gored")
        for found in [draft_garment(chart_woman(), narrow, "skirt", {"skirt_cut": cut})]
    }
    assert said["gored"] == []
    assert len(said["full circle"]) == 1
    assert "flared tails" not in said["full circle"][0]
    assert "gores" in said["full circle"][0]


def cloth_file(folder: Path, text: str) -> Path:
    path = folder / "cloth.toml"
    path.write_text(f'title = "x"\nusable_width = "140 cm"\n{text}\n', "utf-8")
    return path


def test_a_sort_is_read_and_one_nearly_right_is_refused_with_the_right_one(tmp_path: Path) -> None:
    assert read_fabric(cloth_file(tmp_path, 'sort = "napped"')).sort == "napped"
    with pytest.raises(InputError, match="sequinned"):
        read_fabric(cloth_file(tmp_path, 'sort = "sequined"'))


@pytest.mark.parametrize(
    ("text", "sorts"),
    [
        ("one_way = true\nfaces_alike = false", ("pile", "napped", "satin")),
        ('care = "Wipe clean only"', ("coated", "foiled")),
        ('care = "do not iron"', ("coated", "sequinned", "foiled")),
        ('fibre = "PVC on cotton"', ("coated",)),
        ('care = "dry clean"', ("plain",)),
    ],
)
def test_where_no_sort_is_named_its_facts_speak_and_a_warning_names_the_line_to_add(
    tmp_path: Path, text: str, sorts: tuple[str, ...]
) -> None:
    cloth = read_fabric(cloth_file(tmp_path, text))
    assert cloth.sort is None
    assert cloth.possible_sorts == sorts
    said = [f for f in cloth.findings if f.check == "sort of cloth"]
    assert bool(said) == (sorts != ("plain",))
    for finding in said:
        assert finding.level == "warning"
        assert all(f'sort = "{sort}"' in finding.message for sort in sorts)


def test_every_shipped_cloth_names_its_sort_and_the_velveteen_is_pile() -> None:
    cloths = {p.stem: read_fabric(p) for p in (shipped("measurements") / "fabrics").glob("*.toml")}
    assert all(cloth.sort for cloth in cloths.values())
    assert cloths["velveteen"].sort == "pile"
