"""`turn.html` as a maker meets it: turned by mouse, arrow keys and named buttons, quick, without network."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from statistics import median
from typing import Any

import pytest

from drafting.output.worn import write_worn
from tests.worn.standing import worn_post

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]

FRAME = 60.0
"""ms in which a frame has to be drawn on an idle machine."""


@pytest.fixture
def opened(browser: Any, tmp_path: Path) -> Iterator[Any]:
    write_worn(worn_post(), tmp_path / "out")
    context = browser.new_context(viewport={"width": 1100, "height": 1000})
    tab = context.new_page()
    faults: list[str] = []
    asked: list[str] = []
    tab.on("pageerror", lambda error: faults.append(str(error)))
    tab.on("request", lambda request: asked.append(request.url))
    tab.goto((tmp_path / "out/turn.html").as_uri())
    tab.wait_for_timeout(400)
    yield tab
    context.close()
    assert faults == []
    assert [url for url in asked if not url.startswith("file:")] == []


def seen(tab: Any) -> str:
    tab.wait_for_timeout(400)
    return str(tab.evaluate("document.getElementById('turned').toDataURL()"))


def test_it_is_turned_by_keys_mouse_and_buttons_and_tells_where_one_stands(opened: Any) -> None:
    front = seen(opened)
    assert opened.locator("#said").inner_text() == "from the front"
    opened.locator("#turned").focus()
    opened.keyboard.press("ArrowUp")
    from_above = seen(opened)
    assert from_above != front
    assert "14 degrees above" in opened.locator("#said").inner_text()
    opened.get_by_role("button", name="Above").click()
    above = seen(opened)
    assert above not in (front, from_above)
    opened.get_by_role("button", name="Front").click()
    assert seen(opened) == front
    box = opened.locator("#turned").bounding_box()
    opened.mouse.move(box["x"] + 200, box["y"] + 300)
    opened.mouse.down()
    opened.mouse.move(box["x"] + 200, box["y"] + 380)
    opened.mouse.up()
    assert seen(opened) != front


def test_colours_have_their_scale_beside_them_and_a_garment_can_be_taken_off(opened: Any) -> None:
    plain = seen(opened)
    opened.get_by_label("where it stands off").check()
    told = seen(opened)
    assert told != plain
    assert opened.get_by_text("6 cm and more").is_visible()
    opened.get_by_label("shirt").uncheck()
    assert seen(opened) not in (plain, told)


def test_a_frame_is_quick_and_everything_a_hand_uses_has_a_name(opened: Any) -> None:
    times = opened.evaluate("[...Array(15)].map(() => frame())")
    assert median(times) < FRAME
    nameless = (
        "[...document.querySelectorAll('button, input')].filter(e => !e.innerText && !e.labels?.length).length"
    )
    assert opened.evaluate(nameless) == 0
