"""What cannot be a block is refused with its file and line, and with what would be right."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from drafting.blocks import all_blocks, names, use_blocks
from drafting.commands.cli import main
from drafting.costume.garment import draft_garment
from drafting.ground.errors import DraftError, InputError
from tests.blocks.figures import chart_woman
from tests.blocks.own import EXAMPLE, ROOT, SKIRT


def refused(folder: Path) -> list[str]:
    with pytest.raises(InputError) as caught:
        use_blocks(folder)
    return [str(fault).removeprefix(str(folder)).lstrip("/") for fault in caught.value.faults]


def line_of(text: str, part: str) -> int:
    return next(n for n, line in enumerate(text.splitlines(), 1) if part in line)


def written(own: Path, text: str, name: str = "wrap_skirt.py") -> list[str]:
    (own / name).write_text(text, "utf-8")
    return refused(own)


@pytest.mark.parametrize(
    ("part", "instead", "at", "said"),
    [
        (
            "from dataclasses import",
            "from dataklasses import",
            "from data",
            "cannot be read: ModuleNotFoundError: No module named 'dataklasses'; mend line 6 of wrap_skirt.py",
        ),
        ("def wrap_skirt(body", "def wrap_skirt(body:", "def wrap_skirt", "SyntaxError"),
        ("    piece = Piece(", "   piece = Piece(", "piece = Piece(", "IndentationError"),
        (
            "def wrap_skirt(",
            "def wrapskirt(",
            "def wrapskirt",
            "is drafted by no wrap_skirt(), but by wrapskirt(); write def wrap_skirt(body, fabric, choices)",
        ),
        ("def wrap_skirt(", "def x(", '"""Wrap skirt', "has no function wrap_skirt; write def"),
        (
            "(body, fabric, choices)",
            "(body, choices)",
            "def wrap_skirt",
            "cannot take what a block is given: (body, fabric, choices); write def wrap_skirt(body, ",
        ),
        ("def wrap_skirt", 'NEEDS = "waist"\n\ndef wrap_skirt', "NEEDS", "NEEDS is no tuple of names"),
        (
            "def wrap_skirt",
            'NEEDS = ("waist",)\n\ndef wrap_skirt',
            "def wrap_skirt",
            "cannot take what a block is given: (body, fabric, choices, *, waist)",
        ),
        ("class Choices", "class Wishes", '"""Wrap skirt', "states no Choices; write a frozen"),
        ("@dataclass(frozen=True)", "@dataclass", "class Choices", "Choices is no frozen dataclass"),
        (
            'choice(60.0, "mm", "skirt minus body at the hip", low=20, high=400, source="ours")',
            "60.0",
            "skirt_ease",
            "skirt_ease: is not made by choice(...)",
        ),
        ("low=20", "low=90", "skirt_ease", "skirt_ease: its default 60 lies below 90"),
        ('60.0, "mm"', '6.0, "cm"', "skirt_ease", "skirt_ease: has the unit 'cm'; units are mm, deg, "),
        ('60.0, "mm"', '"6", "mm"', "skirt_ease", "skirt_ease: its default '6' is no number; write"),
        ('60.0, "mm"', '60, "yes/no"', "skirt_ease", "skirt_ease: its default 60 is neither True nor"),
        ('60.0, "mm"', '"six", "word"', "skirt_ease", "skirt_ease: 'six' is none of its words; list"),
        ('"skirt minus body at the hip"', '""', "skirt_ease", "skirt_ease: has no meaning"),
        ('source="ours"', 'source=" "', "skirt_ease", "skirt_ease: has no source"),
        (
            "Source: ours, invented for a test.",
            "",
            '"""Wrap skirt',
            'does not say where its method comes from; add a line "Source: "',
        ),
        (
            '"""Wrap skirt: half a skirt on the fold, one dart at the side, tied at the back.\n\n'
            'Source: ours, invented for a test.\n"""',
            "",
            "",
            "has no docstring",
        ),
    ],
)
def test_what_is_wrong_with_a_file_is_said_with_its_line(
    own: Path, part: str, instead: str, at: str, said: str
) -> None:
    assert SKIRT.count(part) >= 1
    text = SKIRT.replace(part, instead, 1)
    found = written(own, text)
    wanted = f"wrap_skirt.py:{line_of(text, at)}: "
    assert [line for line in found if line.startswith(wanted) and said in line], found
    assert "wrap-skirt" not in names()


def test_a_name_of_the_kits_own_is_taken(own: Path) -> None:
    text = SKIRT.replace("def wrap_skirt", "def trouser")
    (found,) = written(own, text, "trouser.py")
    assert found.startswith("trouser.py:1: trouser: there is a block trouser already: it comes with")
    assert not all_blocks()["trouser"].file


@pytest.mark.parametrize("name", ["Wrap.py", "wrap-skirt.py", "2skirts.py", "skirt__.py"])
def test_a_file_must_be_called_like_a_function(own: Path, name: str) -> None:
    (found,) = written(own, SKIRT, name)
    assert found.startswith(f"{name}: is no name for a block; use lower-case words joined by _")


def test_all_faults_of_all_files_are_told_at_once_and_what_was_in_use_stays(
    own: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    use_blocks(EXAMPLE)
    (own / "pelerine.py").write_text('"""Pelerine.\n\nSource: ours.\n"""\n', "utf-8")
    assert len(written(own, SKIRT.replace("low=20", "low=90").replace("def wrap", "def w"))) == 4
    assert "pelerine" in names()
    for asked in (["blocks", "all"], ["make", "a.toml", "--out", str(tmp_path / "out")], ["lab"], ["app"]):
        assert main([*asked, "--blocks", str(own)]) == 2
        said = capsys.readouterr()
        assert said.out == ""
        assert f"{own / 'pelerine.py'}:1: pelerine: states no Choices" in said.err
    assert not (tmp_path / "out").exists()


def test_a_folder_that_is_none_or_holds_nothing_is_refused(own: Path) -> None:
    assert refused(own) == [": holds no block; a block is a file of its own, as in pelerine.py"]
    (own / "_helper.py").write_text("raise ValueError", "utf-8")  # left out, as in the kit
    assert refused(own) == [": holds no block; a block is a file of its own, as in pelerine.py"]
    assert refused(own / "lost") == [": is no folder; name the folder of your blocks"]


def test_an_error_in_its_code_is_said_with_its_line_not_as_a_fault_of_ours(own: Path) -> None:
    text = SKIRT.replace("wide = (", "wide = 1 / 0 * (")
    (own / "wrap_skirt.py").write_text(text, "utf-8")
    use_blocks(own)
    with pytest.raises(InputError) as caught:
        draft_garment(chart_woman(), None, "wrap-skirt")
    (fault,) = caught.value.faults
    assert (fault.file, fault.line) == (str(own / "wrap_skirt.py"), line_of(text, "1 / 0"))
    assert fault.what == "cannot be drafted: ZeroDivisionError: division by zero"
    assert fault.right == f"mend line {fault.line} of wrap_skirt.py"  # a bench shows no file


def test_a_block_that_gives_back_no_draft_is_refused(own: Path) -> None:
    (own / "wrap_skirt.py").write_text(SKIRT.replace("return Draft(", "return (", 1), "utf-8")
    use_blocks(own)
    at = line_of(SKIRT, "def wrap_skirt")
    with pytest.raises(InputError, match=rf"skirt\.py:{at}: wrap-skirt: gives back tuple, not a"):
        draft_garment(chart_woman(), None, "wrap-skirt")


def test_a_girth_that_no_level_line_shows_is_refused_with_what_to_add(own: Path) -> None:
    text = SKIRT.replace('levels=(Level("hip"', 'levels=(Level("seat"')
    (own / "wrap_skirt.py").write_text(text, "utf-8")
    use_blocks(own)
    with pytest.raises(DraftError) as caught:
        draft_garment(chart_woman(), None, "wrap-skirt")
    said = str(caught.value)
    assert "a girth is stated for the hip, but no piece draws that level" in said
    assert 'levels=(Level("hip", (path,)),)' in said


GARMENT = '''"""Caped shirt: a shirt's torso and sleeve with a gathered yoke ruffle, invented."""

PARTS = {"bodice": {"length": "hip"}, "sleeve": {"cap_ease": 12.0}, "shift-length": {}}
'''

ALTERATION = '''"""Shift length: says how long the front is; alters nothing. Source: ours.

Source: ours, invented for a test.
"""

from dataclasses import dataclass, replace

from drafting import choice


@dataclass(frozen=True)
class Choices:
    shift_told: bool = choice(True, "yes/no", "whether the front's length is put on record", source="ours")


def shift_length(draft, body, fabric, choices):
    return replace(draft, facts=draft.facts | {"front": draft["front"].edges[0].length})
'''


def test_parts_of_the_kit_and_of_ones_own_make_a_garment(own: Path) -> None:
    """A function that takes the draft first alters what stands; its part comes after the others."""
    (own / "shift_length.py").write_text(ALTERATION, "utf-8")
    (own / "long_shirt.py").write_text(GARMENT, "utf-8")
    assert use_blocks(own) == ("shift-length", "long-shirt")
    assert "shift-length" not in names(alone=True)
    made = draft_garment(chart_woman(), None, "long-shirt")
    assert {"back", "front", "sleeve"} <= {piece.name for piece in made.draft.pieces}
    assert made.draft.facts["front"] == made.draft["front"].edges[0].length
    assert made.choices["cap_ease"] == (12.0, "default")


@pytest.mark.parametrize(
    ("part", "instead", "said"),
    [
        ('"sleeve"', '"sleve"', "there is no single block 'sleve' to be a part; did you mean sleeve?"),
        ('"sleeve"', '"shirt"', "there is no single block 'shirt' to be a part; did you mean"),
        ("cap_ease", "cap_eaze", "sleeve has no choice 'cap_eaze'; did you mean cap_ease?"),
        ("{}}", "5}", "PARTS is no table of blocks and their defaults"),
    ],
)
def test_parts_that_there_are_not_are_refused(own: Path, part: str, instead: str, said: str) -> None:
    (own / "shift_length.py").write_text(ALTERATION, "utf-8")
    (found,) = written(own, GARMENT.replace(part, instead), "long_shirt.py")
    assert found.startswith(f"long_shirt.py:3: long-shirt: {said}")


def commands_with(package: Path, *asked: str) -> subprocess.CompletedProcess[str]:
    """Run a command where `package` is installed too: its folder is on the path of modules."""
    path = os.pathsep.join([str(package), str(ROOT)])
    return subprocess.run(
        [sys.executable, "-m", "drafting", *asked],
        capture_output=True,
        text=True,
        cwd=package,
        env=os.environ | {"PYTHONPATH": path},
    )


@pytest.fixture
def package(tmp_path: Path) -> Path:
    """An installed package as the packaging standard has it: a module, and its `.dist-info`."""
    about = tmp_path / "site" / "our_skirts-1.0.dist-info"
    about.mkdir(parents=True)
    (about / "METADATA").write_text("Metadata-Version: 2.1\nName: our-skirts\nVersion: 1.0\n")
    (about / "entry_points.txt").write_text("[drafting.blocks]\nwrap-skirt = our_skirts.wrap\n")
    (about.parent / "our_skirts").mkdir()
    (about.parent / "our_skirts" / "__init__.py").touch()
    (about.parent / "our_skirts" / "wrap.py").write_text(SKIRT, "utf-8")
    return about.parent


def test_an_installed_package_offers_a_block_by_its_entry_point(package: Path) -> None:
    listed = commands_with(package, "blocks", "wrap-skirt")
    assert listed.returncode == 0, listed.stderr
    assert "wrap-skirt: Wrap skirt: half a skirt on the fold" in listed.stdout
    assert f"written in {package / 'our_skirts' / 'wrap.py'}" in " ".join(listed.stdout.split())


def test_a_broken_package_is_named_with_the_way_out(package: Path) -> None:
    (package / "our_skirts" / "wrap.py").write_text("import nothing_such\n", "utf-8")
    listed = commands_with(package, "blocks")
    assert listed.returncode == 2
    assert listed.stderr == (
        "our-skirts: wrap-skirt: cannot be imported: ModuleNotFoundError: No module named "
        "'nothing_such'; mend the package our-skirts, or uninstall it\n"
    )


def test_a_folder_may_not_take_the_name_of_an_installed_block(package: Path, own: Path) -> None:
    (own / "wrap_skirt.py").write_text(SKIRT, "utf-8")
    listed = commands_with(package, "blocks", "all", "--blocks", str(own))
    assert listed.returncode == 2
    assert "there is a block wrap-skirt already: " in listed.stderr
    assert "our_skirts" in listed.stderr
