"""A sentence knows its lengths in mm; each is read in the unit of the file of whoever reads it."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

import drafting
from drafting.blocks import all_blocks
from drafting.commands.texts import blocks_text
from drafting.costume.choices import garment_choices

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


def test_what_a_block_says_of_a_length_is_told_in_the_makers_unit() -> None:
    """`drafting blocks --unit in` listed bare millimetres: what a choice means, and what its source says."""
    told_bare = []
    for name in all_blocks():
        for choice in garment_choices(all_blocks()[name]):
            if choice.unit != "mm":
                continue
            said = "; ".join((choice.meaning, *(cited.note for cited in choice.source)))
            rest = re.sub(r"⟨[^⟩]*⟩|[\d.]+ to [\d.]+ to one", "", said)
            told_bare += [(name, choice.name, rest)] if re.search(r"\d+ to \d+|\d ?(mm|cm|in)\b", rest) else []
    assert told_bare == []
    listed = blocks_text([all_blocks()["shirt"], all_blocks()["tailcoat"]], "in")
    assert not re.search(r"\d ?(mm|cm)\b|⟨", listed)
