"""The worn page in a browser: keys alone, the shape in sight beside its slider and steady, told in words."""

from __future__ import annotations

import io
from collections.abc import Iterator

import pytest
from PIL import Image

from drafting.ground.palette import Colour
from tests.notebook.checker import found_by_axe
from tests.notebook.lab import Tab
from tests.notebook.test_keyboard import tab_to

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]

WAIT = 60_000

SEEN = """() => {
    const page = document.querySelector('.jp-WindowedPanel-outer').getBoundingClientRect();
    const inside = node => { const r = node.getBoundingClientRect();
        return r.width > 80 && r.height > 60 && r.top >= page.top - 1 && r.bottom <= page.bottom + 1; };
    const r = document.activeElement.getBoundingClientRect();
    return [inside(document.querySelector('img.worn-now')), r.top >= page.top - 1 && r.bottom <= page.bottom + 1];
}"""


@pytest.fixture(scope="module")
def worn(tab: Tab) -> Iterator[Tab]:
    tab.page.set_viewport_size({"width": 1280, "height": 900})
    tab.open("notebooks/09_worn.ipynb")
    tab.forget_choices()
    assert tab.run_all(), tab.kernel_faults()
    tab.page.locator("img.worn-now").wait_for(timeout=WAIT)
    tab.page.evaluate("jupyterapp.shell.collapseLeft()")
    yield tab
    assert tab.kernel_faults() == []
    assert tab.faults == []


def test_it_is_seen_from_another_side_by_keys(worn: Tab) -> None:
    picture = worn.page.locator("img.worn-now")
    before = picture.get_attribute("src")
    worn.page.locator(".which-costume select").first.focus()
    tab_to(worn.page, ".seen-from select")
    worn.page.keyboard.press("ArrowDown")  # else a command of the notebook's: the next cell
    worn.page.wait_for_function(
        "src => document.querySelector('img.worn-now').src !== src", arg=before, timeout=WAIT
    )
    assert "seen from" in str(picture.get_attribute("alt"))
    tab_to(worn.page, ".worn-view .choice-bust-ease input[type=range]", "Shift+Tab")


def test_the_shape_stays_where_it_is_and_the_one_before_comes_beside_it(worn: Tab) -> None:
    picture = worn.page.locator("img.worn-now")
    worn.page.locator(".worn-view .choice-bust-ease input[type=range]").first.focus()
    place, before = picture.bounding_box(), picture.get_attribute("src")
    worn.page.keyboard.press("PageUp")
    worn.page.wait_for_function(
        "src => document.querySelector('img.worn-now').src !== src", arg=before, timeout=WAIT
    )
    worn.page.locator("img.worn-before").wait_for(state="visible", timeout=WAIT)
    assert picture.bounding_box() == place


OUT_OF_SIGHT = """() => {
    const bar = document.querySelector('.worn-tools').getBoundingClientRect();
    const out = node => node.offsetParent && node.getBoundingClientRect().right > bar.right + 1;
    const all = [...document.querySelectorAll('.worn-tools :is(select, button)')];
    return all.filter(out).map(node => node.textContent);
}"""


@pytest.mark.parametrize("size", [(1280, 900), (1024, 768)])
def test_no_control_lies_out_of_sight_to_the_right(worn: Tab, size: tuple[int, int]) -> None:
    worn.page.set_viewport_size({"width": size[0], "height": size[1]})
    worn.page.evaluate("jupyterapp.shell.expandLeft()")
    worn.page.wait_for_timeout(500)
    assert worn.page.evaluate(OUT_OF_SIGHT) == []
    worn.page.set_viewport_size({"width": 720, "height": 450})  # 200 %: the button at least
    worn.page.evaluate("jupyterapp.shell.collapseLeft()")
    worn.page.wait_for_timeout(500)
    assert "Settle it in full" not in worn.page.evaluate(OUT_OF_SIGHT)
    worn.page.set_viewport_size({"width": 1280, "height": 900})


@pytest.mark.parametrize("size", [(1440, 900), (1024, 768), (720, 450)])
def test_the_shape_is_in_sight_beside_the_slider_in_use(worn: Tab, size: tuple[int, int]) -> None:
    width, height = size  # the last: 200 % of a screen
    worn.page.set_viewport_size({"width": width, "height": height})
    worn.page.locator(".which-costume select").first.focus()
    tab_to(worn.page, ".worn-view .choice-arm-ease input[type=range]")
    worn.page.wait_for_function(f"() => ({SEEN})().every(Boolean)", timeout=10_000)


def test_a_general_checker_finds_nothing_wrong(worn: Tab) -> None:
    assert found_by_axe(worn.page, ".worn-view", least=10) == []


RINGED = """() => { const how = getComputedStyle(document.activeElement);
    return how.outlineStyle !== 'none' && parseFloat(how.outlineWidth) >= 2; }"""


def theme(tab: Tab, name: str) -> None:
    tab.page.evaluate("theme => jupyterapp.commands.execute('apputils:change-theme', {theme})", name)
    tab.page.wait_for_function(
        "light => document.body.dataset.jpThemeLight === light", arg=str(name.endswith("Light")).lower()
    )
    tab.page.wait_for_timeout(500)


def test_in_a_dark_page_it_lies_on_the_paper_of_the_other_pictures(worn: Tab) -> None:
    """What is white is seen as the toned-down paper; the page as it is pixel for pixel."""
    seen = {}
    for name in ("JupyterLab Light", "JupyterLab Dark"):
        theme(worn, name)
        picture = worn.page.locator("img.worn-now")
        picture.scroll_into_view_if_needed()
        with Image.open(io.BytesIO(picture.screenshot())) as shot:
            seen[name] = "#{:02x}{:02x}{:02x}".format(*shot.convert("RGB").getpixel((20, shot.height - 20)))
        assert found_by_axe(worn.page, ".worn-view", least=10) == []
    theme(worn, "JupyterLab Light")
    assert list(seen.values()) == [Colour.PAPER, Colour.PAPER_AT_NIGHT]


@pytest.mark.parametrize("selector", [".which-costume select", ".seen-from select", "button.settle-in-full"])
def test_who_goes_by_keys_sees_where_she_is(worn: Tab, selector: str) -> None:
    """WCAG 2.2, 2.4.7 focus visible."""
    worn.page.locator(".read-again").first.focus()
    tab_to(worn.page, selector, "Shift+Tab" if "costume" in selector else "Tab")
    assert worn.page.evaluate(RINGED)


def test_settling_says_how_far_it_is_and_is_stopped_by_key(worn: Tab) -> None:
    button = worn.page.locator("button.settle-in-full")
    tab_to(worn.page, "button.settle-in-full")
    worn.page.keyboard.press("Enter")
    foot = worn.page.locator(".worn-foot")
    foot.filter(has_text="Letting it come to rest").wait_for(timeout=WAIT)
    assert worn.page.locator(".worn-foot [role=progressbar], .worn-foot .progress-bar").first.is_visible()
    assert button.inner_text() == "Stop settling"
    assert worn.page.evaluate("document.activeElement.matches('button.settle-in-full')")
    worn.page.keyboard.press("Enter")
    foot.filter(has_text="Stopped").wait_for(timeout=WAIT)
    assert button.inner_text() == "Settle it in full"
