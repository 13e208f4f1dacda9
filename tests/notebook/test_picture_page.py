"""The live picture in a real browser: what the pointer finds, views, units, dark pages, no blinking."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.notebook.hands import drag, knob, shown
from tests.notebook.lab import Lab, Tab
from tests.notebook.pictures import view_box

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]

NOTEBOOK = "notebooks/picture.ipynb"
WAIT = 10_000

CELLS = """
from drafting.costume.file import read_costume
from drafting.notebook import Bench, costume_path
Bench(read_costume(costume_path("lamplighter")), ["shirt", "breeches", "coat"])
"""

ON_EDGE = """edge => {
    const hit = document.querySelector(`[data-edge="${edge}"] .hit`);
    const at = hit.getPointAtLength(hit.getTotalLength() * 0.4).matrixTransform(hit.getScreenCTM());
    return [at.x, at.y];
}"""

LIT = """() => [...document.querySelectorAll('.pattern-preview .edge')]
    .filter(e => getComputedStyle(e.querySelector('.hit')).stroke !== 'rgba(0, 0, 0, 0)')
    .map(e => [e.dataset.edge, getComputedStyle(e.querySelector('.hit')).strokeDasharray])"""

SAID = """() => [...document.querySelectorAll('.pattern-preview .said')]
    .filter(t => getComputedStyle(t).visibility === 'visible').map(t => t.textContent)"""

BLINKS = """() => {
    window.blinks = 0; window.frames = 0;
    const look = () => {
        const svg = document.querySelector('.pattern-preview svg');
        if (!svg || svg.querySelectorAll('.cut-line').length < 10) window.blinks += 1;
        window.frames += 1;
        requestAnimationFrame(look);
    };
    look();
}"""

CONTRAST = """() => {
    const light = colour => {
        const [r, g, b] = colour.match(/[\\d.]+/g).map(v => v / 255)
            .map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const svg = document.querySelector('.pattern-preview svg');
    const paper = light(getComputedStyle(svg).backgroundColor);
    const inks = [['.cut-line path', 'stroke'], ['.stitch-line path', 'stroke'],
        ['.measured text', 'fill'], ['.text text', 'fill']];
    return inks.map(([what, how]) => {
        const ink = light(getComputedStyle(svg.querySelector(what))[how]);
        return (Math.max(ink, paper) + 0.05) / (Math.min(ink, paper) + 0.05);
    });
}"""
"""Contrast by relative luminance, as W3C's accessibility guidelines (WCAG 2.1) define it."""


@pytest.fixture
def bench(tab: Tab, lab: Lab) -> Iterator[Tab]:
    book = lab.root / NOTEBOOK
    if not book.exists():
        cell = {
            "cell_type": "code",
            "execution_count": None,
            "id": "one",
            "metadata": {},
            "outputs": [],
            "source": CELLS.strip(),
        }
        kernel = {"kernelspec": {"name": "python3", "display_name": "Python 3"}}
        book.write_text(json.dumps({"cells": [cell], "metadata": kernel, "nbformat": 4, "nbformat_minor": 5}))
        tab.page.set_viewport_size({"width": 1400, "height": 950})
        tab.open(NOTEBOOK)
    tab.run_to_bench()
    tab.page.mouse.move(2, 2)
    yield tab
    assert tab.kernel_faults() == []
    assert tab.faults == []
    assert tab.outside == []


def picture(tab: Tab) -> str:
    return str(tab.page.locator(".pattern-preview .widget-html-content").inner_html())


def point_at(tab: Tab, edge: str) -> None:
    x, y = tab.page.evaluate(ON_EDGE, edge)
    tab.page.mouse.move(x, y)


def lit(tab: Tab) -> dict[str, str]:
    """Return the edges that are lit, each with its dashes."""
    return dict(tab.page.evaluate(LIT))


def choose(tab: Tab, which: str, value: str) -> None:
    tab.page.locator(f".{which} select").select_option(label=value)


def wait_for_nearer_view(tab: Tab, before: str) -> None:
    """Wait until the picture shows a third less than `before`: a picture drawn anew shows as much as ever."""
    tab.page.wait_for_function(
        """before => document.querySelector('.pattern-preview svg').viewBox.baseVal.width * 1.4
            < Number(before.split(' ')[2])""",
        arg=before,
        timeout=WAIT,
    )


def box(tab: Tab) -> str:
    return str(tab.page.locator(".pattern-preview svg").get_attribute("viewBox"))


def test_the_edge_under_the_pointer_says_its_lengths_and_its_partner_lights_up(bench: Tab, tmp_path: Path) -> None:
    point_at(bench, "front.armhole")
    found = lit(bench)
    assert found.pop("front.armhole") == "none"
    assert list(found) == ["sleeve.cap_front"]
    assert found["sleeve.cap_front"] != "none"  # dashes: told without colour
    words = bench.page.evaluate(SAID)
    assert len(words) == 2
    assert words[0].startswith("Front armhole: ")
    assert "sewn length" in words[0]
    assert "sleeve" in words[1]
    assert "ease" in words[1]
    bench.page.screenshot(path=tmp_path / "pointed-at.png")
    bench.page.mouse.move(2, 2)
    assert lit(bench) == {}
    assert bench.page.evaluate(SAID) == []


def test_an_edge_is_looked_at_by_keys_alone_and_stays_lit_while_a_slider_moves(bench: Tab) -> None:
    bench.page.locator(".view-look-at select").focus()
    chosen = "() => document.activeElement.selectedOptions[0].textContent.replace(/\\s+/g, ' ')"
    for _ in range(40):
        bench.page.keyboard.press("ArrowDown")
        if bench.page.evaluate(chosen) == "front: armhole":
            break
    bench.page.wait_for_selector('.edge.looked[data-edge="front.armhole"]', state="attached")
    first = bench.page.evaluate(SAID)
    assert first[0].startswith("Front armhole: ")
    knob(bench, "armhole-drop").focus()
    bench.page.keyboard.press("PageUp")
    bench.page.wait_for_function(
        "first => document.querySelector('.edge.looked .said').textContent !== first", arg=first[0]
    )
    assert set(lit(bench)) == {"front.armhole", "sleeve.cap_front"}
    point_at(bench, "back.hem")  # the pointer has the word while it points
    assert bench.page.evaluate(SAID)[0].startswith("Back hem: ")
    assert len(bench.page.evaluate(SAID)) == 2


def test_closer_shows_one_piece_larger_and_fit_the_whole_again(bench: Tab, tmp_path: Path) -> None:
    whole, lines = box(bench), bench.page.locator("[id='shirt.sleeve.cut-line']").get_attribute("d")
    choose(bench, "view-show", "Sleeve")
    wait_for_nearer_view(bench, whole)
    sleeve = box(bench)
    bench.page.locator(".view-closer").click()
    wait_for_nearer_view(bench, sleeve)
    near = view_box(picture(bench))
    assert near[2] == pytest.approx(view_box(f'viewBox="{sleeve}"')[2] / 1.5, abs=0.02)
    assert bench.page.locator("[id='shirt.sleeve.cut-line']").get_attribute("d") == lines
    across, up = bench.page.evaluate(
        "() => { const m = document.querySelector('.pattern-preview svg').getScreenCTM(); return [m.a, m.d]; }"
    )
    assert across / up == pytest.approx(1.0, abs=0.01)  # a square stays square
    bench.page.screenshot(path=tmp_path / "closer.png")
    bench.page.locator(".view-fit").click()
    choose(bench, "view-show", "All pieces")
    bench.page.wait_for_function(
        "whole => document.querySelector('.pattern-preview svg').getAttribute('viewBox') === whole", arg=whole
    )


def test_in_inches_grid_bar_and_words_are_in_inches(bench: Tab) -> None:
    choose(bench, "which-unit", "inches")
    squares = bench.page.locator(".pattern-preview .measured text", has_text="in, heavy")
    squares.wait_for(timeout=WAIT)
    point_at(bench, "front.armhole")
    assert " in long" in bench.page.evaluate(SAID)[0]
    choose(bench, "which-unit", "cm")
    bench.page.locator(".pattern-preview .measured text", has_text="cm, heavy").wait_for(timeout=WAIT)


def test_while_a_knob_is_dragged_the_picture_never_blinks_and_the_last_value_wins(bench: Tab) -> None:
    """The old picture stays until the new one is there; the box keeps its place."""
    place = bench.page.locator(".pattern-preview").bounding_box()
    bench.page.evaluate(BLINKS)
    drag(bench, "bust-ease", 0.2, 0.6)
    last, still = "", 0
    while still < 3:  # until nothing changes any more
        bench.page.wait_for_timeout(400)
        now = picture(bench)
        still, last = (still + 1 if now == last else 0), now
    assert bench.page.evaluate("window.frames") > 10
    assert bench.page.evaluate("window.blinks") == 0
    assert bench.page.locator(".pattern-preview").bounding_box() == place
    ease = float(shown(bench, "bust-ease").removesuffix(" cm"))
    assert ease > 20
    row = bench.page.locator(".girths tbody tr", has_text="Bust").first.inner_text()
    cells = [float(cell) for cell in row.split("\t")[1:] if cell.strip()]
    assert cells[0] == 92.1  # 36 1/4 in
    assert cells[-1] == pytest.approx(92.075 + 1.5 + ease, abs=0.06)  # 1.5 cm worn beneath


@pytest.mark.parametrize("theme", ["JupyterLab Light", "JupyterLab Dark"])
def test_the_picture_is_legible_in_either_theme(bench: Tab, theme: str, tmp_path: Path) -> None:
    """At least 4.5 to 1, as WCAG 2.1 asks for text (1.4.3), and 3 to 1 for lines (1.4.11)."""
    bench.page.evaluate("theme => jupyterapp.commands.execute('apputils:change-theme', {theme})", theme)
    dark = "false" if theme.endswith("Dark") else "true"
    bench.page.wait_for_selector(f'body[data-jp-theme-light="{dark}"]', state="attached")
    bench.page.wait_for_timeout(500)
    assert min(bench.page.evaluate(CONTRAST)) > 4.5
    for garment in ("shirt", "breeches", "coat"):
        bench.page.locator(".which-garment select").select_option(label=garment)
        bench.page.locator(f"[id^='{garment}.front.cut-line']").first.wait_for(timeout=WAIT)
        bench.page.screenshot(path=tmp_path / f"{garment}-{theme.split()[-1].lower()}.png")
    bench.page.evaluate("() => jupyterapp.commands.execute('apputils:change-theme', {theme: 'JupyterLab Light'})")


def test_nothing_but_the_lists_and_buttons_of_the_view_is_a_stop_for_the_tab_key(bench: Tab) -> None:
    bench.page.locator(".view-fit").focus()
    reached: list[Any] = []
    for _ in range(8):
        bench.page.keyboard.press("Tab")
        reached.append(
            bench.page.evaluate("() => !!document.activeElement.closest('.pattern-preview, .pattern-view')")
        )
    assert reached[:3] == [True, True, True]  # closer, show, look at: farther is off at the fit
    assert not any(reached[4:])
