"""Measures written where no measures stand: told once, where they are and where they belong."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.body import read_body
from drafting.ground.errors import InputError


def test_measures_outside_their_table_are_told_once_and_are_not_missing_besides(tmp_path: Path) -> None:
    file = tmp_path / "flat.toml"
    rows = "height = 170\nbust_girth = 92\nwaist_girth = 74\nhip_girth = 98\n"
    file.write_text(f'title = "Flat, invented"\nunit = "cm"\n{rows}', "utf-8")
    with pytest.raises(InputError) as refused:
        read_body(file)
    (fault,) = refused.value.faults
    assert (fault.line, fault.field) == (3, "height")
    assert "3 more" in fault.what
    assert "a line [measures] above" in fault.right
    file.write_text(f'title = "Flat, invented"\nunit = "cm"\n{rows}[measures]\narm_length = 58\n', "utf-8")
    with pytest.raises(InputError, match="below the line"):
        read_body(file)


def test_one_measure_more_is_told_in_the_singular(tmp_path: Path) -> None:
    file = tmp_path / "two.toml"
    file.write_text('unit = "cm"\nheight = 170\nbust_girth = 92\n[measures]\narm_length = 58\n', "utf-8")
    with pytest.raises(InputError) as refused:
        read_body(file)
    assert refused.value.faults[0].what == "stands outside [measures], and so does one more"
