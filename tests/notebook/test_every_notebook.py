"""Every notebook opened in a real JupyterLab and run whole; the first slider moved by one key."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.notebook.lab import ROOT, Lab, Tab, new_tab

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]

NOTEBOOKS = sorted(path.name for path in (ROOT / "notebooks").glob("*.ipynb"))
WAIT = 20_000

WITHOUT_SLIDER = (
    "01_measure.ipynb",
    "07_cutting_and_printing.ipynb",
    "08_making.ipynb",
    "10_fitting.ipynb",
    "11_style_lines.ipynb",
)

FIRST = """() => {
    const all = document.querySelectorAll('.jp-OutputArea input[type=range], .jp-OutputArea .noUi-handle');
    const seen = [...all].find(knob => knob.offsetParent !== null);
    if (!seen) return null;
    seen.scrollIntoView({block: 'center'});
    seen.focus();
    return seen.closest('.jp-OutputArea').querySelectorAll('svg, img.worn-now').length;
}"""
"""Focus the first slider of the page; None where it has none."""

PICTURE = """() => [...document.activeElement.closest('.jp-OutputArea').querySelectorAll('svg, img.worn-now')]
    .map(drawn => drawn.outerHTML).join('')"""
"""What is drawn beside the slider; the worn shape has a new address with every new picture."""


@pytest.fixture(scope="module")
def tab(browser: Any, lab: Lab) -> Iterator[Tab]:
    with new_tab(browser, lab) as opened:
        yield opened


def test_there_is_a_notebook_for_each_stage_in_the_order_of_the_work() -> None:
    """Measure, cloth, bodice, trousers, tailcoat, gathers, cutting, making; worn; the fitting; style lines."""
    assert [name[:2] for name in NOTEBOOKS] == [f"{n:02d}" for n in range(12)]


@pytest.mark.parametrize("name", NOTEBOOKS)
def test_a_notebook_runs_whole_and_its_first_slider_moves_its_picture(tab: Tab, name: str, tmp_path: Path) -> None:
    tab.turn_to(f"notebooks/{name}")
    assert tab.run_all(), tab.kernel_faults()
    tab.page.wait_for_timeout(500)
    drawings = tab.page.evaluate(FIRST)
    if drawings is not None:
        before = tab.page.evaluate(PICTURE)
        tab.page.keyboard.press("ArrowRight")
        tab.page.wait_for_function(f"d => ({PICTURE})() !== d", arg=before, timeout=WAIT)
    elif name not in WITHOUT_SLIDER:
        pytest.fail(f"{name} has no slider")
    tab.page.screenshot(path=tmp_path / f"{Path(name).stem}.png")
    assert tab.kernel_faults() == []
    assert tab.faults == []
    assert tab.outside == []
