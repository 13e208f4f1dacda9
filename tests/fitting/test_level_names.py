"""A level of the body is known as it is said and as a measure of it is written."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.fitting.file import read_fitting
from drafting.fitting.note import AtLevel

NOTE = """title = "One note"
on = 2026-11-09
unit = "cm"
[[notes]]
garment = "coat"
where = "{}"
verb = "let out"
amount = 1
as = "total"
kind = "style"
state = "pinned"
"""


@pytest.mark.parametrize("said", ["upper arm", "upper_arm"])
def test_the_upper_arm_is_a_level_however_it_is_written(said: str, tmp_path: Path) -> None:
    """`upper_arm` was taken for a piece that there is not."""
    path = tmp_path / "fitting.toml"
    path.write_text(NOTE.format(said), "utf-8")
    (note,) = read_fitting(path, ["coat"]).notes
    assert note.where == AtLevel("upper arm")
