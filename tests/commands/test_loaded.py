"""What a command loads: a start that draws nothing does not wait for what draws."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from drafting.ground.shipped import shipped

BODY = shipped("measurements") / "bodies" / "lamplighter.toml"
DEMO = shipped("measurements") / "costumes" / "lamplighter.toml"

LOADED = """
import sys
from drafting.commands.cli import main
try:
    main({command!r})
except SystemExit:
    pass
print(*sys.modules, file=sys.stderr)
"""


def loaded(*command: str) -> set[str]:
    """Return the names of all modules that a command has loaded when it ends."""
    script = LOADED.format(command=list(command))
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    return set(done.stderr.split())


DRAWS = {"matplotlib", "PIL", "reportlab", "pikepdf", "ezdxf", "jinja2", "spyrrow", "IPython", "ipywidgets"}
HEAVY = {"scipy.optimize", "scipy.interpolate", "scipy.sparse", "scipy.ndimage", "scipy.spatial"}


@pytest.mark.parametrize("command", [("body", str(BODY)), ("blocks",), ("blocks", "shirt")])
def test_a_command_that_only_tells_loads_nothing_that_draws_or_settles(command: tuple[str, ...]) -> None:
    found = loaded(*command)
    assert "drafting.blocks" in found  # it ran
    assert found & (DRAWS | HEAVY) == set()


@pytest.mark.parametrize("command", [("--help",), ("body", "--help")])
def test_help_drafts_nothing(command: tuple[str, ...]) -> None:
    assert loaded(*command) & (DRAWS | HEAVY | {"numpy", "shapely", "drafting.blocks"}) == set()


def test_a_costume_is_made_without_what_settles_cloth(tmp_path: Path) -> None:
    found = loaded("make", str(DEMO), "--out", str(tmp_path / "out"))
    assert "reportlab" in found
    charts = {"matplotlib.pyplot", "matplotlib.figure", "matplotlib.axes", "ezdxf"}  # R12 is written as text
    assert found & (HEAVY | charts | {"drafting.worn.settled", "spyrrow"}) == set()
