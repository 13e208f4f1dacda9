"""Every control has a name, every scrolling box is reached by key, every word is seen: by WCAG 2.2, in a browser.

4.1.2 name, role, value; 2.1.1 keyboard; 1.4.3 contrast; 1.3.1 table headers.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

import pytest

from tests.notebook.checker import found_by_axe
from tests.notebook.lab import Lab, Tab

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]

NOTEBOOK = "notebooks/accessible.ipynb"

CELLS = (
    """
from drafting.costume.file import read_costume
from drafting.notebook import Bench, SwatchTest, costume_path
costume = read_costume(costume_path("lamplighter"))
Bench(costume, ["shirt", "breeches"])
""",
    """
SwatchTest(costume.wearer)
""",
)

NAMELESS = """() => {
    const said = node => (node.getAttribute('aria-label') || node.getAttribute('aria-labelledby')
        || [...(node.labels ?? [])].map(l => l.textContent).join('')
        || node.textContent || node.title || '').trim();
    const controls = '.jp-OutputArea-output :is(input, select, textarea, button, summary, a[href],'
        + ' [role=slider], [role=textbox], [contenteditable=true])';
    return [...document.querySelectorAll(controls)].filter(n => n.checkVisibility() && !said(n))
        .map(n => n.outerHTML.slice(0, 120));
}"""

UNREACHED = """() => [...document.querySelectorAll('.bench *, .swatch-test *')].filter(node => {
    const how = getComputedStyle(node);
    const scrolls = /(auto|scroll)/.test(how.overflowY) && node.scrollHeight > node.clientHeight + 1;
    const inside = [...node.querySelectorAll('a[href], button, input, select, summary, [tabindex="0"]')];
    return scrolls && node.checkVisibility() && node.tabIndex < 0 && !inside.some(n => n.checkVisibility());
}).map(node => node.className)"""

EMPTY_HEADS = """() => [...document.querySelectorAll('.jp-OutputArea-output th')]
    .filter(th => !th.textContent.trim()).map(th => th.closest('table').className)"""

FAINT = """() => {
    const rgb = text => text.match(/[\\d.]+/g).map(Number);
    const light = c => { const [r, g, b] = c.map(v => v / 255).map(v =>
        v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
        return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
    const over = (ink, under) => ink.slice(0, 3).map((v, i) => v * (ink[3] ?? 1) + under[i] * (1 - (ink[3] ?? 1)));
    const ground = node => { for (; node; node = node.parentElement) {
        const c = rgb(getComputedStyle(node).backgroundColor);
        if ((c[3] ?? 1) > 0.99) return c.slice(0, 3); } return [255, 255, 255]; };
    const shown = node => { let all = 1;
        for (; node; node = node.parentElement) all *= getComputedStyle(node).opacity;
        return all; };
    const found = [];
    for (const node of document.querySelectorAll('.bench *, .swatch-test *')) {
        const words = [...node.childNodes].filter(n => n.nodeType === 3).map(n => n.textContent.trim()).join('');
        if (!words || node.closest('svg, style, [disabled]') || !node.checkVisibility()) continue;
        const under = ground(node), ink = rgb(getComputedStyle(node).color);
        const [a, b] = [light(over([...ink.slice(0, 3), (ink[3] ?? 1) * shown(node)], under)), light(under)];
        const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
        if (ratio < 4.5) found.push([words.slice(0, 30), ratio]);
    }
    return found;
}"""


@pytest.fixture
def page(tab: Tab, lab: Lab) -> Iterator[Any]:
    book = lab.root / NOTEBOOK
    if not book.exists():
        cells = [
            {
                "cell_type": "code",
                "execution_count": None,
                "id": f"c{i}",
                "metadata": {},
                "outputs": [],
                "source": text.strip(),
            }
            for i, text in enumerate(CELLS)
        ]
        kernel = {"kernelspec": {"name": "python3", "display_name": "Python 3"}}
        book.write_text(json.dumps({"cells": cells, "metadata": kernel, "nbformat": 4, "nbformat_minor": 5}))
        tab.page.set_viewport_size({"width": 1440, "height": 900})
        tab.open(NOTEBOOK)
        tab.run_to_bench()
        tab.page.locator(".swatch-test .noUi-handle").last.wait_for(timeout=20_000)
        tab.page.wait_for_timeout(1_000)
    yield tab.page
    assert tab.kernel_faults() == []
    assert tab.faults == []


def test_every_control_has_a_name(page: Any) -> None:
    assert page.evaluate("document.querySelectorAll('.swatch-test [role=slider]').length") == 4
    assert page.evaluate(NAMELESS) == []


def test_every_box_that_scrolls_is_reached_by_key(page: Any) -> None:
    assert page.evaluate(UNREACHED) == []


def test_no_table_has_an_empty_head(page: Any) -> None:
    assert page.evaluate("document.querySelectorAll('.bench th').length") > 10
    assert page.evaluate(EMPTY_HEADS) == []


@pytest.mark.parametrize("theme", ["JupyterLab Dark", "JupyterLab Light"])
def test_every_word_is_seen_in_either_theme(page: Any, theme: str) -> None:
    page.evaluate("theme => jupyterapp.commands.execute('apputils:change-theme', {theme})", theme)
    dark = "false" if theme.endswith("Dark") else "true"
    page.wait_for_selector(f'body[data-jp-theme-light="{dark}"]', state="attached")
    page.wait_for_timeout(800)
    assert page.evaluate(FAINT) == []
    assert found_by_axe(page) == []


def test_the_picture_takes_most_of_the_page_and_stays_beside_the_slider_in_use(page: Any) -> None:
    page.evaluate("jupyterapp.shell.collapseLeft()")
    shares = """() => {
        const picture = document.querySelector('.pattern-preview').getBoundingClientRect();
        const page = document.querySelector('.jp-WindowedPanel-outer').getBoundingClientRect();
        const out = document.querySelector('.jp-OutputArea-output').getBoundingClientRect();
        const at = document.activeElement.getBoundingClientRect();
        const seen = r => r.top >= page.top - 1 && r.bottom <= page.bottom + 1;
        return [picture.width * picture.height / (out.width * page.height), seen(picture), seen(at)];
    }"""
    clipped = """() => [...document.querySelectorAll('.bench-bar select')].filter(list => {
        const look = getComputedStyle(list), pen = document.createElement('canvas').getContext('2d');
        pen.font = look.font;
        const room = list.clientWidth - parseFloat(look.paddingLeft) - parseFloat(look.paddingRight);
        return list.checkVisibility() && pen.measureText(list.selectedOptions[0].text).width > room + 1;
    }).map(list => list.selectedOptions[0].text)"""
    for width, height in ((1440, 900), (1024, 768), (720, 450), (512, 384)):  # the last two: 200 % of a screen
        page.set_viewport_size({"width": width, "height": height})
        page.wait_for_timeout(700)
        page.locator(".choice-arm-ease input[type=range]").first.focus()
        page.keyboard.press("ArrowRight")
        page.wait_for_timeout(700)
        share, picture, slider = page.evaluate(shares)
        assert (picture, slider) == (True, True), width
        assert page.evaluate(clipped) == [], width
        if width == 1440:
            assert share >= 0.6
