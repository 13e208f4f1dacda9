"""The tables of the bench: girths against the record, changes against two drafts, in cm and inches."""

from __future__ import annotations

import re

import pytest

from drafting.costume.file import read_costume
from drafting.ground.shipped import demo_costume
from drafting.notebook.bench import state as st
from drafting.notebook.bench.changes import ROWS, changed_html, changes, changes_html
from drafting.notebook.bench.girths import girths_html

COSTUME = read_costume(demo_costume())
SHIRT = st.begin_standing(COSTUME, "shirt")
INCH = 25.4  # mm, the definition of 1959


def rows(table: str) -> dict[str, list[str]]:
    found = re.findall(r'row">(.*?)</th>(.*?)</tr>', table)
    return {name: re.findall(r"<td>([^<]*)</td>", cells) for name, cells in found}


def test_body_layers_and_ease_add_up_to_the_garment() -> None:
    shirt = SHIRT.made.garments[0]
    table = rows(girths_html(shirt, COSTUME.wearer))
    assert list(table)[:2] == ["Bust", "Waist"]
    for body, layers, ease, _, garment in table.values():
        assert float(body) + float(layers) + float(ease) == pytest.approx(float(garment), abs=0.16)
    assert table["Bust"][1] == "1.5"  # the body's file: 1.5 cm of undershirt


def test_the_strip_of_a_garment_smaller_than_the_body_is_dashed() -> None:
    breeches = st.begin_standing(COSTUME, "breeches")
    tight = st.asked_for(breeches, "breeches", "hip_ease", -40.0)
    assert not tight.refusal
    dashed = 'stroke-dasharray="3 2"'
    loose_table, tight_table = (
        girths_html(standing.made.garments[0], COSTUME.wearer) for standing in (breeches, tight)
    )
    assert (loose_table.count(dashed), tight_table.count(dashed)) == (0, 1)


def test_what_changed_is_measured_off_both_drafts_and_the_largest_is_first() -> None:
    wide = st.asked_for(SHIRT, "shirt", "waist_ease", 130.0)
    before, now = SHIRT.made.garments[0], wide.made.garments[0]
    found = changes(before, now)
    assert found[0].what == "Waist, girth"
    assert found[0].by == pytest.approx(40.0, abs=1e-6)  # 130 asked, 90 before
    assert [abs(c.by) for c in found] == sorted((abs(c.by) for c in found), reverse=True)
    back = {c.what: -c.by for c in changes(now, before)}
    assert {c.what: c.by for c in found} == pytest.approx(back)


def test_the_table_says_how_many_smaller_changes_it_leaves_out() -> None:
    wide = st.asked_for(SHIRT, "shirt", "bust_ease", 140.0)
    before, now = SHIRT.made.garments[0], wide.made.garments[0]
    table = changes_html(before, now)
    assert len(rows(table)) == ROWS
    assert f"and {len(changes(before, now)) - ROWS} smaller changes" in table
    was, is_, by = rows(changes_html(before, now, "in"))["Bust, girth"]
    assert by == "+1 5/8"  # 40 mm, to the nearest 1/8 in
    assert float(was.split()[0]) == pytest.approx(1035.75 // INCH)
    assert is_ != was


def test_what_no_tape_in_her_unit_shows_is_no_change() -> None:
    wider = st.asked_for(SHIRT, "shirt", "bust_ease", asked_bust_ease() + 3.175)  # 1/8 in all round
    before, now = SHIRT.made.garments[0], wider.made.garments[0]
    assert any(abs(change.by) < INCH / 16 for change in changes(before, now))
    for table in (rows(changes_html(before, now, "in")), rows(changes_html(before, now))):
        assert table["Bust, girth"][2] in ("+1/8", "+0.3")
        assert not [name for name, (_, _, by) in table.items() if by in ("+0", "+0.0", "-0")]
    assert "+0 in" not in changed_html(before, now, "in")


def asked_bust_ease() -> float:
    return float(st.asked_values(SHIRT)["bust_ease"])


def test_where_nothing_changed_that_is_said() -> None:
    shirt = SHIRT.made.garments[0]
    assert "Nothing has been changed yet" in changes_html(None, shirt)
    assert "No length" in changes_html(shirt, shirt)
