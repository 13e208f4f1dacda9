"""Every control that a page offers for a garment moves something of it: none is dead under the hand."""

from __future__ import annotations

import ast
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from drafting.costume.file import CostumeFile, read_costume
from drafting.costume.make import finished
from drafting.ground.choices import Choice
from drafting.ground.errors import DraftError
from drafting.notebook.bench.state import only_garment, with_choice
from drafting.notebook.living.parts import choices_in
from drafting.notebook.page.named import garments_with
from tests.notebook.lab import ROOT
from tests.notebook.trials import CLOTH, UNEVEN

COSTUME = """title = "A coat with a level hem, a spencer and trousers, invented"
unit = "in"
wearer = "wearer.toml"
[fabrics]
shell = "cloth.toml"
[garments.coat]
block = "coat"
[garments.spencer]
block = "spencer"
[garments.trousers]
block = "trousers"
"""

PAGES = ("03", "04", "05", "06")


@pytest.fixture
def costume(tmp_path: Path) -> CostumeFile:
    for name, text in {"wearer": UNEVEN, "cloth": CLOTH, "costume": COSTUME}.items():
        (tmp_path / f"{name}.toml").write_text(text, "utf-8")
    return read_costume(tmp_path / "costume.toml")


def benches(page: str) -> Iterator[tuple[tuple[str, ...], tuple[str, ...]]]:
    """Yield the choices and the parts of every bench of a page."""
    (path,) = (ROOT / "notebooks").glob(f"{page}_*.ipynb")
    cells = json.loads(path.read_text("utf-8"))["cells"]
    code = "\n".join("".join(cell["source"]) for cell in cells if cell["cell_type"] == "code")
    for call in ast.walk(ast.parse(code)):
        if isinstance(call, ast.Call) and isinstance(call.func, ast.Attribute) and call.func.attr == "bench":
            choices = tuple(n.value for arg in call.args for n in ast.walk(arg) if isinstance(n, ast.Constant))
            parts = tuple(n.value for key in call.keywords for n in ast.walk(key) if isinstance(n, ast.Constant))
            yield choices, parts  # type: ignore[misc]


def values(choice: Choice) -> tuple[Any, ...]:
    """Return values from the whole range of a choice."""
    if choice.words:
        return choice.words
    if choice.low is None or choice.high is None:
        return (False, True)
    return tuple(choice.low + share * (choice.high - choice.low) for share in (0.1, 0.3, 0.6))


def drawn(costume: CostumeFile) -> list[Any]:
    (made,) = finished(costume).garments
    return [
        (c.piece.name, c.piece.count, c.cut.length, [p.path.length for p in c.piece.placements])
        for c in made.pattern.pieces
    ]


def moves(costume: CostumeFile, garment: str, choice: Choice) -> bool:
    own = only_garment(costume, garment)
    before = drawn(own)
    for value in values(choice):
        try:
            if drawn(with_choice(own, garment, choice.name, value)) != before:
                return True
        except DraftError:  # it is told beside the control, which is not dead
            return True
    return False


@pytest.mark.parametrize("page", PAGES)
def test_every_control_of_a_page_moves_the_pieces_of_each_garment_it_is_shown_for(
    page: str, costume: CostumeFile
) -> None:
    dead = []
    for choices, parts in benches(page):
        for garment in garments_with(costume, choices, parts):
            known = choices_in(costume, garment)
            dead += [
                (garment, name) for name in choices if name in known and not moves(costume, garment, known[name])
            ]
    assert dead == []
