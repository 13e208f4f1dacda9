"""The bench in a real browser: typed, undone, reset, switched to inches, saved, written, stopped."""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.notebook.hands import drag, field, knob, shown, wait_for_text, write
from tests.notebook.lab import Lab, Tab

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]

NOTEBOOK = "notebooks/00_start_here.ipynb"
WAIT = 10_000


@pytest.fixture
def bench(tab: Tab, lab: Lab) -> Iterator[Tab]:
    """The notebook run from top to bottom, and the costume file put back afterwards."""
    file = costume_file(lab)
    before = file.read_bytes()
    tab.page.set_viewport_size({"width": 1280, "height": 900})
    if NOTEBOOK not in tab.page.url:
        tab.open(NOTEBOOK)
    tab.run_to_bench()
    yield tab
    file.write_bytes(before)
    assert tab.kernel_faults() == []
    assert tab.faults == []
    assert tab.outside == []


def costume_file(lab: Lab) -> Path:
    return lab.root / "measurements" / "costumes" / "lamplighter.toml"


def press(tab: Tab, name: str) -> None:
    tab.page.locator(f".bench button.{name}").click()


def changes(tab: Tab) -> str:
    return str(tab.page.locator(".bench table.changes").inner_text())


def test_a_typed_value_takes_any_unit_and_one_out_of_range_is_refused_beside_its_control(
    bench: Tab, tmp_path: Path
) -> None:
    """6 1/4 in is 158.75 mm (1 in = 25.4 mm)."""
    write(bench, "bust-ease", "6 1/4 in")
    wait_for_text(bench, "bust-ease", "15.9 cm")
    write(bench, "bust-ease", "90 cm")
    words = bench.page.locator(".choice-bust-ease .refusal")
    words.locator("b").wait_for(timeout=WAIT)
    assert "out of range" in words.inner_text()
    assert "40 cm" in words.inner_text()  # the block's own end
    assert shown(bench, "bust-ease") == "90 cm"
    assert knob(bench, "bust-ease").get_attribute("max") == "900"
    assert float(knob(bench, "bust-ease").input_value()) == 900.0
    assert field(bench, "bust-ease").get_attribute("aria-invalid") == "true"
    bench.page.screenshot(path=tmp_path / "refused.png")
    write(bench, "bust-ease", "wide")
    words.filter(has_text="cannot be read").wait_for(timeout=WAIT)
    assert shown(bench, "bust-ease") == "wide"
    press(bench, "undo")
    wait_for_text(bench, "bust-ease", "15.9 cm")
    assert words.inner_text() == ""


def test_undo_and_redo_and_the_table_of_what_changed(bench: Tab) -> None:
    drag(bench, "waist-ease", 0.2, 0.5)
    bench.page.locator(".bench table.changes").wait_for(timeout=WAIT)
    bench.page.wait_for_timeout(1_000)
    far = shown(bench, "waist-ease")
    assert float(far.removesuffix(" cm")) > 20
    assert changes(bench).splitlines()[1].startswith("Waist, girth")
    knob(bench, "bust-ease").focus()
    bench.page.keyboard.press("ArrowRight")
    wait_for_text(bench, "bust-ease", "10.5 cm")
    press(bench, "undo")
    wait_for_text(bench, "bust-ease", "10 cm")
    assert shown(bench, "waist-ease") == far
    press(bench, "undo")  # the whole drag
    wait_for_text(bench, "waist-ease", "9 cm")
    bench.page.locator(".bench button.undo[disabled]").wait_for(timeout=WAIT)
    press(bench, "redo")
    wait_for_text(bench, "waist-ease", far)


def test_one_control_and_all_of_them_go_back_to_the_file(bench: Tab) -> None:
    for name, text in (("bust-ease", "12 cm"), ("cap-ease", "0.8 cm"), ("arm-ease", "7 cm")):
        write(bench, name, text)
        wait_for_text(bench, name, text)
    bench.page.locator(".choice-cap-ease button.back").click()
    wait_for_text(bench, "cap-ease", "1.3 cm")  # 1/2 in
    assert shown(bench, "bust-ease") == "12 cm"
    press(bench, "reset-all")
    wait_for_text(bench, "bust-ease", "10 cm")
    wait_for_text(bench, "arm-ease", "6 cm")
    bench.page.locator(".bench button.reset-all[disabled]").wait_for(timeout=WAIT)


def test_ten_switches_to_inches_and_back_change_no_value(bench: Tab, lab: Lab) -> None:
    before = costume_file(lab).read_bytes()
    write(bench, "cap-ease", "1.37 cm")
    wait_for_text(bench, "cap-ease", "1.4 cm")
    front = bench.page.locator('.pattern-preview [id="shirt.front.cut-line"]').get_attribute("d")
    for unit, text in (("inches", "3 15/16 in"), ("cm", "10 cm")) * 5:
        bench.page.locator(".which-unit select").select_option(label=unit)
        wait_for_text(bench, "bust-ease", text)
        field(bench, "bust-ease").focus()
        bench.page.keyboard.press("Enter")  # opened and closed
    after = bench.page.locator('.pattern-preview [id="shirt.front.cut-line"]').get_attribute("d")
    assert after == front
    press(bench, "save-to-the-costume-file")
    bench.page.get_by_text("Saved to").wait_for(timeout=WAIT)
    saved = costume_file(lab).read_bytes()
    assert saved == before.replace(b'cap_ease = "1/2 in"', b'cap_ease = "1.37 cm"')


def test_a_save_keeps_the_comments_of_the_file(bench: Tab, lab: Lab) -> None:
    before = costume_file(lab).read_text("utf-8")
    assert before.startswith("# What the lamplighter wears")
    write(bench, "waist-ease", "8.5")
    wait_for_text(bench, "waist-ease", "8.5 cm")
    press(bench, "save-to-the-costume-file")
    bench.page.get_by_text("Saved to").wait_for(timeout=WAIT)
    after = costume_file(lab).read_text("utf-8")
    assert after == before.replace('waist_ease = "9 cm"', 'waist_ease = "8.5 cm"')
    assert tomllib.loads(after)["garments"]["shirt"]["choices"]["waist_ease"] == "8.5 cm"


def test_a_save_keeps_what_others_wrote_and_asks_about_the_same_choice_alone(bench: Tab, lab: Lab) -> None:
    before = costume_file(lab).read_text("utf-8")
    theirs = before.replace("bust_ease = 10", "bust_ease = 12", 1) + "# a word of theirs\n"
    assert "bust_ease = 12" in theirs
    write(bench, "waist-ease", "8")
    wait_for_text(bench, "waist-ease", "8 cm")
    costume_file(lab).write_text(theirs, "utf-8")
    press(bench, "save-to-the-costume-file")
    bench.page.get_by_text("Saved to").wait_for(timeout=WAIT)
    mine = theirs.replace('waist_ease = "9 cm"', 'waist_ease = "8 cm"')
    assert costume_file(lab).read_text("utf-8") == mine != theirs
    write(bench, "waist-ease", "7")
    wait_for_text(bench, "waist-ease", "7 cm")
    clash = mine.replace('waist_ease = "8 cm"', 'waist_ease = "6 cm"')
    costume_file(lab).write_text(clash, "utf-8")
    press(bench, "save-to-the-costume-file")
    asked = bench.page.locator(".refusal", has_text="waist ease of shirt was changed in the file meanwhile")
    asked.wait_for(timeout=WAIT)
    assert costume_file(lab).read_text("utf-8") == clash
    press(bench, "save-to-the-costume-file")
    asked.wait_for(state="hidden", timeout=WAIT)
    bench.page.get_by_text("Saved to").wait_for(timeout=WAIT)
    assert costume_file(lab).read_text("utf-8") == clash.replace('"6 cm"', '"7 cm"', 1)


TRIES = 4


def test_writing_shows_its_steps_and_stops_when_told(bench: Tab, lab: Lab) -> None:
    record = lab.root / "out-lamplighter" / "report.json"
    write(bench, "waist-ease", "7.7")
    wait_for_text(bench, "waist-ease", "7.7 cm")
    steps = bench.page.locator(".writing")
    for _ in range(TRIES):  # on a busy machine all may be written before the button is pressed
        had = record.read_bytes() if record.is_file() else None
        press(bench, "write-pieces")
        steps.filter(has_text="Laying the pieces").wait_for(timeout=30_000)
        write(bench, "waist-ease", "7.8")  # the page stays alive meanwhile
        press(bench, "stop-writing")
        steps.filter(has_text=re.compile("Stopped|Done")).wait_for(timeout=300_000)
        if steps.filter(has_text="Stopped").count():
            break
    assert steps.filter(has_text="Stopped").count() == 1
    assert (record.read_bytes() if record.is_file() else None) == had
    assert [p.name for p in lab.root.iterdir() if p.is_dir() and p.name.startswith(".out")] == []
    wait_for_text(bench, "waist-ease", "7.8 cm")
    press(bench, "write-pieces")
    bench.page.locator(".jp-OutputArea-output a", has_text="report.json").wait_for(
        state="attached", timeout=300_000
    )
    steps.filter(has_text="Done").wait_for(timeout=WAIT)
    written = json.loads(record.read_text("utf-8"))
    assert written["choices"]["shirt"]["waist_ease"] == {"value": 78.0, "source": "notebook"}


def test_a_letter_typed_at_a_slider_is_no_command_for_the_cell(bench: Tab) -> None:
    """`a` and `b` make a cell, `d` twice and `x` take one away, `m` makes it prose."""
    cells = bench.page.locator(".jp-Cell").count()
    for place in (knob(bench, "bust-ease"), bench.page.locator(".knobs summary").first):
        for key in ("a", "b", "m"):
            place.focus()
            bench.page.keyboard.press(key)
        bench.page.wait_for_timeout(300)
        assert bench.page.locator(".jp-Cell").count() == cells
        assert bench.page.evaluate("Boolean(document.activeElement.closest('.knobs'))")


@pytest.mark.parametrize("theme", ["Light", "Dark"])
@pytest.mark.parametrize("width", [1280, 900])
def test_the_bench_reads_on_a_light_and_a_dark_page(bench: Tab, theme: str, width: int, tmp_path: Path) -> None:
    """Words against their ground at 4.5 to 1 or better (WCAG 2.2, success criterion 1.4.3)."""
    bench.page.evaluate(
        "theme => jupyterapp.commands.execute('apputils:change-theme', {theme})", f"JupyterLab {theme}"
    )
    bench.page.set_viewport_size({"width": width, "height": 1400})
    bench.page.wait_for_timeout(1_500)
    bench.page.screenshot(path=tmp_path / f"bench-{theme}-{width}.png")
    found: list[Any] = bench.page.evaluate(CONTRASTS)
    assert len(found) > 20
    assert [row for row in found if row[1] < 4.5] == []
    bench.page.evaluate("jupyterapp.commands.execute('apputils:change-theme', {theme: 'JupyterLab Light'})")
    bench.page.wait_for_timeout(500)


CONTRASTS = """() => {
    const rgb = text => text.match(/[\\d.]+/g).map(Number);
    const light = c => { const [r, g, b] = c.map(v => v / 255).map(v =>
        v <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
        return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
    const ground = node => { for (; node; node = node.parentElement) {
        const c = rgb(getComputedStyle(node).backgroundColor);
        if (c.length < 4 || c[3] > 0.99) return c.slice(0, 3); } return [255, 255, 255]; };
    const seen = [];
    for (const node of document.querySelectorAll(
            '.knobs label, .knobs .meaning, .knobs small, .knobs .typed, .bench td, .bench th, .bench .note')) {
        if (!node.checkVisibility() || !(node.innerText || node.value)) continue;
        const style = getComputedStyle(node), under = ground(node), over = rgb(style.color);
        const share = over[3] ?? 1;
        const ink = over.slice(0, 3).map((v, i) => v * share + under[i] * (1 - share));
        const [a, b] = [light(ink), light(under)].sort((x, y) => y - x);
        seen.push([(node.innerText || node.value).slice(0, 30), (a + 0.05) / (b + 0.05)]);
    }
    return seen;
}"""
