"""TOML with the line of every key: the scanner against the standard library's own reading."""

from __future__ import annotations

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.ground.errors import InputError
from drafting.reading.toml import parse_toml

TRICKY = '''# a comment = not a key
title = "a = b [c]"          # another
"quoted key" = 1
long = """
inside = 2
[not.a.table]
"""
list = [
  1, # one
  2, "]",
]
a.b = 3

[measures]
height = 171
both = {left = 1, right = 2}
[garments.shirt.choices]
ease = """x"""
[[part]]
n = 1
[[part]]
n = 2
'''


def test_each_key_has_its_line_whatever_stands_around_it() -> None:
    file = parse_toml(TRICKY, "x.toml")
    assert file.faults == ()
    rows = TRICKY.split("\n")
    expected = {
        ("title",): 'title = "a',
        ("quoted key",): '"quoted',
        ("long",): "long",
        ("list",): "list",
        ("a", "b"): "a.b",
        ("measures",): "[measures]",
        ("measures", "height"): "height",
        ("measures", "both"): "both",
        ("garments", "shirt", "choices"): "[garments",
        ("garments", "shirt", "choices", "ease"): "ease",
    }
    for keys, start in expected.items():
        line = file.line(*keys)
        assert line is not None
        assert rows[line - 1].startswith(start), keys
    assert file.line("measures", "both", "left") == file.line("measures", "both")
    assert file.line("part", "1", "n") == 22
    assert file.line("inside") is None
    assert file.data == tomllib.loads(TRICKY)


def test_a_key_given_twice_names_both_lines_and_keeps_the_first() -> None:
    text = 'a = 1\n[t]\nb = 2\nb = 3\n[u]\n[t]\nc = "x"\nb = 4\n'
    file = parse_toml(text, "x.toml")
    assert file.data == {"a": 1, "t": {"b": 2, "c": "x"}, "u": {}}
    assert [(f.field, f.line) for f in file.faults] == [("t.b", 4), ("t", 6), ("t.b", 8)]
    assert "lines 3 and 4" in file.faults[0].what


def test_tables_of_different_entries_are_not_taken_for_one() -> None:
    text = "[[a]]\nn = 1\n[a.b]\nm = 1\n[[a]]\nn = 2\n[a.b]\nm = 2\n[[a.c]]\nx = 1\n[[a.c]]\nx = 2\n"
    file = parse_toml(text)
    assert file.faults == ()
    assert file.data == tomllib.loads(text)
    assert file.line("a", "1", "c", "1", "x") == 12


@pytest.mark.parametrize(
    ("text", "line", "said"),
    [
        ("a = 1\nb = 92,5\n", 2, 'b = "92,5"'),
        ("a = 1\nb = 36 1/4 in  # inches\n", 2, 'b = "36 1/4 in"'),
        ("a = 1\n\nb 2\n", 3, "key ="),
        ('a = "open\n', 1, 'a = "open"'),
    ],
)
def test_a_mistake_is_named_with_its_line_and_a_cure(text: str, line: int, said: str) -> None:
    try:
        (fault,) = parse_toml(text, "x.toml").faults
    except InputError as error:
        (fault,) = error.faults
    assert fault.line == line
    assert said in fault.right


@pytest.mark.parametrize("text", ["a = " + "[" * 5000, "a = " + "9" * 5000, "a = 1\x00"])
def test_text_made_to_break_the_reader_is_refused(text: str) -> None:
    with pytest.raises(InputError):
        parse_toml(text, "x.toml")


KEYS = st.text("abcdef_", min_size=1, max_size=4)


@given(st.dictionaries(KEYS, st.dictionaries(KEYS, st.integers() | st.booleans()), max_size=5))
def test_every_key_of_a_written_file_is_found_on_its_line(tables: dict[str, dict[str, int]]) -> None:
    rows, expected = [], {}
    for name, table in tables.items():
        rows.append(f"[{name}]")
        for key, value in table.items():
            rows.append(f"{key} = {str(value).lower()}")
            expected[name, key] = len(rows)
    file = parse_toml("\n".join(rows), "x.toml")
    assert file.data == tables
    assert {keys: file.line(*keys) for keys in expected} == expected


@given(st.text())
def test_random_text_is_read_as_the_standard_reader_does_or_refused(text: str) -> None:
    try:
        file = parse_toml(text, "x.toml")
    except InputError:
        return
    if not file.faults:
        assert file.data == tomllib.loads(text)


SLIPS = (
    ('care = "wash at 30', 'a quote is missing; close it: care = "wash at 30"'),
    ("care = 'wash at 30  # by hand", 'a quote is missing; close it: care = "wash at 30"'),
    ("care = “wash at 30”", 'has curly quotes; type straight ones: care = "wash at 30"'),
    ("care = wash at 30", 'wash at 30 stands without quotes; put quotes round the value: care = "wash at 30"'),
    ("care = 2027-13-45", "2027-13-45 is no day; write it like 2027-01-05"),
    ("care = 30 %", '30 % stands without quotes; put quotes round the value: care = "30 %"'),
    ("care = £12", '£12 stands without quotes; put quotes round the value: care = "£12"'),
)


@pytest.mark.parametrize(("row", "said"), SLIPS)
def test_a_slip_of_the_hand_tells_its_line_and_the_rest_is_still_read(row: str, said: str) -> None:
    file = parse_toml(f'title = "x"\n{row}\nwidth = 140\n', "cloth.toml")
    assert [str(fault) for fault in file.faults] == [f"cloth.toml:2: care: {said}"]
    assert file.data["title"] == "x"
    assert file.data["width"] == 140
    assert file.line("width") == 3


def test_all_slips_of_a_file_are_told_at_once() -> None:
    rows = [row.replace("care", f"care{n}") for n, (row, _) in enumerate(SLIPS)]
    file = parse_toml("\n".join(rows), "cloth.toml")
    assert [fault.line for fault in file.faults] == [n + 1 for n, _ in enumerate(SLIPS)]


def test_a_slip_that_has_no_cure_is_told_with_those_that_have_one() -> None:
    with pytest.raises(InputError) as refused:
        parse_toml('a = “x”\nb = [1, 2\nc = "y\n', "cloth.toml")
    assert [fault.line for fault in refused.value.faults] == [1, 3, 3]
    assert "Unclosed array" in refused.value.faults[-1].what
