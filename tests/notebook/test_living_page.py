"""Costumes that are not shipped, on every page in a real browser: run, moved, saved, reloaded, restarted."""

from __future__ import annotations

import os
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.notebook.hands import shown, write
from tests.notebook.lab import ROOT, Lab, Tab, new_tab, running_lab
from tests.notebook.trials import COSTUMES, trial_costumes

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]

PAGES = sorted(path.name for path in (ROOT / "notebooks").glob("*.ipynb"))
MOVED = {
    "inches": ("03", "bust-ease", "5 in", "5 in"),
    "no-coat": ("03", "bust-ease", "12.5", "12.5 cm"),
    "one-trouser": ("04", "hip-ease", "7", "7 cm"),
    "child": ("04", "hip-ease", "8", "8 cm"),
}
"""Which page is moved, by what, and what its field then shows."""

BY_HAND = {"child": pytest.mark.population}
"""Costumes whose every page is run by hand alone: a minute and a half each."""

JUPYTERS_OWN = "Canceled future for"
"""What JupyterLab itself throws when a kernel is restarted while it was asked something."""

GONE = "() => document.querySelectorAll('.living-bar .away button').length > 0"
BACK = """() => document.querySelectorAll('[inert]').length === 0
    && document.querySelectorAll('.living-bar .away button').length === 0
    && document.querySelectorAll('.choice input.typed').length > 0"""

NOTHING_GONE = """() => document.querySelectorAll('[inert]').length === 0
    && document.querySelectorAll('.living-bar .away button').length === 0"""


@pytest.fixture(scope="module")
def trial_lab(browser: Any, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Lab]:
    root = tmp_path_factory.mktemp("trials")
    trial_costumes(root)
    before = {name: os.environ.pop(name, None) for name in ("DRAFTING_COSTUME", "DRAFTING_FOLDER")}
    with running_lab(root, tmp_path_factory.mktemp("home")) as served:
        yield served
    os.environ.update({name: value for name, value in before.items() if value is not None})


@pytest.fixture
def page(browser: Any, trial_lab: Lab) -> Iterator[Tab]:
    with new_tab(browser, trial_lab) as opened:
        yield opened
        assert [fault for fault in opened.faults if JUPYTERS_OWN not in fault] == []
        assert opened.outside == []


def choose(tab: Tab, name: str) -> None:
    """Choose a costume at the head of a page, as a hand does."""
    tab.page.locator(".which-costume select").select_option(label=f"The costume {name} ({name}/costume.toml)")
    tab.page.locator(".costume-page", has_text=f"/{name}/costume.toml").wait_for(timeout=10_000)


def test_a_costume_chosen_on_one_page_is_the_costume_of_every_page(page: Tab, trial_lab: Lab) -> None:
    page.open("notebooks/08_making.ipynb")
    assert page.run_all(), page.kernel_faults()
    choose(page, "no-coat")
    page.turn_to("notebooks/05_tailcoat_and_flare.ipynb")
    assert page.run_all(), page.kernel_faults()
    said = page.page.locator(".page-said").first.inner_text()
    assert "The costume no-coat has no tails" in said
    assert (trial_lab.root / ".drafting-costume.json").is_file()


@pytest.mark.parametrize("name", [*(pytest.param(n, marks=BY_HAND.get(n, ())) for n in MOVED), "faulty"])
def test_every_page_runs_from_top_to_bottom_with_a_costume_of_her_own(
    page: Tab, trial_lab: Lab, name: str, tmp_path: Path
) -> None:
    (trial_lab.root / ".drafting-costume.json").write_text(f'{{"costume": "{name}/costume.toml", "over": ""}}')
    before = {path: path.read_bytes() for path in (trial_lab.root / name).iterdir()}
    for notebook in PAGES:
        page.turn_to(f"notebooks/{notebook}")
        assert page.run_all(), (notebook, page.kernel_faults())
        page.page.wait_for_timeout(500)
        if "CostumePage" in (ROOT / "notebooks" / notebook).read_text("utf-8"):
            assert f"{name}/costume.toml" in page.page.locator(".costume-page").inner_text()
        assert page.kernel_faults() == [], notebook
        page.page.screenshot(path=tmp_path / f"{name}-{notebook}.png")
    assert {path: path.read_bytes() for path in (trial_lab.root / name).iterdir()} == before
    assert not list(trial_lab.root.glob("*out*"))  # running a page writes nothing


def test_a_costume_that_cannot_be_read_says_why_and_is_read_again_when_mended(page: Tab, trial_lab: Lab) -> None:
    (trial_lab.root / ".drafting-costume.json").write_text('{"costume": "faulty/costume.toml", "over": ""}')
    page.open("notebooks/03_bodice_and_sleeve.ipynb")
    assert page.run_all(), page.kernel_faults()
    assert "a quote is missing" in page.page.locator(".costume-page").inner_text()
    file = trial_lab.root / "faulty" / "costume.toml"
    broken = file.read_text()
    file.write_text(broken.replace("length = 'hip\n", "").replace("bust_easse = 3\n", ""))
    page.page.locator(".read-again").click()
    page.page.locator(".pattern-preview svg path.cut-line").first.wait_for(timeout=20_000)
    file.write_text(broken)


TYPED = "() => [...document.querySelectorAll('.guide input')].some(field => field.value === '14 5/8')"
DEAD = [("01", ".guide input"), ("02", ".overhang-length"), ("09", ".worn-view")]


@pytest.mark.parametrize(("start", "control"), DEAD)
def test_no_page_takes_typing_where_its_kernel_is_gone(
    page: Tab, trial_lab: Lab, start: str, control: str
) -> None:
    (trial_lab.root / ".drafting-costume.json").write_text('{"costume": "inches/costume.toml", "over": ""}')
    page.open(f"notebooks/{next(one for one in PAGES if one.startswith(start))}")
    assert page.run_all(), page.kernel_faults()
    page.page.locator(control).first.wait_for(timeout=10_000)
    if start == "01":
        page.page.get_by_label("Calf girth", exact=True).fill("14 5/8")
        page.page.keyboard.press("Tab")
        page.page.locator(".guide", has_text="Not saved yet, kept in wearer.taking").wait_for(timeout=10_000)
    page.page.evaluate("() => { jupyterapp.commands.execute('notebook:restart-kernel'); }")
    page.page.locator(".jp-Dialog button.jp-mod-accept").click(timeout=5_000)
    page.page.wait_for_function(GONE, timeout=15_000)
    for dead in (control, ".which-costume"):
        page.page.wait_for_function(
            "name => document.querySelector(name).closest('[inert]')", arg=dead, timeout=5_000
        )
    page.page.locator(".living-bar .away button").first.click()
    page.page.wait_for_function(NOTHING_GONE, timeout=60_000)
    page.page.locator(control).first.wait_for(timeout=60_000)
    if start == "01":
        page.page.wait_for_function(TYPED)
        (trial_lab.root / "inches" / "wearer.taking").unlink()


@pytest.mark.parametrize("name", MOVED)
def test_what_is_moved_survives_reload_and_restart_and_is_saved_on_a_word(
    page: Tab, trial_lab: Lab, name: str
) -> None:
    start, knob, typed, text = MOVED[name]
    (trial_lab.root / ".drafting-costume.json").write_text(f'{{"costume": "{name}/costume.toml", "over": ""}}')
    file = trial_lab.root / name / "costume.toml"
    before = file.read_bytes()
    notebook = next(one for one in PAGES if one.startswith(start))
    page.open(f"notebooks/{notebook}")
    assert page.run_all(), page.kernel_faults()
    write(page, knob, typed)
    page.page.locator(".living-bar", has_text="1 choice is kept in costume.journal").first.wait_for(timeout=10_000)
    assert file.read_bytes() == before

    page.open(f"notebooks/{notebook}")  # the page loaded anew
    assert page.run_all(), page.kernel_faults()
    assert shown(page, knob) == text

    page.page.evaluate("() => { jupyterapp.commands.execute('notebook:restart-kernel'); }")
    page.page.locator(".jp-Dialog button.jp-mod-accept").click(timeout=5_000)
    page.page.wait_for_function(GONE, timeout=15_000)
    assert page.page.evaluate("document.querySelectorAll('.living-view [inert]').length") > 0
    page.page.locator(".living-bar .away button").first.click()
    page.page.wait_for_function(BACK, timeout=60_000)
    assert shown(page, knob) == text

    page.page.locator(".bench button.save-to-the-costume-file").first.click()
    page.page.locator(".bench", has_text="Saved to").first.wait_for(timeout=10_000)
    assert not file.with_suffix(".journal").exists()
    garment = next(iter(COSTUMES[name][2]))
    (saved,) = {
        key: value
        for key, value in tomllib.loads(file.read_text())["garments"][garment]["choices"].items()
        if key == knob.replace("-", "_")
    }.values()
    assert str(saved) in (typed, typed.removesuffix(" in"), text)
    assert "# hers" in file.read_text()
    file.write_bytes(before)
