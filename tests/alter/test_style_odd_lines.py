"""Lines that makers draw and our own pieces do not have: checks that asked for whole edges hold for parts."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.garment import MadeGarment
from drafting.costume.make import make
from drafting.ground.errors import InputError

FILES = {
    "body.toml": 'unit = "cm"\n[measures]\nheight = 168\nbust_girth = 92\nwaist_girth = 74\nhip_girth = 99\n',
    "cloth.toml": 'title = "Drill, invented"\nunit = "cm"\nwidth = 150\nweave = "woven"\nsort = "plain"\n',
}


def made(folder: Path, block: str, *steps: str) -> MadeGarment:
    for name, text in FILES.items():
        (folder / name).write_text(text, "utf-8")
    style = "".join(f"\n[[garments.g.style]]\n{step}\n" for step in steps)
    (folder / "costume.toml").write_text(
        f'title = "Invented"\nwearer = "body.toml"\n\n[fabrics]\nshell = "cloth.toml"\n\n'
        f'[garments.g]\nblock = "{block}"\nfabric = "shell"\n{style}',
        "utf-8",
    )
    return make(read_costume(folder / "costume.toml")).garments[0]


def cut(piece: str, start: str, end: str) -> str:
    return f'do = "cut"\npiece = "{piece}"\nfrom = {start}\nto = {end}\nname = "part"'


def errors(garment: MadeGarment) -> list[str]:
    return [f"{found.where}: {found.message}" for found in garment.findings if found.level == "error"]


def test_a_trousers_back_yoke_keeps_waist_and_crotch(tmp_path: Path) -> None:
    """Common practice: a yoke below the waist, from the centre back to the side."""
    at_side = '{ edge = "side", distance = "17 cm", beside = "waist_side" }'
    garment = made(tmp_path, "trouser", cut("back", '{ edge = "crotch", share = 0.6 }', at_side))
    assert errors(garment) == []
    crotch = next(found for found in garment.findings if found.check == "crotch length")
    assert crotch.value == pytest.approx(crotch.wanted, abs=1.0)


def test_a_sleeve_cut_through_its_cap_may_bend_in_either_part(tmp_path: Path) -> None:
    line = cut("sleeve", '{ edge = "cap_back", share = 0.5 }', '{ edge = "cap_front", share = 0.5 }')
    assert errors(made(tmp_path, "fitted-top", line)) == []


def test_a_tuck_leaves_out_of_every_level_what_it_takes_up(tmp_path: Path) -> None:
    tuck = (
        'do = "pleat"\npiece = "front"\nkind = "tuck"\ndepth = "6 mm"\n'
        'from = { edge = "shoulder", share = 0.5 }\nto = { edge = "hem", share = 0.5 }'
    )
    assert errors(made(tmp_path, "fitted-top", tuck)) == []


def test_two_pleats_carry_a_level_that_lies_along_the_hem(tmp_path: Path) -> None:
    pleat = (
        'do = "pleat"\npiece = "back"\nkind = "inverted"\ndepth = "20 mm"\n'
        'from = { edge = "armhole", share = 0.44 }\nto = { edge = "shoulder", share = 0.2 }'
    )
    garment = made(tmp_path, "fitted-top", pleat)
    assert errors(garment) == []


def test_no_line_begins_on_a_darts_leg(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="is the leg of a dart"):
        made(
            tmp_path,
            "skirt",
            cut("back", '{ edge = "waist_dart_side_in", share = 0.3 }', '{ edge = "hem", share = 0.5 }'),
        )
