"""Nothing public stands in the kit that neither the kit nor a notebook uses: no dead code."""

from __future__ import annotations

import ast
import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent

Name = tuple[str, str]
"""(module, what is defined at its top level)."""

DOORS: dict[Name, str] = {
    ("drafting.blocks", "names"): "what asks something of every block",
    ("drafting.commands.cli", "main"): "the command `drafting`",
}
"""What is called from outside, with who calls it; the public names (drafting/public.py) come beside it."""

CALLED = {
    "Unsampled.setup": "Dask, on every worker that there is or comes",
    "Unsampled.teardown": "Dask, when the plugin is taken away",
}
"""Methods that a library calls, with when."""

FOUND_BY_NAME = ("drafting.blocks", "drafting.alter")
"""Folders whose files are found by listing: `Choices`, `NEEDS`, `PARTS`, `SHARED`, and the file's function."""


@dataclass
class Module:
    """What one file defines at its top level, what its other lines use, and where names come from."""

    defined: dict[str, ast.stmt] = field(default_factory=dict)
    run: list[ast.stmt] = field(default_factory=list)
    imports: dict[str, Name] = field(default_factory=dict)


def parsed(code: str) -> Module:
    found, tree = Module(), ast.parse(code)
    for node in tree.body:
        names = list(_defined_by(node))
        found.defined.update(dict.fromkeys(names, node))
        if not names and not isinstance(node, ast.Import | ast.ImportFrom):
            found.run.append(node)
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module:
            found.imports |= {a.asname or a.name: (node.module, a.name) for a in node.names}
        elif isinstance(node, ast.Import):
            found.imports |= {(a.asname or a.name): (a.name, "") for a in node.names}
    return found


def _defined_by(node: ast.stmt) -> Iterator[str]:
    if isinstance(node, ast.FunctionDef | ast.ClassDef):
        yield node.name
    elif isinstance(node, ast.AnnAssign):
        yield ast.unparse(node.target)
    elif isinstance(node, ast.Assign):
        for target in node.targets:
            yield from (n.id for n in ast.walk(target) if isinstance(n, ast.Name))


def uses(module: str, node: ast.AST, modules: Mapping[str, Module]) -> Iterator[Name]:
    """Yield what the lines of a node use: names of its own module, imported ones, `module.name`."""
    own = modules[module]
    for part in ast.walk(node):
        if isinstance(part, ast.Name) and isinstance(part.ctx, ast.Load):
            yield _home((module, part.id), modules)
        elif isinstance(part, ast.Attribute) and isinstance(part.value, ast.Name):
            package, name = own.imports.get(part.value.id, ("", ""))
            yield _home((f"{package}.{name}".rstrip("."), part.attr), modules)
        elif isinstance(part, ast.Constant) and isinstance(part.value, str):
            yield from _quoted(module, part.value, modules)


def _quoted(module: str, text: str, modules: Mapping[str, Module]) -> Iterator[Name]:
    """A type in quotes, as in `cast("Kind", word)`."""
    if text.isidentifier() and text in {*modules[module].defined, *modules[module].imports}:
        yield _home((module, text), modules)


def _home(name: Name, modules: Mapping[str, Module]) -> Name:
    """Return where a name is defined, through every file that only hands it on."""
    for _ in range(9):
        module = modules.get(name[0])
        if module is None or name[1] in module.defined or name[1] not in module.imports:
            break
        name = module.imports[name[1]]
    return name


def unused(modules: Mapping[str, Module], notebooks: str, doors: Mapping[Name, str]) -> list[Name]:
    """Return every name that no door, no notebook and no line that runs leads to."""
    everything = {**modules, "": parsed(notebooks)}
    waiting = list(doors)
    waiting += [u for name, m in everything.items() for line in m.run for u in uses(name, line, everything)]
    waiting += [("", name) for name in everything[""].defined]
    waiting += [(name, n) for name, m in modules.items() for n in _found_by_name(name, m)]
    seen: set[Name] = set()
    while waiting:
        module, name = here = waiting.pop()
        if here not in seen and module in everything and name in everything[module].defined:
            seen.add(here)
            waiting += uses(module, everything[module].defined[name], everything)
    return [(m, n) for m, held in modules.items() for n in held.defined if (m, n) not in seen]


def _found_by_name(name: str, module: Module) -> Iterator[str]:
    folder, _, file = name.rpartition(".")
    if folder in FOUND_BY_NAME:
        yield from {"Choices", "NEEDS", "PARTS", "SHARED", file} & module.defined.keys()


def kit() -> dict[str, Module]:
    found = {}
    for path in sorted(ROOT.glob("drafting/**/*.py")):
        parts = path.relative_to(ROOT).with_suffix("").parts
        name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        found[name] = parsed(path.read_text("utf-8"))
    return found


def cells() -> str:
    """Return the code of every notebook."""
    books = [json.loads(path.read_text("utf-8")) for path in sorted(ROOT.glob("notebooks/*.ipynb"))]
    code = ["".join(c["source"]) for b in books for c in b["cells"] if c["cell_type"] == "code"]
    return "\n".join(line for one in code for line in one.split("\n") if not line.startswith("%"))


def test_everything_public_is_used_by_the_kit_or_a_notebook() -> None:
    modules = kit()
    assert len(modules) > 200
    doors = DOORS | dict.fromkeys(
        (_home(n, modules) for n in modules["drafting.public"].imports.values()), "public"
    )
    lost = [f"{m}.{n}" for m, n in unused(modules, cells(), doors) if not n.startswith("__")]
    assert not lost, "used by nothing in drafting/ or notebooks/:\n" + "\n".join(lost)


def methods() -> Iterator[tuple[str, str]]:
    for path in sorted(ROOT.glob("drafting/**/*.py")):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ClassDef):
                for part in node.body:
                    if isinstance(part, ast.FunctionDef) and not part.name.startswith("__"):
                        yield f"{path.relative_to(ROOT)}:{part.lineno} {node.name}", part.name


def test_every_method_is_asked_for_somewhere() -> None:
    codes = [path.read_text("utf-8") for path in ROOT.glob("drafting/**/*.py")] + [cells()]
    nodes = [node for code in codes for node in ast.walk(ast.parse(code))]
    asked = {node.attr for node in nodes if isinstance(node, ast.Attribute)}
    asked |= {node.id for node in nodes if isinstance(node, ast.Name)}
    lost = [f"{place}.{name}" for place, name in methods() if name not in asked]
    lost = [one for one in lost if one.rpartition(" ")[2] not in CALLED]
    assert not lost, "no line asks for:\n" + "\n".join(lost)


@pytest.mark.parametrize(
    ("code", "lost"),
    [
        ("def f(): ...", ["f"]),
        ("def f(): ...\nf()", []),
        ("def f(): g()\ndef g(): ...", ["f", "g"]),
        ("from other import g\nA = 1\nB = A\nprint(B)", []),
        ("A, B = 1, 2\nprint(A)", ["B"]),
        ("class A: ...\nKind = 'A'\nprint(Kind)", []),
    ],
)
def test_what_nothing_leads_to_is_named(code: str, lost: list[str]) -> None:
    assert [name for _, name in unused({"a": parsed(code)}, "", {})] == lost
