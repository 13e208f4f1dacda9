"""Tucks are worn stitched down: what they take up is not there to spread."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import Made, make
from drafting.costume.wearing import tucks
from drafting.costume.wearing.sewn import COARSE, sewn_and_placed
from drafting.costume.wearing.tucks import tucks_sewn
from drafting.costume.wearing.worn import fallen_shape
from drafting.ground.shipped import shipped
from drafting.worn.form import wearers_form

MEASUREMENTS = shipped("measurements")
SHIRT = f"""
title = "A tucked shirt, invented"
unit = "cm"
wearer = "child.toml"
[fabrics]
shell = "{MEASUREMENTS}/fabrics/striped-shirting.toml"
interfacing = "{MEASUREMENTS}/fabrics/fusible-interfacing.toml"
[garments.shirt]
block = "shirt"
fabric = "shell"
[garments.shirt.choices]
tails = "straight"
"""
CHILD = """
title = "A child, invented"
unit = "cm"
[measures]
height = 116
bust_girth = 60
waist_girth = 56
hip_girth = 64
"""
TUCKS = """
[[garments.shirt.style]]
do = "pleat"
piece = "front"
kind = "tuck"
from = { edge = "shoulder", share = 0.4 }
to = { edge = "hem", share = 0.5 }
depth = "0.6 cm"
number = 2
apart = "2 cm"
"""
TAKEN_UP = 2 * 2 * 6.0  # mm, in each half of the front


def shirt(folder: Path, style: str = "") -> Made:
    (folder / "child.toml").write_text(CHILD, "utf-8")
    file = folder / "shirt.toml"
    file.write_text(SHIRT + style, "utf-8")
    return make(read_costume(file))


def test_a_tucked_shirt_is_sewn_as_wide_as_one_without(tmp_path: Path) -> None:
    """It was meshed with its tucks open, and came out 4 to 6 % wider at every level than it was drafted."""
    tucked, plain = shirt(tmp_path, TUCKS), shirt(tmp_path)
    wider = [m.garments[0].draft["front"].outline.bounds for m in (tucked, plain)]
    assert (wider[0][2] - wider[0][0]) - (wider[1][2] - wider[1][0]) == pytest.approx(TAKEN_UP, abs=1.0)
    form = wearers_form(tucked.costume.wearer)
    meshes = [sewn_and_placed(made, form, COARSE)[0][0].mesh for made in (tucked, plain)]
    spans = [np.ptp(m.flat[np.unique(m.triangles[m.piece == 0])], axis=0) for m in meshes]
    assert spans[0] == pytest.approx(spans[1], abs=0.01)
    assert {level.name: level.drafted for level in meshes[0].levels} == pytest.approx(
        {level.name: level.drafted for level in meshes[1].levels}, abs=0.1
    )
    shape = fallen_shape(tucked, form)
    assert shape.rest.mesh.count == meshes[0].count


def test_where_a_later_step_needs_what_a_tuck_made_it_stays_open(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made = shirt(tmp_path, TUCKS)
    garment = made.garments[0]
    assert tucks_sewn(made.costume, garment).draft != garment.draft
    monkeypatch.setattr(tucks, "made_garment", lambda *_: None)  # as a refused step is
    assert tucks_sewn(made.costume, garment) is garment
