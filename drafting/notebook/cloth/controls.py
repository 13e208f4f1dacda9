"""The controls that the cloth's tests share."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import ipywidgets as widgets

from drafting.ground.templates import beside
from drafting.notebook.picture.place import PicturePlace
from drafting.notebook.said import style_html

DESCRIPTION = "16em"


def slider(words: str, value: float, low: float, high: float, step: float) -> Any:
    """Return a slider whose figure can be typed too."""
    return widgets.FloatSlider(
        value=value,
        min=low,
        max=high,
        step=step,
        description=words,
        readout_format=_figures(step),
        style={"description_width": DESCRIPTION},
        layout=widgets.Layout(width="600px"),
    )


def _figures(step: float) -> str:
    """Return how a slider's figure is shown."""
    return ".2f" if step < 0.5 else ".1f" if step < 1 else ".0f"


def one_of_these(words: str, named: Mapping[str, str], value: str) -> Any:
    """Return a list to choose from: what each is called, and what it stands for."""
    return widgets.Dropdown(
        options=list(named.items()),
        value=value,
        description=words,
        style={"description_width": DESCRIPTION},
        layout=widgets.Layout(width="600px"),
    )


def press(words: str, name: str, do: Callable[[], None]) -> Any:
    """Return a button with words on it and a name for its looks."""
    button = widgets.Button(description=words, layout=widgets.Layout(width="auto"))
    button.add_class(name)
    button.on_click(lambda _: do())
    return button


def panel(*parts: Any) -> Any:
    """Return a test's controls, picture and words under one another, in the dress of this page."""
    style = widgets.HTML(style_html(beside(__file__, ".css")), layout=widgets.Layout(display="none"))
    view = widgets.VBox([style, PicturePlace(), *parts])
    view.add_class("swatch-test")
    return view
