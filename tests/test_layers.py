"""Imports only go down, and a few libraries come in by one door each."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pytest

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "drafting"

# Each module or package of drafting/, lowest first. Those in one line do not import each other.
ORDER = (
    ("errors", "findings", "choices", "names", "tolerances", "shipped", "remembered", "nearest"),
    ("units",),
    ("geometry", "reading", "scale", "paper"),
    ("piece",),
    ("draft", "pattern"),
    ("walk", "chain", "hands", "body", "fabric", "label", "workroom", "named"),
    ("shaping",),
    ("blocks", "alter", "finish"),
    ("checks", "layout", "print_wishes", "treatments", "stand_in"),
    ("sheet", "costume_file"),
    ("export", "chosen"),
    ("printing",),
    ("garment",),
    ("costume", "next_measure"),
    ("whole_costume",),
    ("cutting",),
    ("making",),
    ("report", "printout", "plan_page"),
    ("output",),
    ("notebook", "console", "lab"),
    ("app",),
    ("cli",),
    ("__main__",),
)
LEVEL = {name: level for level, names in enumerate(ORDER) for name in names}

# Where a library may be imported: the module's path without `.py`, or its folder.
DOORS = {
    "shapely": ("geometry/area",),
    "pyclipper": ("layout/clip",),
    "spyrrow": ("layout/child",),
    "svgwrite": ("export",),
    "tomlkit": ("reading/rewriting",),
    "reportlab": ("export/pdf",),
    "pikepdf": ("export/pdf",),
    "ezdxf": ("export/dxf",),
    "matplotlib": ("export/figure", "export/pdf_text", "notebook"),
    "anywidget": ("notebook",),
    "traitlets": ("notebook",),
    "ipywidgets": ("notebook",),
    "IPython": ("notebook",),
    "jupyterlab": ("lab",),
    "voila": ("app",),
}


class Import(NamedTuple):
    """One import: the file and line it stands in, and what it imports."""

    place: str
    importer: str
    wanted: str


def imports_of(code: str, name: str) -> Iterator[Import]:
    """Yield every import in `code`, those inside functions too; `name` is the path without .py."""
    for node in ast.walk(ast.parse(code)):
        if isinstance(node, ast.Import):
            wanted = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.level:
            wanted = [f"relative import of {node.module}"]
        elif isinstance(node, ast.ImportFrom) and node.module == "drafting":
            wanted = [f"drafting.{alias.name}" for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            wanted = [str(node.module)]
        else:
            continue
        yield from (Import(f"drafting/{name}.py:{node.lineno}", name, full) for full in wanted)


def faults(found: Import) -> Iterator[str]:
    """Yield what is wrong with one import."""
    first, _, rest = found.wanted.partition(".")
    if first.startswith("relative import"):
        yield f"{found.place}: write the import from drafting.… in full"
    elif first == "drafting":
        ours, theirs = found.importer.split("/")[0], rest.split(".")[0]
        if theirs not in LEVEL:
            yield f"{found.place}: drafting.{theirs} is in no layer; put it into ORDER"
        elif ours != theirs and LEVEL.get(ours, 99) <= LEVEL[theirs]:
            yield f"{found.place}: {ours} imports {theirs}, which is not below it"
    elif first in DOORS and not found.importer.startswith(DOORS[first]):
        yield f"{found.place}: {first} comes in by {' or '.join(DOORS[first])} only"


def modules() -> Iterator[tuple[str, str]]:
    for path in sorted(PACKAGE.rglob("*.py")):
        yield path.relative_to(PACKAGE).with_suffix("").as_posix(), path.read_text("utf-8")


def test_every_module_is_in_a_layer() -> None:
    names = {name.split("/")[0] for name, _ in modules()} - {"__init__"}
    lost = sorted(names - LEVEL.keys())
    assert not lost, f"no layer for {', '.join(lost)}: put it into ORDER of tests/test_layers.py"


def test_imports_only_go_down() -> None:
    found = [fault for name, code in modules() for i in imports_of(code, name) for fault in faults(i)]
    assert not found, "\n" + "\n".join(found)


@pytest.mark.parametrize(
    ("name", "code", "said"),
    [
        ("geometry/path", "from drafting.draft.piece import Edge", "geometry imports piece"),
        ("blocks/sleeve", "def f():\n    import drafting.commands.cli", "blocks imports cli"),
        ("blocks/sleeve", "from drafting.alter.flare import flare", "blocks imports alter"),
        ("cli", "from drafting import nowhere", "drafting.nowhere is in no layer"),
        ("body/read", "from . import names", "in full"),
        ("checks", "import shapely.geometry", "shapely comes in by geometry/area only"),
        ("blocks/sleeve", "from drafting.blocks.bodice import bodice", ""),
        ("walk", "from drafting import piece", ""),
        ("geometry/area", "import shapely", ""),
    ],
)
def test_an_import_that_climbs_is_named_and_one_that_goes_down_is_not(name: str, code: str, said: str) -> None:
    found = [fault for i in imports_of(code, name) for fault in faults(i)]
    assert len(found) == bool(said), found
    assert all(said in fault for fault in found)
