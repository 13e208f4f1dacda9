"""What contributors meet: the workflow file, the templates, the start script, the lists of locked packages."""

from __future__ import annotations

import os
import re
import runpy
import subprocess
import sys
import tomllib
import venv
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml

ROOT = Path(__file__).resolve().parent.parent
GITHUB = ROOT / ".github"
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]


@pytest.fixture
def workflow() -> Any:
    return yaml.safe_load((GITHUB / "workflows" / "tests.yml").read_text("utf-8"))


def test_the_workflow_runs_the_readmes_commands_on_three_systems_and_four_pythons(workflow: Any) -> None:
    # Keys by the documented workflow syntax, from memory; YAML reads the bare word "on" as true.
    assert {"name", "jobs", True} <= set(workflow)
    (job,) = workflow["jobs"].values()
    matrix = job["strategy"]["matrix"]
    assert {name.partition("-")[0] for name in matrix["os"]} == {"ubuntu", "macos", "windows"}
    assert matrix["python"] == ["3.11", "3.12", "3.13", "3.14"]
    assert all(isinstance(version, str) for version in matrix["python"]), "3.10 would be read as 3.1"
    assert job["runs-on"] == "${{ matrix.os }}"
    for step in job["steps"]:
        assert len({"uses", "run"} & set(step)) == 1
    run = [step["run"] for step in job["steps"] if "run" in step]
    readme = (ROOT / "README.md").read_text("utf-8")
    assert len(run) == 2
    assert all(line.replace("python ", "python3 ", 1) in readme for line in run)


def test_templates_ask_for_what_a_fault_needs() -> None:
    for name in ("fault", "wish"):
        text = (GITHUB / "ISSUE_TEMPLATE" / f"{name}.md").read_text("utf-8")
        _, head, body = text.split("---\n", 2)
        assert {"name", "about"} <= set(yaml.safe_load(head))
        assert body.strip()
    assert "[ ]" in (GITHUB / "pull_request_template.md").read_text("utf-8")


@pytest.mark.parametrize("asked", [[], ["demo"], ["--help"]])
def test_the_start_script_says_how_it_is_called_and_makes_nothing(asked: list[str], tmp_path: Path) -> None:
    told = subprocess.run(
        [sys.executable, str(ROOT / ".ci" / "start.py"), *asked], capture_output=True, text=True, cwd=tmp_path
    )
    assert told.returncode == 2
    assert "start.py drafting demo --out out" in told.stderr
    assert not list(tmp_path.iterdir())


def test_every_locked_package_has_hashes_and_no_registry_is_named() -> None:
    for lock in ("requirements.lock", "requirements-kit.lock"):
        text = (ROOT / ".ci" / lock).read_text("utf-8")
        entries = re.split(r"\n(?=\S)", text.strip())
        assert len(entries) > 90
        assert all("--hash=sha256:" in entry for entry in entries)
        assert "://" not in text


def test_the_kit_installs_without_a_second_pdf_library_or_the_engine_of_a_long_search() -> None:
    names = {re.split(r"[<>=\[]", wanted)[0] for wanted in PROJECT["dependencies"]}
    assert {"jupyterlab", "ipywidgets", "shapely", "matplotlib", "svgwrite"} <= names
    assert not names & {"pikepdf", "pypdf", "spyrrow", "pyogrio"}
    assert PROJECT["scripts"]["drafting-kit"] == PROJECT["scripts"]["drafting"]


def test_the_readme_warns_of_the_other_project_and_can_be_cited() -> None:
    readme = (ROOT / "README.md").read_text("utf-8")
    assert "another project owns the name `drafting`" in readme
    assert "pip install drafting\n" not in readme
    cited = re.search(r"@software\{\w+,\n(.*?)\n\}", readme, flags=re.DOTALL)
    assert cited
    fields = dict(re.findall(r"(\w+)\s*=\s*\{(.*)\}", cited[1]))
    assert fields["version"] == PROJECT["version"]
    assert {"title", "author", "year"} <= set(fields)


def test_the_public_names_are_rendered_by_a_documentation_tool(tmp_path: Path) -> None:
    pdoc = pytest.importorskip("pdoc", reason="the test lock brings it")
    pdoc.pdoc("drafting", output_directory=tmp_path)
    page = (tmp_path / "drafting.html").read_text("utf-8")
    assert all(f'id="{name}"' in page for name in ("make", "read_costume", "draft_garment", "write_output"))
    assert ".ci/docs" in (ROOT / "DEVELOPERS.md").read_text("utf-8")


def test_what_the_tests_start_keeps_what_python_compiled(monkeypatch: pytest.MonkeyPatch) -> None:
    """A workplace may forbid it; each process of a run would then compile the kit anew, seconds every time."""
    started = runpy.run_path(str(ROOT / ".ci" / "start.py"))
    seen: list[Mapping[str, str]] = []

    def run(*_: object, env: Mapping[str, str] | None = None, **__: object) -> subprocess.CompletedProcess[str]:
        seen.append(os.environ.copy() if env is None else env)
        return subprocess.CompletedProcess([], 0)

    monkeypatch.setenv("PYTHONDONTWRITEBYTECODE", "1")
    monkeypatch.setattr(subprocess, "run", run)
    monkeypatch.setattr(venv, "create", lambda *_, **__: None)
    assert started["main"](["tests"]) == 0
    assert "PYTHONDONTWRITEBYTECODE" not in seen[-1]
