"""What a thing is stands declared; nothing outside the blocks reads it out of a name.

The first half reads the sources as a syntax tree and names the line of every such reading. A block
may look up the edges it drew itself by the names it gave them, and so may the shapes it draws with.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parent.parent / "drafting"

DRAWN = ("blocks/", "shaping/")
"""Folders that draw: what they gave a name they may look up by it, though not take the name apart."""

NAMED = {"name", "where", "level", "base", "makes"}
"""Attributes that tell one thing from another."""

THINGS = {
    "draft",
    "piece",
    "pieces",
    "edge",
    "edges",
    "seam",
    "seams",
    "front",
    "back",
    "sleeve",
    "band",
    "facing",
    "collar",
    "facings",
    "other",
    "shell",
    "stiff",
    "garment",
    "name",
    "names",
    "words",
}
"""What pieces, edges, seams and their names are called in the code."""

TAKES_APART = {
    "startswith",
    "endswith",
    "split",
    "rsplit",
    "partition",
    "rpartition",
    "removeprefix",
    "removesuffix",
    "index",
    "find",
    "count",
}

JOINTS = ("_", "-")
"""How words of a name are put together."""

KEYS = (".", ": ", ",")
"""What parts a key of two names, as a maker writes it (`front.lapel`): that is no meaning."""

OTHER_NAMES = {
    "finish/choices.py proposed": "names of choices",
    "label.py estimated_line": "names of measures",
    "notebook/swatch.py _level_words": "names of measures",
    "printout.py _role": "names of papers",
}
"""Functions that take other names apart than those of pieces, edges, seams: file and function."""


def readings(code: str, file: str = "x.py") -> Iterator[str]:
    """Yield `file:line` and the words of each place where `code` reads meaning out of a name."""
    for function, node in _walked(ast.parse(code), ""):
        if f"{file} {function}" not in OTHER_NAMES and _reads(node, file.startswith(DRAWN)):
            yield f"{file}:{node.lineno}: {ast.unparse(node)}"


def _walked(node: ast.AST, function: str) -> Iterator[tuple[str, ast.expr]]:
    """Yield every expression with the name of the function it stands in; a match by its subject."""
    for child in ast.iter_child_nodes(node):
        inner = child.name if isinstance(child, ast.FunctionDef) else function
        if isinstance(child, ast.expr):
            yield inner, child
        if isinstance(child, ast.Match) and _is_name(child.subject):
            yield inner, ast.Compare(child.subject, [ast.Eq()], [ast.Constant("")], lineno=child.lineno)
        yield from _walked(child, inner)


def _reads(node: ast.expr, drawn: bool) -> bool:
    match node:
        case ast.Call(ast.Attribute(ast.Name("re"), _), args):
            return any(_is_name(arg) for arg in args)
        case ast.Call(ast.Attribute(ast.Name(table), "get"), [key, *_]) if table.isupper():
            return _is_name(key)
        case ast.Call(ast.Attribute(held, method), args) if method in TAKES_APART:
            return _takes_apart(held, method, args)
        case ast.Subscript(ast.Name(table), key) if table.isupper() and _is_name(key):
            return True
        case ast.Subscript(held, key):
            return not drawn and _is_thing(held) and _is_text(key)
        case ast.Compare(left, [ast.In() | ast.NotIn()], [right]):
            return _is_inside(left, right)
        case ast.Compare(left, [ast.Eq() | ast.NotEq()], [right]):
            return _is_named(left, right) or _is_named(right, left)
    return False


def _takes_apart(held: ast.expr, method: str, args: list[ast.expr]) -> bool:
    """Say whether a method takes a name apart: by what it is called on, or by what joins names."""
    texts = [text for arg in args for text in _texts(arg)]
    if method in ("index", "find", "count"):
        return bool(texts) and _is_thing(held)
    if any(text.startswith(JOINTS) or text.endswith(JOINTS) for text in texts):
        return True
    parts = bool(texts) and not any(text in KEYS for text in texts)
    return parts and (_is_name(held) or _is_thing(held))


def _is_inside(left: ast.expr, right: ast.expr) -> bool:
    """Say whether `left in right` looks for a word in a name, for a named edge, or for a name in a list."""
    if isinstance(right, ast.Attribute) and right.attr in NAMED:
        return True
    if _is_text(left) and _is_thing(right):
        return True
    return _is_name(left) and bool(_texts(right))


def _is_named(one: ast.expr, other: ast.expr) -> bool:
    return _is_name(one) and bool(_texts(other) or _is_text(other))


def _is_name(node: ast.expr) -> bool:
    """Say whether an expression is the name of a thing: `edge.name`, `ref[1]`, `seam.a[0][1]`."""
    match node:
        case ast.Attribute(_, attribute):
            return attribute in NAMED
        case ast.Name(name):
            return name in ("edge", "seam", "stem")
        case ast.Subscript(held, ast.Constant(int())):
            return _is_ref(held)
        case ast.Call(ast.Name(helper), _):
            return helper in ("stem", "hand", "base_name")
        case ast.Call(ast.Attribute(held, "lower" | "casefold" | "replace"), _):
            return _is_name(held)
    return False


def _is_ref(node: ast.expr) -> bool:
    match node:
        case ast.Name(name):
            return name.rstrip("s") == "ref"
        case ast.Subscript(ast.Attribute(_, "a" | "b" | "refs"), _):
            return True
    return False


def _is_thing(node: ast.expr) -> bool:
    match node:
        case ast.Name(name):
            return name in THINGS
        case ast.Attribute(_, attribute):
            return attribute in {"draft", "piece", "edges", "pieces", "seams", "name"}
        case ast.Subscript(held, _):
            return _is_thing(held) and not _is_ref(node)
        case ast.Call(ast.Attribute(held, "split" | "lower" | "replace"), _):
            return _is_name(held) or _is_thing(held)
    return False


def _is_text(node: ast.expr) -> bool:
    return isinstance(node, ast.JoinedStr) or isinstance(node, ast.Constant) and isinstance(node.value, str)


def _texts(node: ast.expr) -> list[str]:
    """Return the texts that an expression consists of: one, or those of a tuple, list or set."""
    if isinstance(node, ast.Constant):
        return [node.value] if isinstance(node.value, str) and node.value else []
    if isinstance(node, ast.Tuple | ast.List | ast.Set):
        return [text for item in node.elts for text in _texts(item)]
    return []


def test_nothing_reads_meaning_out_of_a_name() -> None:
    found = [
        line
        for path in sorted(PACKAGE.rglob("*.py"))
        if not path.relative_to(PACKAGE).as_posix().startswith("blocks/")
        for line in readings(path.read_text(encoding="utf-8"), path.relative_to(PACKAGE).as_posix())
    ]
    assert found == [], "\n".join(["declare it where it is drawn (drafting/draft/roles.py):", *found])
