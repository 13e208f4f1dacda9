"""The bar of a view of a living costume: what is kept where, what is stale, and the way back."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import anywidget
import ipywidgets as widgets
import traitlets

from drafting.ground import palette
from drafting.ground.templates import beside
from drafting.notebook.living.living import Living

MOST = 3
"""Changes named before the rest is only counted (ours)."""


class LivingBar(anywidget.AnyWidget):
    """Says how a view stands to its costume. The page offers to `follow`; `follows` counts the presses.
    `keeps` says that all that was chosen in the view is on disk.

    Where the kernel is gone the page alone says so: it makes the view's controls inert and offers to
    run the page again.
    """

    _esm = Path(__file__).with_suffix(".js")
    _css = palette.css() + beside(__file__, ".css")
    words = traitlets.Unicode("").tag(sync=True)
    stale = traitlets.Unicode("").tag(sync=True)
    offer = traitlets.Unicode("Follow").tag(sync=True)
    follows = traitlets.Int(0).tag(sync=True)
    keeps = traitlets.Bool(True).tag(sync=True)

    def __init__(self, **given: Any) -> None:
        super().__init__(**given)
        self.on_msg(self._answer)

    def _answer(self, _: object, asked: Any, __: object) -> None:
        if asked.get("there"):
            self.send({"here": True})

    def on_follow(self, do: Callable[[], None]) -> None:
        """Have `do` run whenever the maker wants to follow."""
        self.observe(lambda _: do(), names="follows")

    def tell(self, living: Living, stale: Sequence[str]) -> None:
        """Show how the view stands: `stale` is what it does not show yet."""
        self.words, self.stale = standing_words(living), stale_words(stale)


def in_watched_box(view: Any, keeps: bool) -> Any:
    """Return a box with a view in it that says where its kernel is gone, as a view with its own bar does."""
    box = widgets.VBox([watching_bar(keeps), view], layout=widgets.Layout(width="100%"))
    box.add_class("living-view")
    return box


def watching_bar(keeps: bool) -> LivingBar:
    """Return a bar that takes no place until the kernel is gone."""
    bar = LivingBar(keeps=keeps)
    bar.add_class("watches")
    return bar


def has_bar(view: Any) -> bool:
    """Return whether a bar stands in a view already."""
    return isinstance(view, LivingBar) or any(map(has_bar, getattr(view, "children", ())))


def standing_words(living: Living) -> str:
    """Return where the choices stand: in the file, or beside it."""
    troubles = " ".join(filter(None, (living.trouble, living.unkept)))
    if troubles:
        return troubles
    count = len(living.unsaved)
    if not count:
        return ""
    which = "1 choice is" if count == 1 else f"{count} choices are"
    if living.journal is None:
        return f"{which} not yet in {living.path.name}."
    back = " Choices from an earlier visit stand as you left them." if living.restored else ""
    return f"{which} kept in {living.journal.name}, not yet in {living.path.name}.{back}"


def stale_words(stale: Sequence[str]) -> str:
    """Return what was changed elsewhere, in a sentence.

    >>> stale_words(["shirt: bust ease", "the cloths"])
    'Changed since: shirt: bust ease, the cloths.'
    """
    if not stale:
        return ""
    rest = len(stale) - MOST
    more = f" and {rest} more" if rest > 0 else ""
    return f"Changed since: {', '.join(stale[:MOST])}{more}."
