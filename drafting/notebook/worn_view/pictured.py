"""A picture on the page that says in words what it shows."""

from __future__ import annotations

import base64

import ipywidgets as widgets

from drafting.ground.templates import macros


class Pictured:
    """One picture with its caption; `value` holds the PNG. `name` tells it from others (`img.worn-NAME`)."""

    def __init__(self, name: str) -> None:
        self.name, self.value = name, b""
        self.html = widgets.HTML()
        self.view = widgets.VBox([widgets.Label(name), self.html])

    def show(self, png: bytes, said: str) -> None:
        """Show a PNG; `said` is what it shows, for those who do not see it."""
        self.value = png
        self.html.value = macros(__file__).pictured(self.name, said, base64.b64encode(png).decode("ascii"))
