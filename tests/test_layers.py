"""Imports only go down, no modules import each other in a circle, and a few libraries come in by one door each.

The table of rooms in DEVELOPERS.md is the one account of the layers: it is read here.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from graphlib import CycleError, TopologicalSorter
from pathlib import Path
from typing import NamedTuple

import pytest

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "drafting"


def rooms(text: str) -> dict[str, int]:
    """Return each room's layer, as the first table of `text` whose first column is headed *layer* has it."""
    rows = re.findall(r"^\| (\d+) \| ([^|]+) \|", text, flags=re.MULTILINE)
    return {room: int(layer) for layer, cell in rows for room in re.findall(r"`([\w/]+)/?`", cell)}


LEVEL = rooms((ROOT / "DEVELOPERS.md").read_text("utf-8"))

FACE = {"__init__", "__main__", "public"}
"""What lies beside the rooms: the names that others may import, and the way in."""

# A room inside a room that the rest of that room stands on, or that stands on the rest of it.
INSIDE = {"layout/packing": "below", "making/page": "above", "sheet/wearer": "above"}

# Where a library may be imported: the module's path without `.py`, or its folder.
DOORS = {
    "jinja2": ("ground/templates",),
    "markupsafe": ("ground/templates",),
    "shapely": ("geometry/area",),
    "pyclipper": ("layout/packing/clip",),
    "spyrrow": ("layout/packing/child",),
    "tomlkit": ("reading/rewriting",),
    "reportlab": ("printing/pdf",),
    "ezdxf": ("export/dxf_r2000",),
    "matplotlib": ("export/figure", "export/worn_views", "ground/typeface", "notebook"),
    "scipy": ("worn", "geometry/elastica", "fitting/lines/cap"),  # slow to load: drafting goes without
    "PIL": ("export/figure",),
    "anywidget": ("notebook",),
    "traitlets": ("notebook",),
    "ipywidgets": ("notebook",),
    "IPython": ("notebook",),
    "distributed": ("output/cast/cluster", "output/cast/unsampled"),
    "python_calamine": ("reading/spreadsheet",),
    "jupyterlab": ("commands/lab",),
    "voila": ("commands/app",),
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
        elif isinstance(node, ast.ImportFrom) and str(node.module).split(".")[0] == "drafting":
            wanted = [f"{node.module}.{alias.name}" for alias in node.names]
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
        yield from _climbing(found, rest.replace(".", "/"))
    elif first in DOORS and not found.importer.startswith(DOORS[first]):
        yield f"{found.place}: {first} comes in by {' or '.join(DOORS[first])} only"


def _climbing(found: Import, wanted: str) -> Iterator[str]:
    ours, theirs = found.importer.split("/")[0], wanted.split("/")[0]
    if ours in FACE:
        return
    if theirs not in LEVEL:
        yield f"{found.place}: drafting.{theirs} is in no layer; put it into the table of DEVELOPERS.md"
    elif ours != theirs and LEVEL.get(ours, 99) <= LEVEL[theirs]:
        yield f"{found.place}: {ours} imports {theirs}, which is not below it"
    for room, where in INSIDE.items():
        whole = room.split("/")[0]
        if {ours, theirs} != {whole}:
            continue
        mine, its = f"{found.importer}/".startswith(f"{room}/"), f"{wanted}/".startswith(f"{room}/")
        climbs = (mine and not its) if where == "below" else (its and not mine)
        if climbs and not found.importer.endswith("__init__"):
            yield f"{found.place}: {room} lies {where} the rest of {whole}"


def modules() -> Iterator[tuple[str, str]]:
    for path in sorted(PACKAGE.rglob("*.py")):
        yield path.relative_to(PACKAGE).with_suffix("").as_posix(), path.read_text("utf-8")


def test_every_room_is_in_a_layer_and_every_layer_has_its_rooms() -> None:
    names = {name.split("/")[0] for name, _ in modules()} - FACE
    assert names == LEVEL.keys(), "the table of rooms in DEVELOPERS.md"
    assert all((PACKAGE / room).is_dir() for room in LEVEL), "nothing lies loose between the rooms"


def test_imports_only_go_down() -> None:
    found = [fault for name, code in modules() for i in imports_of(code, name) for fault in faults(i)]
    assert not found, "\n" + "\n".join(found)


def graph(sources: dict[str, str]) -> dict[str, set[str]]:
    """Return which of the modules (path without .py -> code) each of them imports."""
    arrows: dict[str, set[str]] = {}
    for name, code in sources.items():
        wanted = [i.wanted.removeprefix("drafting.").replace(".", "/") for i in imports_of(code, name)]
        near = ((w, f"{w}/__init__", w.rpartition("/")[0], f"{w.rpartition('/')[0]}/__init__") for w in wanted)
        arrows[name] = {next((n for n in names if n in sources), name) for names in near} - {name}
    return arrows


def circle(arrows: dict[str, set[str]]) -> list[str]:
    """Return modules that import each other in a circle, in that order; none if there are none."""
    try:
        TopologicalSorter(arrows).prepare()
    except CycleError as error:
        return list(error.args[1])
    return []


def test_no_modules_import_each_other_in_a_circle() -> None:
    assert circle(graph(dict(modules()))) == []


def test_no_two_rooms_inside_a_room_look_at_each_other() -> None:
    folders: dict[str, set[str]] = {}
    for name, wanted in graph(dict(modules())).items():
        inside = [w.rpartition("/")[0] for w in wanted if w.count("/") > 1 and not w.endswith("__init__")]
        if name.count("/") > 1:
            folders.setdefault(name.rpartition("/")[0], set()).update(inside)
    assert circle({room: seen - {room} for room, seen in folders.items()}) == []


def test_a_circle_is_found() -> None:
    code = {"a": "from drafting.b import f", "b": "import drafting.c.d", "c/d": "from drafting import a", "e": ""}
    assert set(circle(graph(code))) == {"a", "b", "c/d"}
    assert circle(graph(code | {"c/d": "from drafting import e"})) == []


@pytest.mark.parametrize(
    ("name", "code", "said"),
    [
        ("geometry/path", "from drafting.draft.piece import Edge", "geometry imports draft"),
        ("blocks/sleeve", "def f():\n    import drafting.commands", "blocks imports commands"),
        ("blocks/sleeve", "from drafting.alter.fullness import flare", "blocks imports alter"),
        ("commands/cli", "from drafting import nowhere", "drafting.nowhere is in no layer"),
        ("body/read", "from . import names", "in full"),
        ("checks/seams", "import shapely.geometry", "shapely comes in by geometry/area only"),
        ("layout/packing/search", "from drafting.layout.cloth import Cloth", "lies below"),
        ("layout/packing/search", "from drafting.layout import cloth", "lies below"),
        ("making/docket", "from drafting.making.page import page", "lies above"),
        ("layout/cloth", "from drafting.layout.packing import model", ""),
        ("blocks/sleeve", "from drafting.blocks.bodice import bodice", ""),
        ("checks/seams", "from drafting.draft import piece", ""),
        ("geometry/area", "import shapely", ""),
    ],
)
def test_an_import_that_climbs_is_named_and_one_that_goes_down_is_not(name: str, code: str, said: str) -> None:
    found = [fault for i in imports_of(code, name) for fault in faults(i)]
    assert len(found) == bool(said), found
    assert all(said in fault for fault in found)
