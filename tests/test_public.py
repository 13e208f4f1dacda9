"""What other people's programs may rely on: the names of `drafting`, each documented and cheap to reach."""

from __future__ import annotations

import inspect
import pkgutil
import re
import subprocess
import sys
from importlib.metadata import version
from pathlib import Path

import pytest

import drafting
from drafting import public
from drafting.commands.cli import main

ROOT = Path(__file__).resolve().parent.parent

NAMES = sorted(drafting.__all__)
VERBS = [name for name in NAMES if inspect.isroutine(inspect.unwrap(getattr(drafting, name)))]


def test_every_public_name_is_there_once_and_is_no_module() -> None:
    """`from drafting import x` must never mean a folder of ours one day and a function the next."""
    assert len(NAMES) == len(set(NAMES))
    modules = {info.name for info in pkgutil.iter_modules(drafting.__path__)}
    assert not modules & set(NAMES)
    assert set(NAMES) <= set(dir(drafting))
    with pytest.raises(AttributeError, match="no attribute 'frock'"):
        _ = drafting.frock


@pytest.mark.parametrize("name", VERBS)
def test_every_public_function_says_what_it_gives_and_shows_it(name: str) -> None:
    """The examples run: pytest collects the doctests of every module."""
    text = inspect.getdoc(getattr(drafting, name)) or ""
    assert len(VERBS) > 20
    assert ">>> " in text, "show it"


@pytest.mark.parametrize("name", sorted(set(NAMES) - set(VERBS)))
def test_every_public_noun_says_what_it_is(name: str) -> None:
    value = getattr(drafting, name)
    assert not inspect.isclass(value) or re.match(r"[A-Z].*\.", inspect.getdoc(value) or "")


def test_importing_the_package_loads_none_of_its_rooms_and_no_library() -> None:
    code = "import sys; known = set(sys.modules); import drafting; print(*set(sys.modules) - known)"
    asked = [sys.executable, "-c", code]
    done = subprocess.run(asked, capture_output=True, text=True, check=True, cwd=ROOT)
    loaded = set(done.stdout.split())
    assert {name for name in loaded if name.startswith("drafting")} == {"drafting"}
    assert {name.partition(".")[0] for name in loaded} - sys.stdlib_module_names == {"drafting"}


def test_a_name_loads_no_more_than_it_needs() -> None:
    code = "import sys, drafting; drafting.read_body, drafting.choice; print(*sys.modules)"
    asked = [sys.executable, "-c", code]
    done = subprocess.run(asked, capture_output=True, text=True, check=True, cwd=ROOT)
    assert not {"numpy", "scipy", "shapely", "matplotlib"} & set(done.stdout.split())


def test_the_two_lists_of_public_names_are_one() -> None:
    assert {name for name in vars(public) if name[:2] != "__"} - {"annotations"} == set(NAMES)
    assert all(getattr(public, name) is getattr(drafting, name) for name in NAMES)


def test_the_version_is_that_of_the_installed_package(capsys: pytest.CaptureFixture[str]) -> None:
    assert drafting.__version__ == version("drafting-kit")
    with pytest.raises(SystemExit) as stopped:
        main(["--version"])
    assert stopped.value.code == 0
    assert capsys.readouterr().out == f"drafting {version('drafting-kit')}\n"


def test_programs_that_use_the_public_names_are_typed(tmp_path: Path) -> None:
    """mypy, strict, reads `py.typed` and our annotations; so does whoever writes a block."""
    (tmp_path / "mine.py").write_text(
        "import drafting\n"
        "from drafting import Draft, draft_garment, make, read_body, read_costume\n\n"
        "made = make(read_costume('a.toml'))\n"
        "reveal_type(made)\n"
        "draft: Draft = draft_garment(read_body('b.toml'), None, 'shirt').draft\n"
        "draft_garment('not a body', None, 'shirt')\n"
        "reveal_type(drafting.__version__)\n"
        "drafting.frock\n",
        "utf-8",
    )
    example = ROOT / "measurements" / "blocks" / "pelerine.py"
    asked = [sys.executable, "-m", "mypy", "--strict", str(tmp_path / "mine.py"), str(example)]
    said = subprocess.run(asked, capture_output=True, text=True, cwd=ROOT).stdout
    assert (ROOT / "drafting" / "py.typed").exists()
    assert 'Revealed type is "drafting.costume.make.Made"' in said
    assert 'mine.py:7: error: Argument 1 to "draft_garment" has incompatible type "str"' in said
    assert 'Revealed type is "str"' in said
    assert "mine.py:9: error:" in said
    assert "pelerine.py" not in said
    assert "Found 2 errors in 1 file" in said


def test_the_notebooks_use_the_public_names_alone() -> None:
    """What a page shows anybody can do: `drafting`, and `drafting.notebook` for what is clicked."""
    pages = sorted((ROOT / "notebooks").glob("*.ipynb"))
    asked = {
        (page.name, wanted)
        for page in pages
        for wanted in re.findall(r"(?:from|import) (drafting[\w.]*)", page.read_text("utf-8"))
    }
    assert len(pages) == 12
    assert {wanted for _, wanted in asked} == {"drafting", "drafting.notebook"}, sorted(asked)
