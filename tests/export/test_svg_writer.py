"""One writer for every drawing: its numbers, its escaping, and nobody beside it."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from xml.etree import ElementTree

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from drafting.export.svg_writer import (
    Pen,
    attribute,
    caption,
    element,
    group,
    number,
    path_data,
    path_element,
    words,
)
from drafting.geometry import Cubic
from drafting.geometry import Path as Drawn

PACKAGE = Path(__file__).resolve().parents[2] / "drafting"

ANY = st.text(st.characters(exclude_categories=["Cs", "Cc", "Cn", "Co"]), max_size=40)

FAR = st.floats(-1e5, 1e5)


@given(ANY)
@example('"><script>')
@example("a & b &amp; 'c'")
@example("]]>")
def test_any_words_come_back_from_an_attribute_and_a_text(text: str) -> None:
    """Read back by the XML reader of the standard library."""
    read = ElementTree.fromstring(element("g", words("text", text), aria_label=text))
    assert read.get("aria-label") == text
    assert read[0].text == (text or None)
    assert ElementTree.fromstring(caption("said", text)).text == (text or None)
    assert ElementTree.fromstring(group("edge", [], attribute("data-edge", text))).get("data-edge") == text


@given(st.floats(-1e8, 1e8), st.integers(0, 5))
def test_a_number_reads_back_to_its_decimals(value: float, places: int) -> None:
    text = number(value, places)
    assert float(text) == pytest.approx(value, abs=0.5001 * 10**-places, rel=1e-12)
    assert re.fullmatch(r"-?(0|[1-9]\d*)(\.\d*[1-9])?", text)
    assert text != "-0"


@given(st.lists(st.complex_numbers(max_magnitude=1e5), min_size=4, max_size=4), st.booleans())
def test_a_curve_reads_back_as_it_was_handed_over(points: list[complex], short: bool) -> None:
    data = path_data(Drawn((Cubic(*points),)), Pen(height=500.0, short=short))
    read = [float(n) for n in re.findall(r"-?[\d.]+", data)]
    wanted = [n for p in points for n in (p.real, 500.0 - p.imag)]
    assert read == pytest.approx(wanted, abs=5.1e-5)
    assert re.sub(r"[-\d., ]", "", data) == "MC"


def test_the_quick_way_writes_what_the_plain_way_writes() -> None:
    path = ElementTree.fromstring(path_element("hit", "M 0,0", attribute("id", "a")))
    assert path.attrib == {"class": "hit", "d": "M 0,0", "id": "a"}
    inside = element("path", d="M 0,0")
    assert group("seam", [inside]) == element("g", inside, class_="seam")
    assert caption("said", "a < b") == words("text", "a < b", class_="said")


@pytest.mark.parametrize("value", [float("nan"), float("inf"), 1e12])
def test_what_is_no_place_on_paper_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match="no place on paper"):
        number(value)


TAG = re.compile(r"(?<!\?P)</?[a-z][a-z0-9]*(?=[\s>/]|$)|<!doctype", re.IGNORECASE)

MAY_WRITE_TAGS = {"export/svg_writer.py"}

NO_TAGS = {"<fraction"}
"""Unicode's own mark of a vulgar fraction, which `units` asks for."""


def written_tags(code: str) -> Iterator[str]:
    """Yield every piece of a string in `code` that holds a tag; docstrings are no strings here."""
    tree = ast.parse(code)
    prose = {
        id(node.value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in prose:
            yield from (tag for tag in TAG.findall(node.value) if tag not in NO_TAGS)


def test_tags_are_written_by_the_writer_and_by_templates_alone() -> None:
    found = {
        path.relative_to(PACKAGE).as_posix(): tags
        for path in sorted(PACKAGE.rglob("*.py"))
        if (tags := sorted(set(written_tags(path.read_text("utf-8")))))
    }
    assert {name: tags for name, tags in found.items() if name not in MAY_WRITE_TAGS} == {}
    assert found.keys() == MAY_WRITE_TAGS


@pytest.mark.parametrize(
    ("code", "tags"),
    [
        ("x = '<b>no</b>'", ["<b", "</b"]),
        ("x = f'<path d={d}/>'", ["<path"]),
        ("'''<b>'''\nx = 'a < b, 1 <mm>'", ["<mm"]),
        ("x = 'a<b and c>d'", ["<b"]),
        ("x = 1 < 2", []),
        ("x = r'(?P<a>.)'", []),
    ],
)
def test_a_tag_in_a_string_is_found(code: str, tags: list[str]) -> None:
    assert list(written_tags(code)) == tags
