"""The README is true: its commands are the ones that are run, and its files can be made."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from drafting.blocks import all_blocks, use_blocks
from drafting.commands.cli import main, parser
from drafting.costume.file import read_costume
from drafting.costume.make import finished

ROOT = Path(__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text("utf-8")

COMMANDS = re.findall(r"```bash\n(.*?)```", README, flags=re.DOTALL)
FILES = dict(re.findall(r"`([\w-]+\.toml)`, [^\n]*\n\n```toml\n(.*?)```", README, flags=re.DOTALL))


def test_there_are_two_commands_of_one_line_each() -> None:
    assert len(COMMANDS) == 2
    assert all(command.count("\n") == 1 for command in COMMANDS)
    demo, tests = COMMANDS
    assert demo.rstrip().endswith("drafting demo --out out")
    assert tests.rstrip().endswith(" tests")


def test_each_command_makes_an_environment_of_its_own_under_a_dot_folder() -> None:
    script = (ROOT / ".ci" / "start.py").read_text("utf-8")
    asked = [re.fullmatch(r"python3 (\.ci/start\.py) (\w+)( .*)?\n", command) for command in COMMANDS]
    assert all(asked)
    folders = re.findall(r'"(\w+)": \("(\.[\w-]+)", "([\w.-]+)"\)', script)
    assert {name for name, _, _ in folders} == {found[2] for found in asked if found}
    assert len({folder for _, folder, _ in folders}) == 2
    assert all((ROOT / ".ci" / lock).is_file() for _, _, lock in folders)
    assert "--require-hashes" in script


def test_ci_runs_the_two_commands_letter_for_letter_and_the_tests_last() -> None:
    lines = (ROOT / ".ci" / "run").read_text("utf-8").splitlines()
    assert [line for line in lines if ".ci/start.py" in line] == [c.rstrip("\n") for c in COMMANDS]
    assert lines[-1] == COMMANDS[1].rstrip("\n")


def test_every_drafting_command_that_the_readme_shows_can_be_typed() -> None:
    shown = re.findall(r"`drafting ([^`]+)`", README)
    assert {line.split()[0] for line in shown} == {
        "new",
        "make",
        "worn",
        "mock-up",
        "cast",
        "demo",
        "body",
        "blocks",
        "lab",
        "app",
    }
    for line in shown:
        parser().parse_args(line.split())


@pytest.fixture
def written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder that holds the README's example files, and is the current one."""
    for name, text in FILES.items():
        (tmp_path / name).write_text(text, "utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_the_example_files_make_pieces_and_every_check_holds(written: Path) -> None:
    names = ("wearer", "cloth", "costume", "pelerine", "fitting", "yoked-top")
    assert set(FILES) == {f"my-{name}.toml" for name in names}
    assert main(["make", "my-costume.toml", "--out", "out"]) == 0
    assert list((written / "out" / "pieces").glob("shirt.*.svg"))


def test_the_example_of_style_lines_is_made_and_its_last_step_can_be_left_out(written: Path) -> None:
    assert main(["make", "my-yoked-top.toml", "--out", "out"]) == 0
    assert (written / "out" / "pieces" / "top.front-yoke.svg").is_file()
    text = FILES["my-yoked-top.toml"]
    (written / "less.toml").write_text(text[: text.rindex("[[garments")], "utf-8")
    pieces = finished(read_costume("less.toml"))["top"].draft
    assert "front-yoke" in pieces
    assert "pleat_1_in" not in pieces["front"]


def test_the_example_fitting_does_to_the_example_costume_what_the_readme_says(written: Path) -> None:
    costume = written / "my-costume.toml"
    costume.write_text('fittings = ["my-fitting.toml"]\n' + costume.read_text("utf-8"), "utf-8")
    (said,) = [finding.said("cm") for finding in read_costume(costume).fittings.findings]
    assert f"*{said}*" in README
    assert main(["make", str(costume), "--out", "out"]) == 0


@pytest.mark.usefixtures("written")
def test_the_example_body_is_told_with_what_was_estimated(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["body", "my-wearer.toml"]) == 0
    said = capsys.readouterr().out
    assert re.search(r"bust_girth +92\.1 cm +measured", said)  # 36 1/4 in = 92.075 cm, by hand
    assert re.search(r"across_back_width +[\d.]+ cm +estimated +\+/-", said)


def test_the_output_folder_holds_what_the_readme_lists(written: Path) -> None:
    main(["make", "my-costume.toml", "--out", "out"])
    listed = re.search(r"\| in the folder \|.*?\n\n", README, flags=re.DOTALL)
    assert listed
    names = re.findall(r"^\| `([^`]+)`", listed[0], flags=re.MULTILINE)
    assert {name.split("/")[0] for name in names} == {path.name for path in (written / "out").iterdir()}


@pytest.fixture
def own_blocks(written: Path) -> Iterator[Path]:
    """The folder `my-blocks`, with the shipped example copied into it as the README says."""
    assert "`measurements/blocks/pelerine.py`" in README
    (written / "my-blocks").mkdir()
    shutil.copy(ROOT / "measurements" / "blocks" / "pelerine.py", written / "my-blocks")
    yield written
    use_blocks(None)


def test_a_block_of_ones_own_is_made_as_the_readme_says(own_blocks: Path) -> None:
    (typed,) = re.findall(r"`drafting (make my-pelerine[^`]+)`", README)
    assert main(typed.split()) == 0
    assert (own_blocks / "out" / "pieces" / "pelerine.pelerine.svg").is_file()
    (listed,) = re.findall(r"`drafting (blocks --[^`]+)`", README)
    assert main(listed.split()) == 0


def test_the_example_has_what_the_readme_says_of_it() -> None:
    use_blocks(ROOT / "measurements" / "blocks")
    pelerine = all_blocks()["pelerine"]
    use_blocks(None)
    assert len(pelerine.choices) == 4
    text = Path(pelerine.file).read_text("utf-8")
    assert all(word in text for word in ("EdgeKind.FOLD", "sewn=", "EdgeKind.HEM", "Level(", "Girth("))
    assert re.search(r"^Source: ", text, re.MULTILINE)


def test_the_program_in_the_readme_runs(written: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (code,) = re.findall(r"```python\n(.*?)```", README, flags=re.DOTALL)
    exec(compile(code, "README.md", "exec"), {})
    assert (written / "out" / "report.json").is_file()
    assert "'front': " in capsys.readouterr().out


def test_the_licence_stands_where_the_readme_says() -> None:
    (place,) = re.findall(r"the full text stands in `([^`]+)`", README)
    assert (ROOT / place).read_text("utf-8").startswith("MIT License")
