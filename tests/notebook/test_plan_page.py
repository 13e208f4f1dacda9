"""`plan.html` as a maker meets it: one file, remembered ticks, prints well, asks for nothing elsewhere."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import numpy as np
import pypdfium2 as pdfium
import pytest

from drafting.ground.palette import css
from drafting.making import planned
from drafting.making.page import page
from drafting.making.page.looks import STYLE
from drafting.making.stages.inked import inked
from drafting.making.stages.picture import Face, FaceLook, StageDrawing, drawn_panel
from drafting.making.stages.placed import placed_panels
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
def test_a_pace_learnt_at_one_costume_is_the_guess_at_the_next(opened: Any, tmp_path: Path) -> None:
    """She takes twice as long as guessed for one kind of work: at another costume it is guessed twice as long."""
    mine = opened.locator("ol.steps input[type=number][data-work=join]").first
    guess = float(mine.input_value())
    mine.fill(str(2 * guess))
    other = tmp_path / "other.html"
    other.write_text(page(planned(laid("kite")), laid("kite")), encoding="utf-8")
    opened.goto(other.as_uri())
    for work, times in (("join", 2), ("hem", 1)):
        field = opened.locator(f"ol.steps input[type=number][data-work={work}]").first
        written = float(field.get_attribute("value"))
        assert float(field.input_value()) == pytest.approx(times * written, abs=1.0), work


@pytest.mark.browser
@pytest.mark.xdist_group("lab")
def test_the_plan_prints_to_paper_with_every_step(opened: Any) -> None:
    """Read back with pypdfium2."""
    pdf = pdfium.PdfDocument(opened.pdf(format="A4"))
    assert 5 < len(pdf) <= 24
    for sheet in [pdf[i] for i in range(len(pdf) - 1)]:
        grey = np.asarray(sheet.render(scale=0.5, grayscale=True).to_numpy()).squeeze()
        inked = np.flatnonzero((grey < 200).any(axis=1))
        assert inked.max() - inked.min() > 0.55 * len(grey), "a page is half empty"
    words = "".join(sheet.get_textpage().get_text_range() for sheet in pdf)
    flat = re.sub(r"\W+", "", words)
    for step in planned(laid("lamplighter")).steps:
        first = re.sub(r"\W+", "", text(step.say[0]))[:40]
        assert first in flat, step.key


FACES: tuple[FaceLook, ...] = ("right", "interfacing", "wrong")


@pytest.mark.browser
@pytest.mark.xdist_group("lab")
def test_right_side_interfacing_and_wrong_side_are_told_apart_in_a_black_and_white_print(browser: Any) -> None:
    """Printed 60 mm wide, rasterised at 300 dpi by pypdfium2 and thresholded: shares of black differ."""
    square = np.array([0j, 100 + 0j, 100 + 100j, 100j])
    drawing = StageDrawing("test", (drawn_panel(Face(look, square + 120 * i) for i, look in enumerate(FACES)),))
    context = browser.new_context()
    tab = context.new_page()
    style = f"<style>{css()}{STYLE}@page{{margin:0}}body{{margin:0!important;padding:0!important}}</style>"
    tab.set_content(f'<!doctype html>{style}<div style="width:60mm">{inked(drawing, "test").svg}</div>')
    sheet = pdfium.PdfDocument(tab.pdf(format="A4"))[0]
    context.close()
    black = np.asarray(sheet.render(scale=300 / 72, grayscale=True).to_numpy()).squeeze() < 128
    (placed,), _ = placed_panels(drawing)
    shares = []
    for i in range(len(FACES)):
        corners = placed.at(np.array([20 + 20j, 80 + 80j]) + 120 * i) * 300 / 254
        across, down = np.sort(corners.real).astype(int), np.sort(corners.imag).astype(int)
        shares.append(float(black[down[0] : down[1], across[0] : across[1]].mean()))
    right, dotted, plain = shares
    assert plain == 0.0
    assert right > 0.06
    assert dotted > 0.06
    assert abs(right - dotted) > 0.02


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
