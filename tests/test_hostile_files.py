"""Whatever stands in a maker's files: a refusal with file, line and field, or a costume; nothing else."""

from __future__ import annotations

import re
import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.commands.cli import main
from drafting.costume.file import read_costume
from drafting.costume.whole import read_whole_costume
from drafting.ground.errors import Fault, InputError
from tests.hostile import FILES, HOSTILE, HOSTILE_TABLES, costume_in

LINE = re.compile(r"(?P<file>[^:]+\.(toml|csv)):(?P<line>\d+): \S")


def refused(files: dict[str, Path], out: Path, capsys: pytest.CaptureFixture[str]) -> list[str]:
    """Return what the command says; it has to refuse, in a second or so, and write nothing."""
    began = time.process_time()
    code = main(["make", str(files["costume"]), "--out", str(out)])
    took = time.process_time() - began
    said = capsys.readouterr()
    assert (code, said.out) == (2, "")
    assert not out.exists()
    assert [path.name for path in out.parent.iterdir() if path.name.startswith(".")] == []
    assert took < 3  # a second is wanted; three where the clean-up of memory falls into it
    return said.err.splitlines()


@pytest.mark.parametrize("how", HOSTILE)
@pytest.mark.parametrize("kind", FILES)
def test_a_hostile_file_is_refused_at_a_line_of_it(
    kind: str, how: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    files = costume_in(tmp_path)
    path = files[kind]
    path.write_bytes(HOSTILE[how](path.read_bytes()))
    said = refused(files, tmp_path / "out", capsys)
    assert 0 < len(said) < 60
    text = path.read_bytes().decode("utf-8", "replace").replace("\r\n", "\n")
    for row in said:
        assert row.isprintable()
        assert len(row) < 500
        if how in ("five megabytes", "60,000 keys"):  # no line of it was read
            assert "too large" in row
            continue
        found = LINE.match(row)
        assert found, row
        assert 1 <= int(found["line"]) <= max(1, text.count("\n") + 1)


@pytest.mark.parametrize("how", ["mark", "CRLF", "CR", "UTF-16"])
@pytest.mark.parametrize("kind", FILES)
def test_what_an_editor_does_to_a_file_changes_nothing(kind: str, how: str, tmp_path: Path) -> None:
    files = costume_in(tmp_path)
    plain = read_costume(files["costume"])
    text = files[kind].read_text("utf-8")
    raw = {
        "mark": b"\xef\xbb\xbf" + text.encode(),
        "CRLF": text.replace("\n", "\r\n").encode(),
        "CR": text.replace("\n", "\r").encode(),
        "UTF-16": text.encode("utf-16"),
    }
    files[kind].write_bytes(raw[how])
    assert read_costume(files["costume"]) == plain


@pytest.mark.parametrize("kind", ["wearer", "cloth", "workroom", "fitting"])
@pytest.mark.parametrize("what", ["gone", "folder", "itself", "nameless", "loop", "device"])
def test_a_file_that_cannot_be_opened_is_named_where_the_costume_names_it(
    kind: str, what: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    files = costume_in(tmp_path)
    path = files[kind]
    named = f"../{path.relative_to(tmp_path).as_posix()}"
    text = files["costume"].read_text("utf-8")
    line = next(n for n, row in enumerate(text.splitlines(), 1) if named in row)
    path.unlink()
    if what == "folder":
        path.mkdir()
    elif what == "loop":
        path.symlink_to(path.name)
    other = {"itself": files["costume"].name, "nameless": "a\\u0000b" + "x" * 300, "device": "/dev/zero"}
    files["costume"].write_text(text.replace(named, other.get(what, named)), "utf-8")
    (said,) = refused(files, tmp_path / "out", capsys)
    assert said.startswith(f"{files['costume']}:{line}: ")
    assert said.isprintable()


@pytest.mark.parametrize("how", HOSTILE_TABLES)
def test_a_hostile_table_of_measures_is_refused_at_a_line_of_it(
    how: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "wearer.csv"
    path.write_bytes(HOSTILE_TABLES[how])
    began = time.process_time()
    assert main(["body", str(path)]) == 2
    assert time.process_time() - began < 3
    said = capsys.readouterr().err.splitlines()
    assert 0 < len(said) < 60
    for row in said:
        assert row.isprintable()
        assert how == "five megabytes" or LINE.match(row), row


VALUES = [
    "1e400",
    "-1e400",
    "nan",
    "inf",
    "-3",
    "0",
    "1" + "0" * 400,
    "0x" + "f" * 4000,
    "true",
    '""',
    '"cm"',
    '"<b>"',
    '"\\u0000"',
    "[]",
    "[[]]",
    "[1, 2]",
    "[{}]",
    "[{a = 1}, 2]",
    "{}",
    "{a = {}}",
    "{left = 1}",
    "{rest = 0, stretched = 1, released = 2}",
    "{rest = 1e-300, stretched = 1e300}",
    "2026-02-30",
    "2026-02-03",
    "12:00:00",
    "2026-02-03T12:00:00Z",
    "'92 cm 3'",
    '"1/0 in"',
    '"5\' x"',
    '"' + "9" * 3000 + '"',
    '"' + "x" * 3000 + '"',
    '"\\u202e"',
    '"\\u001b[2J"',
    '["a", 3, {}]',
]


def changed(text: str, line: int, value: str) -> str:
    """Return the text with another value on a line that has one."""
    rows = text.split("\n")
    rows[line] = f"{rows[line].partition('=')[0]}= {value}"
    return "\n".join(rows)


def pairs(text: str) -> list[int]:
    return [n for n, row in enumerate(text.split("\n")) if re.match(r"\s*[\w.-]+\s*=", row)]


MORE = """
[[garments.top.fullness]]
edge = "sleeve.hem"
gather = 1.4
[[garments.top.trims]]
edge = "front.neck"
kind = "braid"
width = "12 mm"
cut = "bias"
[[garments.top.appliques]]
piece = "front"
shape = "star"
width = 6
height = 6
edge = "hem"
inside = 12
[print]
papers = ["a3"]
pieces = ["top.front"]
model = "1:4"
dxf = "R12"
[lays.jersey]
gap = 1
faults = [{along = 120, across = 30, length = 6, width = 4}]
"""
"""Every further table that a costume may have."""


def check(faults: tuple[Fault, ...], folder: Path) -> None:
    assert faults
    assert len(set(faults)) == len(faults)
    for fault in faults:
        assert str(fault).isprintable()
        path = Path(fault.file)
        assert path.is_relative_to(folder)
        assert fault.line is not None
        assert 1 <= fault.line <= path.read_bytes().count(b"\n") + 1


@pytest.mark.parametrize("kind", FILES)
def test_every_value_of_every_file_may_be_any_other(kind: str, tmp_path: Path) -> None:
    files = costume_in(tmp_path)
    text = files[kind].read_text("utf-8") + (MORE if kind == "costume" else "")
    for line in pairs(text):
        for value in VALUES:
            files[kind].write_text(changed(text, line, value), "utf-8")
            try:
                read_costume(files["costume"])
            except InputError as refused:
                check(refused.faults, tmp_path)


ROWS = st.sampled_from([*VALUES, "", "x = 1", "[x]", "[[garments.top.trims]]", '"""', "[", "}"])
CHANGES = st.lists(
    st.tuples(
        st.sampled_from(["delete", "double", "swap", "value", "row", "letter"]),
        st.integers(0, 999),
        st.integers(0, 999),
        ROWS,
    ),
    min_size=1,
    max_size=6,
)


def mutated(text: str, how: str, at: tuple[int, int], row: str) -> str:
    """Return a text with one row deleted, doubled, swapped, its value changed, or one put in."""
    rows = text.split("\n")
    one, other = at[0] % len(rows), at[1] % len(rows)
    if how == "value" and pairs(text):
        return changed(text, pairs(text)[at[0] % len(pairs(text))], row)
    if how == "letter" and rows[one]:
        place = at[1] % len(rows[one])
        rows[one] = rows[one][:place] + rows[one][place + 1 :]
    elif how == "delete":
        del rows[one]
    elif how == "double":
        rows.insert(other, rows[one])
    elif how == "swap":
        rows[one], rows[other] = rows[other], rows[one]
    else:
        rows.insert(one, row)
    return "\n".join(rows)


@given(st.sampled_from(sorted(FILES)), CHANGES)
@settings(max_examples=150, deadline=None)
def test_a_shipped_file_changed_anyhow_is_read_or_refused_at_its_lines(
    tmp_path_factory: pytest.TempPathFactory, kind: str, changes: list[tuple[str, int, int, str]]
) -> None:
    folder = tmp_path_factory.getbasetemp() / "mutated"
    files = costume_in(folder)
    text = files[kind].read_text("utf-8") + (MORE if kind == "costume" else "")
    for how, one, other, row in changes:
        text = mutated(text, how, (one, other), row)
    files[kind].write_text(text, "utf-8")
    try:
        costume = read_whole_costume(files["costume"])
    except InputError as refused:
        check(refused.faults, folder)
    else:
        assert costume.garments


def test_what_no_printer_has_in_a_title_stands_in_no_page(tmp_path: Path) -> None:
    """Characters of XML 1.0 (`Char`): a NUL or a direction mark in a title stood in the plan and its lays."""
    files = costume_in(tmp_path)
    for kind in ("costume", "wearer", "cloth"):
        text = files[kind].read_text("utf-8")
        strange = re.sub(r'(?m)^title = "(.*)"$', r'title = "\\u0000\\u202e\1\\u001b"', text, count=1)
        assert strange != text
        files[kind].write_text(strange, "utf-8")
    out = tmp_path / "out"
    assert main(["make", str(files["costume"]), "--out", str(out)]) == 0
    for path in (*out.rglob("*.svg"), *out.rglob("*.html"), *out.rglob("*.csv"), *out.rglob("*.dxf")):
        assert not re.search("[\x00-\x08\x0b\x0c\x0e-\x1f\u202a-\u202e]", path.read_text("utf-8")), path.name
