"""The start page as an app: no code on it, a key press redraws, nothing is asked of other computers."""

from __future__ import annotations

import os
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from jupyter_client.manager import start_new_kernel

from drafting.commands import app
from drafting.commands.lab import work_copy
from drafting.ground.errors import InputError
from tests.notebook.lab import running_app

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("lab")]


READY = 15.0
"""Seconds in which the page wants to stand on a machine of its own.

On a busy one it is told in kernels too: 6 to 8 of them, measured with the load at four to six times the cores.
"""


def ready_here() -> float:
    """Return the seconds that this machine may take: as many times as long as it has work for its cores."""
    return READY * max(2.0, os.getloadavg()[0] / (os.cpu_count() or 1))


def kernel_alone() -> float:
    """Return the seconds in which a kernel that knows nothing of the kit starts and answers, here and now."""
    begun = time.monotonic()
    manager, client = start_new_kernel()
    client.execute_interactive("1 + 1", timeout=60)
    took = time.monotonic() - begun
    client.stop_channels()
    manager.shutdown_kernel(now=True)
    return took


@pytest.fixture(scope="module")
def address(browser: Any, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    home = tmp_path_factory.mktemp("home")
    root = work_copy(tmp_path_factory.mktemp("app"))
    with running_app(root, home, root) as url:
        yield url


def test_the_page_shows_the_bench_without_code_and_follows_a_key(
    browser: Any, address: str, tmp_path: Path
) -> None:
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    page = context.new_page()
    outside: list[str] = []

    def sieve(route: Any) -> None:
        url = route.request.url
        if url.startswith((address.partition("?")[0], "data:", "blob:")):
            route.continue_()
        else:
            outside.append(url)
            route.abort()

    page.route("**/*", sieve)
    begun = time.monotonic()
    page.goto(address, timeout=90_000)
    page.locator(".pattern-preview svg path.cut-line").nth(2).wait_for(timeout=90_000)
    took = time.monotonic() - begun
    print(f"seconds until the page is ready: {took:.1f}, {took / kernel_alone():.1f} kernels")
    assert took < ready_here()
    said = page.locator("body").inner_text()
    assert not [word for word in ("CostumePage", "Run All", "grey box", "menu above", "cell") if word in said]
    assert page.locator(".which-costume select option").count() >= 2
    before = page.locator(".pattern-preview").first.inner_html()
    page.locator(".choice-bust-ease input[type=range]").first.focus()
    page.keyboard.press("ArrowRight")
    page.wait_for_function(
        "d => document.querySelector('.pattern-preview').innerHTML !== d", arg=before, timeout=20_000
    )
    page.screenshot(path=tmp_path / "app.png")
    # The shell of the page names two style sheets of icons elsewhere; without them all still works.
    assert [url for url in outside if not url.endswith((".css", ".woff2", ".woff", ".ttf"))] == []
    context.close()


def test_without_voila_the_way_to_get_it_is_told(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr(app.importlib.util, "find_spec", lambda name: None)
    with pytest.raises(InputError, match=r"drafting-kit\[app\]"):
        app.open_app(tmp_path)


def test_the_app_answers_this_computer_only() -> None:
    flags = app.app_flags(Path("/tmp/kit"), port=None, browser=False)
    assert "--Voila.ip=127.0.0.1" in flags
    assert "--strip_sources=True" in flags
