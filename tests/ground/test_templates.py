"""Pages come out of templates, and nothing a maker writes becomes a tag."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

import pytest
from jinja2 import UndefinedError

from drafting.ground.findings import Finding
from drafting.ground.templates import Html, macros
from drafting.making import planned
from drafting.making.page import page
from drafting.notebook.bench.findings import findings_html
from drafting.notebook.lay_table.words import widths_html
from drafting.notebook.measuring.fields import said_html
from drafting.notebook.measuring.words import FieldNote
from drafting.notebook.said import paragraphs_html, refused_html, status_html, style_html
from tests.making.figures import laid

PACKAGE = Path(__file__).resolve().parents[2] / "drafting"
NASTY = "<script>alert('x')</script> & \"so\" on"


class Read(HTMLParser):
    """The standard library's reader: which elements stand there, and all words outside style and script."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.words = ""
        self.feed(str(text))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)

    def handle_data(self, data: str) -> None:
        self.words += data


@pytest.mark.parametrize(
    "made",
    [
        refused_html(NASTY),
        status_html(NASTY),
        paragraphs_html([NASTY]),
        findings_html([Finding("x", "error", "", 1, 2, NASTY)]),
        said_html([FieldNote("note", NASTY)]),
    ],
    ids=["refusal", "status", "paragraphs", "findings", "field"],
)
def test_what_a_maker_writes_is_read_back_as_words(made: Html) -> None:
    read = Read(made)
    assert "script" not in read.tags
    assert NASTY in read.words


def test_a_plan_with_a_wild_title_has_one_script_still() -> None:
    plan = replace(planned(laid("kite")), title=NASTY, wearer=NASTY)
    read = Read(page(plan, laid("kite")))
    assert read.tags.count("script") == 1
    assert read.words.count(NASTY) >= 3  # the window's title, the heading, who wears it


def test_a_style_sheet_is_handed_on_as_it_stands() -> None:
    assert style_html('a > b { content: "x"; }').endswith('a > b { content: "x"; }</style>')


def test_a_name_that_a_template_does_not_know_is_an_error(tmp_path: Path) -> None:
    (tmp_path / "one.html.jinja").write_text("{% macro one(a) %}{{ a }}{{ b }}{% endmacro %}")
    with pytest.raises(UndefinedError, match="'b' is undefined"):
        macros(str(tmp_path / "one.py")).one("x")


def test_widths_that_are_still_worked_out_say_so() -> None:
    lay = replace(laid("kite").lays[0], others=())
    assert "being worked out" in Read(widths_html(lay)).words


def test_no_template_lets_words_through_unescaped() -> None:
    found = sorted(PACKAGE.rglob("*.jinja"))
    assert len(found) > 10
    loose = [p.name for p in found if re.search(r"\|\s*safe|autoescape|Markup", p.read_text("utf-8"))]
    assert loose == []


def test_every_template_stands_beside_the_module_that_fills_it() -> None:
    for path in PACKAGE.rglob("*.jinja"):
        module = path.with_name(path.name.removesuffix(".html.jinja").removesuffix(".toml.jinja") + ".py")
        assert "macros(__file__)" in module.read_text("utf-8"), path
