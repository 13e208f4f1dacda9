"""`drafting worn` and `make --worn`, run as a maker runs them on one bodice of one cloth."""

from __future__ import annotations

import io
import json
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path

import pytest

from drafting.commands.cli import main
from tests.commands.one_garment import costume_in

COSTUME = """
title = "A bodice"
unit = "cm"
wearer = "lamplighter.toml"

[fabrics]
shell = "velveteen.toml"

[garments.bodice]
block = "bodice"
fabric = "shell"

[garments.bodice.choices]
bust_ease = 8
"""


@pytest.fixture(scope="module")
def costume(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return costume_in(tmp_path_factory.mktemp("costume"), COSTUME)


@pytest.fixture(scope="module")
def a_little_out(costume: Path) -> tuple[Path, str, str]:
    """Return the folder of the bodice worn with the arms a little out, and what was said and complained of."""
    out, said, complained = costume.parent / "worn", io.StringIO(), io.StringIO()
    with redirect_stdout(said), redirect_stderr(complained):
        assert main(["worn", str(costume), "--out", str(out)]) == 0
    return out, said.getvalue(), complained.getvalue()


def test_it_writes_its_folder_says_it_in_words_and_stays_quiet_in_a_pipe(
    a_little_out: tuple[Path, str, str],
) -> None:
    out, said, complained = a_little_out
    assert complained == ""
    assert "A form, not a fitting" in said
    assert "At the bust it" in said
    assert str(out / "turn.html") in said
    record = json.loads((out / "worn.json").read_text("utf-8"))
    (bodice,) = record["garments"]
    assert bodice["converged"] is True
    assert bodice["residual"] <= 0.05
    assert {row["level"] for row in bodice["girths"]} >= {"bust", "waist"}
    for row in bodice["girths"]:
        assert row["worn"] == pytest.approx(row["drafted"], abs=12)
    assert {"front.png", "side.png", "back.png", "above.png", "turn.html"} <= {p.name for p in out.iterdir()}


def test_the_arms_may_hang(costume: Path, a_little_out: tuple[Path, str, str]) -> None:
    out = costume.parent / "worn-hanging"
    assert main(["worn", str(costume), "--arms", "hanging", "--out", str(out)]) == 0
    assert (out / "front.png").read_bytes() != (a_little_out[0] / "front.png").read_bytes()


def test_a_costume_that_cannot_be_read_is_refused_and_nothing_is_written(
    costume: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    wrong = costume.with_name("wrong.toml")
    wrong.write_text(COSTUME.replace("bust_ease = 8", "bust_eaze = 8"))
    assert main(["worn", str(wrong), "--out", str(tmp_path / "out")]) == 2
    assert "wrong.toml:14" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_a_folder_of_make_is_not_overwritten(
    costume: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    made = tmp_path / "made"
    made.mkdir()
    (made / "report.json").write_text('{"schema": 1, "made_with": {}}')
    assert main(["worn", str(costume), "--out", str(made)]) == 2
    assert "holds what `drafting make` made" in capsys.readouterr().err


def test_make_puts_picture_and_verdict_on_the_plan_when_asked(
    costume: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "out"
    assert main(["make", str(costume), "--out", str(out), "--worn"]) in (0, 1)
    plan = (out / "plan.html").read_text("utf-8")
    assert 'src="data:image/png;base64,' in plan
    assert "A form, not a fitting" in plan
    assert "drafting worn, with the costume file" not in plan
    checks = json.loads((out / "report.json").read_text("utf-8"))["checks"]
    assert {"worn: stands off", "worn: girth"} <= {check["check"] for check in checks}
    assert "worn: girth" not in {c["check"] for c in checks if c["level"] == "error"}


def test_plain_make_names_the_command_and_settles_nothing(costume: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    assert main(["make", str(costume), "--out", str(out)]) in (0, 1)
    assert "drafting worn, with the costume file" in (out / "plan.html").read_text("utf-8")
    checks = json.loads((out / "report.json").read_text("utf-8"))["checks"]
    assert not [check for check in checks if check["check"].startswith("worn")]


def test_with_the_arms_raised_it_says_what_rises(costume: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = costume.parent / "raised"
    assert main(["worn", str(costume), "--arms", "raised", "--out", str(out)]) == 0
    assert "A living shoulder" in capsys.readouterr().out
    assert json.loads((out / "worn.json").read_text("utf-8"))["arms"] == "raised"
    assert (out / "front.png").is_file()
