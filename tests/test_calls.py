"""Nouns are made with their fields named: figures that look alike cannot change places unseen."""

from __future__ import annotations

import ast
from collections import Counter
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
MOST, MOST_ALIKE = 6, 4
"""Arguments given by place: in all, and of one type (both ours)."""

Nouns = dict[str, list[list[str]]]
"""By a dataclass's name the types of its fields; a list of them, as a name may stand twice."""


def nouns_in(codes: Mapping[str, str]) -> Nouns:
    found: Nouns = {}
    for code in codes.values():
        for node in _parts(code):
            if isinstance(node, ast.ClassDef) and "dataclass" in _decorated(node):
                fields = [f for f in node.body if isinstance(f, ast.AnnAssign)]
                types = [ast.unparse(f.annotation) for f in fields]
                found.setdefault(node.name, []).append(types)
    return found


@cache
def _parts(code: str) -> tuple[ast.AST, ...]:
    """Return the classes and calls of a file: each is read twice, and the tree gone through once."""
    return tuple(node for node in ast.walk(ast.parse(code)) if isinstance(node, ast.ClassDef | ast.Call))


def _decorated(node: ast.ClassDef) -> str:
    return " ".join(ast.unparse(decorator) for decorator in node.decorator_list)


def by_place(code: str, name: str, nouns: Nouns) -> Iterator[str]:
    """Yield `file:line` of every noun in `code` that is made from too many arguments by place."""
    for call in _parts(code):
        if isinstance(call, ast.Call):
            noun = ast.unparse(call.func).rpartition(".")[2]
            count = len(call.args)
            meant = [types for types in nouns.get(noun, []) if len(types) >= count]
            alike = min((_alike(types[:count]) for types in meant), default=0)
            if meant and (count > MOST or alike > MOST_ALIKE):
                yield f"{name}:{call.lineno}: {noun} takes {count} by place, {alike} of one type"


def _alike(types: list[str]) -> int:
    return max(Counter(types).values(), default=0)


def test_no_noun_is_made_from_a_row_of_nameless_arguments() -> None:
    files = sorted([*ROOT.glob("drafting/**/*.py"), *ROOT.glob("tests/**/*.py")])
    codes = {path.relative_to(ROOT).as_posix(): path.read_text("utf-8") for path in files}
    nouns = nouns_in(codes)
    assert len(nouns) > 200
    found = [fault for name, code in codes.items() for fault in by_place(code, name, nouns)]
    assert not found, "name the fields:\n" + "\n".join(found)


@pytest.mark.parametrize(
    ("fields", "call", "faults"),
    [
        ("abcdefg", "A(1, 2, 3, 4, 5, 6, 7)", 1),
        ("abcdefg", "A(1, 2, 3, 4, e=5, f=6, g=7)", 0),
        ("abcde", "A(1, 2, 3, 4, 5)", 1),
        ("abcde", "A(1, 2, 3, 4, *rest)", 1),
        ("abcd", "A(1, 2, 3, 4)", 0),
        ("abcde", "B(1, 2, 3, 4, 5)", 0),
    ],
)
def test_a_row_of_look_alikes_is_named_with_its_line(fields: str, call: str, faults: int) -> None:
    body = "\n".join(f"    {field}: float" for field in fields)
    code = f"@dataclass(frozen=True)\nclass A:\n{body}\n\n{call}\n"
    found = list(by_place(code, "x.py", nouns_in({"x.py": code})))
    assert len(found) == faults
    assert all(fault.startswith(f"x.py:{len(fields) + 4}: A") for fault in found)
