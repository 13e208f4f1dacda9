"""From a key pressed on a slider to the changed picture: python -m tests.benchmarks.preview_latency

JupyterLab and Chromium run as in the browser tests. The clock is the page's own: it starts at the
key's event and stops when the picture in the page is another one, and again when that is painted.
"""

from __future__ import annotations

import statistics
import tempfile
from pathlib import Path
from typing import Any

from tests.notebook.lab import Tab, new_tab, running_chromium, running_lab

PRESSES = 25

CLOCK = """() => {
    window.took = [];
    let pressed = 0;
    document.addEventListener('keydown', event => { pressed = event.timeStamp; }, true);
    new MutationObserver(() => {
        const changed = performance.now();
        requestAnimationFrame(() => setTimeout(() =>
            took.push([changed - pressed, performance.now() - pressed])));
    }).observe(document.querySelector('.pattern-preview'), {childList: true, subtree: true});
}"""


def measure(tab: Tab) -> list[Any]:
    """Return (ms to the changed page, ms until painted) of each press, one at a time."""
    tab.open("notebooks/00_start_here.ipynb")
    tab.run_to_bench()
    tab.page.locator(".choice-bust-ease .noUi-handle").focus()
    tab.page.evaluate(CLOCK)
    for count in range(PRESSES + 1):
        tab.page.keyboard.press("ArrowRight" if count % 2 == 0 else "ArrowLeft")
        tab.page.wait_for_function("count => took.length > count", arg=count)
        tab.page.wait_for_timeout(50)
    return list(tab.page.evaluate("took"))[1:]  # the first draws with cold caches


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        root, home = Path(folder) / "work", Path(folder) / "home"
        root.mkdir()
        home.mkdir()
        with (
            running_lab(root, home) as lab,
            running_chromium() as browser,
            new_tab(browser, lab) as tab,
        ):
            took = measure(tab)
    for name, times in zip(("in the page", "painted"), zip(*took, strict=True), strict=True):
        tenth = statistics.quantiles(times, n=10)[-1]
        print(
            f"key to picture {name}: median {statistics.median(times):.0f} ms, p90 {tenth:.0f} ms"
        )


if __name__ == "__main__":
    main()
