"""A sentence knows its lengths in mm; each is read in the unit of the file of whoever reads it."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

import drafting

PACKAGE = Path(drafting.__file__).parent
SAID_IN_MM = re.compile(r"\{[^{}]*:[+]?\.?[0-9]?[fg]\} ?(mm|cm|in)\b|(?<![\w(])[0-9]+(\.[0-9]+)? (mm|cm)\b")
ROOMS = ("alter", "blocks", "checks", "draft", "finish", "layout", "shaping", "costume", "body")
"""The rooms that speak to a maker without knowing her unit."""


def spoken(tree: ast.AST) -> list[tuple[int, str]]:
    """Return the texts of a module that go into a finding, a refusal or a note: f-strings and their parts."""
    return [
        (node.lineno, ast.unparse(node))
        for node in ast.walk(tree)
        if isinstance(node, ast.JoinedStr) and any(isinstance(part, ast.FormattedValue) for part in node.values)
    ]


@pytest.mark.parametrize("room", ROOMS)
def test_no_sentence_of_a_room_fixes_a_unit(room: str) -> None:
    found = [
        f"{path.relative_to(PACKAGE)}:{line}: {text}"
        for path in sorted((PACKAGE / room).rglob("*.py"))
        for line, text in spoken(ast.parse(path.read_text("utf-8")))
        if SAID_IN_MM.search(text) and path.name not in EXACT
    ]
    assert not found, "\n".join(found)


EXACT = {
    "whole.py": "what a costume file would have said, in mm for its reader",
    "proportion.py": "a length worked out on this body, as its file would have said it",
}
