"""After the cloth is cut: the allowance reaches, or the pieces are named that are to be cut again."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.ground.findings import Finding
from tests.fitting.test_fitting_files import PINCHED, costume

CUT = "on = 2026-11-09\ncut = true"


def said(folder: Path, note: str, top: str = CUT) -> list[Finding]:
    made = make(read_costume(costume(folder, note, top=top)))
    return [finding for finding in made.findings if finding.check == "cut already"]


def test_where_nothing_was_cut_nothing_is_said(tmp_path: Path) -> None:
    assert said(tmp_path, PINCHED, "on = 2026-11-09") == []


def test_what_is_taken_in_reaches_with_more_than_it_had(tmp_path: Path) -> None:
    found = said(tmp_path, PINCHED)
    assert [finding.level for finding in found] == ["note"]
    assert "reaches" in found[0].message


@pytest.mark.parametrize(("amount", "again"), [("1 cm", False), ("5 cm", True)])
def test_a_waist_let_out_by_more_than_the_allowance_holds_is_cut_again(
    tmp_path: Path, amount: str, again: bool
) -> None:
    """4 edges share a waist: 1 cm of it takes 2.5 mm of each allowance of 10 mm or more, 5 cm takes 12.5."""
    note = PINCHED.replace("take in", "let out").replace("1 cm", amount).replace('"pinch"', '"total"')
    found = said(tmp_path, note)
    recut = {finding.where for finding in found if finding.level == "warning"}
    assert bool(recut & {"back", "front"}) == again
    for finding in found:
        if finding.level == "warning":
            assert "Cut this piece again" in finding.message
            assert isinstance(finding.value, float)
            assert finding.value < 6
