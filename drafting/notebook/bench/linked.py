"""Choices as widgets of their own, for authors of notebooks: observed, linked, handed to `interactive`.

ease = bench.choice("bust_ease")
ease.observe(lambda change: print(change["new"]), names="value")
ease.value = 120.0                         # mm; the bench follows, as it does to the hand
"""

from __future__ import annotations

from functools import partial
from typing import Any

import ipywidgets as widgets

from drafting.checks.words import capital
from drafting.ground.choices import Choice
from drafting.notebook.bench import state as st
from drafting.notebook.bench.controls import label
from drafting.notebook.living.parts import choice_of


class Linked:
    """The widgets that a bench has handed out, by garment and choice; each is one for good.

    A widget's `value` is in the choice's own unit (mm, degrees, a word, yes or no), and is what is asked
    for: set, it moves the bench; where the bench is moved, it follows. What it asks for of a garment
    that is not shown turns the bench to that garment.
    """

    def __init__(self, bench: Any) -> None:
        self.bench = bench
        self.given: dict[tuple[str, str], Any] = {}
        self.strokes = 0

    def widget(self, name: str) -> Any:
        """Return the widget of a choice of the garment shown; raises `InputError` for one there is not."""
        garment = self.bench.garment
        if (garment, name) not in self.given:
            choice = choice_of(self.bench.costume, garment, name)
            made = _made(choice, st.asked_values(self.bench.standing)[name])
            made.observe(partial(self._moved, garment, name), names="value")
            self.given[garment, name] = made
        return self.given[garment, name]

    def follow(self) -> None:
        """Bring the widgets of the garment shown to what is asked for."""
        if self.given:
            values = st.asked_values(self.bench.standing)
            for (garment, name), given in self.given.items():
                if garment == self.bench.garment and given.value != values[name]:
                    given.value = values[name]

    def _moved(self, garment: str, name: str, change: Any) -> None:
        self.bench.show_garment(garment)
        if st.asked_values(self.bench.standing)[name] != change["new"]:
            self.strokes -= 1  # a step of undo of its own; a hand's strokes count upwards
            self.bench.ask(name, change["new"], self.strokes)


def _made(choice: Choice, value: Any) -> Any:
    """Return a control of `ipywidgets` for a choice: a number, a list of words, or a tick."""
    words = f"{label(choice)}, mm" if choice.unit == "mm" else label(choice)
    looks = {"description": words, "style": {"description_width": "initial"}}
    if choice.unit == "word":
        return widgets.Dropdown(
            options=[(capital(w.replace("_", " ")), w) for w in choice.words], value=value, **looks
        )
    if choice.unit == "yes/no":
        return widgets.Checkbox(value=value, indent=False, **looks)
    if choice.unit == "count":
        return widgets.IntText(value=round(value), **looks)
    return widgets.FloatText(value=value, step=choice.step, **looks)
