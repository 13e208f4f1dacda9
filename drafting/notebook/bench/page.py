"""What the bench shows: its widgets, where they stand, and what each button does."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

import ipywidgets as widgets

from drafting.ground.errors import InputError
from drafting.ground.templates import beside
from drafting.notebook.bench.fields import Knobs
from drafting.notebook.bench.sampling import Sampling
from drafting.notebook.bench.write_out import WriteOut, button
from drafting.notebook.living import saving
from drafting.notebook.living.bar import LivingBar
from drafting.notebook.picture import Preview
from drafting.notebook.said import status_html, style_html

UNITS = (("cm", "cm"), ("inches", "in"))


class BenchPage:
    """The widgets of a bench, which is asked for everything that they do.

    `names` are the garments to choose from. Every change of theirs goes through `bench.safely`.
    """

    def __init__(self, bench: Any, names: tuple[str, ...]) -> None:
        self.bench, self.names = bench, names
        self.preview = Preview(bench.safely, [g.name for g in bench.costume.garments])
        self.picture = self.preview.html
        self.knobs = Knobs()
        self.knobs.observe(lambda change: bench.take(change["new"]), names="moves")
        self.sampling = Sampling(bench, self.knobs)
        self.findings, self.changed = widgets.HTML(), widgets.HTML()
        self.girths, self.changes = widgets.HTML(), widgets.HTML()
        self.measures, self.said, self.saved = widgets.HTML(), widgets.HTML(), widgets.HTML()
        self.writing = WriteOut(bench.wanted, bench.out, bench.say, bench.living.standing_lays, lambda: bench.unit)
        self.dress, self.unit = self._dress(), self._unit()
        self.undo = self._button("Undo", bench.undo)
        self.redo = self._button("Redo", bench.redo)
        self.reset = self._button("Reset all", bench.reset)
        self.save = self._button("Save to the costume file", self._save)
        self.copy = self._button("Save a copy", self._save_copy)
        self.copy.layout.display = "none"
        self.bar = LivingBar(offer="Draft it as it is now")
        self.bar.on_follow(lambda: bench.safely(bench.follow))
        self.view = self._laid_out()

    def show_buttons(self) -> None:
        """Show what can be undone, redone and reset, and which garment this is."""
        history, costume = self.bench.history, self.bench.costume
        self.undo.disabled = not history.past
        self.redo.disabled = not history.coming
        asked = history.now.asked
        self.reset.disabled = not any(
            keys[1] == self.bench.garment for keys in saving.changed_values(asked, costume)
        )
        self.saved.value = ""
        self.bar.tell(self.bench.living, self.bench.stale)
        if self.dress.value != self.bench.garment:
            self.dress.value = self.bench.garment

    def _dress(self) -> Any:
        options = [(name.replace("-", " "), name) for name in self.names]
        looks = {"layout": widgets.Layout(width="180px"), "style": {"description_width": "58px"}}
        dress = widgets.Dropdown(options=options, description="Garment", **looks)
        dress.layout.display = None if len(self.names) > 1 else "none"
        dress.add_class("which-garment")
        self._told(dress, self.bench.show_garment)
        return dress

    def _unit(self) -> Any:
        looks = {"layout": widgets.Layout(width="164px"), "style": {"description_width": "78px"}}
        unit = widgets.Dropdown(options=UNITS, value=self.bench.unit, description="Lengths in", **looks)
        unit.add_class("which-unit")
        self._told(unit, self.bench.show_in)
        return unit

    def _told(self, widget: Any, do: Callable[[Any], None]) -> None:
        widget.observe(lambda change: self.bench.safely(partial(do, change["new"])), names="value")

    def _button(self, words: str, do: Callable[[], None]) -> Any:
        name = words.lower().replace(" ", "-")
        return button(words, name, lambda: self.bench.safely(do))

    def _save(self) -> None:
        try:
            self._say_saved(self.bench.save())
        except InputError:
            can = isinstance(self.bench.living.read, saving.Kept)
            self.copy.layout.display = None if can else "none"
            raise

    def _save_copy(self) -> None:
        place = self.bench.save(saving.copy_place(self.bench.living.read))
        self._say_saved(place, f"To go on with it another day, open {place.stem} instead.")
        self.copy.layout.display = "none"

    def _say_saved(self, place: Any, more: str = "") -> None:
        words = f"Saved to {place}. The other lines of the file are as they were. {more}"
        self.saved.value = status_html(words)

    def _laid_out(self) -> Any:
        bar = widgets.HBox([self.dress, self.unit, self.undo, self.redo, self.reset, self.preview.tools])
        files = widgets.HBox([self.save, self.copy, self.saved])
        files.layout.flex_flow, files.layout.align_items = "row wrap", "center"
        foot = widgets.VBox([self.bar, self.changed, self.said, self.findings])
        right = widgets.VBox([self.picture, foot])
        top = widgets.HBox([self.knobs, right])
        stage = widgets.VBox([bar, top])
        named = {"bar": bar, "foot": foot, "right": right, "top": top, "stage": stage}
        for name, part in named.items():
            part.add_class(f"bench-{name}")
        numbers = widgets.HBox([self.girths, self.changes])
        numbers.layout.flex_flow = "row wrap"
        bench = widgets.VBox([stage, files, self.writing.view, numbers, self.measures])
        bench.add_class("bench")
        bench.add_class("living-view")
        style = widgets.HTML(style_html(beside(__file__, ".css")), layout=widgets.Layout(display="none"))
        return widgets.VBox([style, bench])
