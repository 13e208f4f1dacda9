"""A slit to walk in is settled by the hem as it comes out, with all that style lets into it.

A hem's girth is measured here by a general geometry library. What a step asks for is the kit's own figure.
"""

from __future__ import annotations

from pathlib import Path

import pytest
import shapely

from drafting.costume.file import read_costume
from drafting.costume.garment import MadeGarment
from drafting.costume.make import make
from drafting.draft.by_role import edges_as, is_shell
from drafting.draft.roles import EdgeRole
from drafting.ground.errors import InputError
from tests.notebook.trials import CLOTH, UNEVEN

EVEN = UNEVEN.replace('{ left = 5, right = "4 5/8" }', "5").replace("{ left = 1.5, right = 2 }", "1.5")
COSTUME = """title = "Invented"
unit = "cm"
wearer = "wearer.toml"
[fabrics]
shell = "cloth.toml"
[garments.skirt]
block = "skirt"
[garments.skirt.choices]
skirt_ends = "mid-calf"
{choices}
{steps}
"""
GODET = """[[garments.skirt.style]]
do = "godet"
edge = "front.side"
height = "25 cm"
width = "{width}"
"""
ON_THE_SLIT = """[[garments.skirt.style]]
do = "binding"
edge = "back.slit"
width = "3 cm"
"""


def skirt(folder: Path, steps: str = "", choices: str = "", wearer: str = UNEVEN) -> MadeGarment:
    costume = COSTUME.format(choices=choices, steps=steps)
    for name, text in {"wearer": wearer, "cloth": CLOTH, "costume": costume}.items():
        (folder / f"{name}.toml").write_text(text, "utf-8")
    made = make(read_costume(folder / "costume.toml"))
    assert [f.message for f in made.findings if f.level == "error"] == []
    return made.garments[0]


def slits(garment: MadeGarment) -> list[str]:
    return [p.name for p in garment.draft.pieces if is_shell(p) and edges_as(p, EdgeRole.SLIT)]


def hem(garment: MadeGarment) -> float:
    """Return the girth of the hem, mm, each piece of cloth on fine polylines."""
    found = 0.0
    for piece in garment.draft.pieces:
        for edge in edges_as(piece, EdgeRole.HEM) if is_shell(piece) else ():
            line = shapely.LineString([(p.real, p.imag) for p in edge.path.points(0.01)])
            found += line.length * (2 if piece.pair or piece.fold_edge is not None else 1)
    return found


def walking(garment: MadeGarment) -> list[tuple[str, float, float]]:
    return [(f.level, f.value, f.wanted) for f in garment.findings if f.check == "walking"]  # type: ignore[misc]


@pytest.mark.parametrize("lining", ["none", "whole"])
def test_godets_that_make_the_hem_wide_enough_leave_no_slit_in_shell_or_lining(
    tmp_path: Path, lining: str
) -> None:
    plain = skirt(tmp_path, choices=f'lining = "{lining}"')
    assert slits(plain)
    wide = skirt(tmp_path, GODET.format(width="30 cm"), f'lining = "{lining}"')
    assert not [p.name for p in wide.draft.pieces if edges_as(p, EdgeRole.SLIT)]
    assert not [f for f in wide.findings if f.check == "slit"]
    ((level, value, least),) = walking(wide)
    assert level == "note"
    assert value == pytest.approx(hem(wide), abs=0.5)
    assert hem(plain) < least <= hem(wide)


def test_a_godet_too_small_for_a_stride_leaves_the_slit(tmp_path: Path) -> None:
    small = skirt(tmp_path, GODET.format(width="1 cm"))
    assert slits(small)
    assert walking(small) == []


def test_an_even_wearer_is_settled_alike(tmp_path: Path) -> None:
    assert EVEN != UNEVEN
    assert slits(skirt(tmp_path, wearer=EVEN))
    assert not slits(skirt(tmp_path, GODET.format(width="30 cm"), wearer=EVEN))


def test_a_slit_that_a_step_names_stays_and_that_is_told(tmp_path: Path) -> None:
    kept = skirt(tmp_path, ON_THE_SLIT + GODET.format(width="30 cm"), wearer=EVEN)
    assert slits(kept)
    (told,) = (f for f in kept.findings if f.check == "walking")
    assert "It stays" in told.said("cm")


@pytest.mark.parametrize("off", [-0.2, 0.2])
def test_a_hem_drafted_on_either_side_of_what_a_step_asks_for_is_told_of_once(tmp_path: Path, off: float) -> None:
    plain = skirt(tmp_path, wearer=EVEN)
    more = plain.draft.facts["hem_to_walk"] - plain.draft.facts["hem"] + off  # mm beyond what a step asks for
    near = skirt(tmp_path, choices=f'hem_more = "{more} mm"', wearer=EVEN)
    assert bool(slits(near)) == (off < 0)
    assert walking(near) == []


def test_who_wants_no_slit_is_warned_and_who_wants_one_has_it(tmp_path: Path) -> None:
    bare = skirt(tmp_path, choices='walking_slit = "none"')
    assert not slits(bare)
    ((level, value, least),) = walking(bare)
    assert level == "warning"
    assert value == pytest.approx(hem(bare), abs=0.5)
    assert value < least
    asked = skirt(tmp_path, choices='walking_slit = "yes"\nhem_more = "48 cm"')
    assert slits(asked)
    assert walking(asked) == []


def test_a_step_on_a_slit_that_no_skirt_of_hers_has_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="slit"):
        skirt(tmp_path, ON_THE_SLIT, choices='walking_slit = "none"', wearer=EVEN)
