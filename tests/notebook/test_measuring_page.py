"""The measuring notebook as a maker meets it: JupyterLab in a real browser, keys and buttons."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from drafting.notebook.measuring.order import ORDER
from tests.notebook.lab import Lab, Tab

pytestmark = [
    pytest.mark.browser,
    pytest.mark.xdist_group("lab"),
    pytest.mark.usefixtures("nothing_failed_unseen"),
]

NOTEBOOK = "notebooks/01_measure.ipynb"
WAIT = 10_000

SHOWN = """() => [...document.querySelectorAll('.guide .tape')]
    .filter(group => getComputedStyle(group).display !== 'none').map(group => group.id)"""


@pytest.fixture
def page(tab: Tab) -> Any:
    """The notebook run from top to bottom, with a new guide for each test."""
    tab.page.set_viewport_size({"width": 1280, "height": 900})
    if NOTEBOOK not in tab.page.url:
        tab.open(NOTEBOOK)
    assert tab.run_all(), tab.kernel_faults()
    tab.page.locator(".guide svg.wearer .shape").first.wait_for(timeout=WAIT)
    return tab.page


def field(page: Any, name: str, hand: int = 0) -> Any:
    return page.locator(f".field-{name.replace('_', '-')} input").nth(hand)


def write(page: Any, name: str, text: str, hand: int = 0) -> None:
    box = field(page, name, hand)
    box.fill(text)
    box.press("Enter")


def seen(page: Any, name: str) -> Any:
    """Return the place where doubts about a measure stand."""
    return page.locator(f".field-{name.replace('_', '-')} .said")


def look(page: Any, path: Path, theme: str) -> None:
    """Write a picture of the guide in a theme."""
    page.evaluate("async theme => await jupyterapp.commands.execute('apputils:change-theme', {theme})", theme)
    page.wait_for_timeout(800)
    page.evaluate("document.querySelector('.guide').scrollIntoView({block: 'start'})")
    page.screenshot(path=path)


@pytest.mark.parametrize(
    "name", ["bust_girth", "shoulder_drop", "back_waist_length", "total_crotch_length", "heel_girth"]
)
def test_the_field_in_use_shows_its_tape_and_no_other(page: Any, name: str) -> None:
    field(page, name).focus()
    assert page.evaluate(SHOWN) == [f"tape.{name}"]
    group = page.locator(f'[id="tape.{name}"]')
    assert group.locator(".head").text_content().lower().startswith(name.replace("_", " "))
    assert group.locator(".seen").first.bounding_box()["height"] > 0


def test_without_a_field_in_use_no_tape_shows(page: Any) -> None:
    field(page, "waist_girth").focus()
    page.locator(".guide .save-measures").focus()
    assert page.evaluate(SHOWN) == []
    assert page.locator(".no-tape").is_visible()


def test_the_tab_key_goes_through_the_fields_in_the_order_of_taking(page: Any) -> None:
    """Tapes follow without the kernel: each is read at once."""
    field(page, "height").focus()
    reached = []
    for _ in range(12):
        reached += page.evaluate(SHOWN)
        page.keyboard.press("Tab")
    assert list(dict.fromkeys(reached)) == [f"tape.{name}" for name in ORDER[: len(set(reached))]]
    assert len(set(reached)) >= 9


def test_a_wrong_value_is_doubted_beside_its_field_and_the_figure_follows(page: Any, tmp_path: Path) -> None:
    before = page.locator(".guide .shape").first.get_attribute("d")
    write(page, "high_bust_girth", "99")
    doubt = seen(page, "high_bust_girth")
    doubt.wait_for(timeout=WAIT)
    assert "swapped" in doubt.inner_text()
    write(page, "waist_girth", "92")
    page.wait_for_function("d => document.querySelector('.guide .shape').getAttribute('d') !== d", arg=before)
    write(page, "waist_girth", "ninety")
    seen(page, "waist_girth").wait_for(timeout=WAIT)
    assert "cannot be read as a length" in seen(page, "waist_girth").inner_text()
    look(page, tmp_path / "doubt-light.png", "JupyterLab Light")
    look(page, tmp_path / "doubt-dark.png", "JupyterLab Dark")
    look(page, tmp_path / "doubt-light.png", "JupyterLab Light")


def test_inches_are_asked_about_and_turned_only_after_a_yes(page: Any, tmp_path: Path) -> None:
    """Inches typed as cm, by hand."""
    write(page, "height", "168")
    for name, text in (("bust_girth", "36"), ("waist_girth", "28"), ("hip_girth", "38")):
        write(page, name, text)
    asked = page.locator(".question [role=alert]", has_text="91.4 cm / 71.1 cm / 96.5 cm")
    asked.wait_for(timeout=WAIT)
    assert field(page, "bust_girth").input_value() == "36"
    look(page, tmp_path / "question.png", "JupyterLab Light")
    page.locator(".question button", has_text="Yes").click()
    page.locator(".question").wait_for(state="hidden", timeout=WAIT)
    assert field(page, "hip_girth").input_value() == "38 in"
    field(page, "hip_girth").focus()
    head = page.locator('[id="tape.hip_girth"] .head', has_text="96.5 cm")
    head.wait_for(timeout=WAIT)


def test_the_button_leads_to_the_measure_that_helps_most(page: Any) -> None:
    button = page.locator(".take-next", has_text="Take next: ")
    name = button.inner_text().strip().removeprefix("Take next: ").replace(" ", "-")
    button.click()
    page.wait_for_function(f"() => document.activeElement.closest('.field-{name}') !== null", timeout=WAIT)
    assert page.evaluate(SHOWN) == [f"tape.{name.replace('-', '_')}"]


def test_saving_writes_the_makers_file_and_keeps_its_remarks(page: Any, lab: Lab) -> None:
    file = lab.root / "measurements" / "bodies" / "lamplighter.toml"
    before = file.read_text("utf-8")
    write(page, "scye_depth", "21,5 cm")
    write(page, "shoulder_drop", "5.4", hand=1)
    page.locator(".save-measures").click()
    page.locator(".guide .message", has_text="Saved to lamplighter.toml").wait_for(timeout=WAIT)
    after = file.read_text("utf-8")
    measures = tomllib.loads(after)["measures"]
    assert measures["scye_depth"] == "21,5 cm"
    assert measures["shoulder_drop"] == {"left": 4.6, "right": 5.4}
    remarks = [line.partition("#")[2] for line in before.splitlines() if "#" in line]
    assert len(remarks) > 4
    assert [line.partition("#")[2] for line in after.splitlines() if "#" in line] == remarks
    file.write_text(before, "utf-8")


@pytest.mark.parametrize("width", [1280, 800])
def test_the_figure_is_never_stretched_and_always_whole(page: Any, width: int, tmp_path: Path) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    page.wait_for_timeout(300)
    x, y = page.evaluate(
        "() => { const m = document.querySelector('svg.wearer').getScreenCTM(); return [m.a, m.d]; }"
    )
    assert x / y == pytest.approx(1.0, abs=0.01)
    assert x > 0.1  # wide enough to be seen
    field(page, "front_waist_length").focus()
    look(page, tmp_path / f"guide-{width}.png", "JupyterLab Light")
