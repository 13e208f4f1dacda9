"""Values put into a file that a maker wrote: what is read back is Python's own TOML reader's word."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.ground.errors import InputError
from drafting.ground.shipped import shipped
from drafting.reading.rewriting import Value, rewritten

COSTUME = """# What the lamplighter wears. Invented.
title = "The lamplighter"
unit = "cm"

[fabrics]
shell = "../fabrics/velveteen.toml"   # the good one

# the coat came first
[garments.coat]
block = "tailcoat"

# about the shirt
[garments.shirt]
block = "shirt"
[garments.shirt.choices]
waist_ease  =  "9 cm" # snug
# bust_ease = 12
notes = [
  "a", # one
]

# the end
[[trims]]
on = "hem"
"""


def test_a_value_is_put_where_it_stood_and_all_else_stays() -> None:
    new = rewritten(COSTUME, {("garments", "shirt", "choices", "waist_ease"): "78 cm"})
    assert new == COSTUME.replace('"9 cm"', '"78 cm"')


def test_a_new_key_stands_below_the_last_of_its_table_above_what_follows() -> None:
    new = rewritten(COSTUME, {("garments", "shirt", "choices", "cap_ease"): 1.2})
    assert new == COSTUME.replace('  "a", # one\n]\n', '  "a", # one\n]\ncap_ease = 1.2\n')


def test_a_new_table_comes_after_the_one_it_belongs_to() -> None:
    new = rewritten(COSTUME, {("garments", "coat", "choices", "tail_length"): "78 cm"})
    table = '\n[garments.coat.choices]\ntail_length = "78 cm"\n'
    assert new == COSTUME.replace('block = "tailcoat"\n', f'block = "tailcoat"\n{table}')


def test_a_key_at_the_top_stays_at_the_top() -> None:
    new = rewritten(COSTUME, {("workroom",): "w.toml"})
    assert new == COSTUME.replace('unit = "cm"\n', 'unit = "cm"\nworkroom = "w.toml"\n')


def test_a_value_of_none_takes_the_line_out() -> None:
    new = rewritten(COSTUME, {("garments", "shirt", "choices", "waist_ease"): None})
    assert new == COSTUME.replace('waist_ease  =  "9 cm" # snug\n', "")
    assert rewritten(COSTUME, {("garments", "hat", "choices", "brim"): None}) == COSTUME


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ('a = {b = {c = 1, d = "x"}} # one\n', 'a = {b = {c = 2.5, d = "x"}} # one\n'),
        ("a.b.c = 1 # one\n[z]\n", "a.b.c = 2.5 # one\n[z]\n"),
        ("[a]\nb.c = 1", "[a]\nb.c = 2.5"),
        ("[a.b]\r\nc = 1\r\n\r\n# end\r\n", "[a.b]\r\nc = 2.5\r\n\r\n# end\r\n"),
        ("[a.b]\r\nd = 1\r\n\r\n# end\r\n", "[a.b]\r\nd = 1\r\nc = 2.5\r\n\r\n# end\r\n"),
        ("[a.b]", "[a.b]\nc = 2.5\n"),
        ("", "\n[a.b]\nc = 2.5\n"),
        ("[a.z]\nx = 1\n", "[a.z]\nx = 1\n\n[a.b]\nc = 2.5\n"),
        ("[a]\nb = {}\n", "[a]\nb = {c = 2.5}\n"),
        ("[a]\nb.d = 1 # d\n\n# z\n[z]\n", "[a]\nb.d = 1 # d\nb.c = 2.5\n\n# z\n[z]\n"),
        ("[a.b]\n[z]\nx = 1\n[a.y]\nx = 1\n", "[a.b]\nc = 2.5\n[z]\nx = 1\n[a.y]\nx = 1\n"),
    ],
)
def test_every_way_of_writing_a_table_can_be_changed(text: str, expected: str) -> None:
    assert rewritten(text, {("a", "b", "c"): 2.5}) == expected


@pytest.mark.parametrize(
    ("text", "keys"), [("a = 1\n", ("a", "b")), ("[a.b]\nc = 1\n", ("a", "b")), ("a = [1]\n", ("a", "b"))]
)
def test_a_value_is_never_turned_into_a_table_nor_a_table_into_a_value(text: str, keys: tuple[str, ...]) -> None:
    with pytest.raises(InputError, match="by hand"):
        rewritten(text, {keys: 2})


WORDS = st.text("abcdefgh_-", min_size=1, max_size=4)
KEYS = st.lists(WORDS, min_size=1, max_size=3).map(tuple)
VALUES = st.one_of(st.text(max_size=12), st.booleans(), st.integers(-(10**6), 10**6), st.floats(-1e6, 1e6))


@settings(max_examples=150, deadline=None)
@given(st.dictionaries(KEYS, VALUES, max_size=4))
def test_comments_and_other_keys_stay_whatever_is_written(values: Mapping[Any, Value]) -> None:
    try:
        new = rewritten(COSTUME, values)
    except InputError:  # one key of these is the table of another
        return
    for line in COSTUME.split("\n"):
        assert line in new.split("\n")
    data = tomllib.loads(new)
    for keys, value in values.items():
        found: Any = data
        for key in keys:
            found = found[key]
        assert found == value
        assert type(found) is type(value)


@pytest.mark.parametrize("name", ["bodies/lamplighter", "bodies/kite", "costumes/lamplighter"])
def test_a_shipped_file_keeps_every_byte_but_the_value(name: str) -> None:
    text = (shipped("measurements") / f"{name}.toml").read_text("utf-8")
    title = tomllib.loads(text)["title"]
    assert rewritten(text, {("title",): "Mine"}) == text.replace(f'"{title}"', '"Mine"', 1)
