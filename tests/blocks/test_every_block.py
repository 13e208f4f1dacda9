"""What holds of every block, those that will be added included: they are found by listing folders."""

from __future__ import annotations

import importlib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from drafting.blocks import Block, all_blocks, names
from drafting.blocks._demands import own_faults
from drafting.blocks._own import OwnFile
from drafting.commands.texts import block_text
from drafting.costume.choices import Origin, choose, garment_choices, parts_of
from drafting.costume.garment import draft_garment, make_garment
from drafting.fabric import Fabric
from drafting.ground.lengths import in_unit
from drafting.ground.scale import body_scale
from tests.blocks.figures import chart_woman, errors
from tests.blocks.own import ROOT

KNIT = Fabric(
    "Jersey, invented", usable_width=1500.0, weave="knit", stretch_along=0.5, stretch_across=0.6, recovery=0.97
)

FOLDERS = [ROOT / "drafting" / "blocks", ROOT / "drafting" / "alter"]
KIT = tuple(name for name, block in all_blocks().items() if not block.file)
NO_PART = {"applique", "edge-pocket", "fan", "fullness", "girths", "pocket", "sewn-in"}
"""Files that are no part of a garment: a costume file asks for them on any edge, or a cloth does."""


def listed() -> set[str]:
    """Return what lies in the folders, read by the file system and not by the kit."""
    files = (path for folder in FOLDERS for path in folder.glob("[!_]*.py"))
    return {path.stem.replace("_", "-") for path in files}


def test_every_file_of_the_folders_is_a_block() -> None:
    assert set(KIT) == listed() - NO_PART


@pytest.mark.parametrize("name", names(alone=True))
def test_every_block_that_stands_alone_is_drafted_and_every_check_holds(name: str) -> None:
    cloth = KNIT if name.startswith(("close", "puffed")) else None
    made = draft_garment(chart_woman(), cloth, name)
    assert made.draft.pieces
    assert errors(made.draft) == []
    assert [f.message for f in made.findings if f.level == "error"] == []
    assert {girth.level for girth in made.draft.girths} <= {
        level.name for piece in made.draft.pieces for level in piece.levels
    }


def beside(name: str) -> Iterator[Block]:
    """Yield each block that stands alone and offers what `name` fits onto, with `name` added to it."""
    added = all_blocks()[name]
    for own in names(alone=True):
        block = all_blocks()[own]
        if name not in parts_of(block):
            chains = draft_garment(chart_woman(), KNIT, own).draft.chains
            if set(added.needs) <= set(chains):
                parts = {**parts_of(block), name: {}}
                choices = {c.name: c for c in (*added.choices, *block.choices)}
                yield replace(block, parts=parts, choices=tuple(choices.values()))


@pytest.mark.parametrize("name", [n for n in names() if n not in names(alone=True)])
def test_every_block_that_fits_onto_another_is_part_of_a_garment_or_can_be(name: str) -> None:
    if not any(name in block.parts for block in all_blocks().values()):
        body, found = chart_woman(), []
        for block in beside(name):
            chosen = choose(block, {}, body_scale(body), Origin())
            made = make_garment(body, KNIT, block, chosen, name="garment", role="shell")
            found.append({f.message for f in made.findings if f.level == "error"})
        assert set() in found


@pytest.mark.parametrize("name", KIT)
def test_every_block_answers_the_demands_made_on_a_makers_own(name: str) -> None:
    package = "alter" if (FOLDERS[1] / f"{name.replace('-', '_')}.py").exists() else "blocks"
    module = importlib.import_module(f"drafting.{package}.{name.replace('-', '_')}")
    found = own_faults(OwnFile(name, module, str(Path(str(module.__file__)))), {})
    assert [f for f in found if "where its method comes from" not in f.what] == []


@pytest.mark.parametrize("name", KIT)
def test_every_choice_is_listed_with_its_unit_its_meaning_and_its_source(name: str) -> None:
    block = all_blocks()[name]
    said = " ".join(block_text(block).split())
    for choice in block.choices:
        assert choice.name in said
        assert " ".join(in_unit(choice.meaning, "mm").split()).rstrip(".") in said
    named = [choice.name for choice in garment_choices(block)]
    assert len(named) == len(set(named)), "a choice of the finish has the same name"
