"""The plan's words: one place, every key used is there, every text gets its facts."""

from __future__ import annotations

import ast
import string
from collections.abc import Iterator
from pathlib import Path

import pytest

from drafting.making.model import said
from drafting.making.words import plan_sentence as text
from drafting.making.words import texts

ROOT = Path(__file__).resolve().parents[2]
PACKAGES = [ROOT / "drafting" / "making"]
SOURCES = sorted(file for package in PACKAGES for file in package.rglob("*.py"))


def calls() -> Iterator[tuple[str, set[str], bool]]:
    """Yield every `said("key", fact=...)` in the package: key, facts, and whether facts unpack more."""
    for file in SOURCES:
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if not (isinstance(node, ast.Call) and getattr(node.func, "id", "") == "said"):
                continue
            facts = {word.arg for word in node.keywords if word.arg}
            more = any(word.arg is None for word in node.keywords)
            for key in keys_in(node.args[0]):
                yield key, facts, more


def keys_in(node: ast.expr) -> Iterator[str]:
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node.value
    elif isinstance(node, ast.IfExp):
        yield from keys_in(node.body)
        yield from keys_in(node.orelse)


def fields(words: str) -> set[str]:
    return {name for _, name, _, _ in string.Formatter().parse(words) if name}


def test_every_key_that_is_said_has_a_text_and_every_text_its_facts() -> None:
    found = list(calls())
    assert len(found) > 60
    for key, facts, more in found:
        assert key in texts(), key
        assert more or fields(texts()[key]) <= facts, key


def test_no_text_stands_unused() -> None:
    code = "".join(file.read_text("utf-8") for file in SOURCES)
    built = (
        "cut.",
        "head.",
        "stage.",
        "start.",
        "page.",
        "column.",
        "amount.",
        "stitch.",
        "cold.",
        "piled.",
        "clipped.",
        "unfused.",
        "unfrayed.",
        "bound.",
    )  # keys put together from a word of the model
    lost = [key for key in texts() if f'"{key}"' not in code and not key.startswith(built)]
    assert lost == []


def test_words_may_stand_within_a_sentence() -> None:
    onto = said("side.onto", piece="back-left")
    assert "both allowances onto the back left." in text(said("do.press_side", onto=onto))


def test_lengths_and_shares_are_shown_as_a_maker_reads_them() -> None:
    shown = text(said("treat.mark_square", side=350.0))
    assert "35 cm" in shown
    with pytest.raises(KeyError):
        text(said("treat.mark_square"))
    with pytest.raises(KeyError):
        text("treat.no_such_text")
