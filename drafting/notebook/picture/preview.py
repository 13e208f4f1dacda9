"""The picture as a widget, with the controls of how it is looked at."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from typing import Any

import ipywidgets as widgets

from drafting.checks.words import plain
from drafting.costume.make import Made
from drafting.ground.templates import beside
from drafting.ground.units import LengthUnit
from drafting.notebook.picture.drawing import garment_picture, page_of
from drafting.notebook.picture.parts import offered, shown_in
from drafting.notebook.picture.place import PicturePlace
from drafting.notebook.picture.rows import rows_for
from drafting.notebook.picture.view import View, fitted_box
from drafting.notebook.said import style_html

NOTHING = "No edge"

Told = Callable[[Callable[[], None]], None]
"""Runs what a control asks for, and tells in words what goes wrong."""


class Preview:
    """The picture (`html`) and its view controls (`tools`); `view` is how it is looked at.

    The edges are reached by keyboard through one list, `Look at`: a stop for each of some hundred
    edges would stand between a maker and the next control. What is chosen there stays lit while
    sliders move. `safely` runs what a control asks for; `garments` names all of the costume.
    """

    def __init__(self, safely: Told = lambda do: do(), garments: Sequence[str] = ()) -> None:
        self.garments = garments
        self.view, self.shown = View(), ("", "")
        self._now: tuple[Any, ...] = ()
        self._pointed = True
        self._safely = safely
        self.html = widgets.HTML(layout=widgets.Layout(width="auto", margin="0"))
        self.html.add_class("pattern-preview")
        self.buttons = {
            "Fit": self._button("Fit", "Show the whole", View.fit),
            "Closer": self._button("Closer", "Show less, and larger", View.closer),
            "Farther": self._button("Farther", "Show more, and smaller", View.farther),
        }
        self.piece = self._list("Show", "Which piece fills the picture", 42, View.of)
        self.edge = self._list("Look at", "Lights an edge and the one it is sewn to", 54, View.at)
        looks = widgets.HTML(style_html(beside(__file__, ".css")), layout=widgets.Layout(display="none"))
        wide = widgets.Button(description="Full screen", tooltip="Key F; Esc goes back")
        self.place = PicturePlace()
        wide.add_class("full-screen")
        self.place.observe(lambda change: self._safely(partial(self._placed, change["new"])), names="size")
        self.tools = widgets.HBox([looks, *self.buttons.values(), self.piece, self.edge, wide, self.place])
        self.tools.layout = widgets.Layout(flex_flow="row nowrap", align_items="center", flex="none")
        self.tools.add_class("pattern-view")

    def show(
        self, made: Made, garment: str, before: Made | None = None, unit: LengthUnit = "cm", moving: bool = False
    ) -> None:
        """Draw a garment; the page only grows until another garment or piece is shown.

        While the hand is `moving` a slider it points at no edge: what the pointer finds is drawn by `rest`.
        """
        if self._now and self._now[1] != garment:
            self.view = View(place=self.view.place)
        self._now = (made, garment, before, unit)
        self._draw(pointed=not moving)

    def rest(self) -> None:
        """Draw what the pointer finds, where it was left out while the hand moved."""
        if not self._pointed:
            self._draw()

    @property
    def ways(self) -> dict[str, Any]:
        """How `garment_svg` draws as this picture does."""
        return {"view": self.view, "garments": self.garments}

    def look(self, view: View) -> None:
        """Show what stands in another view; nothing is drafted for it."""
        if view != self.view and self._now:
            self.view = view
            self._draw()

    def _placed(self, size: Sequence[float]) -> None:
        self.look(self.view.placed((float(size[0]), float(size[1]))))

    def _draw(self, pointed: bool = True) -> None:
        made, garment, before, unit = self._now
        shown, pieces = made[garment], {piece.name: piece for piece in made[garment].draft.pieces}
        parts = offered(pieces.values())
        if self.view.piece not in parts:
            self.view = self.view.of("")
        rows = rows_for(shown_in(shown.pattern, self.view.piece), self.view.place, self.view.rows)
        if rows != self.view.rows:
            self.view = replace(self.view, rows=rows, least=None)
        page = page_of(made, garment, self.view, self.garments)
        self.view = replace(self.view, least=fitted_box(page, self.view))
        self.html.value = garment_picture(page, shown, before, self.view, unit, pointed)
        self._pointed = pointed
        within = [cut.piece for cut in shown_in(shown.pattern, self.view.piece).pieces]
        self._offer(self.piece, parts)
        edges = {f"{p.name}.{e.name}": f"{plain(p.name)}: {plain(e.name)}" for p in within for e in p.edges}
        self._offer(self.edge, {"": NOTHING, **edges})
        self._settle()

    def _settle(self) -> None:
        """Bring lists and buttons to what the view says."""
        known = {value for _, value in self.edge.options}
        if self.view.edge not in known:
            self.view = self.view.at("")
        self.piece.value, self.edge.value = self.view.piece, self.view.edge
        self.buttons["Farther"].disabled = self.view.zoom <= 1

    def _offer(self, control: Any, names: dict[str, str]) -> None:
        options = tuple((words, name) for name, words in names.items())
        if control.options != options:
            control.options = options

    def _button(self, words: str, meaning: str, turn: Callable[[View], View]) -> Any:
        button = widgets.Button(description=words, tooltip=meaning)
        button.add_class(f"view-{words.lower()}")
        button.on_click(lambda _: self._safely(lambda: self.look(turn(self.view))))
        return button

    def _list(self, words: str, meaning: str, wide: int, turn: Callable[[View, str], View]) -> Any:
        found = widgets.Dropdown(
            options=((words, ""),),
            description=words,
            tooltip=meaning,
            style={"description_width": f"{wide}px"},
            layout=widgets.Layout(width="190px"),
        )
        found.add_class(f"view-{words.lower().replace(' ', '-')}")

        def chosen(change: Any) -> None:
            if change["new"] is not None:
                self._safely(partial(self._chosen, turn, change["new"]))

        found.observe(chosen, names="value")
        return found

    def _chosen(self, turn: Callable[[View, str], View], name: str) -> None:
        self.look(turn(self.view, name))
