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

FEW: dict[str, tuple[str, dict[str, object]]] = {
    "waistcoat": ("waistcoat", {"waistcoat_buttons": 3.0}),
    "waistcoat of one button": ("waistcoat", {"waistcoat_buttons": 1.0}),
    "waistcoat of one button a front": ("waistcoat", {"waistcoat_buttons": 1.0, "breasted": "double"}),
    "tailcoat": ("tailcoat", {"coat_buttons": 1.0, "turned_cuff": 70.0}),
    "spats": ("spats", {}),
    "skirt": ("skirt", {"skirt_cut": "gored", "lining": "whole"}),
}
"""Garments of which little is counted: one button that is buttoned, one bar, one packet."""

THINGS = (
    "button|buttonhole|seam|piece|hour|day|hook|eyelet|bar|band|row|panel|outline|line|tape|hole|dart|pair|packet"
)
ONE_OF_MANY = re.compile(rf"(?<![\d.,/×-])(?<!\d )\b1 (?:{THINGS}|degree|minute|week|page|material)s\b")
MANY_OF_ONE = re.compile(
    rf"(?<![Tt]ail )(?<![Gg]ore )(?<!and )\b(?:0|[2-9]|\d\d+) (?:{THINGS}|degree|page)\b(?! of)"
)
ALONE = re.compile(r"\b0 (?:mm|cm|in) apart|\b1 buttonhole of [^.]*(?:\. ?\d[^.]*)*\bthe buttons\b|rows of 1\b")
"""One alone stands apart from nothing, and answers one."""
COMBS = (ONE_OF_MANY, MANY_OF_ONE, ALONE)
METRIC = re.compile(r"\d (?:mm|cm)\b")
IN_MM = re.compile(
    r"stitches of [\d.]+ mm|long stitches \(\d+ mm|Stitch \d+ \([^)]*\), [\d.]+ mm long(?: and [\d.]+ mm wide)?"
)
"""Stitches."""


def few(name: str, crooked: bool) -> Made:
    body = uneven(bdims()[3]) if crooked else bdims()[3]
    block, asked = FEW[name]
    return laid_out(costume_of(draft_garment(body, WOVEN, block, asked), WOVEN), count=20, table=False)


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
    found = [s for unit in ("cm", "in") for s in read(made, unit) if any(c.search(s) for c in COMBS)]
    return found + [s for s in read(made, "in") if METRIC.search(IN_MM.sub("", s))]


@pytest.mark.parametrize("name", sorted(COSTUMES))
def test_an_invented_costume_is_counted_in_good_english_and_in_its_own_unit(name: str) -> None:
    assert wrong(invented(name)) == []


@pytest.mark.parametrize("name", ["lamplighter"])
def test_a_shipped_costume_is_counted_in_good_english_and_in_its_own_unit(name: str) -> None:
    assert wrong(laid(name)) == []


@pytest.mark.parametrize(("name", "crooked"), [*((name, False) for name in FEW), ("tailcoat", True)])
def test_a_garment_of_few_things_is_counted_in_good_english(name: str, crooked: bool) -> None:
    assert wrong(few(name, crooked)) == []


@pytest.mark.parametrize(
    ("breasted", "count", "wanted"),
    [
        ("single", 1, "on the wearer's left front, the button on the right. The fronts"),
        ("single", 5, "5 buttonholes of "),
        ("double", 1, "a button on each front, the one on the left front for show; fasten"),
        ("double", 3, " apart, those on the left front for show; fasten"),
    ],
)
def test_one_button_closes_a_waistcoat_and_stands_apart_from_nothing(
    breasted: str, count: int, wanted: str
) -> None:
    asked = {"breasted": breasted, "waistcoat_buttons": float(count), "closing": "left over right"}
    (said,) = [
        f.sentence for f in draft_garment(bdims()[3], WOVEN, "waistcoat", asked).findings if f.check == "closing"
    ]
    assert wanted in said
    assert ("apart" in said) is (count > 1)
    assert ("lowest button is left open" in said) is (count > 1)


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
    for bad in ("sew it 5 mm inside", "a band 10 mm wide", "a slit 30 mm long", "turn it in by 0.6 mm"):
        assert METRIC.search(IN_MM.sub("", bad))
    assert not METRIC.search(IN_MM.sub("", "Stitch 304 (zigzag), 0.4 mm long and 2.5 mm wide (seam class 1)"))
    for bad in ("a small button, 0 in apart", "1 buttonhole of 1.8 cm on the left, the buttons", "two rows of 1"):
        assert ALONE.search(bad)
    assert not ALONE.search(
        "1 buttonhole of 1.8 cm on the left, the button on the right. Cover the buttons, 10 in apart"
    )
    assert not METRIC.search(IN_MM.sub("", "two rows of long stitches (5 mm, the upper tension loose)"))


def test_the_comb_reads_every_kind_of_cloth() -> None:
    fabric: Fabric = invented("ferry pilot").costume.fabrics["oilskin"]
    assert fabric.sort == "coated"
    assert sum(1 for _ in read(invented("ferry pilot"), "in")) > 200
