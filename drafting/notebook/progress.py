"""How far a long work in a page has come: a bar that moves, what is being done, the time left."""

from __future__ import annotations

import time
from collections.abc import Callable

import ipywidgets as widgets

from drafting.costume.telling import time_left
from drafting.notebook.said import status_html

FINEST = 0.01
"""Share by which the bar moves at least: a finer one would only be more to send (ours)."""


class Progress:
    """A bar and a line of words; empty while nothing is being done."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self.clock, self.began, self.told = clock, clock(), ("", 0.0)
        self.bar = widgets.FloatProgress(value=0, max=1, layout=widgets.Layout(width="150px"))
        self.words = widgets.HTML()
        self.words.add_class("writing")
        self.end()

    def begin(self) -> None:
        """Begin to count the time."""
        self.began = self.clock()

    def tell(self, words: str, share: float) -> None:
        """Show what is being done, and the share of it that is done (0 to 1)."""
        if words == self.told[0] and abs(share - self.told[1]) < FINEST:
            return
        self.told = (words, share)
        self.bar.value = share
        self.bar.layout.visibility = "visible" if share > 0 else "hidden"  # empty it looks like a field
        self.words.value = f"{status_html(words)}{time_left(share, self.clock() - self.began)}"

    def end(self, words: str = "") -> None:
        """Take the bar away; leave words, if any, of how it ended."""
        self.told = ("", 0.0)
        self.bar.value, self.bar.layout.visibility = 0.0, "hidden"
        self.words.value = status_html(words)
