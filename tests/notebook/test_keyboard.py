"""Everything by keys alone: Tab reaches it, arrows and Enter work it, on the page without code and the worn page.

WCAG 2.2, 2.1.1 keyboard and 2.4.3 focus order. No mouse is used after a page has opened.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from drafting.commands.lab import work_copy
from tests.notebook.lab import kept_to, running_app
from tests.notebook.trials import trial_costumes

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]

WAIT = 60_000
MOST = 120
"""Presses of Tab after which a control counts as out of reach."""

AT = """selector => {
    let at = document.activeElement;
    if (at?.tagName === 'IFRAME') at = at.contentDocument?.activeElement;
    return Boolean(at?.matches(selector));
}"""


@pytest.fixture(scope="module")
def app(browser: Any, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    folder, home = tmp_path_factory.mktemp("keys"), tmp_path_factory.mktemp("home")
    trial_costumes(folder)
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    with running_app(work_copy(folder / "drafting-lab"), home, folder) as address:
        page = context.new_page()
        kept_to(page, address)
        page.goto(address, timeout=2 * WAIT)
        page.locator(".which-costume select").wait_for(timeout=2 * WAIT)
        yield page
    context.close()


def tab_to(page: Any, selector: str, key: str = "Tab") -> None:
    """Press Tab until a control that matches has the focus."""
    for _ in range(MOST):
        page.keyboard.press(key)
        if page.evaluate(AT, selector):
            return
    pytest.fail(f"{selector} is not reached by {MOST} presses of {key}")


def test_a_costume_is_chosen_moved_saved_laid_and_ticked_by_keys(app: Any, tmp_path: Path) -> None:
    tab_to(app, ".which-costume select")
    app.keyboard.type("The costume in")
    app.locator(".costume-page", has_text="/inches/costume.toml").wait_for(timeout=WAIT)
    tab_to(app, ".gallery button[data-costume*=no-coat]")
    app.keyboard.press("Enter")
    app.locator(".costume-page", has_text="/no-coat/costume.toml").wait_for(timeout=WAIT)
    pressed = '.gallery button[data-costume*=no-coat][aria-pressed="true"]'
    app.locator(pressed).wait_for(timeout=WAIT)
    assert app.evaluate(AT, pressed)  # the card pressed stays under the hand
    app.locator('.pattern-preview [id="shirt.front.cut-line"]').wait_for(timeout=WAIT)
    app.locator('iframe.plan[srcdoc*="The costume no-coat"]').wait_for(timeout=2 * WAIT)

    measure(app)
    whole_screen(app)
    move_and_type(app)
    lay(app)
    tick(app)
    app.screenshot(path=tmp_path / "by-keys.png")


def measure(page: Any) -> None:
    tab_to(page, "button.unfold, .unfold button")
    page.keyboard.press("Enter")
    page.locator(".guide .figure svg").wait_for(timeout=WAIT)
    tab_to(page, ".guide .field input")
    page.locator(".guide .figure .seen").first.wait_for(state="attached", timeout=WAIT)
    tab_to(page, ".save-measures")
    page.keyboard.press("Enter")
    page.locator(".guide", has_text="nothing had changed").wait_for(timeout=WAIT)


def whole_screen(page: Any) -> None:
    """Give the picture the whole screen by its button and by the key F, and take it back by F."""
    tab_to(page, "button.full-screen")
    page.keyboard.press("Enter")
    page.wait_for_function("document.fullscreenElement?.matches('.bench')", timeout=WAIT)
    page.keyboard.press("f")
    page.wait_for_function("!document.fullscreenElement", timeout=WAIT)
    assert page.evaluate(AT, "button.full-screen")  # the focus stays where it was
    page.keyboard.press("f")
    page.wait_for_function("document.fullscreenElement?.matches('.bench')", timeout=WAIT)
    page.keyboard.press("f")
    page.wait_for_function("!document.fullscreenElement", timeout=WAIT)


def move_and_type(page: Any) -> None:
    tab_to(page, ".choice-bust-ease input[type=range]")
    page.keyboard.press("ArrowRight")
    page.locator(".bench .living-bar", has_text="1 choice is kept").wait_for(timeout=WAIT)
    tab_to(page, ".choice-waist-ease input.typed")
    page.keyboard.type("9")
    page.keyboard.press("Enter")
    page.locator(".bench .living-bar", has_text="2 choices are kept").wait_for(timeout=WAIT)
    tab_to(page, "button.save-to-the-costume-file")
    page.keyboard.press("Enter")
    page.locator(".bench", has_text="Saved to").wait_for(timeout=WAIT)


def lay(page: Any) -> None:
    """Bring the new pieces onto the cloth, and move one of them until it may lie so."""
    tab_to(page, ".lay-page .follow")
    page.keyboard.press("Enter")
    page.locator(".lay-page .stale").wait_for(state="hidden", timeout=WAIT)
    undo = page.locator(".lay-page button.undo")
    tab_to(page, ".lay-table path.cut-line")
    for key in ("Shift+ArrowRight", "Shift+ArrowLeft", "Shift+ArrowUp", "Shift+ArrowDown") * 3:
        page.evaluate("window.pressed = document.querySelector('.lay-page .refusal')?.textContent ?? ''")
        page.keyboard.press(key)
        page.wait_for_function(
            "() => !document.querySelector('.lay-page button.undo').disabled"
            " || document.querySelector('.lay-page .refusal')?.textContent",
            timeout=WAIT,
        )
        if undo.is_enabled():
            break
        tab_to(page, ".lay-table path.cut-line")
    assert undo.is_enabled()
    assert page.evaluate(AT, ".lay-table path.cut-line")  # the piece stays in the hand


def tick(page: Any) -> None:
    tab_to(page, "input[type=checkbox]:is(.step input, li input, input)")
    before = page.evaluate("document.activeElement.contentDocument.activeElement.checked")
    page.keyboard.press("Space")
    assert page.evaluate("document.activeElement.contentDocument.activeElement.checked") is not before
    page.keyboard.press("Escape")  # out of the plan, and on behind it
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.tagName") == "BUTTON"
    page.keyboard.press("Shift+Tab")
    assert page.evaluate("document.activeElement.className") == "plan"  # and back into it
