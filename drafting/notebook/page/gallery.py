"""The costumes at hand, each with its pieces: a press chooses one."""

from __future__ import annotations

import threading
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import anywidget
import traitlets

from drafting.costume.file import read_costume
from drafting.costume.make import finished
from drafting.export.svg import svg_text
from drafting.ground import palette
from drafting.ground.errors import DraftError
from drafting.ground.templates import beside
from drafting.notebook.errors_said import sentence
from drafting.notebook.living.chosen import AtHand
from drafting.sheet.overview import overview_sheet

MOST = 24
"""Costumes that are drawn; a drawing takes a second (ours)."""


class Cards(anywidget.AnyWidget):
    """The cards on the page: `cards` is `[{"name", "title", "place", "picture", "said"}]`.

    `picked` is `{"name", "n"}`.
    """

    _esm = Path(__file__).with_suffix(".js")
    _css = palette.css() + beside(__file__, ".css")
    cards: Any = traitlets.List([]).tag(sync=True)
    chosen = traitlets.Unicode("").tag(sync=True)
    picked = traitlets.Dict({}).tag(sync=True)


class Gallery:
    """A card for each costume; the pictures come one after the other, and nothing waits for them."""

    def __init__(self, costumes: Sequence[AtHand], chosen: Path, pick: Callable[[AtHand], None]) -> None:
        self.costumes, self.pick = {str(at.path): at for at in costumes}, pick
        self.view = Cards(chosen=str(chosen))
        self.view.cards = [_row(at) for at in self.costumes.values()]
        self.view.observe(lambda change: self._picked(change["new"]), names="picked")
        self._closed = threading.Event()
        self.drawing = threading.Thread(target=self._draw, daemon=True)
        self.drawing.start()

    def close(self) -> None:
        """Let it go: nothing more is drawn."""
        self._closed.set()

    def chose(self, path: Path) -> bool:
        """Mark the costume that is chosen now; return whether it has a card here."""
        known = str(path) in self.costumes
        if known:
            self.view.chosen = str(path)
        return known

    def _picked(self, picked: Any) -> None:
        at = self.costumes.get(picked.get("name", ""))
        if at:
            self.pick(at)

    def _draw(self) -> None:
        for at in list(self.costumes.values())[:MOST]:
            if self._closed.is_set():
                return
            drawn = card(at)
            self.view.cards = [drawn if one["name"] == drawn["name"] else one for one in self.view.cards]


def card(at: AtHand) -> dict[str, str]:
    """Return the card of a costume: its pieces, or in words why they cannot be drawn."""
    row, unit = _row(at), None
    try:
        costume = read_costume(at.path)
        unit = costume.told_in
        made = finished(costume)
        patterns = [garment.pattern for garment in made.garments]
        return row | {"picture": svg_text(overview_sheet(patterns, bar=False), fit=True)}
    except DraftError as error:
        return row | {"said": f"It cannot be drafted yet. {sentence(error, unit)}"}


def _row(at: AtHand) -> dict[str, str]:
    return {"name": str(at.path), "title": at.title, "place": at.place, "picture": "", "said": ""}
