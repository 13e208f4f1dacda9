"""Finds in the sources every place where meaning is read out of the name of a piece, an edge, a seam.

Read as a syntax tree, by how such things are called in the code. A block may look up the edges it drew
itself by the names it gave them, and so may the shapes it draws with.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator

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
    "notion",
    "part",
    "where",
    "stem",
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

ANSWERS = {"ok", "note", "warning", "error"}
"""What the level of a finding may be: that is declared."""

OTHER_NAMES = {
    "ground/nearest.py _words": "words of a name that nobody knows",
    "blocks/_own.py read_folder": "names of files",
    "blocks/__init__.py _files": "names of modules",
    "body/dimensions.py _read": "a range of ages",
    "body/children.py for_child": "names of measures",
    "body/from_survey.py survey_spread": "names of measures",
    "body/from_survey.py survey_words": "names of measures",
    "body/survey.py _usual": "names of measures",
    "body/survey.py _with_rise": "names of measures",
    "ground/findings.py _of_either": "a place that ends in the declared hand",
    "body/headings.py column_heading": "words at the head of a column",
    "body/headings.py _known": "words at the head of a column",
    "body/in_rows.py put": "names of measures",
    "commands/cli.py _body": "the name of a file",
    "costume/cast/wearers.py _of": "the name of a file",
    "ground/on_disk.py to_disk": "the system's name",
    "output/folder.py _check_held": "what a system leaves in a folder",
    "finish/choices.py proposed": "names of choices",
    "finish/label.py estimated_line": "names of measures",
    "making/rules/soundness.py _parts": "keys of parts, as the bench makes them",
    "making/words/__init__.py texts": "names of files",
    "notebook/bench/changes.py _lengths": "a number's sign",
    "notebook/measuring/fields.py _labels": "names of measures",
    "notebook/measuring/fields.py show_hands": "names of measures",
    "notebook/cloth/swatch.py sentences": "names of measures",
    "printing/wishes.py wants": "keys as a maker writes them",
    "output/sheets.py _printed": "names of papers",
    "output/report.py _is_about": "a finding's place, as the checks write it",
    "worn/levels.py falling": "names of fields",
}
"""Functions that take other names apart than those of pieces, edges and seams: file and function."""


def readings(code: str, file: str = "x.py") -> Iterator[str]:
    """Yield `file:line` and the words of each place where `code` reads meaning out of a name."""
    for function, node in walked(ast.parse(code), ""):
        if f"{file} {function}" not in OTHER_NAMES and reads(node, file.startswith(DRAWN)):
            yield f"{file}:{node.lineno}: {ast.unparse(node)}"


def walked(node: ast.AST, function: str) -> Iterator[tuple[str, ast.expr]]:
    """Yield every expression with the function it stands in; a `match` on a name as a comparison."""
    for child in ast.iter_child_nodes(node):
        inner = child.name if isinstance(child, ast.FunctionDef) else function
        if isinstance(child, ast.expr):
            yield inner, child
        if isinstance(child, ast.Match) and (_is_name(child.subject) or _is_apart(child.subject)):
            yield (inner, ast.Compare(ast.Name("edge"), [ast.Eq()], [ast.Constant("case")], lineno=child.lineno))
        yield from walked(child, inner)


def reads(node: ast.expr, drawn: bool) -> bool:
    match node:
        case ast.Call(ast.Attribute(ast.Name("re"), _), args):
            return any(_is_name(arg) for arg in args)
        case ast.Call(ast.Attribute(ast.Name(table), "get"), [key, *_]) if table.isupper():
            return _is_looked_up(key)
        case ast.Call(ast.Attribute(held, method), args) if method in TAKES_APART:
            return _takes_apart(held, method, args)
        case ast.Subscript(ast.Name(table), key) if table.isupper():
            return _is_looked_up(key)
        case ast.Subscript(held, key):
            return not drawn and _is_thing(held) and _is_text(key)
        case ast.Compare(left, [ast.In() | ast.NotIn()], [right]):
            return _is_inside(left, right, drawn)
        case ast.Compare(left, [ast.Eq() | ast.NotEq()], [right]):
            return _is_told(left, right) or _is_told(right, left)
    return False


def _is_looked_up(key: ast.expr) -> bool:
    """Say whether a name, or a part of one, is looked up in a table of words."""
    return _is_apart(key) or (_is_name(key) and getattr(key, "attr", "") != "level")


def _takes_apart(held: ast.expr, method: str, args: list[ast.expr]) -> bool:
    """Say whether a method takes a name apart: by what it is called on, or by what joins names."""
    texts = [text for arg in args for text in _texts(arg)]
    if method in ("index", "find", "count"):
        return bool(texts) and _is_thing(held)
    if any(text.startswith(JOINTS) or text.endswith(JOINTS) for text in texts):
        return True
    parts = bool(texts) and not any(text in KEYS for text in texts)
    return parts and (_is_name(held) or _is_thing(held))


def _is_apart(node: ast.expr) -> bool:
    """Say whether an expression is a part of a name that was taken apart."""
    match node:
        case ast.Subscript(held, _):
            return _is_apart(held)
        case ast.Call(ast.Attribute(held, method), args):
            return method in TAKES_APART and _takes_apart(held, method, args)
    return False


def _is_inside(left: ast.expr, right: ast.expr, drawn: bool) -> bool:
    """Say whether `left in right` finds a word in a name, a named edge, or a name in a list of words."""
    if isinstance(right, ast.Attribute) and right.attr in NAMED:
        return True
    if _is_text(left) and _is_thing(right) and not (drawn and _holds_edges(right)):
        return True
    if isinstance(right, ast.Name) and right.id.isupper():
        return _is_looked_up(left)
    return _is_told(left, right)


def _holds_edges(node: ast.expr) -> bool:
    """Say whether an expression is a piece in whose ring a drawing may look for an edge it drew."""
    return isinstance(node, ast.Name) and node.id in ("front", "back", "piece")


def _is_told(one: ast.expr, other: ast.expr) -> bool:
    """Say whether a name is compared with words."""
    texts = _texts(other)
    return _is_name(one) and bool(texts) and not set(texts) <= ANSWERS


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
        case ast.Set([item]) | ast.SetComp(item):
            return _is_name(item)
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
            return attribute in {"draft", "piece", "edges", "pieces", "seams"} | NAMED
        case ast.Subscript(held, ast.Constant(int())) if _is_ref(held):
            return True
        case ast.Subscript(held, _):
            return _is_thing(held)
        case ast.Call(ast.Attribute(held, "split" | "lower" | "replace"), _):
            return _is_name(held) or _is_thing(held)
    return False


def _is_text(node: ast.expr) -> bool:
    return bool(_texts(node))


def _texts(node: ast.expr) -> list[str]:
    """Return the texts that an expression consists of: one, or those of a tuple, list or set."""
    match node:
        case ast.Constant(str() as text):
            return [text] if text else []
        case ast.JoinedStr(parts):
            return [text for part in parts for text in _texts(part)]
        case ast.Tuple(items) | ast.List(items) | ast.Set(items):
            return [text for item in items for text in _texts(item)]
    return []
