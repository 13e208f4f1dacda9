"""Odd costumes are made from their files to the last page, or refused in words with nothing left behind.

Exit codes are those of README: 0 made, 1 made with something to mend, 2 refused. Ours.
"""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from drafting.commands.cli import main
from tests.odd_costumes import written

OURS = re.compile(r"[0-9][+-][0-9.]+(e-?[0-9]+)?j|Error|Traceback")
"""A place as the drafts count it, or a fault's own name: no words of a maker's."""


def made_or_refused(folder: Path, seed: str, capsys: pytest.CaptureFixture[str]) -> int:
    costume, out = written(folder, seed), folder / "out"
    code = main(["make", str(costume), "--out", str(out)])
    said = capsys.readouterr().err
    assert code in (0, 1, 2), said
    if code == 2:
        assert f"{costume.name}:" in said or "wearer.toml:" in said or "cloth-" in said  # file and line
        assert not OURS.search(said), said
        assert not out.exists()
        return code
    report = json.loads((out / "report.json").read_text("utf-8"))
    assert (code == 1) == any(one["level"] == "error" for one in report["checks"]), said
    assert (out / "plan.html").stat().st_size > 10_000
    assert [part.name for part in out.iterdir() if part.name.startswith(".")] == []
    return code


@pytest.mark.parametrize("number", range(3))
def test_three_odd_costumes_of_a_seed_for_each_run(
    number: int, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    made_or_refused(tmp_path, f"of every run {number}", capsys)


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("number", range(120))
def test_a_hundred_and_twenty_odd_costumes(
    number: int, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code = made_or_refused(tmp_path, f"by hand {number}", capsys)
    print(number, code)
