"""The first notebook as a maker meets it: JupyterLab in a real browser, keys, mouse and button.

The files written are read back by a general SVG library and the standard library, not by our code.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from svgelements import SVG

from tests.notebook.hands import drag, knob, shown, wait_for_text, write
from tests.notebook.lab import Lab, Tab

pytestmark = [
    pytest.mark.browser,
    pytest.mark.xdist_group("lab"),
    pytest.mark.usefixtures("nothing_failed_unseen"),
]

NOTEBOOK = "notebooks/00_start_here.ipynb"
WAIT = 10_000
"""ms; a redraw takes far less than one second."""


@pytest.fixture
def bench(tab: Tab) -> Tab:
    """The notebook run from top to bottom, with a new bench for each test."""
    tab.page.set_viewport_size({"width": 1280, "height": 900})
    if NOTEBOOK not in tab.page.url:
        tab.open(NOTEBOOK)
    tab.run_to_bench()
    return tab


def path_data(tab: Tab, piece: str) -> str:
    found = tab.page.locator(f'.pattern-preview [id="shirt.{piece}.cut-line"]')
    return str(found.get_attribute("d"))


def girth(tab: Tab, level: str) -> float:
    """Return the garment's girth (cm) that the table shows."""
    row = tab.page.locator(".girths tbody tr").filter(has_text=level).first
    return float(row.locator("td").last.inner_text())


def wait_until_other(tab: Tab, piece: str, before: str) -> None:
    tab.page.wait_for_function(
        "([id, d]) => document.querySelector(`.pattern-preview [id=\"${id}\"]`).getAttribute('d') !== d",
        arg=[f"shirt.{piece}.cut-line", before],
        timeout=WAIT,
    )


def wait_until_girth(tab: Tab, level: str, cm: float) -> None:
    """Wait until the table shows this girth: it comes a moment after the picture."""
    tab.page.wait_for_function(
        "([level, cm]) => [...document.querySelectorAll('.girths tbody tr')].some(row =>"
        " row.innerText.startsWith(level) && Math.abs(row.lastChild.innerText - cm) < 0.11)",
        arg=[level, cm],
        timeout=WAIT,
    )


def test_one_arrow_key_on_the_first_slider_changes_the_picture_and_the_numbers(bench: Tab) -> None:
    before, bust = path_data(bench, "front"), girth(bench, "Bust")
    knob(bench, "bust-ease").focus()
    bench.page.keyboard.press("ArrowRight")
    wait_until_other(bench, "front", before)
    wait_for_text(bench, "bust-ease", "10.5 cm")
    wait_until_girth(bench, "Bust", bust + 0.5)


def test_a_drag_and_a_typed_number_are_followed_and_the_last_value_wins(bench: Tab) -> None:
    before = path_data(bench, "front")
    drag(bench, "waist-ease", 0.2, 0.4)
    wait_until_other(bench, "front", before)
    bench.page.wait_for_timeout(1_000)  # every value on the way has been taken
    waist = 77.5 + float(shown(bench, "waist-ease").removesuffix(" cm"))
    assert waist > 90
    wait_until_girth(bench, "Waist", waist)
    before = path_data(bench, "front")
    write(bench, "waist-ease", "6")
    wait_until_other(bench, "front", before)
    wait_until_girth(bench, "Waist", 83.5)


def test_a_refusal_is_said_in_words_and_the_last_picture_stays(bench: Tab) -> None:
    before = bench.page.locator(".pattern-preview").inner_html()
    place = bench.page.locator(".pattern-preview").bounding_box()
    knob(bench, "arm-ease").focus()
    bench.page.keyboard.press("End")
    said = bench.page.locator(".choice-arm-ease .refusal b")
    said.wait_for(timeout=WAIT)
    words = bench.page.locator(".choice-arm-ease .refusal").inner_text()
    assert "no sleeve cap fits" in words.lower()
    assert "shows the last that could" in words
    assert bench.page.locator(".pattern-preview").inner_html() == before
    assert bench.page.locator(".pattern-preview").bounding_box() == place
    bench.page.locator(".bench .write-pieces").click()
    bench.page.locator(".refusal", has_text="Nothing was written").wait_for(timeout=WAIT)
    assert knob(bench, "arm-ease").is_visible()
    knob(bench, "arm-ease").focus()
    bench.page.keyboard.press("Home")
    said.wait_for(state="hidden", timeout=WAIT)
    assert girth(bench, "Upper arm") < girth(bench, "Bust")


def test_the_button_writes_what_the_sliders_say_and_links_it(bench: Tab, lab: Lab) -> None:
    before = path_data(bench, "sleeve")
    write(bench, "cap-ease", "0.4")
    wait_until_other(bench, "sleeve", before)
    seen = path_data(bench, "sleeve")
    bench.page.locator(".bench .write-pieces").click()
    links = bench.page.locator(".jp-OutputArea-output a", has_text=".svg")
    links.first.wait_for(state="attached", timeout=300_000)  # in the list of all files, which is folded
    out = lab.root / "out-lamplighter"
    record = json.loads((out / "report.json").read_text("utf-8"))
    assert record["choices"]["shirt"]["cap_ease"] == {"value": 4.0, "source": "notebook"}
    assert {p["garment"] for p in record["pieces"]} == {"coat", "shirt", "breeches"}
    assert len(list((out / "pieces").glob("*.svg"))) == len(record["pieces"])
    assert links.count() == len(list(out.rglob("*.svg")))  # the lays too
    written = {e.id: e for e in SVG.parse(str(out / "pieces" / "shirt.sleeve.svg"), ppi=25.4).elements()}
    drawn = written["sleeve.cut-line"]
    assert shape(drawn.d()) == pytest.approx(shape(seen), abs=0.01)
    assert (out / "overview.png").read_bytes().startswith(b"\x89PNG")
    href = bench.page.locator(".jp-OutputArea-output a", has_text="report.json").get_attribute("href")
    assert bench.page.request.get(f"{lab.url}{href}" if href.startswith("/") else href).ok


def shape(d: str) -> list[float]:
    """Return width and height of a path, which do not depend on where it lies."""
    from svgelements import Path as SvgPath

    x0, y0, x1, y1 = SvgPath(d).bbox()
    return [x1 - x0, y1 - y0]


@pytest.mark.parametrize("width", [1280, 900])
def test_the_picture_is_never_stretched_and_shows_its_scale(bench: Tab, width: int, tmp_path: Path) -> None:
    """A drawn square stays square at any size of the window."""
    bench.page.set_viewport_size({"width": width, "height": 900})
    bench.page.wait_for_timeout(300)
    x, y = bench.page.evaluate(
        "() => { const m = document.querySelector('.pattern-preview svg').getScreenCTM(); return [m.a, m.d]; }"
    )
    assert x / y == pytest.approx(1.0, abs=0.01)
    assert bench.page.locator(".pattern-preview .scale-check").first.is_visible()
    assert bench.page.locator(".pattern-preview .measured text", has_text="cm").last.is_visible()
    bench.page.screenshot(path=tmp_path / f"bench-{width}.png")


def test_the_tab_key_reaches_every_slider_and_each_has_a_name(bench: Tab) -> None:
    names = ["Bust ease", "Waist ease", "Armhole drop", "Arm ease", "Length ease", "Hip ease", "Cap ease"]
    knob(bench, "bust-ease").focus()
    reached = []
    for _ in range(3 * len(names)):  # a number, its slider, perhaps a way back
        reached.append(
            bench.page.evaluate(
                "() => { const at = document.activeElement; return at.type === 'range'"
                " ? at.getAttribute('aria-label') : at.labels?.[0]?.innerText ?? '' }"
            )
        )
        bench.page.keyboard.press("Tab")
    sliders = [name.removesuffix(", slider") for name in reached if name.endswith(", slider")]
    assert sliders[: len(names)] == names
    fields = [name for name in reached if name in names]
    assert fields[: len(names) - 1] == names[1:]
