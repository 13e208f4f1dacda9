"""What is the same of several garments is said once; a thin cloth is told where it is seen and pulled at."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import Made, make
from drafting.ground.findings import said_once
from tests.notebook.trials import CLOTH, UNEVEN


def made_of(tmp_path: Path, lining: str) -> Made:
    body = UNEVEN + 'waist_to_hip = { left = 8, right = "8 1/2" }\n'
    files = {"wearer": body, "cloth": CLOTH, "lining": lining}
    for name, text in files.items():
        (tmp_path / f"{name}.toml").write_text(text, "utf-8")
    garments = "".join(
        f'[garments.{block}]\nblock = "{block}"\nfabric = "shell"\n' for block in ("skirt", "waistcoat", "cape")
    )
    path = tmp_path / "costume.toml"
    path.write_text(
        'title = "Three, invented"\nunit = "in"\nwearer = "wearer.toml"\n[fabrics]\nshell = "cloth.toml"\n'
        f'lining = "lining.toml"\n{garments}',
        "utf-8",
    )
    return make(read_costume(path))


def test_an_uneven_hip_is_told_once_with_the_measure_that_is_drafted_for_each_side(tmp_path: Path) -> None:
    whole = made_of(tmp_path, CLOTH)
    (told,) = [one for one in said_once(list(whole.findings), "in") if one.where.endswith("waist to hip")]
    assert told.where == "skirt, waistcoat, cape: waist to hip"
    assert "waist to the floor on either side" in told.sentence
    holds = [one for one in whole.findings if one.level == "ok"]
    assert len(holds) >= sum(one.level == "ok" for garment in whole.garments for one in garment.findings)


@pytest.mark.parametrize(("sort", "thin"), [("sheer", True), ("lace", True), ("plain", False)])
def test_a_waistcoats_back_of_a_thin_lining_is_warned_of(tmp_path: Path, sort: str, thin: bool) -> None:
    """Common practice: a back and its strap are of a close lining; organza shows the shirt and tears."""
    whole = made_of(tmp_path, CLOTH.replace('sort = "plain"', f'sort = "{sort}"'))
    told = [one for one in whole.findings if one.check == "thin cloth"]
    assert [one.where for one in told] == (["waistcoat: back, strap"] if thin else [])
