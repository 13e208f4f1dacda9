"""`turn.html` as a maker meets it: turned by mouse, arrow keys and named buttons, quick, without network."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from statistics import median
from typing import Any

import pytest

from drafting.costume.garment import draft_garment
from drafting.costume.wearing.worn import worn
from drafting.output.worn import write_worn
from tests.drawn_bodies import drawn
from tests.making.orders import WOVEN, costume_of
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


def test_buttons_are_seen_and_go_with_their_garment(browser: Any, tmp_path: Path) -> None:
    """They were drawn on every picture but the one that turns. Counted in the page: dark points on the front."""
    body = drawn(7)[3]
    white = replace(WOVEN, colour="#f4f4f4")
    made = costume_of(draft_garment(body, white, "shirt", {"button_diameter": 20.0}), white)
    found = worn(replace(made, costume=replace(made.costume, wearer=body)), mesh=40.0, treat=False)
    bare = replace(found, garments=tuple(replace(one, buttons=()) for one in found.garments))
    inked = []
    for name, one in (("with", found), ("bare", bare)):
        write_worn(one, tmp_path / name)
        tab = browser.new_page(viewport={"width": 1100, "height": 1000})
        tab.goto((tmp_path / name / "turn.html").as_uri())
        tab.wait_for_timeout(600)
        count = (
            "(() => { const c = document.getElementById('turned'), d = c.getContext('2d').getImageData("
            "0, 0, c.width, c.height).data; let n = 0; for (let i = 0; i < d.length; i += 4) "
            "if (d[i] + d[i + 1] + d[i + 2] < 150) n++; return n; })()"
        )
        inked.append(tab.evaluate(count))
        tab.get_by_label("shirt").uncheck()
        tab.wait_for_timeout(600)
        inked.append(tab.evaluate(count))
        tab.close()
    with_buttons, taken_off, without, off = inked
    assert with_buttons > without + 50
    assert taken_off == off
