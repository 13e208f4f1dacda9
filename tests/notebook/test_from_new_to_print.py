"""A stranger's way in a browser: `drafting new`, measures in inches, uneven shoulders, a slider, a printed page.

No code cell is opened: it is the page of `drafting app`. What is printed is read back by a general PDF library.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pypdfium2
import pytest

from drafting.commands.cli import main
from drafting.commands.lab import work_copy
from tests.notebook.lab import kept_to, running_app

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]

WAIT = 60_000
"""ms; a machine that others share may take ten times as long as one of its own."""

MEASURES = {
    "Bust girth": "38 1/2",
    "Shoulder length, left": "4 3/4",
    "Shoulder length, right": "5",
    "Shoulder drop, left": "1 1/2",
    "Shoulder drop, right": "2",
}
"""Invented; by the names of the fields."""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A fresh folder in which `drafting new` has begun a costume."""
    folder = tmp_path_factory.mktemp("fresh")
    assert main(["new", str(folder / "rosa-shirt"), "--unit", "in"]) == 0
    return folder


@pytest.fixture(scope="module")
def page(browser: Any, folder: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    context = browser.new_context(viewport={"width": 1440, "height": 900})
    home = tmp_path_factory.mktemp("home")
    with running_app(work_copy(folder / "drafting-lab"), home, folder) as address:
        opened = context.new_page()
        kept_to(opened, address)
        opened.goto(address, timeout=2 * WAIT)
        opened.locator(".pattern-preview svg path.cut-line").nth(2).wait_for(timeout=2 * WAIT)
        yield opened
    context.close()


def test_from_new_to_the_first_printed_page(page: Any, folder: Path, tmp_path: Path) -> None:
    # Her own costume stands open, told from the others by its name and place.
    chosen = page.locator('.gallery button[aria-pressed="true"]').inner_text()
    assert chosen.startswith("Rosa shirt\nrosa-shirt/costume.toml")
    measure(page)
    written = tomllib.loads((folder / "rosa-shirt" / "wearer.toml").read_text("utf-8"))["measures"]
    assert (written["bust_girth"], written["shoulder_drop"]) == ("38 1/2", {"left": "1 1/2", "right": 2})

    # The bench says that the wearer has changed, and offers to follow: each hand is drafted then.
    page.locator(".bench .living-bar .follow").click(timeout=WAIT)
    page.locator('.pattern-preview [id="shirt.front-left.cut-line"]').wait_for(timeout=WAIT)

    page.locator(".choice-bust-ease input[type=range]").focus()
    page.keyboard.press("ArrowRight")
    page.locator(".bench", has_text="1 choice is kept in costume.journal").wait_for(timeout=WAIT)
    page.locator("button.save-to-the-costume-file").click()
    page.locator(".bench", has_text="Saved to").wait_for(timeout=WAIT)
    assert "bust_ease" in (folder / "rosa-shirt" / "costume.toml").read_text("utf-8").replace("# bust_ease", "")

    print_it(page, tmp_path)


def measure(page: Any) -> None:
    """Open the measures, type what the tape said, save."""
    page.locator(".unfold button, button.unfold").first.click()
    page.locator(".guide .figure svg").wait_for(timeout=WAIT)
    for name, text in MEASURES.items():
        page.get_by_label(name, exact=True).fill(text)
        page.keyboard.press("Tab")
    page.locator(".save-measures").click()
    page.locator(".guide", has_text="Saved to wearer.toml").wait_for(timeout=WAIT)


def print_it(page: Any, tmp_path: Path) -> None:
    """Write the pieces, open the first sheet by its link, and say what the ruler says."""
    square = page.locator(".square-across").locator("xpath=../..")
    assert "true" not in square.inner_text()  # nothing was measured yet
    writing = page.locator(".write-pieces:not(.bench *)")
    writing.click()
    sheet = page.locator(".to-print a").first
    sheet.wait_for(timeout=4 * WAIT)
    answer = page.request.get(sheet.evaluate("link => link.href"))
    assert answer.ok, sheet.evaluate("link => link.href")
    with pypdfium2.PdfDocument(answer.body()) as read:
        assert "Rosa shirt" in read[0].get_textpage().get_text_bounded()
    for link in page.locator(".to-open a").all():
        assert page.request.get(link.evaluate("link => link.href")).ok
    for side in ("across", "up"):
        page.locator(f".square-{side} input").fill("100 mm")
        page.keyboard.press("Tab")
    page.get_by_text("The print is true: both sides").wait_for(timeout=WAIT)
    page.screenshot(path=tmp_path / "printed.png")
