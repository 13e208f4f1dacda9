"""What a maker's hands do to a control of the bench in the page."""

from __future__ import annotations

from typing import Any

from tests.notebook.lab import Tab


def knob(tab: Tab, name: str) -> Any:
    """Return the slider of a choice."""
    return tab.page.locator(f".choice-{name} input[type=range]")


def field(tab: Tab, name: str) -> Any:
    """Return the text field of a choice."""
    return tab.page.locator(f".choice-{name} input.typed")


def shown(tab: Tab, name: str) -> str:
    return str(field(tab, name).input_value())


def write(tab: Tab, name: str, text: str) -> None:
    """Type a value in place of the one that stands there."""
    field(tab, name).click()
    tab.page.keyboard.press("Control+A")
    tab.page.keyboard.type(text)
    tab.page.keyboard.press("Enter")


def drag(tab: Tab, name: str, start: float, end: float) -> None:
    """Drag a knob with the mouse between two places of its slider, as shares of its width."""
    knob(tab, name).scroll_into_view_if_needed()
    box = knob(tab, name).bounding_box()
    x, y = box["x"], box["y"] + box["height"] / 2
    tab.page.mouse.move(x + start * box["width"], y)
    tab.page.mouse.down()
    tab.page.mouse.move(x + end * box["width"], y + 4, steps=30)
    tab.page.mouse.up()


def wait_for_text(tab: Tab, name: str, text: str) -> None:
    """Wait until the field of a choice shows a text."""
    tab.page.wait_for_function(
        "([name, text]) => document.querySelector(`.choice-${name} input.typed`).value === text",
        arg=[name, text],
        timeout=10_000,
    )
