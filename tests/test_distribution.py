"""What is handed on: the source archive passes the README's two commands, the wheel says its licence."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import tarfile
import zipfile
from email.message import Message
from email.parser import HeaderParser
from pathlib import Path

import pytest
from packaging.licenses import canonicalize_license_expression

from tests.test_readme import COMMANDS

ROOT = Path(__file__).resolve().parent.parent

pytestmark = [pytest.mark.slow, pytest.mark.xdist_group("sdist")]


def build(what: str, source: Path, out: Path) -> Path:
    asked = [sys.executable, "-m", "build", f"--{what}", "--no-isolation", "-o", str(out), str(source)]
    built = subprocess.run(asked, capture_output=True, text=True)
    assert built.returncode == 0, built.stdout + built.stderr
    (file,) = out.glob("*.tar.gz" if what == "sdist" else "*.whl")
    return file


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The source archive, unpacked somewhere else."""
    place = tmp_path_factory.mktemp("sdist")
    with tarfile.open(build("sdist", ROOT, place)) as archive:
        archive.extractall(place, filter="data")
    (folder,) = (path for path in place.iterdir() if path.is_dir())
    return folder


@pytest.fixture(scope="module")
def wheel(unpacked: Path, tmp_path_factory: pytest.TempPathFactory) -> zipfile.ZipFile:
    """The wheel built from the unpacked archive, not from the checkout."""
    return zipfile.ZipFile(build("wheel", unpacked, tmp_path_factory.mktemp("wheel")))


def about(wheel: zipfile.ZipFile) -> Message:
    (name,) = (name for name in wheel.namelist() if name.endswith(".dist-info/METADATA"))
    return HeaderParser().parsestr(wheel.read(name).decode("utf-8"))


def committed() -> set[str]:
    asked = ["git", "ls-files", "-z"]
    if not (ROOT / ".git").exists():
        pytest.skip("not a git checkout, so the committed files are not known")
    listed = subprocess.run(asked, cwd=ROOT, capture_output=True, text=True, check=True).stdout
    return {name for name in listed.split("\0") if name and (ROOT / name).is_file()}


def test_the_source_archive_holds_every_file_that_is_committed(unpacked: Path) -> None:
    held = {path.relative_to(unpacked).as_posix() for path in unpacked.rglob("*") if path.is_file()}
    assert committed() - held == set()
    assert not [name for name in held if re.search(r"__pycache__|\.pyc$|\.ipynb_checkpoints", name)]


def test_it_holds_what_the_two_commands_read(unpacked: Path) -> None:
    for command in COMMANDS:
        script = re.findall(r"\S+\.py", command)[0]
        assert (unpacked / script).read_bytes() == (ROOT / script).read_bytes()
    for lock in (ROOT / ".ci").glob("*.lock"):
        assert (unpacked / ".ci" / lock.name).read_bytes() == lock.read_bytes()
    assert (unpacked / "tests" / "__main__.py").is_file()  # python -m tests
    assert (unpacked / ".ci" / "run").stat().st_mode & 0o100
    assert (unpacked / "measurements" / "costumes" / "lamplighter.toml").is_file()


def test_the_kit_runs_from_it_as_from_a_checkout(unpacked: Path) -> None:
    code = "from drafting.ground.shipped import *; print(in_checkout(), shipped('measurements'))"
    asked = [sys.executable, "-c", code]
    done = subprocess.run(asked, capture_output=True, text=True, check=True, cwd=unpacked)
    assert done.stdout == f"True {unpacked / 'measurements'}\n"


def test_its_own_tests_start_in_it(unpacked: Path) -> None:
    """The quick ones: house rules and the README's, from the archive's own files."""
    asked = [
        sys.executable,
        "-m",
        "pytest",
        "-q",
        "-p",
        "no:cacheprovider",
        "-m",
        "not slow",
        "tests/test_layers.py",
        "tests/test_house.py",
        "tests/ground/test_units.py",
    ]
    alone = {name: value for name, value in os.environ.items() if not name.startswith("PYTEST_")}  # no worker
    done = subprocess.run(asked, capture_output=True, text=True, cwd=unpacked, env=alone)
    assert done.returncode == 0, done.stdout[-2000:]
    assert re.search(r"\d\d+ passed", done.stdout)


def test_ruff_passes_over_the_environments_that_the_two_commands_make_in_it(unpacked: Path) -> None:
    """Without a repository ruff reads no .gitignore."""
    places = re.findall(r'\("(\.venv[\w-]*)",', (ROOT / ".ci" / "start.py").read_text("utf-8"))
    assert len(places) == len(COMMANDS)
    for place in places:
        (unpacked / place / "lib").mkdir(parents=True)
        (unpacked / place / "lib" / "theirs.py").write_text("import os,sys\n", "utf-8")
    for asked in (["check"], ["format", "--check"]):
        done = subprocess.run(
            [sys.executable, "-m", "ruff", *asked, "--quiet", "."], cwd=unpacked, text=True, capture_output=True
        )
        assert done.returncode == 0, done.stdout[-1000:]


def test_the_wheel_built_from_it_names_its_licence_as_spdx_does_and_carries_it(wheel: zipfile.ZipFile) -> None:
    """PEP 639: an SPDX expression, the file beside it, and no classifier that says it again."""
    said = about(wheel)
    assert said["License-Expression"] == canonicalize_license_expression("mit") == "MIT"
    assert said.get_all("License-File") == ["drafting/LICENSE"]
    assert not [line for line in said.get_all("Classifier", []) if line.startswith("License")]
    (carried,) = (n for n in wheel.namelist() if n.endswith(".dist-info/licenses/drafting/LICENSE"))
    text = (ROOT / "drafting" / "LICENSE").read_text("utf-8")
    assert wheel.read(carried).decode("utf-8") == text
    assert text.startswith("MIT License\n\nCopyright (c) 2026 the drafting kit's makers")


def test_the_wheel_is_typed_and_carries_the_example_of_a_block(wheel: zipfile.ZipFile) -> None:
    """PEP 561: `py.typed` in the package."""
    assert "drafting/py.typed" in wheel.namelist()
    assert "Typing :: Typed" in about(wheel).get_all("Classifier", [])
    assert "drafting/_shipped/measurements/blocks/pelerine.py" in wheel.namelist()
