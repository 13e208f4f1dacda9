"""`plan.html` as a maker meets it: one file, remembered ticks, prints well, asks for nothing elsewhere."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pypdfium2 as pdfium
import pytest

from drafting.making import planned
from drafting.making.page import page
from drafting.making.words import plan_sentence as text
from tests.making.figures import laid
from tests.notebook.checker import found_by_axe

VOID = {"meta", "input", "br", "path", "use"}


class Tags(HTMLParser):
    """Counts elements and notes ids, references and what does not close."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.ids: list[str] = []
        self.used: set[str] = set()
        self.wrong: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found = dict(attrs)
        if found.get("id"):
            self.ids.append(str(found["id"]))
        if str(found.get("href", "")).startswith("#"):
            self.used.add(str(found["href"])[1:])
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        if tag in VOID:
            return
        if not self.open or self.open.pop() != tag:
            self.wrong.append(tag)


@pytest.mark.parametrize("name", ["lamplighter", "kite"])
def test_the_page_is_sound_html_and_every_reference_is_there(name: str) -> None:
    """Read by the standard library's parser."""
    tags = Tags()
    tags.feed(page(planned(laid(name)), laid(name)))
    assert tags.wrong == []
    assert tags.open == []
    assert len(tags.ids) == len(set(tags.ids))
    assert tags.used <= set(tags.ids)


def test_the_page_needs_no_network_and_no_other_file() -> None:
    made = page(planned(laid("lamplighter")), laid("lamplighter"))
    assert not re.search(r'(?:src|href)="(?!#)', made)
    assert "http" not in made.replace("http-equiv", "")
    assert "@import" not in made


def test_every_step_sets_its_own_seam_in_light() -> None:
    plan = planned(laid("kite"))
    made = page(plan, laid("kite"))
    for step in plan.steps:
        block = made.split(f'<li id="step-{step.n}">')[1].split("</li>")[0]
        if step.seams or step.edges:
            assert re.search(r'class="[nN]"', block), step.key


def test_why_a_seam_is_sewn_so_is_told_once_a_garment() -> None:
    made = page(planned(laid("lamplighter")), laid("lamplighter"))
    blocks = [b for b in made.split('<li id="step-') if ">coat," in b]
    assert sum("Baste first, as pile walks" in block for block in blocks) == 1
    assert sum("needle sharp 90" in block for block in blocks) > 10


@pytest.fixture
def opened(browser: Any, tmp_path: Path) -> Iterator[Any]:
    file = tmp_path / "plan.html"
    file.write_text(page(planned(laid("lamplighter")), laid("lamplighter")), encoding="utf-8")
    context = browser.new_context(viewport={"width": 1000, "height": 1200})
    tab = context.new_page()
    faults: list[str] = []
    asked: list[str] = []
    tab.on("pageerror", lambda error: faults.append(str(error)))
    tab.on("request", lambda request: asked.append(request.url))
    tab.goto(file.as_uri())
    yield tab
    context.close()
    assert faults == []
    assert [url for url in asked if not url.startswith("file:")] == []


@pytest.mark.browser
@pytest.mark.xdist_group("lab")
def test_ticks_and_minutes_are_remembered_and_the_hours_left_follow(opened: Any) -> None:
    left = opened.locator("#left")
    before = float(left.inner_text())
    opened.locator("ol.steps input[type=checkbox]").nth(20).check()
    assert float(left.inner_text()) <= before
    minutes = opened.locator("ol.steps input[type=number]").nth(0)
    minutes.fill("600")
    assert float(left.inner_text()) > before
    kept = left.inner_text()
    opened.reload()
    assert opened.locator("ol.steps input[type=checkbox]").nth(20).is_checked()
    assert opened.locator("ol.steps input[type=number]").nth(0).input_value() == "600"
    assert left.inner_text() == kept


@pytest.mark.browser
@pytest.mark.xdist_group("lab")
def test_the_plan_prints_to_paper_with_every_step(opened: Any) -> None:
    """Read back with pypdfium2."""
    pdf = pdfium.PdfDocument(opened.pdf(format="A4"))
    assert 5 < len(pdf) < 60
    words = "".join(sheet.get_textpage().get_text_range() for sheet in pdf)
    flat = re.sub(r"\W+", "", words)
    for step in planned(laid("lamplighter")).steps:
        first = re.sub(r"\W+", "", text(step.say[0]))[:40]
        assert first in flat, step.key


@pytest.mark.browser
@pytest.mark.xdist_group("lab")
def test_every_box_and_field_of_the_page_has_a_name_for_those_who_cannot_see_it(opened: Any) -> None:
    nameless = opened.evaluate(
        "[...document.querySelectorAll('input')].filter(i => !i.ariaLabel && !i.labels.length).length"
    )
    assert nameless == 0


@pytest.mark.browser
@pytest.mark.xdist_group("lab")
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_plan_ticked_or_not_is_read_by_everybody(opened: Any, scheme: str) -> None:
    """axe-core on the page that a notebook shows in a frame: contrast of ticked steps, names, tables, headings."""
    opened.emulate_media(color_scheme=scheme)
    for n in range(6):
        opened.locator("ol.steps input[type=checkbox]").nth(n).check()
    assert found_by_axe(opened, "body", least=15) == []
