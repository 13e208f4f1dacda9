"""The button that writes the whole costume out: pieces, sheets, lays as they stand, plan."""

from __future__ import annotations

import ipywidgets as widgets

from drafting.costume.file import CostumeFile
from drafting.notebook.bench.write_out import WriteOut
from drafting.notebook.living.bar import LivingBar
from drafting.notebook.living.journal import changed_words
from drafting.notebook.living.living import Living
from drafting.notebook.said import refused_html


class Writing:
    """Writes the costume as it is asked for at that moment into its own folder; it stays until the next press."""

    def __init__(self, living: Living) -> None:
        self.living = living
        self.said, self.bar = widgets.HTML(), LivingBar(offer="Write it again")
        self.out = WriteOut(self._wanted, None, self._say, living.standing_lays, lambda: living.asked.told_in)
        self.bar.on_follow(self.out.begin)
        self.view = widgets.VBox([self.bar, self.out.view, self.said])
        self.view.add_class("living-view")
        self.written: CostumeFile | None = None
        living.hear(self.heard)

    def _wanted(self) -> CostumeFile:
        self.written = self.living.asked
        self.heard(None)
        return self.living.asked

    def heard(self, _: object) -> None:
        """Tell that what was written is of an earlier costume."""
        stale = changed_words(self.written, self.living.asked) if self.written else ()
        self.bar.tell(self.living, stale)

    def close(self) -> None:
        """Let it go: it hears of no more changes."""
        self.living.leave(self.heard)

    def _say(self, words: str) -> None:
        self.said.value = refused_html(words)
