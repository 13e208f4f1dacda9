"""The cloth notebook as a maker meets it: sliders by key, the drawn strip, the buttons, the file."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from tests.notebook.lab import Lab, Tab

pytestmark = [
    pytest.mark.browser,
    pytest.mark.xdist_group("lab"),
    pytest.mark.usefixtures("nothing_failed_unseen"),
]

NOTEBOOK = "notebooks/02_cloth.ipynb"
WAIT = 10_000


@pytest.fixture(scope="module")
def page(tab: Tab) -> Any:
    """The notebook run from top to bottom."""
    tab.page.set_viewport_size({"width": 1280, "height": 1000})
    tab.open(NOTEBOOK)
    assert tab.run_all(), tab.kernel_faults()
    tab.page.locator("svg.bent-strip .bent").wait_for(timeout=WAIT)
    choose_shirting(tab.page, "svg.bent-strip")
    choose_shirting(tab.page, "svg.hung-strip")
    return tab.page


def choose_shirting(page: Any, picture: str) -> None:
    """Try the costume's shirting: a trial begins with the first of its cloths."""
    trial = page.locator(".jp-OutputArea-output", has=page.locator(picture))
    before = trial.locator(picture).element_handle()
    trial.locator(".which-cloth select").select_option("shirting")
    page.wait_for_function("old => !old.isConnected", arg=before, timeout=WAIT)
    trial.locator(picture).wait_for(timeout=WAIT)


def knob(page: Any, name: str) -> Any:
    return page.locator(f".{name} .noUi-handle")


def look(page: Any, picture: str, path: Path, theme: str) -> None:
    page.evaluate("async theme => await jupyterapp.commands.execute('apputils:change-theme', {theme})", theme)
    page.wait_for_timeout(800)
    page.locator(picture).scroll_into_view_if_needed()
    page.screenshot(path=path)


def test_a_key_bends_the_strip_and_the_words_follow(page: Any, tmp_path: Path) -> None:
    strip = page.locator("svg.bent-strip .bent")
    before = strip.get_attribute("data-bending-length")
    knob(page, "overhang-length").focus()
    for _ in range(20):
        page.keyboard.press("ArrowRight")
    page.wait_for_function(
        "d => document.querySelector('svg.bent-strip .bent').dataset.overhang === d", arg="56", timeout=WAIT
    )
    assert float(strip.get_attribute("data-bending-length")) == pytest.approx(28.0, rel=1e-3)  # half, ASTM D1388
    assert strip.get_attribute("data-bending-length") != before
    assert "28 mm" in page.locator(".swatch-test", has=strip).inner_text()
    for theme in ("Light", "Dark", "Light"):
        look(page, "svg.bent-strip", tmp_path / f"overhang-{theme}.png", f"JupyterLab {theme}")


def test_the_strip_lies_on_the_table_and_its_tip_on_the_slope(page: Any) -> None:
    """Seen where the browser draws it: the tip's middle is a point of the slope's line."""
    off = page.evaluate(
        """() => {
            const svg = document.querySelector('svg.bent-strip');
            const tip = svg.querySelector('.tip'), line = svg.querySelector('.slope');
            const x = tip.cx.baseVal.value, y = tip.cy.baseVal.value, long = line.getTotalLength();
            let least = 1e9;
            for (let i = 0; i <= 2000; i++) {
                const at = line.getPointAtLength(long * i / 2000);
                least = Math.min(least, Math.hypot(at.x - x, at.y - y));
            }
            return least;
        }"""
    )
    assert off < 0.6


def test_both_tests_go_to_the_makers_file_and_its_remarks_stay(page: Any, lab: Lab) -> None:
    file = lab.root / "measurements" / "fabrics" / "striped-shirting.toml"
    before = file.read_text("utf-8")
    page.locator(".save-overhang").click()
    page.locator(".swatch-test", has_text="Saved to striped-shirting.toml").first.wait_for(timeout=WAIT)
    saved = tomllib.loads(file.read_text("utf-8"))
    assert saved["bending_length_along"] == {"overhang": "5.6 cm", "angle": 41.5}
    remarks = [line.partition("#")[2] for line in before.splitlines() if "#" in line]
    assert [line.partition("#")[2] for line in file.read_text("utf-8").splitlines() if "#" in line] == remarks
    page.locator(".save-loaded").click()
    page.locator(".swatch-test", has_text="toml: stretch_across").wait_for(timeout=WAIT)
    both = tomllib.loads(file.read_text("utf-8"))
    assert both["bending_length_along"] == saved["bending_length_along"]
    assert both["stretch_across"]["load"] == "500 g"
    file.write_text(before, "utf-8")


def test_the_loaded_strip_is_drawn_as_long_as_it_is(page: Any, tmp_path: Path) -> None:
    knob(page, "loaded-stretched").focus()
    for _ in range(16):
        page.keyboard.press("ArrowRight")
    page.wait_for_function(
        "() => document.querySelectorAll('svg.hung-strip .hung')[1].dataset.mm === '110'", timeout=WAIT
    )
    marks = [box["y"] for box in (m.bounding_box() for m in page.locator("svg.hung-strip .mark").all())]
    assert (marks[3] - marks[2]) / (marks[1] - marks[0]) == pytest.approx(1.1, abs=0.01)
    for theme in ("Dark", "Light"):
        look(page, "svg.hung-strip", tmp_path / f"loaded-{theme}.png", f"JupyterLab {theme}")


def test_the_card_is_written_beside_the_notebooks(page: Any, lab: Lab) -> None:
    page.locator(".write-card").click()
    page.locator(".swatch-test", has_text="Written: overhang-card.pdf").wait_for(timeout=WAIT)
    assert (lab.root / "cards" / "overhang-card.pdf").read_bytes().startswith(b"%PDF")
