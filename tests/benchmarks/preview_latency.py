"""From a key pressed on a slider to the changed picture: python -m tests.benchmarks.preview_latency [presses]

JupyterLab and Chromium run as in the browser tests. The clock is the page's own: it starts at the
key's event and stops when the picture in the page is another one, and again when that is painted.
Every press gives a value that was not there before, so that nothing of the changed pieces is
remembered. A hand that rests between two steps the same way finds the next one drafted already; a
drag, a key held down and a turn do not. So each case has two benches, one of which never looks ahead.
A plain `interact` that draws the same pieces with matplotlib runs beside them.

The machine counts: `busy` is the load of the last minute on each of its processors. So what is wanted is a
share of the plain redraw, measured in the same run: `STEP_BY_STEP` and `SURPRISED_BY`.
"""

from __future__ import annotations

import json
import os
import statistics
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tests.notebook.lab import Tab, new_tab, running_chromium, running_lab

PRESSES = 25

STEP_BY_STEP, SURPRISED_BY = 0.2, 0.4
"""Of what the plain redraw takes: what a press should take at most, the next step ready or not."""

REST = 400
"""ms between two presses: findings come after the picture, then a step is drafted ahead."""

COLD = 3
"""Presses before the clock counts: the first draw with cold caches."""

NOTEBOOK = "notebooks/how_fast.ipynb"


@dataclass(frozen=True)
class Case:
    """A garment and the choice whose slider is pressed."""

    title: str
    costume: str
    garment: str
    choice: str


CASES = (
    Case("bodice + sleeve (a shirt of ten pieces)", "lamplighter", "shirt", "bust_ease"),
    Case("trousers, breeches", "lamplighter", "breeches", "hip_ease"),
    Case("trousers, flared", "kite", "trouser", "hem_width"),
    Case("fitted top with set-in sleeve", "fitted", "top", "bust_ease"),
    Case("whole tailcoat, its flare", "lamplighter", "coat", "flare"),
    Case("whole tailcoat, its bust ease", "lamplighter", "coat", "bust_ease"),
)

FITTED = """
title = "A fitted top"
wearer = "../bodies/kite.toml"

[fabrics]
shell = "../fabrics/striped-shirting.toml"

[garments.top]
block = "fitted-top"
fabric = "shell"
"""
"""A costume beside those that come with the kit."""

BEGIN = """
import matplotlib.pyplot as plt
from ipywidgets import FloatSlider, interact
from drafting.costume.file import read_costume
from drafting.notebook import Bench, costume_path
from drafting.notebook.bench import state as standing
"""

BENCH = """
Bench(read_costume(costume_path("{costume}")), "{garment}", ["{choice}"])
"""

SURPRISED = """
bench = Bench(read_costume(costume_path("{costume}")), "{garment}", ["{choice}"])
bench.looks.ask = lambda: None
bench.ask("{choice}", standing.asked_values(bench.standing)["{choice}"] + 0.37)  # other values too
bench
"""

PLAIN = """
def plainly(begun):
    least = standing.values_of(begun.made, "{garment}")["{choice}"]

    def redraw(more):
        made = standing.asked_for(begun, "{garment}", "{choice}", least + more).made
        figure, axes = plt.subplots(figsize=(8, 5))
        x = 0.0
        for piece in made.garments[0].pattern.pieces:
            lines = [piece.cut, *(edge.path for edge in piece.piece.edges)]
            lines += [stroke for notch in piece.notches for stroke in notch.strokes]
            left, _, right, _ = piece.cut.bounds
            for line in lines:
                points = line.points(0.2)
                axes.plot(points.real - left + x, points.imag, "k", lw=0.7)
            x += right - left + 40
        axes.set_aspect("equal")
        plt.show()

    return redraw

begun = standing.begin_standing(read_costume(costume_path("{costume}")), "{garment}")
interact(plainly(begun), more=FloatSlider(value=0, min=0, max=60, step=1));
"""

CLOCK = """([place, what]) => {
    window.took = [];
    let pressed = 0, last = null;
    const shown = () => {
        const now = place.querySelector(what === 'svg' ? '.pattern-preview svg' : 'img');
        return now && (now.src || [...now.querySelectorAll('.cut-line')].map(p => p.getAttribute('d')).join());
    };
    last = shown();
    document.addEventListener('keydown', event => { pressed = event.timeStamp; }, true);
    window.clock?.disconnect();
    window.clock = new MutationObserver(() => {
        const changed = performance.now(), now = shown();
        if (!now || now === last) return;
        last = now;
        requestAnimationFrame(() => setTimeout(() =>
            took.push([changed - pressed, performance.now() - pressed])));
    });
    window.clock.observe(place, {childList: true, subtree: true, attributes: true});
}"""


def written(place: Path) -> None:
    """Write the notebook: a bench and a plain redraw for each case, a cell each."""
    cells = [BEGIN, *(text.format(**vars(case)) for case in CASES for text in (BENCH, SURPRISED, PLAIN))]
    book = {
        "cells": [
            {
                "cell_type": "code",
                "execution_count": None,
                "id": f"c{i}",
                "metadata": {},
                "outputs": [],
                "source": text.strip(),
            }
            for i, text in enumerate(cells)
        ],
        "metadata": {"kernelspec": {"name": "python3", "display_name": "Python 3"}},
        "nbformat": 4,
        "nbformat_minor": 5,
    }
    place.write_text(json.dumps(book), encoding="utf-8")


def measured(tab: Tab, cell: int, slider: str, what: str, presses: int) -> list[Any]:
    """Return (ms to the changed page, ms until painted) of each press, one at a time."""
    place = tab.page.locator(".jp-CodeCell").nth(cell)
    place.evaluate("cell => cell.scrollIntoView({block: 'start'})")
    handle = place.locator(slider)
    handle.focus()
    tab.page.wait_for_timeout(500)
    tab.page.evaluate(CLOCK, [place.element_handle(), what])
    for count in range(COLD + presses):
        tab.page.keyboard.press("ArrowRight")
        # Asked seldom: by default a page is asked at every frame, which draws frames of its own.
        tab.page.wait_for_function("count => took.length > count", arg=count, polling=100)
        tab.page.wait_for_timeout(REST)
    return list(tab.page.evaluate("took"))[COLD:]


def told(case: Case, ahead: list[Any], surprised: list[Any], plain: list[Any]) -> str:
    busy = os.getloadavg()[0] / (os.cpu_count() or 1)
    other = statistics.median(shown for shown, _ in plain)
    return (
        f"{case.title:40} step by step {_figures(ahead, other, STEP_BY_STEP)}; surprised "
        f"{_figures(surprised, other, SURPRISED_BY)}; interact + matplotlib {other:.0f} ms; busy {busy:.1f}"
    )


def _figures(took: list[Any], other: float, wanted: float) -> str:
    shown, painted = zip(*took, strict=True)
    middle, tenth = statistics.median(shown), statistics.quantiles(shown, n=10)[-1]
    share = f"{middle / other:.2f} (wanted {wanted})"
    return f"{share} {middle:.0f} ms, 90 % under {tenth:.0f}, painted {statistics.median(painted):.0f}"


def main(presses: int = PRESSES) -> None:
    with tempfile.TemporaryDirectory() as folder:
        root, home = Path(folder) / "work", Path(folder) / "home"
        root.mkdir()
        home.mkdir()
        with running_lab(root, home) as lab, running_chromium() as browser, new_tab(browser, lab) as tab:
            written(root / NOTEBOOK)
            (root / "measurements/costumes/fitted.toml").write_text(FITTED, encoding="utf-8")
            tab.open(NOTEBOOK)
            if not tab.run_all():
                raise RuntimeError(f"the notebook does not run: {tab.kernel_faults()}")
            for i, case in enumerate(CASES):
                slider = f".choice-{case.choice.replace('_', '-')} input[type=range]"
                ours = [measured(tab, 1 + 3 * i + k, slider, "svg", presses) for k in (0, 1)]
                plain = measured(tab, 3 + 3 * i, ".noUi-handle", "img", presses)
                print(told(case, *ours, plain), flush=True)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else PRESSES)
