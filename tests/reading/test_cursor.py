"""The cursor over a table: typed values, faults at their places, and the keys nobody asked for."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from drafting.ground.errors import Fault, InputError
from drafting.reading.cursor import TableReader, opened

TEXT = """unit = "in"
length = 36
text_length = "92 cm"
number = "0,5"
flag = "yes"
word = "red"
day = 2027-01-05
name = "Ada"
some = ["a", 2, "b"]

[inner]
length = -1
[[many]]
size = 1
[[many]]
size = "x"
[many.deeper]
depth = 0
"""


def table(folder: Path, text: str = TEXT) -> TableReader:
    (folder / "file.toml").write_text(text, "utf-8")
    return opened(folder / "file.toml")


def refused(one: TableReader) -> list[tuple[int | None, str, str]]:
    with pytest.raises(InputError) as error:
        one.refuse()
    faults: tuple[Fault, ...] = error.value.faults
    return [(fault.line, fault.field, f"{fault.what}; {fault.right}") for fault in faults]


def test_values_are_read_by_what_they_are(tmp_path: Path) -> None:
    top = table(tmp_path)
    assert (top.unit, top.length("length"), top.length("text_length")) == ("in", 914.4, 920.0)
    assert (top.number("number"), top.truth("flag")) == (0.5, True)
    assert (top.word("word", ("red", "green")), top.text("name")) == ("red", "Ada")
    assert top.day("day") == date(2027, 1, 5)
    assert top.listed("some", ("a", "b", "2")) == ("a", "2", "b")
    top.refuse()


def test_what_is_not_there_is_nothing_or_the_usual(tmp_path: Path) -> None:
    top = table(tmp_path, "x = 1\n")
    assert (top.length("a"), top.number("b"), top.truth("c"), top.text("d")) == (None,) * 4
    assert (top.word("e", ("red",), "red"), top.day("f"), top.listed("g", ("a",))) == ("red", None, None)
    assert list(top.numbered("h")) == []
    assert top.table("i").data == {}
    top.refuse()


def test_a_fault_has_the_line_and_the_name_of_what_is_wrong(tmp_path: Path) -> None:
    top = table(tmp_path)
    top.table("inner").length("length")
    for entry in top.numbered("many"):
        entry.length("size")
        entry.table("deeper").length("depth")
    said = refused(top)
    assert [(line, name) for line, name, _ in said] == [
        (12, "inner.length"),
        (16, "many[2].size"),
        (18, "many[2].deeper.depth"),
    ]


def test_keys_that_nobody_asked_for_are_named_with_the_nearest_that_somebody_did(tmp_path: Path) -> None:
    top = table(tmp_path, 'widht = 1\nweave = "knit"\n[inner]\nfnord = 1\n')
    top.number("width")
    top.text("weave")
    inner = top.table("inner")
    inner.number("known")
    inner.close()
    top.close()
    said = refused(top)
    assert [(line, name) for line, name, _ in said] == [(1, "widht"), (4, "inner.fnord")]
    assert "did you mean width?" in said[0][2]
    assert "known is known" in said[1][2]


@pytest.mark.parametrize(
    ("value", "said"),
    [("3", "is 3, not a table; begin it with a line [inner]"), ('"x"', "'x'"), ("[1]", "a list")],
)
def test_a_value_where_a_table_is_wanted_is_refused(value: str, said: str, tmp_path: Path) -> None:
    top = table(tmp_path, f"x = 1\ninner = {value}\n")
    assert top.table("inner").data == {}
    ((line, name, words),) = refused(top)
    assert (line, name) == (2, "inner")
    assert said in words


@pytest.mark.parametrize("value", ["3", '"x"', "{a = 1}", "[1]", "[{}, 1]", "[[]]"])
def test_what_is_no_list_of_tables_is_refused(value: str, tmp_path: Path) -> None:
    top = table(tmp_path, f"x = 1\nmany = {value}\n")
    assert list(top.numbered("many")) == []
    ((line, name, words),) = refused(top)
    assert (line, name) == (2, "many")
    assert "[[many]]" in words


def test_a_missing_key_that_is_needed_stands_at_its_table(tmp_path: Path) -> None:
    top = table(tmp_path, "x = 1\n[[many]]\na = 1\n[[many]]\nb = 1\n")
    for entry in top.numbered("many"):
        entry.needed("edge", str, 'as in edge = "hem"')
    assert refused(top) == [
        (2, "many[1]", 'needs an edge; as in edge = "hem"'),
        (4, "many[2]", 'needs an edge; as in edge = "hem"'),
    ]


def test_a_table_written_with_dots_has_the_line_of_its_first_key(tmp_path: Path) -> None:
    top = table(tmp_path, "x = 1\na.b.c = 1\na.b.d = 2\n")
    assert top.table("a").table("b").spot().line == 2
    assert top.table("a").table("b").spot("d").line == 3


def test_of_hundreds_of_mistakes_the_first_are_told(tmp_path: Path) -> None:
    top = table(tmp_path, "".join(f"key_{n} = 1\n" for n in range(500)))
    top.close()
    said = refused(top)
    assert 20 < len(said) < 50
    assert "more is wrong" in said[-1][2]
