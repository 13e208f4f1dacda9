"""One name, one meaning: no public function or noun stands in two modules."""

from __future__ import annotations

import ast
from collections import defaultdict
from collections.abc import Mapping
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent

TWICE = {
    "Choices": "every block states its own, found by this name",
    "main": "each program that is started has one",
    "Bench": "a maker's in the notebook, a garment's in the making",
    "is_sleeve": "the making plan asks twice until pieces say what they are",
}
"""What may stand more than once, and why."""


def homes(codes: Mapping[str, str]) -> dict[str, list[str]]:
    """Return by every public function, class and type name the modules that define it."""
    found: defaultdict[str, list[str]] = defaultdict(list)
    for module, code in codes.items():
        for node in ast.parse(code).body:
            names = []
            if isinstance(node, ast.FunctionDef | ast.ClassDef):
                names = [node.name]
            elif isinstance(node, ast.Assign):
                names = [t.id for t in node.targets if isinstance(t, ast.Name) and not t.id.isupper()]
            for name in names:
                if not name.startswith("_"):
                    found[name].append(module)
    return dict(found)


def test_every_function_and_noun_has_one_home() -> None:
    codes = {
        path.relative_to(ROOT).as_posix(): path.read_text("utf-8")
        for path in sorted(ROOT.glob("drafting/**/*.py"))
    }
    found = homes(codes)
    assert len(found) > 800
    twice = {name: where for name, where in found.items() if len(where) > 1 and name not in TWICE}
    assert not twice, "\n".join(f"{name}: {', '.join(where)}" for name, where in twice.items())


@pytest.mark.parametrize(
    ("one", "other", "twice"),
    [
        ("def f(): ...", "class f: ...", True),
        ("Halves = tuple[int, int]", "class Halves: ...", True),
        ("def _f(): ...", "def _f(): ...", False),
        ("GAP = 1", "GAP = 2", False),
        ("def f(): ...", "def g(): ...", False),
    ],
)
def test_a_name_of_two_homes_is_found(one: str, other: str, twice: bool) -> None:
    assert any(len(where) > 1 for where in homes({"a": one, "b": other}).values()) is twice
