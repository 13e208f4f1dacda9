"""The house rules: what lies at the top, how long things are, what the lock and the wheel hold."""

from __future__ import annotations

import ast
import os
import re
import subprocess
import sys
import sysconfig
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest
from packaging.requirements import Requirement

from drafting.ground.shipped import in_checkout, shipped

ROOT = Path(__file__).resolve().parent.parent

TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "drafting", "notebooks", "tests", "measurements"}
FILE_LINES, FUNCTION_LINES = 300, 45

# A block's construction is the one long kind of function; each is named here, with its length.
LONG_CONSTRUCTIONS: dict[str, int] = {}

# Hosts of package registries and folders of one machine; put together so as not to find themselves.
PRIVATE = re.compile("|".join(["pypi" + r"\.org", "python" + "hosted", "npm" + "js", "/wo" + "rk/"]))


@pytest.fixture(scope="module")
def files() -> list[Path]:
    """Every file that is, or could be, committed."""
    asked = ["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z"]
    if not (ROOT / ".git").exists():
        pytest.skip("not a git checkout, so the committed files are not known")
    listed = subprocess.run(asked, cwd=ROOT, capture_output=True, text=True, check=True).stdout
    return [ROOT / name for name in listed.split("\0") if name and (ROOT / name).exists()]


def test_the_top_level_holds_only_what_it_may(files: list[Path]) -> None:
    top = {path.relative_to(ROOT).parts[0] for path in files}
    assert {name for name in top if not name.startswith(".")} <= TOP


def test_no_file_names_a_registry_or_a_folder_of_one_machine(files: list[Path]) -> None:
    text = {path: path.read_text("utf-8", errors="replace") for path in files}
    named = {
        str(path.relative_to(ROOT)): found[0] for path, words in text.items() if (found := PRIVATE.search(words))
    }
    assert not named


def python_files() -> list[Path]:
    return sorted([*ROOT.glob("drafting/**/*.py"), *ROOT.glob("tests/**/*.py")])


def test_no_file_is_longer_than_300_lines() -> None:
    lines = {str(path.relative_to(ROOT)): len(path.read_text("utf-8").splitlines()) for path in python_files()}
    assert {name: n for name, n in lines.items() if n > FILE_LINES} == {}


def lengths(code: str) -> Iterator[tuple[str, int]]:
    """Yield each function's name and its lines, the signature counted and the docstring not."""
    for node in ast.walk(ast.parse(code)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            first = node.body[0]
            is_doc = isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant)
            doc = (first.end_lineno or 0) - first.lineno + 1 if is_doc else 0
            yield node.name, (node.end_lineno or 0) - node.lineno + 1 - doc


def test_no_function_is_longer_than_45_lines_but_the_constructions_named_here() -> None:
    found = {
        f"{path.relative_to(ROOT / 'drafting').with_suffix('').as_posix()}.{name}": n
        for path in sorted(ROOT.glob("drafting/**/*.py"))
        for name, n in lengths(path.read_text("utf-8"))
        if n > FUNCTION_LINES
    }
    assert found.keys() == LONG_CONSTRUCTIONS.keys()
    assert all(name.startswith("blocks/") for name in LONG_CONSTRUCTIONS)
    assert {name for name, n in found.items() if n > LONG_CONSTRUCTIONS[name]} == set()


def test_a_function_is_measured_without_its_docstring() -> None:
    code = 'def f(\n    a,\n):\n    """One.\n\n    Two.\n    """\n    return a\n'
    assert list(lengths(code)) == [("f", 4)]


def locked(name: str) -> set[tuple[str, str]]:
    text = (ROOT / ".ci" / name).read_text("utf-8")
    return set(re.findall(r"^([a-z0-9._-]+)==(\S+)", text, flags=re.MULTILINE))


LOCKS = [("requirements.lock", ("build", "test")), ("requirements-kit.lock", ("build",))]


@pytest.mark.parametrize(("name", "extras"), LOCKS)
def test_the_lock_holds_every_dependency_in_a_version_that_will_do(name: str, extras: tuple[str, ...]) -> None:
    table = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    asked = [*table["dependencies"]]
    for extra in extras:
        asked += table["optional-dependencies"][extra]
    needs = [Requirement(line) for line in asked if not line.startswith(table["name"])]
    pins = locked(name)
    assert len(needs) > 8
    for need in needs:
        versions = [version for pinned, version in pins if pinned == need.name.lower()]
        assert versions, f"{need.name} is not in .ci/{name}: run .ci/lock"
        assert all(need.specifier.contains(version) for version in versions), need


def test_what_a_maker_installs_is_what_the_tests_ran_with() -> None:
    assert locked("requirements-kit.lock") < locked("requirements.lock")


def test_a_checkout_reads_its_own_top_level_folders() -> None:
    assert in_checkout()
    assert shipped("measurements") == ROOT / "measurements"
    assert shipped("notebooks") == ROOT / "notebooks"


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the Python of an environment that holds our wheel, and else only what we depend on."""
    place = tmp_path_factory.mktemp("wheel")
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "-o", str(place), str(ROOT)]
    built = subprocess.run(build, capture_output=True, text=True)
    assert built.returncode == 0, built.stdout + built.stderr
    (wheel,) = place.glob("drafting_kit-*.whl")
    subprocess.run([sys.executable, "-m", "venv", "--without-pip", place / "venv"], check=True)
    python = place / "venv" / ("Scripts" if os.name == "nt" else "bin") / "python"
    pip = [sys.executable, "-m", "pip", "--python", str(python), "install", "-q", "--no-deps"]
    subprocess.run([*pip, "--no-index", str(wheel)], check=True)
    # Our dependencies are those of this environment: lent as a plain path, which brings no editable
    # install of ours along.
    asked = [str(python), "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"]
    site = subprocess.run(asked, capture_output=True, text=True, check=True).stdout.strip()
    Path(site, "lent.pth").write_text(sysconfig.get_path("purelib"))
    return python


def run(python: Path, *arguments: str, cwd: Path) -> str:
    done = subprocess.run([str(python), *arguments], cwd=cwd, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


@pytest.mark.xdist_group("wheel")
def test_tests_of_one_group_go_to_one_worker(request: pytest.FixtureRequest) -> None:
    """One browser serves a page's tests in their order; a worker tells its groups in the test's name.

    Without workers there is nothing to keep together, and no name says so.
    """
    has_workers = "PYTEST_XDIST_WORKER" in os.environ
    assert request.node.nodeid.endswith("@wheel") == has_workers, "run it with --dist loadgroup"


@pytest.mark.slow
@pytest.mark.xdist_group("wheel")
def test_an_installed_wheel_carries_the_measurements_and_notebooks(installed: Path, tmp_path: Path) -> None:
    code = "from drafting.ground.shipped import *; print(in_checkout(), shipped('measurements').parent)"
    word, _, folder = run(installed, "-c", code, cwd=tmp_path).strip().partition(" ")
    assert word == "False"
    for name in ("measurements", "notebooks"):
        ours = [path for path in sorted((ROOT / name).rglob("*.*")) if path.suffix != ".pyc"]
        ours = [path for path in ours if ".ipynb_checkpoints" not in path.parts]
        assert ours, f"{name}/ holds nothing to ship"
        for path in ours:
            carried = Path(folder) / path.relative_to(ROOT)
            assert carried.read_bytes() == path.read_bytes()


@pytest.mark.slow
@pytest.mark.xdist_group("wheel")
def test_an_installed_wheel_carries_every_template_style_and_script(installed: Path, tmp_path: Path) -> None:
    code = "import drafting; print(drafting.__path__[0])"
    package = Path(run(installed, "-c", code, cwd=tmp_path).strip())
    assert package != ROOT / "drafting"
    for ending in ("jinja", "css", "js"):
        ours = sorted((ROOT / "drafting").rglob(f"*.{ending}"))
        assert ours, f"there is no .{ending} beside any module"
        for path in ours:
            carried = package / path.relative_to(ROOT / "drafting")
            assert carried.read_bytes() == path.read_bytes()


@pytest.mark.slow
@pytest.mark.xdist_group("wheel")
def test_an_installed_wheel_lists_its_blocks_and_makes_the_demo(installed: Path, tmp_path: Path) -> None:
    assert "bodice" in run(installed, "-m", "drafting", "blocks", cwd=tmp_path)
    run(installed, "-m", "drafting", "demo", "--out", "out", cwd=tmp_path)
    assert list((tmp_path / "out" / "pieces").glob("*.svg"))
