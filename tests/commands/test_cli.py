"""The commands: exit codes, what goes to stderr, and that a refusal writes nothing.

The work behind `make` is replaced by small fakes here; tests/test_readme.py runs the real one.
"""

from __future__ import annotations

import errno
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from types import ModuleType, SimpleNamespace
from typing import Any

import pytest

from drafting.blocks import names
from drafting.commands.cli import main
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.ground.errors import DraftError, Fault, InputError
from drafting.ground.findings import Finding, Severity

HOLDS = Finding("walk", "ok", "side seam", 0.1, 0.5, "the seam walks")


def finding(level: Severity, message: str) -> Finding:
    return Finding("walk", level, "bodice.front", 12.96, 10.0, message)


READ = SimpleNamespace(told_in="cm")
"""Stands in for a costume that was read."""


class Flow:
    """Stands in for reading, drafting and writing; each step can be told to raise."""

    def __init__(self) -> None:
        self.findings: tuple[Finding, ...] = (HOLDS,)
        self.raises: dict[str, BaseException] = {}
        self.asked: list[Any] = []

    def step(self, name: str, gives: Callable[..., Any]) -> Callable[..., Any]:
        def run(*arguments: Any, **named: Any) -> Any:
            self.asked.append((name, *arguments, *named.items()))
            if name in self.raises:
                raise self.raises[name]
            return gives()

        return run


@pytest.fixture
def flow(monkeypatch: pytest.MonkeyPatch) -> Flow:
    fake = Flow()
    modules = {
        "costume.file": {"CostumeFile": object, "Garment": object, "on_papers": lambda read, papers: read},
        "costume.whole": {"read_whole_costume": fake.step("read", lambda: READ)},
        "costume.make": {
            "make": fake.step("make", lambda: SimpleNamespace(findings=fake.findings)),
            "finished": fake.step("finish", lambda: SimpleNamespace(findings=fake.findings)),
        },
        "costume.what_changed": {"Changed": object, "what_changed": lambda before, after: ()},
        "costume.lays": {
            "materials": lambda made: (),
            "laid_out": fake.step("lay", lambda: SimpleNamespace(findings=fake.findings)),
        },
        "output.write": {"write_output": fake.step("write", tuple)},
    }
    for name, members in modules.items():
        module = ModuleType(f"drafting.{name}")
        vars(module).update(members)
        monkeypatch.setitem(sys.modules, f"drafting.{name}", module)
    return fake


@pytest.fixture
def made(tmp_path: Path, flow: Flow) -> Callable[..., int]:
    def run(*more: str) -> int:
        return main(["make", "my.toml", "--out", str(tmp_path / "out"), *more])

    return run


def test_a_costume_whose_checks_hold_is_0(
    made: Callable[..., int], flow: Flow, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert made() == 0
    said = capsys.readouterr()
    assert said.err == ""
    assert "1 check holds" in said.out
    assert str(tmp_path / "out" / "pieces") in said.out
    assert "mock-up" in said.out
    assert [
        (name, *[a for a in asked if not callable(a) and not isinstance(a, tuple)]) for name, *asked in flow.asked
    ] == [
        ("read", Path("my.toml"), None),
        ("make", READ),
        ("lay", flow.asked[-1][1], 0.0),
        ("write", flow.asked[-1][1], tmp_path / "out", None),
    ]


def test_a_note_or_a_warning_is_0_and_is_shown_the_worst_first(
    made: Callable[..., int], flow: Flow, capsys: pytest.CaptureFixture[str]
) -> None:
    flow.findings = (finding("note", "a small thing"), HOLDS, finding("warning", "a larger thing"))
    assert made() == 0
    said = capsys.readouterr()
    assert said.err == ""
    assert "1 warning, 1 note, 1 check holds" in said.out
    assert 0 < said.out.index("a larger thing") < said.out.index("a small thing")
    assert "the seam walks" not in said.out


def test_a_check_that_says_error_is_1_and_is_named_on_stderr(
    made: Callable[..., int], flow: Flow, capsys: pytest.CaptureFixture[str]
) -> None:
    flow.findings = (HOLDS, finding("error", "the seam does not walk"))
    assert made() == 1
    said = capsys.readouterr()
    assert said.err == "error: bodice.front: the seam does not walk\n"
    assert said.out.count("the seam does not walk") == 1
    assert "wanted 10" not in said.out  # a message carries its own numbers; none are put after it
    assert ("write") in [step[0] for step in flow.asked]


def test_every_fault_of_the_files_and_of_the_folder_is_told_at_once(
    made: Callable[..., int], flow: Flow, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "out").write_text("a letter")
    late = Fault("is 0", "a length", "waist_girth", "b.toml", 17)
    faults = [late, Fault("is missing", "", "hip", "b.toml", 7), late]
    flow.raises["read"] = InputError(faults)
    assert made() == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.splitlines() == [
        f"{tmp_path / 'out'}: is a file; name a folder of its own",
        "b.toml:7: hip: is missing",
        "b.toml:17: waist_girth: is 0; a length",
    ]


def test_a_folder_that_may_not_be_replaced_is_refused_before_the_draft(
    made: Callable[..., int], flow: Flow, tmp_path: Path
) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "photo.jpg").touch()
    assert made() == 2
    assert [step[0] for step in flow.asked] == ["read"]


def test_what_cannot_be_drafted_is_2_with_the_costume_named_and_nothing_written(
    made: Callable[..., int], flow: Flow, capsys: pytest.CaptureFixture[str]
) -> None:
    flow.raises["make"] = DraftError(
        "the cap cannot fit", value="700 mm", reach="200..480 mm", turn="less arm_ease"
    )
    assert made() == 2
    said = capsys.readouterr()
    expected = "the cap cannot fit, given 700 mm, reachable 200..480 mm; less arm_ease"
    assert said.err == f"my.toml: {expected}\n"
    assert [step[0] for step in flow.asked] == ["read", "make"]


@pytest.mark.parametrize("code", [errno.ENOENT, errno.EACCES, errno.EISDIR, errno.ENOSPC])
def test_a_path_that_cannot_be_used_is_refused_by_name(
    made: Callable[..., int], flow: Flow, code: int, capsys: pytest.CaptureFixture[str]
) -> None:
    flow.raises["read"] = OSError(code, "said by the system", "lost/body.toml")
    assert made() == 2
    said = capsys.readouterr().err
    assert said.startswith("lost/body.toml: cannot be used (said by the system); check the name, your rights")
    assert said.count("\n") == 1


@pytest.mark.parametrize("fault", [KeyError("a bug"), OSError(errno.EINVAL, "a bug")])
def test_a_fault_of_ours_is_not_hidden(made: Callable[..., int], flow: Flow, fault: Exception) -> None:
    flow.raises["make"] = fault
    with pytest.raises(type(fault), match="a bug"):
        made()


def test_another_wearer_is_handed_on(made: Callable[..., int], flow: Flow) -> None:
    assert made("--wearer", "kite.csv") == 0
    assert flow.asked[0] == ("read", Path("my.toml"), Path("kite.csv"))


@pytest.mark.parametrize(("typed", "seconds"), [((), 0.0), (("--search", "12.5"), 12.5)])
def test_the_time_to_look_for_a_shorter_lay_is_handed_on(
    made: Callable[..., int], flow: Flow, typed: tuple[str, ...], seconds: float
) -> None:
    assert made(*typed) == 0
    assert [step[2] for step in flow.asked if step[0] == "lay"] == [seconds]


@pytest.mark.parametrize("typed", ["-1", "soon", "nan", "1e9"])
def test_a_time_that_is_none_is_refused(
    made: Callable[..., int], typed: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as caught:
        made("--search", typed)
    assert caught.value.code == 2
    assert "--search" in capsys.readouterr().err


def test_the_demo_is_the_costume_shipped_with_the_kit(flow: Flow, tmp_path: Path) -> None:
    assert main(["demo", "--out", str(tmp_path / "out")]) == 0
    costume = flow.asked[0][1]
    assert costume.parts[-3:] == ("measurements", "costumes", "lamplighter.toml")
    assert costume.is_absolute()


@pytest.mark.parametrize("typed", [[], ["make"], ["make", "a.toml"], ["demo"], ["sew"], ["body"]])
def test_a_command_typed_wrongly_is_2_and_shows_how_to_type_it(
    typed: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as caught:
        main(typed)
    assert caught.value.code == 2
    assert "usage: drafting" in capsys.readouterr().err


def test_a_body_file_that_is_not_there_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["body", str(tmp_path / "nobody.toml")]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert "nobody.toml" in said.err


def test_blocks_tells_unit_range_default_meaning_and_source_of_every_choice(
    capsys: pytest.CaptureFixture[str],
) -> None:
    from drafting.blocks import all_blocks
    from drafting.ground.lengths import in_unit
    from drafting.ground.sources import printed

    assert main(["blocks", "all"]) == 0
    said = " ".join(capsys.readouterr().out.split())
    choices = [choice for block in all_blocks().values() for choice in block.choices]
    assert len(choices) > 10
    for choice in choices:
        assert choice.name in said
        assert " ".join(in_unit(choice.meaning, "cm").rstrip(".").split()) in said
        assert f"Source: {in_unit(printed(*choice.source), 'cm')}" in said
    for role in (*EdgeRole, *PieceRole, *SeamKind):
        assert f"{role.value} {role.meaning}" in said


def test_a_reader_that_closes_early_is_no_fault() -> None:
    code = "import os, sys; os.close(0); from drafting.commands.cli import main; sys.exit(main(['blocks']))"
    listing = subprocess.Popen(
        [sys.executable, "-c", code], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    )
    assert listing.stdout
    assert listing.stderr
    listing.stdout.close()
    assert listing.wait(60) == 0
    assert listing.stderr.read() == ""
    listing.stderr.close()


def test_the_two_ways_to_call_it_are_one() -> None:
    asked = [sys.executable, "-m", "drafting", "--help"]
    said = subprocess.run(asked, capture_output=True, text=True, check=True).stdout
    assert said.startswith("usage: drafting ")
    assert all(name in said for name in ("make", "demo", "body", "blocks", "lab"))


def test_start_up_loads_nothing_heavy() -> None:
    code = "import sys, drafting.commands.cli; print(*(m for m in sys.modules if '.' not in m))"
    asked = [sys.executable, "-c", code]
    loaded = subprocess.run(asked, capture_output=True, text=True, check=True).stdout.split()
    assert not {"numpy", "scipy", "shapely", "matplotlib", "jupyterlab"} & set(loaded)


def test_a_block_is_printed_whole_and_one_that_is_not_there_answered_with_the_nearest(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["blocks", "shirt"]) == 0
    whole = capsys.readouterr().out
    assert whole.startswith("shirt: ")
    assert "bust_ease = " in whole
    assert "Sources" in whole
    assert main(["blocks"]) == 0
    listed = capsys.readouterr().out
    assert "bust_ease" not in listed
    assert len(listed.splitlines()) < 3 * len(names())  # a line or two each
    assert main(["blocks", "shrit"]) == 2
    assert "did you mean shirt" in capsys.readouterr().err
