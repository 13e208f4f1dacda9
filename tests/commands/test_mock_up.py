"""`drafting mock-up`, run as a maker runs it on one bodice of one cloth."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from drafting.commands.cli import main
from tests.commands.one_garment import costume_in

COSTUME = """
title = "A bodice"
unit = "in"
wearer = "lamplighter.toml"

[fabrics]
shell = "velveteen.toml"

[garments.bodice]
block = "bodice"
fabric = "shell"

[print]
papers = ["a3"]
"""


@pytest.fixture(scope="module")
def costume(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return costume_in(tmp_path_factory.mktemp("costume"), COSTUME)


def test_the_command_writes_its_folder_and_says_what_to_buy(
    costume: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "mock"
    assert main(["mock-up", str(costume), "--out", str(out)]) == 0
    said = capsys.readouterr().out
    assert "drill" in said
    assert " yd of " in said
    record = json.loads((out / "mock-up.json").read_text("utf-8"))
    assert [garment["garment"] for garment in record["garments"]] == ["bodice"]
    assert (out / "fitting" / "bodice.pdf").is_file()
    assert main(["mock-up", str(costume), "--out", str(out)]) == 0  # its own folder is replaced


def test_what_cannot_be_read_is_refused_and_nothing_is_written(
    costume: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    wrong = costume.with_name("wrong.toml")
    wrong.write_text(COSTUME.replace('block = "bodice"', 'block = "bodce"'))
    out = tmp_path / "mock"
    assert main(["mock-up", str(wrong), "--out", str(out)]) == 2
    assert "bodice" in capsys.readouterr().err
    assert not out.exists()
