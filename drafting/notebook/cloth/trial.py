"""A test of the cloth on the screen: controls, a picture that follows them, words, and what was refused."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

import ipywidgets as widgets

from drafting.notebook.cloth.controls import panel
from drafting.notebook.cloth.inch_slider import InchSlider
from drafting.notebook.cloth.readings import KeptReadings, SliderFigures
from drafting.notebook.cloth.ruled import Ruled
from drafting.notebook.errors_said import plainly
from drafting.notebook.said import paragraphs_html, refused_html, status_html


class Trial:
    """What the tests share. `ask` takes one figure by its name; what it refuses is said, and the picture stays.

    What a hand told is kept until it is saved: `readings` says where. Show it as the last line of a cell.
    """

    ruled: Ruled
    readings: KeptReadings

    def __init__(
        self, name: str, controls: Mapping[str, Any], ask: Callable[[str, Any], None], buttons: Sequence[Any] = ()
    ) -> None:
        self.bringing = False
        self.controls = dict(controls)
        self.picture, self.said = widgets.HTML(), widgets.HTML()
        self.refused, self.done = widgets.HTML(), widgets.HTML()
        for key, control in self.controls.items():
            control.add_class(f"{name}-{key}")
            control.observe(
                lambda change, key=key: plainly(lambda: ask(key, change["new"]), self.say, self.ruled.unit),
                names="value",
            )
            if isinstance(control, InchSlider):
                control.field.observe(
                    lambda change, take=control.take: plainly(
                        lambda: take(change["new"]), self.say, self.ruled.unit
                    ),
                    names="value",
                )
        flow = widgets.Layout(flex_flow="row wrap", align_items="center")
        row = widgets.HBox([*buttons, self.done], layout=flow)
        self.view = panel(*self.controls.values(), self.picture, self.refused, self.said, row)

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.view._repr_mimebundle_(**asked)

    def show(self, picture: str, sentences: Sequence[str]) -> None:
        """Draw `picture` and say `sentences`; what was done or refused before is gone."""
        self.picture.value, self.said.value = picture, paragraphs_html(sentences)
        self.tell("")
        self.say("")

    @property
    def keeps(self) -> bool:
        """Whether what the sliders say is on disk."""
        return self.readings.place is not None

    def bring(self, figures: SliderFigures) -> None:
        """Put figures on the sliders that no hand told."""
        self.bringing = True
        try:
            for name, figure in figures.items():
                self.controls[name].value = figure
        finally:
            self.bringing = False

    def keep(self, strip: str, figures: SliderFigures, stood: SliderFigures) -> None:
        """Keep what a hand told of a strip, where it is not what `stood` before; say so. Raises `OSError`.

        A slider goes to the nearest of its steps by itself: that is told by no hand.
        """
        if self.bringing:
            return
        same = all(abs(figure - stood[name]) <= self._half_step(name) for name, figure in figures.items())
        self.readings.keep(strip, None if same else figures)
        self.tell_kept(strip)

    def _half_step(self, name: str) -> float:
        control = self.controls[name]
        step = float(getattr(control, "slider", control).step)
        return 0.51 * (self.ruled.mm(step) if name in self.readings.lengths else step)

    def tell_kept(self, strip: str) -> None:
        """Say where the readings of a strip are kept that no file of a cloth holds."""
        if self.readings.place and strip in self.readings.before():
            self.tell(f"{'Not saved yet, kept' if strip else 'Kept'} in {self.readings.place.name}.")

    def tell(self, words: str) -> None:
        """Say what was done."""
        self.done.value = status_html(words)

    def say(self, words: str) -> None:
        """Say what was refused."""
        self.refused.value = refused_html(words)
