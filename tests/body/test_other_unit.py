"""A measure in the wrong unit is asked about in both directions, with what it would be."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.body import read_body
from drafting.ground.errors import InputError

INCHES = 'unit = "in"\n[measures]\nheight = 66\nhigh_bust_girth = 34\n'


def refused(folder: Path, text: str) -> str:
    file = folder / "wearer.toml"
    file.write_text(text, "utf-8")
    with pytest.raises(InputError) as error:
        read_body(file)
    return str(error.value)


def test_centimetres_under_inches_are_refused_with_both_units(tmp_path: Path) -> None:
    said = refused(tmp_path, INCHES + "bust_girth = 90\nwaist_girth = 75\nhip_girth = 99\n")
    assert "90 in (228.6 cm) / 75 in (190.5 cm) / 99 in (251.5 cm)" in said  # 2.54 cm to the inch
    assert "35 3/8 in (90 cm) / 29 1/2 in (75 cm) / 39 in (99 cm)" in said
    assert 'bust_girth = "90 cm", else "90 in"' in said


def test_inches_that_their_maker_wrote_out_are_believed_with_a_doubt(tmp_path: Path) -> None:
    file = tmp_path / "wearer.toml"
    file.write_text(INCHES + 'bust_girth = "80 in"\nwaist_girth = 70\nhip_girth = "80 in"\n', "utf-8")
    doubts = [f.said("in") for f in read_body(file).findings if f.check == "girth and height"]
    assert any("if it is in centimetres, it is 31 1/2 in" in said for said in doubts)


def test_a_slipped_point_in_inches_is_answered_in_inches(tmp_path: Path) -> None:
    said = refused(tmp_path, INCHES + "bust_girth = 36\nwaist_girth = 29\nhip_girth = 3.8\n")
    assert "9.652" not in said
    assert 'hip_girth = "38 in"' in said


def test_a_height_in_centimetres_under_inches_is_the_height_s_own_fault(tmp_path: Path) -> None:
    said = refused(tmp_path, INCHES.replace("66", "168") + "bust_girth = 36\nwaist_girth = 29\nhip_girth = 38\n")
    assert 'height = "168 cm"' in said
    assert "bust_girth" not in said
