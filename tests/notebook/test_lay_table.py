"""The lay table in a real browser: dragged, nudged, refused, undone, searched for longer."""

from __future__ import annotations

import time
from contextlib import suppress
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from playwright.sync_api import TimeoutError as PlaywrightTimeout
from shapely import unary_union
from shapely.affinity import translate
from shapely.geometry import Polygon
from svgelements import Path as SvgPath

from tests.notebook.lab import Tab
from tests.notebook.lay_hands import drag, grip

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]

NOTEBOOK = "notebooks/07_cutting_and_printing.ipynb"
WAIT = 30_000
OUTLINE = ".lay-table path.cut-line"


@pytest.fixture(scope="module")
def opened(tab: Tab) -> Tab:
    tab.page.set_viewport_size({"width": 1280, "height": 1000})
    tab.forget_choices()
    tab.open(NOTEBOOK)
    assert tab.run_all()
    tab.page.locator(OUTLINE).nth(3).wait_for(timeout=WAIT)
    settled(tab)
    tab.page.evaluate("document.querySelector('.lay-page').scrollIntoView({block: 'start'})")
    return tab


def settled(tab: Tab) -> None:
    """Wait until no shorter lays are being looked for: each would be drawn anew."""
    tab.page.wait_for_function("() => !document.querySelector('.lay-busy').innerText.trim()", timeout=60_000)


@pytest.fixture
def table(opened: Tab) -> Any:
    yield opened
    assert opened.kernel_faults() == []
    assert opened.faults == []
    assert opened.outside == []


def outlines(tab: Tab) -> dict[str, Polygon]:
    """Return every outline that is drawn, in mm, read by a general SVG library."""
    found = tab.page.evaluate(f"[...document.querySelectorAll('{OUTLINE}')].map(p => [p.id, p.getAttribute('d')])")
    return {name: Polygon([(p.x, p.y) for p in SvgPath(d).as_points()]) for name, d in found}


def length(tab: Tab) -> float:
    """Return the length of the lay, mm, from the curves drawn: their control points lie outside them."""
    drawn = tab.page.evaluate(f"[...document.querySelectorAll('{OUTLINE}')].map(p => p.getAttribute('d'))")
    boxes = [SvgPath(d).bbox() for d in drawn]
    return max(box[2] for box in boxes) - min(box[0] for box in boxes)


def told(tab: Tab) -> float:
    """Return the length that the page tells, mm."""
    words = tab.page.locator(".lay-said").inner_text()
    return 10 * float(words.split("take ")[1].split(" cm")[0])


def wait_for_change(tab: Tab, before: str) -> None:
    tab.page.wait_for_function(
        "d => document.querySelector('.lay-table').innerHTML !== d", arg=before, timeout=WAIT
    )


def html(tab: Tab) -> str:
    return str(tab.page.evaluate("document.querySelector('.lay-table').innerHTML"))


def scale(tab: Tab) -> float:
    """Return how many mm of cloth a pixel shows."""
    name, shape = next(iter(outlines(tab).items()))
    drawn = tab.page.locator(f'.lay-table path.cut-line[id="{name}"]').bounding_box()
    return float((shape.bounds[2] - shape.bounds[0]) / drawn["width"])


def with_room(tab: Tab, by: float, longer: float = 0.0) -> str:
    """Return a piece that can go so far to the right over free cloth, mm, and so makes the lay longer."""
    shapes = outlines(tab)
    end = max(shape.bounds[2] for shape in shapes.values())
    for name, shape in shapes.items():
        way = unary_union([translate(shape, step) for step in np.linspace(0.0, by, 12)])
        clear = all(way.distance(other) > 3.0 for n, other in shapes.items() if n != name)
        if clear and shape.bounds[2] + by > end + longer:
            return name
    raise AssertionError("no piece of this lay can be moved so")


def dragged_longer(tab: Tab) -> float:
    """Drag a piece that has room until the page tells that the lay is longer; return how long it was, mm.

    A shorter lay that is found just then may take the room: then another piece is taken, once.
    """
    longer = "() => document.querySelector('.lay-said').innerText.includes('longer than')"
    for _ in range(2):
        settled(tab)
        was = length(tab)
        drag(tab, with_room(tab, 90 * scale(tab), 20.0), 90, 0)
        with suppress(PlaywrightTimeout):
            tab.page.wait_for_function(longer, timeout=WAIT / 2)
            return was
    raise AssertionError(tab.page.locator(".lay-said").inner_text())


def last_piece(tab: Tab) -> str:
    return max(outlines(tab).items(), key=lambda item: item[1].bounds[2])[0]


def test_a_piece_dragged_to_free_cloth_lies_there_and_the_length_follows(table: Tab, tmp_path: Path) -> None:
    assert told(table) == pytest.approx(length(table), abs=0.6)
    table.page.evaluate("document.querySelector('.lay-table svg:not(.lay-hatch)').style.overflow = 'visible'")
    was = dragged_longer(table)
    assert length(table) > was + 20
    assert told(table) == pytest.approx(length(table), abs=0.6)
    table.page.screenshot(path=tmp_path / "dragged.png")
    moved = html(table)
    table.page.locator("button.undo").click()
    wait_for_change(table, moved)
    assert length(table) == pytest.approx(was, abs=0.1)


DRAWN_ANEW = """
import gc
from drafting.notebook.lay_table.table import Canvas
for canvas in [thing for thing in gc.get_objects() if isinstance(thing, Canvas)]:
    canvas.picture = canvas.picture.replace("</svg>", "<g id='drawn-anew'></g></svg>")
"""
"""What a search does to the page when it finds a lay: the drawing is another."""


def test_a_piece_stays_in_the_hand_when_the_lay_is_drawn_anew(table: Tab) -> None:
    name, was = with_room(table, 90 * scale(table), 20.0), outlines(table)
    box = table.page.locator(f'.lay-table path.cut-line[id="{name}"]').bounding_box()
    x, y = grip(table, name)
    table.page.mouse.move(x, y)
    table.page.mouse.down()
    table.page.mouse.move(x + 30, y, steps=4)
    table.page.evaluate(
        "code => jupyterapp.shell.currentWidget.sessionContext.session.kernel.requestExecute({code}).done",
        DRAWN_ANEW,
    )
    table.page.locator('.lay-table [id="drawn-anew"]').wait_for(state="attached", timeout=WAIT)
    held = table.page.locator(f'.lay-table path.cut-line.held[id="{name}"]')
    assert held.bounding_box()["x"] == pytest.approx(box["x"] + 30, abs=1.5)
    table.page.mouse.move(x + 90, y, steps=4)
    assert held.bounding_box()["x"] == pytest.approx(box["x"] + 90, abs=1.5)
    before = length(table)
    table.page.mouse.up()
    table.page.locator('.lay-table [id="drawn-anew"]').wait_for(state="detached", timeout=WAIT)
    assert length(table) > before + 20
    moved = html(table)
    table.page.locator("button.undo").click()
    wait_for_change(table, moved)
    assert outlines(table)[name].equals_exact(was[name], 0.1)


def test_a_piece_dropped_on_another_goes_back_and_the_page_says_why(table: Tab) -> None:
    shapes = outlines(table)
    first = min(shapes, key=lambda name: shapes[name].bounds[0])
    name, before = last_piece(table), shapes
    a, b = (table.page.locator(f'.lay-table path.cut-line[id="{n}"]').bounding_box() for n in (name, first))
    dx = b["x"] + b["width"] / 2 - a["x"] - a["width"] / 2
    dy = b["y"] + b["height"] / 2 - a["y"] - a["height"] / 2
    drag(table, name, dx, dy)
    table.page.locator(".lay-page .refusal b").wait_for(timeout=WAIT)
    assert "cannot lie there" in table.page.locator(".lay-page .refusal").inner_text()
    assert {n: p.bounds for n, p in outlines(table).items()} == {n: p.bounds for n, p in before.items()}
    table.page.wait_for_function("() => !document.querySelector('.lay-table path[transform]')", timeout=WAIT)


def test_the_arrow_keys_move_a_piece_and_keep_the_focus(table: Tab) -> None:
    name, before = with_room(table, 11.0), html(table)
    was = outlines(table)[name].bounds
    table.page.locator(f'.lay-table path.cut-line[id="{name}"]').focus()
    table.page.keyboard.press("Shift+ArrowRight")
    wait_for_change(table, before)
    assert outlines(table)[name].bounds[0] == pytest.approx(was[0] + 10, abs=0.2)
    assert table.page.evaluate("document.activeElement.dataset.outline") == name
    before = html(table)
    table.page.keyboard.press("ArrowRight")
    wait_for_change(table, before)
    assert outlines(table)[name].bounds[0] == pytest.approx(was[0] + 11, abs=0.2)


def test_looking_longer_shows_progress_and_stops_when_told(table: Tab) -> None:
    table.page.locator(".lay-page .look-longer").click()
    table.page.wait_for_function("() => !document.querySelector('.lay-page .stop-looking').disabled", timeout=WAIT)
    table.page.wait_for_function(
        "() => document.querySelector('.lay-page .progress-bar').style.width !== '0%'", timeout=WAIT
    )
    table.page.wait_for_timeout(1_500)
    pressed = time.monotonic()
    table.page.locator(".lay-page .stop-looking").click()
    table.page.wait_for_function("() => !document.querySelector('.lay-page .look-longer').disabled", timeout=5_000)
    assert time.monotonic() - pressed < 3.0  # of 20 s: a second, and what other tests take of the machine
    table.page.locator(".lay-page").get_by_text("stopped").wait_for(timeout=WAIT)


def test_what_is_taken_back_can_be_taken_again(table: Tab) -> None:
    name, before = last_piece(table), html(table)
    table.page.locator(f'.lay-table path.cut-line[id="{name}"]').focus()
    table.page.keyboard.press("Shift+ArrowRight")
    wait_for_change(table, before)
    moved = {n: p.bounds for n, p in outlines(table).items()}
    for button, wanted in (("undo", None), ("redo", moved)):
        shown = html(table)
        table.page.locator(f"button.{button}").click()
        wait_for_change(table, shown)
        found = {n: p.bounds for n, p in outlines(table).items()}
        assert (found == moved) is (wanted is not None)


def test_a_piece_that_is_refused_is_hatched_for_a_moment(table: Tab) -> None:
    drag(table, last_piece(table), 0, -2_000)
    hatched = table.page.locator(".lay-table path.not-there")
    hatched.wait_for(timeout=WAIT)
    assert "lay-hatch" in hatched.evaluate("path => getComputedStyle(path).fill")
    hatched.wait_for(state="detached", timeout=WAIT)


def test_a_faulty_place_is_marked_and_nothing_lies_on_it(table: Tab) -> None:
    fields = table.page.locator(".lay-faults input")
    for n, cm in enumerate(("30", "90", "12", "6")):
        fields.nth(n).fill(cm)
        fields.nth(n).press("Tab")
    before = html(table)
    table.page.locator("button.mark-a-faulty-place").click()
    wait_for_change(table, before)
    fault = table.page.locator('.lay-table [id="fault.1"]').get_attribute("d")
    parts = SvgPath(fault).as_subpaths()
    place = Polygon([(p.x, p.y) for p in SvgPath(next(iter(parts))).as_points()])
    assert place.area == pytest.approx(120 * 60, rel=1e-3)
    assert max(shape.intersection(place).area for shape in outlines(table).values()) < 1
    table.page.locator(".lay-said").get_by_text("faulty place").wait_for(timeout=WAIT)
    before = html(table)
    fields.nth(1).fill("500")
    fields.nth(1).press("Tab")
    for _ in range(3):  # a lay that is found just then is drawn anew and may move the button
        table.page.locator("button.mark-a-faulty-place").click()
        with suppress(PlaywrightTimeout):
            table.page.locator(".lay-page .refusal b").wait_for(timeout=WAIT / 2)
            break
    assert "off the cloth" in table.page.locator(".lay-page .refusal").inner_text()
    table.page.locator("button.forget-faulty-places").click()
    table.page.wait_for_function("() => !document.querySelector('.lay-table [id=\"fault.1\"]')", timeout=WAIT)


def test_what_other_widths_need_stands_below(table: Tab) -> None:
    rows = table.page.locator(".lay-page table.widths tbody tr")
    rows.nth(5).wait_for(timeout=WAIT)
    assert rows.filter(has=table.page.locator("xpath=self::*[contains(@class, 'own')]")).count() == 1


def test_another_cloth_is_shown_with_its_own_pieces(table: Tab) -> None:
    before, here, words = html(table), set(outlines(table)), table.page.locator(".lay-said").inner_text()
    table.page.locator(".lay-page select").select_option(index=4)
    wait_for_change(table, before)
    table.page.wait_for_function(  # the words come in a message of their own, after the drawing's
        "said => document.querySelector('.lay-said').innerText !== said", arg=words, timeout=WAIT
    )
    assert not here & set(outlines(table))
    assert told(table) == pytest.approx(length(table), abs=0.6)
