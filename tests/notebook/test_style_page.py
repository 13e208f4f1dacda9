"""The page of style lines in a real browser: a yoke cut by two clicks, done, and taken back."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from drafting.ground.shipped import shipped
from tests.notebook.lab import Lab, Tab, new_tab, running_lab
from tests.notebook.test_style_view import COSTUME

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]
WAIT = 30_000
PLACE = "document.querySelector('.style-from input').value"


@pytest.fixture(scope="module")
def style_lab(browser: Any, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Lab]:
    root = tmp_path_factory.mktemp("styled")
    for name in ("bodies/lamplighter.toml", "fabrics/striped-shirting.toml"):
        place = root / "top" / name
        place.parent.mkdir(parents=True)
        place.write_bytes((shipped("measurements") / name).read_bytes())
    (root / "top" / "top.toml").write_text(COSTUME, "utf-8")
    before = {name: os.environ.pop(name, None) for name in ("DRAFTING_COSTUME", "DRAFTING_FOLDER")}
    with running_lab(root, tmp_path_factory.mktemp("home")) as served:
        yield served
    os.environ.update({name: value for name, value in before.items() if value is not None})


@pytest.fixture
def tab(browser: Any, style_lab: Lab) -> Iterator[Tab]:
    with new_tab(browser, style_lab) as opened:
        yield opened
        assert opened.faults == []


def pick(tab: Tab, edge: str, share: str) -> None:
    tab.page.locator(f".style-pieces circle[data-edge='{edge}'][data-share='{share}']").click(force=True)


BESIDE = """() => {
    document.querySelector('.style-stage').scrollIntoView({block: 'start'});
    document.querySelector('.style-name input').focus();
    const seen = document.querySelector('.style-pieces svg').getBoundingClientRect();
    const page = document.querySelector('.jp-WindowedPanel-outer').getBoundingClientRect();
    const high = Math.min(seen.bottom, page.bottom) - Math.max(seen.top, page.top);
    return high > 0 ? high / seen.height : 0;
}"""
"""How much of the pieces' height is in sight while a field low on the page is in use."""


CUT_OFF = """() => {
    const column = document.querySelector('.stage-fields').clientWidth;
    const rows = [...document.querySelectorAll('.stage-fields > .widget-inline-hbox')];
    return rows.filter(row => row.checkVisibility()).filter(row => {
        const words = row.querySelector('.widget-label'), field = row.querySelector('select, input');
        const [over, under] = [words.getBoundingClientRect(), field.getBoundingClientRect()];
        return words.scrollWidth > words.clientWidth + 1 || under.height < 24
            || over.bottom > under.top + 1 || under.width < 0.85 * column;
    }).map(row => row.textContent);
}"""
"""Fields whose words are cut off, or that do not have the whole column below their words."""


def no_field_is_cut_off(tab: Tab) -> None:
    for width, height in ((720, 450), (1024, 768)):
        tab.page.set_viewport_size({"width": width, "height": height})
        tab.page.wait_for_timeout(300)
        assert tab.page.evaluate(CUT_OFF) == []
    tab.page.set_viewport_size({"width": 1280, "height": 900})


def seen_beside(tab: Tab) -> float:
    """Return that of a page of 1440 x 900 at twice its size, as somebody sees it who needs large letters."""
    tab.page.set_viewport_size({"width": 720, "height": 450})
    share = float(tab.page.evaluate(BESIDE))
    tab.page.set_viewport_size({"width": 1280, "height": 900})
    return share


def test_a_yoke_is_cut_by_two_clicks_and_taken_back(tab: Tab, style_lab: Lab, tmp_path: Path) -> None:
    tab.open("notebooks/11_style_lines.ipynb")
    assert tab.run_all(), tab.kernel_faults()
    file = style_lab.root / "top" / "top.toml"
    assert seen_beside(tab) > 0.6
    name = tab.page.locator(".style-name input")
    name.fill("front-yoke")
    name.press("Enter")
    pick(tab, "front.armhole", "0.5")
    tab.page.wait_for_function(f"() => ({PLACE}).startsWith('armhole 50')", timeout=WAIT)
    pick(tab, "front.centre", "0.25")
    tab.page.locator(".style-pieces .to-cut").wait_for(state="attached", timeout=WAIT)
    tab.page.locator(".style-after text", has_text="Front yoke").wait_for(state="attached", timeout=WAIT)
    assert file.read_text("utf-8") == COSTUME
    tab.page.screenshot(path=tmp_path / "seen.png", full_page=True)
    no_field_is_cut_off(tab)
    tab.page.locator(".do-step").click()
    tab.page.locator(".style-pieces text", has_text="Front yoke").wait_for(state="attached", timeout=WAIT)
    assert 'name = "front-yoke"' in file.read_text("utf-8")
    tab.page.locator(".undo-step").click()
    tab.page.locator(".style-said", has_text="out of top.toml").wait_for(timeout=WAIT)
    tab.page.locator(".style-pieces text", has_text="Front yoke").wait_for(state="detached", timeout=WAIT)
    assert file.read_text("utf-8") == COSTUME
    assert tab.kernel_faults() == []
