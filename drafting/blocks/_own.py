"""Blocks from outside the kit: files of a folder, or modules of installed packages.

What cannot be a block is refused with its file and line, all faults at once. Nothing else loads
code: a costume file only names a block that is known already.
"""

from __future__ import annotations

import ast
import importlib.metadata
import re
import sys
import traceback
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import wraps
from pathlib import Path
from types import ModuleType
from typing import Any

from drafting.draft.draft import Draft
from drafting.ground.errors import DraftError, Fault, InputError

GROUP = "drafting.blocks"
"""The entry point group under which an installed package offers a block: its name and its module."""

STEM = re.compile(r"[a-z][a-z0-9]*(_[a-z0-9]+)*")
"""What a block's file may be called: its function has the same name."""


@dataclass(frozen=True)
class OwnFile:
    """A module that stands for a block: the block's `name`, and the `file` as a refusal names it."""

    name: str
    module: ModuleType
    file: str

    @property
    def tree(self) -> ast.Module:
        """The module as it is written; empty where its text cannot be had."""
        path = Path(getattr(self.module, "__file__", None) or "")
        return ast.parse(path.read_bytes() if path.is_file() else b"")

    def fault(self, what: str, right: str, line: int | None = 1, field: str = "") -> Fault:
        return Fault(what, right, field or self.name, self.file, line)

    def line(self, *names: str) -> int:
        """Return where `names` is written: a name at the top, or a name within a class there."""
        body: Sequence[ast.stmt] = self.tree.body
        at = 1
        for name in names:
            found = next((node for node in body if name in _names(node)), None)
            if found is None:
                break
            at, body = found.lineno, getattr(found, "body", [])
        return at


def _names(node: ast.stmt) -> Iterator[str]:
    if isinstance(node, ast.ClassDef | ast.FunctionDef):
        yield node.name
    elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
        yield node.target.id
    elif isinstance(node, ast.Assign):
        yield from (target.id for target in node.targets if isinstance(target, ast.Name))


def read_folder(folder: Path) -> list[OwnFile]:
    """Return the modules of a folder's files `*.py`, those that begin with `_` left out.

    Raises `InputError` for a folder that holds none, and for every file that cannot be read.
    """
    if not folder.is_dir():
        raise InputError([Fault("is no folder", "name the folder of your blocks", "", str(folder))])
    paths = sorted(path for path in folder.glob("*.py") if not path.name.startswith("_"))
    if not paths:
        right = "a block is a file of its own, as in pelerine.py"
        raise InputError([Fault("holds no block", right, "", str(folder))])
    faults: list[Fault] = []
    read = [_file(path, faults) for path in paths]
    if faults:
        raise InputError(faults)
    return [file for file in read if file]


def _file(path: Path, faults: list[Fault]) -> OwnFile | None:
    if not STEM.fullmatch(path.stem):
        right = "use lower-case words joined by _, as in opera_cape.py"
        faults.append(Fault("is no name for a block", right, "", str(path)))
        return None
    module = ModuleType(f"drafting_own_block_{path.stem}")
    module.__file__ = str(path)
    sys.modules[module.__name__] = module  # where a dataclass looks up what its fields are
    try:
        exec(compile(path.read_bytes(), str(path), "exec"), vars(module))
    except (Exception, SystemExit) as error:
        faults.append(failed(error, path.stem.replace("_", "-"), str(path), "cannot be read"))
        return None
    return OwnFile(path.stem.replace("_", "-"), module, str(path))


def read_installed() -> list[OwnFile]:
    """Return the modules that installed packages offer as blocks, by the names of their entries.

    Raises `InputError` for every one that cannot be imported, naming its package.
    """
    faults: list[Fault] = []
    read = []
    for entry in sorted(importlib.metadata.entry_points(group=GROUP)):
        name = entry.name.replace("_", "-")
        package = entry.dist.name if entry.dist else entry.module
        try:
            module = entry.load()
        except (Exception, SystemExit) as error:
            found = failed(error, name, package, "cannot be imported")
            right = f"mend the package {package}, or uninstall it"
            faults.append(Fault(found.what, right, found.field, found.file, found.line))
            continue
        read.append(OwnFile(name, module, getattr(module, "__file__", None) or package))
    if faults:
        raise InputError(faults)
    return read


def failed(error: BaseException, name: str, file: str, what: str) -> Fault:
    """Return what went wrong in a block's own code, with the last line of its file that ran."""
    said = error.msg if isinstance(error, SyntaxError) else error
    line = _line(error, file)
    right = f"mend line {line} of {Path(file).name}" if line else "mend its code"
    return Fault(f"{what}: {type(error).__name__}: {said}", right, name, file, line)


def _line(error: BaseException, file: str) -> int | None:
    if isinstance(error, SyntaxError) and error.filename == file:
        return error.lineno
    ran = traceback.extract_tb(error.__traceback__)
    return next((frame.lineno for frame in reversed(ran) if frame.filename == file), None)


def guarded(draft: Callable[..., Draft], own: OwnFile) -> Callable[..., Draft]:
    """Return a block's function; what its code does wrong is refused with file and line.

    It raises `InputError` for any error but a `DraftError`, and where no `Draft` comes back.
    """

    @wraps(draft)
    def drafted(*given: Any, **chains: Any) -> Draft:
        try:
            made = draft(*given, **chains)
        except DraftError:
            raise
        except (Exception, SystemExit) as error:
            raise InputError([failed(error, own.name, own.file, "cannot be drafted")]) from error
        if not isinstance(made, Draft):
            what = f"gives back {type(made).__name__}, not a Draft"
            at = own.line(draft.__name__)
            raise InputError([own.fault(what, "end it with: return Draft((piece,), seams)", at)])
        return made

    return drafted
