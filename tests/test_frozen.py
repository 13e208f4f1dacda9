"""Frozen nouns are frozen through and through: nobody edits what is remembered and handed out again."""

from __future__ import annotations

import ast
import copy
import dataclasses
import importlib
import pickle
import pkgutil
from collections.abc import Iterator
from dataclasses import FrozenInstanceError
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import drafting
from drafting.body import wearer
from drafting.costume.file import read_costume
from drafting.costume.garment import draft_garment
from drafting.costume.make import make
from drafting.draft.draft import Draft
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Piece
from drafting.ground.frozen import FrozenDict
from drafting.ground.shipped import shipped
from drafting.making import planned

PACKAGE = Path(drafting.__file__).parent


def nouns() -> set[type]:
    """Return every frozen dataclass of the kit."""
    found: set[type] = set()
    for info in pkgutil.walk_packages(drafting.__path__, "drafting."):
        if info.name.endswith(("__main__", "layout.child")):  # these two run when they are read
            continue
        for value in vars(importlib.import_module(info.name)).values():
            if isinstance(value, type) and value.__module__.startswith("drafting"):
                stated = vars(value).get("__dataclass_params__")
                if stated is not None and stated.frozen:
                    found.add(value)
    return found


@pytest.fixture(scope="module")
def met() -> dict[type, Any]:
    """One instance of each noun that comes about while a costume is drafted, finished and planned."""
    found: dict[type, Any] = {}
    with pytest.MonkeyPatch.context() as patch:
        for noun in nouns():
            patch.setattr(noun, "__init__", _noting(noun, found))
        for name in ("lamplighter", "kite"):
            costume = read_costume(shipped("measurements") / "costumes" / f"{name}.toml")
            other = costume.wearer.changed(
                hip_girth=costume.wearer["hip_girth"] + 0.731
            )  # nobody's: none is remembered
            planned(make(dataclasses.replace(costume, wearer=other)))
    return found


def _noting(noun: type, found: dict[type, Any]) -> Any:
    plain = vars(noun)["__init__"]

    def init(self: Any, *args: Any, **named: Any) -> None:
        plain(self, *args, **named)
        best = found.setdefault(type(self), self)
        if _fullness(self) > _fullness(best):
            found[type(self)] = self

    return init


def _fullness(noun: Any) -> int:
    """Return how many of a noun's fields hold something: an edit wants something to edit."""
    held = (getattr(noun, f.name) for f in dataclasses.fields(noun))
    return sum(len(one) > 0 for one in held if isinstance(one, tuple | dict))


def edited(value: object) -> Iterator[str]:
    """Yield what could be changed in a value, after trying to."""
    if isinstance(value, tuple):
        for one in value[:3]:
            yield from edited(one)
    elif isinstance(value, dict):
        key = next(iter(value), "new")
        tries = {
            "item assignment": lambda: value.__setitem__(key, None),
            "deletion": lambda: value.__delitem__(key),
            "update": lambda: value.update({key: None}),
            "joining": lambda: value.__ior__({key: None}),
            "pop": lambda: value.pop(key, None),
            "popitem": value.popitem,
            "setdefault": lambda: value.setdefault("new", None),
            "clear": value.clear,
        }
        yield from (name for name, change in tries.items() if _is_done(change))
        for one in list(value.values())[:3]:
            yield from edited(one)
    elif isinstance(value, np.ndarray):
        if _is_done(lambda: value.__setitem__(..., 0)):
            yield "item assignment"
    elif isinstance(value, list | set | bytearray):
        yield f"it is a {type(value).__name__}"


def _is_done(change: Any) -> bool:
    try:
        change()
    except (TypeError, ValueError):
        return False
    return True


def test_no_field_of_any_noun_of_a_finished_costume_can_be_changed(met: dict[type, Any]) -> None:
    assert {Piece, Draft, CutPiece} <= met.keys()
    assert len(met) > 100
    changed = []
    for noun, one in met.items():
        for field in dataclasses.fields(noun):
            with pytest.raises(FrozenInstanceError):
                setattr(one, field.name, None)
            how = sorted(set(edited(getattr(one, field.name))))
            changed += [f"{noun.__module__}.{noun.__name__}.{field.name}: {', '.join(how)}"] if how else []
    assert not changed, "\n" + "\n".join(sorted(changed))


def test_every_mapping_of_a_noun_is_frozen_where_it_is_made() -> None:
    """Nouns that no costume meets (those of the notebooks) are read instead of made."""
    faults = []
    for path in sorted(PACKAGE.rglob("*.py")):
        for noun in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(noun, ast.ClassDef) and _is_frozen(noun):
                place = f"{path.relative_to(PACKAGE)}:{noun.lineno} {noun.name}"
                faults += [f"{place}.{fault}" for fault in _unfrozen(noun)]
    assert not faults, "\n" + "\n".join(faults)


def _is_frozen(noun: ast.ClassDef) -> bool:
    return any("frozen=True" in ast.unparse(decorator) for decorator in noun.decorator_list)


def _unfrozen(noun: ast.ClassDef) -> Iterator[str]:
    held = {
        str(call.args[n].value)  # type: ignore[attr-defined]
        for call in ast.walk(noun)
        if isinstance(call, ast.Call) and ast.unparse(call.func) == "freeze"
        for n in range(1, len(call.args))
    }
    for field in noun.body:
        if isinstance(field, ast.AnnAssign):
            name, kind = ast.unparse(field.target), ast.unparse(field.annotation).partition("[")[0]
            if kind in ("dict", "list", "set", "Sequence", "MutableMapping", "Iterable"):
                yield f"{name} is stated as {kind}: take Mapping, tuple or frozenset"
            elif kind == "Mapping" and name not in held:
                yield f'{name} is not frozen: call freeze(self, "{name}") in __post_init__'


@pytest.mark.parametrize(
    ("body", "said"),
    [
        ("a: dict[str, int]", "a is stated as dict"),
        ("a: Mapping[str, int]", "a is not frozen"),
        ("a: Mapping[str, int]\n def __post_init__(self): freeze(self, 'a')", ""),
        ("a: tuple[int, ...]", ""),
    ],
)
def test_a_noun_that_is_not_frozen_through_is_named(body: str, said: str) -> None:
    noun = ast.parse(f"@dataclass(frozen=True)\nclass A:\n {body}").body[0]
    assert isinstance(noun, ast.ClassDef)
    found = list(_unfrozen(noun))
    assert len(found) == bool(said)
    assert all(said in fault for fault in found)


def test_an_edit_does_not_come_back_out_of_the_memory() -> None:
    body = wearer({"height": 1650.0, "bust_girth": 900.0, "waist_girth": 740.0, "hip_girth": 980.0})
    first = draft_garment(body, None, "bodice").draft
    was, point = dict(first.facts), first["front"].points["bust_point"]
    with pytest.raises(TypeError, match="read-only"):
        first["front"].points["bust_point"] = 0j  # type: ignore[index]
    with pytest.raises(TypeError, match="read-only"):
        first.facts.clear()  # type: ignore[attr-defined]
    again = draft_garment(body, None, "bodice").draft
    assert again.facts == was
    assert again["front"].points["bust_point"] == point


def test_a_frozen_mapping_is_copied_pickled_and_compared_like_a_dict() -> None:
    held = FrozenDict({"waist": 700.0, "hip": 950.0})
    for twin in (copy.copy(held), copy.deepcopy(held), pickle.loads(pickle.dumps(held))):
        assert type(twin) is FrozenDict
        assert twin == held == {"waist": 700.0, "hip": 950.0}
    mine = held.copy() | {"bust": 900.0}
    mine["waist"] = 0.0
    assert held["waist"] == 700.0


def test_a_piece_is_copied_deep_and_stays_equal_and_frozen() -> None:
    body = wearer({"height": 1650.0, "bust_girth": 900.0, "waist_girth": 740.0, "hip_girth": 980.0})
    draft = draft_garment(body, None, "bodice").draft
    for twin in (copy.deepcopy(draft), pickle.loads(pickle.dumps(draft))):
        assert twin == draft
        assert not list(edited(twin.facts))
