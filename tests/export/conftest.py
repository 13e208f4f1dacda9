"""The lamplighter made and printed once for all tests of files."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import Made, make
from drafting.ground.shipped import demo_costume
from drafting.output.sheets import PrintedSheet, printed_sheets
from drafting.printing.paper import PAPERS
from drafting.printing.wishes import PrintWishes


@pytest.fixture(scope="module")
def costume() -> Made:
    return make(read_costume(demo_costume()))


@pytest.fixture(scope="module")
def made(costume: Made) -> Made:
    """The lamplighter's shirt alone, on two sheets of paper and on a roll."""
    wishes = PrintWishes(papers=tuple(PAPERS[name] for name in ("a4", "letter", "roll")))
    asked = replace(costume.costume, prints=wishes)
    return replace(costume, costume=asked, garments=tuple(g for g in costume.garments if g.name == "shirt"))


@pytest.fixture(scope="module")
def sheets(made: Made) -> dict[str, PrintedSheet]:
    return {sheet.file.partition("-")[2].removesuffix(".pdf"): sheet for sheet in printed_sheets(made)}


@pytest.fixture(scope="module", params=["a4", "letter", "roll"])
def sheet(request: pytest.FixtureRequest, sheets: dict[str, PrintedSheet]) -> PrintedSheet:
    return sheets[request.param]
