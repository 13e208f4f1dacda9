"""Numbers and their nouns agree, and an inch costume is read in inches: every sentence of plan, list and findings.

English grammar: one thing is singular, any other number plural. Stitches are told in mm in any unit, as the
machine's dial has them (common practice).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from drafting.costume.garment import draft_garment
from drafting.costume.lays import laid_out
from drafting.costume.make import Made
from drafting.fabric import Fabric
from drafting.ground.lengths import in_unit
from drafting.making import planned
from drafting.making.model import Said
from drafting.making.settings import setting_said
from drafting.making.words import plan_sentence, text
from drafting.making.words import texts as all_texts
from tests.bodies import bdims
from tests.making.figures import laid
from tests.making.invented_costumes import COSTUMES, invented
from tests.making.orders import WOVEN, costume_of, uneven

FEW: dict[str, dict[str, object]] = {
    "waistcoat": {"waistcoat_buttons": 3.0},
    "tailcoat": {"coat_buttons": 1.0, "turned_cuff": 70.0},
    "spats": {},
    "skirt": {"skirt_cut": "gored", "lining": "whole"},
}
"""Garments of which little is counted: one button that is buttoned, one bar, one packet."""

THINGS = (
    "button|buttonhole|seam|piece|hour|day|hook|eyelet|bar|band|row|panel|outline|line|tape|hole|dart|pair|packet"
)
ONE_OF_MANY = re.compile(rf"(?<![\d.,/×-])(?<!\d )\b1 (?:{THINGS}|degree|line have|minute|week|page|material)s\b")
MANY_OF_ONE = re.compile(
    rf"(?<![Tt]ail )(?<![Gg]ore )(?<!and )\b(?:0|[2-9]|\d\d+) (?:{THINGS}|degree|page)\b(?! of)"
)
METRIC = re.compile(r"\d (?:mm|cm)\b")
IN_MM = re.compile(r"stitches of [\d.]+ mm|long stitches \(\d+ mm|[\d.]+ mm (?:long|wide)|\b0\.\d+ mm")
"""Stitches, and a difference too fine for a tape."""


def few(block: str, crooked: bool) -> Made:
    body = uneven(bdims()[3]) if crooked else bdims()[3]
    return laid_out(costume_of(draft_garment(body, WOVEN, block, FEW[block]), WOVEN), count=20)


def read(made: Made, unit: str) -> Iterator[str]:
    """Yield every sentence of a costume's plan, lists and findings, in a unit."""
    plan = planned(made)
    for step in plan.steps:
        yield from (plan_sentence(one, unit) for one in (*step.say, *step.cautions))
        yield from (in_unit(one.kind, unit) for one in step.takes)
        if step.setting:
            yield from (plan_sentence(one, unit) for one in setting_said(step.setting, pressed=True))
    yield from (plan_sentence(row.detail, unit) for row in plan.shopping)
    yield from (plan_sentence(one, unit) for one in (*plan.keeping, *plan.cautions, *plan.remarks))
    for cell in (cell for table in plan.tables for row in table.rows for cell in row):
        if not isinstance(cell, float):
            yield plan_sentence(cell, unit) if isinstance(cell, Said) else in_unit(cell, unit)
    yield from (in_unit(finding.sentence, unit) for garment in made.garments for finding in garment.findings)


def wrong(made: Made) -> list[str]:
    found = [
        s for unit in ("cm", "in") for s in read(made, unit) if ONE_OF_MANY.search(s) or MANY_OF_ONE.search(s)
    ]
    return found + [s for s in read(made, "in") if METRIC.search(IN_MM.sub("", s))]


@pytest.mark.parametrize("name", sorted(COSTUMES))
def test_an_invented_costume_is_counted_in_good_english_and_in_its_own_unit(name: str) -> None:
    assert wrong(invented(name)) == []


@pytest.mark.parametrize("name", ["lamplighter"])
def test_a_shipped_costume_is_counted_in_good_english_and_in_its_own_unit(name: str) -> None:
    assert wrong(laid(name)) == []


@pytest.mark.parametrize(("block", "crooked"), [*((block, False) for block in FEW), ("tailcoat", True)])
def test_a_garment_of_few_things_is_counted_in_good_english(block: str, crooked: bool) -> None:
    assert wrong(few(block, crooked)) == []


def test_every_text_that_counts_says_one_of_it() -> None:
    """A number before a plural is written with both forms, unless one of it is another text."""
    loose = re.compile(r"\{(\w+)(?::\.0f)?\} (?:interfacing |sewn-in )?(?:" + THINGS + r"|day|hour)s\b")
    alone = {"do.bars", "do.bars_fall"}  # one bar is `bars_one`; a fall has two openings
    assert {key for key, words in all_texts().items() if loose.search(words)} == alone
    assert text(Said("shop.needles", (("point", "sharp"), ("size", 80), ("sold", "80/12"), ("n", 1)))).count(
        "1 seam;"
    )


def test_the_comb_finds_what_it_is_there_for() -> None:
    for bad in ("1 buttons", "for 1 seams", "begin 1 days before", "1 hours", "begin 1 pieces", "lines: 1 bars"):
        assert ONE_OF_MANY.search(bad)
    for good in ("11 buttons", "2.1 rows", "1 1/2 in", "1 button", "3/1 lines"):
        assert not ONE_OF_MANY.search(good)
    assert MANY_OF_ONE.search("2 button")
    assert METRIC.search(IN_MM.sub("", "sew it 5 mm inside"))
    assert not METRIC.search(IN_MM.sub("", "two rows of long stitches (5 mm, the upper tension loose)"))


def test_the_comb_reads_every_kind_of_cloth() -> None:
    fabric: Fabric = invented("ferry pilot").costume.fabrics["oilskin"]
    assert fabric.sort == "coated"
    assert sum(1 for _ in read(invented("ferry pilot"), "in")) > 200
