"""One trial of a cloth, with a choice of which of the costume's cloths it is."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from drafting.ground.errors import DraftError
from drafting.notebook.cloth.told import cloth_holds, cloth_numbers
from drafting.notebook.errors_said import sentence
from drafting.notebook.said import paragraphs_html, refused_html


class OfCloth:
    """Shows what `shows` makes of a cloth's file, given its `unit`; `test` is that."""

    def __init__(self, files: Mapping[str, Path], shows: Callable[..., Any], unit: str | None = None) -> None:
        self.shows, self.unit = shows, unit
        self.test: Any = None
        self.choice = widgets.Dropdown(options=list(files.items()), description="Cloth")
        self.choice.add_class("which-cloth")
        self.choice.observe(lambda _: self._show(), names="value")
        self.holder = widgets.VBox()
        self.view = widgets.VBox([self.choice, self.holder])
        self._show()

    @property
    def keeps(self) -> bool:
        """Whether what a hand tells it is on disk."""
        return getattr(self.test, "keeps", False)

    def _show(self) -> None:
        self.test = None
        try:
            self.test = self.shows(self.choice.value, unit=self.unit)
            self.holder.children = [self.test.view]
        except DraftError as error:
            self.holder.children = [widgets.HTML(refused_html(sentence(error, self.unit)))]


class ClothTold:
    """What a cloth is taken for, each number measured or a guess, and what such a cloth holds."""

    def __init__(self, file: Path, unit: str | None = None) -> None:
        self.view = widgets.HTML(paragraphs_html((*cloth_numbers(file, unit), *cloth_holds(file, unit))))
