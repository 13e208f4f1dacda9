"""Every notebook runs as it is committed, is short, and is committed without its outputs."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from typing import Any

import nbformat
import pytest
from nbclient import NotebookClient
from nbclient.exceptions import CellExecutionError

from tests.notebook.lab import ROOT

NOTEBOOKS = sorted((ROOT / "notebooks").glob("*.ipynb"))
SECONDS = 120


def run(notebook: Any, folder: Path, home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Run every cell with `folder` as the current folder, stopping at the first that raises."""
    monkeypatch.setenv("PYTHONPATH", str(ROOT))
    for name in ("IPYTHONDIR", "JUPYTER_RUNTIME_DIR", "MPLCONFIGDIR"):
        monkeypatch.setenv(name, str(home))
    where = {"metadata": {"path": str(folder)}}
    NotebookClient(notebook, timeout=SECONDS, kernel_name="python3", resources=where).execute()


def test_there_are_notebooks() -> None:
    assert ROOT / "notebooks" / "00_start_here.ipynb" in NOTEBOOKS


@pytest.mark.population  # each run has them in JupyterLab: test_every_notebook
@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_runs_where_it_lies_and_keeps_what_it_promises(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    notebook = nbformat.read(path, as_version=4)
    assert "assert " in [cell for cell in notebook.cells if cell.cell_type == "code"][-1].source
    run(notebook, path.parent, tmp_path, monkeypatch)


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_has_at_most_fifteen_cells_and_no_logic(path: Path) -> None:
    notebook = nbformat.read(path, as_version=4)
    assert len(notebook.cells) <= 15
    code = "\n".join(cell.source for cell in notebook.cells if cell.cell_type == "code")
    assert all(word not in code for word in ("def ", "class ", "while ", "lambda "))


def stripped(*paths: Path) -> str:
    """Return what nbstripout says of notebooks that it would not leave as they are; nothing: it would."""
    asked = [sys.executable, "-m", "nbstripout", "--verify", *map(str, paths)]
    run = subprocess.run(asked, capture_output=True, text=True)
    return "" if run.returncode == 0 else f"{run.stdout}{run.stderr}" or "not stripped"


def test_every_notebook_is_committed_without_outputs() -> None:
    assert not stripped(*NOTEBOOKS), "run: python -m nbstripout notebooks/*.ipynb"


def test_a_committed_output_would_be_found(tmp_path: Path) -> None:
    """The last of several, all others without outputs."""
    notebook = nbformat.read(NOTEBOOKS[0], as_version=4)
    cell = next(cell for cell in notebook.cells if cell.cell_type == "code")
    cell.outputs = [nbformat.v4.new_output("stream", text="left over")]
    nbformat.write(notebook, tmp_path / "with-output.ipynb")
    assert "with-output" in stripped(*NOTEBOOKS[:2], tmp_path / "with-output.ipynb")


def test_a_refused_file_is_told_in_sentences_without_the_lines_of_python(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "bare.toml").write_text('title = "Nobody wears it"\n')
    code = "from drafting.notebook import Bench\nfrom drafting.costume.file import read_costume\n"
    cell = nbformat.v4.new_code_cell(code + "read_costume('bare.toml')")
    notebook = nbformat.v4.new_notebook(cells=[cell])
    with pytest.raises(CellExecutionError):
        run(notebook, tmp_path, tmp_path, monkeypatch)
    (shown,) = notebook.cells[0].outputs
    assert shown.output_type == "error"
    assert "wearer: is missing" in "\n".join(shown.traceback)
    assert not any("Traceback" in line or "in <module>" in line for line in shown.traceback)
