"""Every test can be gathered where the measured people are not beside the repository: no file asks on loading."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

TESTS = Path(__file__).parent
ASKS = {"ansur", "survey", "survey_people", "shared", "reachable_estimates"}
"""What skips the test that asks; asked while a file is loaded, it would break the run instead."""


def on_loading(node: ast.AST) -> Iterator[ast.Call]:
    """Yield the calls that are made when a module is loaded; what stands behind a condition may know better."""
    for child in ast.iter_child_nodes(node):
        if isinstance(child, ast.FunctionDef | ast.AsyncFunctionDef):
            for decorator in child.decorator_list:
                yield from on_loading(ast.Expr(decorator))
        elif not isinstance(child, ast.Lambda | ast.IfExp | ast.If):
            if isinstance(child, ast.Call):
                yield child
            yield from on_loading(child)


def asked(source: str) -> list[int]:
    """Return the lines on which a module asks for the measured people while it is loaded."""
    calls = on_loading(ast.parse(source))
    return [call.lineno for call in calls if isinstance(call.func, ast.Name) and call.func.id in ASKS]


def test_no_test_file_asks_for_the_measured_people_while_it_is_loaded() -> None:
    files = [path for path in TESTS.rglob("*.py") if path.parent.name != "data"]
    found = {path.name: lines for path in files if (lines := asked(path.read_text("utf-8")))}
    assert not found


@pytest.mark.parametrize(
    ("source", "lines"),
    [
        ("PEOPLE = [*ansur(6)]", [1]),
        ("@parametrize('who', ansur(2))\ndef test(): ...", [1]),
        ("def test():\n    ansur(6)", []),
        ("ONE = ansur(2)[0] if SURVEY.is_file() else drawn(2)[0]", []),
    ],
)
def test_such_a_file_is_found(source: str, lines: list[int]) -> None:
    assert asked(source) == lines
