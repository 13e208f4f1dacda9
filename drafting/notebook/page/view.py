"""One place on a page, filled with a view of the costume that is chosen, and filled again when another is."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import ipywidgets as widgets

from drafting.ground.errors import DraftError
from drafting.notebook.errors_said import OURS, sentence
from drafting.notebook.living.bar import LivingBar, has_bar, in_watched_box
from drafting.notebook.living.journal import changed_words
from drafting.notebook.living.living import Living
from drafting.notebook.said import paragraphs_html, refused_html

Builds = Callable[[], Any]
"""Makes what is to be shown; raises `DraftError` where it is not possible, `NothingToShow` where there is none."""


class NothingToShow(Exception):  # noqa: N818 - nothing went wrong
    """This costume has nothing for this view: the words say what there is instead."""


class PageView:
    """A view of the page's costume. Show it as the last line of a cell; `shown` is what it holds.

    Where the kernel is gone it says so (`watch`), and no control of it takes typing any more.

    What cannot be shown is said in words in its place, in her `unit`. `trouble` holds a fault of the kit's own.
    """

    def __init__(
        self, build: Builds, unit: Callable[[], str | None] = lambda: None, *, watch: bool = True
    ) -> None:
        self.build, self.unit, self.trouble, self.watch = build, unit, "", watch
        self.shown: Any = None
        self.box = widgets.VBox(layout=widgets.Layout(width="100%"))
        self.renew()

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.box._repr_mimebundle_(**asked)

    def renew(self) -> None:
        """Make the view anew, of the costume that is chosen now."""
        self.close()
        self.shown, self.trouble = None, ""
        try:
            self.shown = self.build()
            shown = self.shown.view
        except NothingToShow as nothing:
            shown = _words(paragraphs_html([str(nothing)]))
        except DraftError as error:
            shown = _words(refused_html(sentence(error, self.unit())))
        except Exception as error:
            self.trouble = f"{OURS} ({type(error).__name__}: {error})."
            self.box.children = [_words(refused_html(self.trouble))]
            raise
        # Only what a hand can move has to say that nothing follows it.
        moves = self.watch and self.shown is not None and not isinstance(self.shown, Sentences)
        keeps = getattr(self.shown, "keeps", False)
        self.box.children = [in_watched_box(shown, keeps) if moves and not has_bar(shown) else shown]

    def close(self) -> None:
        """Let go what is shown, so that it hears of no more changes."""
        close = getattr(self.shown, "close", None)
        if close:
            close()


class Folded:
    """A view that is made when a hand opens it, and folded away again by the next press."""

    def __init__(self, words: str, build: Builds, unit: Callable[[], str | None] = lambda: None) -> None:
        self.build, self.unit = build, unit
        self.opened: PageView | None = None
        self.press = widgets.ToggleButton(
            description=words, layout=widgets.Layout(width="auto", align_self="flex-start")
        )
        self.press.add_class("unfold")
        self.press.observe(lambda change: self._show(change["new"]), names="value")
        self.holder = widgets.VBox()
        self.view = widgets.VBox([self.press, self.holder], layout=widgets.Layout(width="100%"))

    def _show(self, opened: bool) -> None:
        if opened and self.opened is None:
            self.opened = PageView(self.build, self.unit, watch=False)  # it stands in a view that is watched
        self.holder.children = [self.opened.box] if opened and self.opened else []

    def close(self) -> None:
        if self.opened:
            self.opened.close()


class Following:
    """A view made of the costume as it stood: it says when that has changed, and is made anew on a word.

    `make` makes the view of a living costume, a thing with a `view` of its own.
    """

    def __init__(self, living: Living, make: Callable[[Living], Any]) -> None:
        self.living, self.make = living, make
        self.bar = LivingBar(offer="Show it as it is now")
        self.bar.on_follow(self.follow)
        self.said = widgets.HTML()
        self.asked = living.asked
        self.made = make(living)
        self.holder = widgets.VBox([self.made.view])
        self.view = widgets.VBox([self.bar, self.said, self.holder])
        self.view.add_class("living-view")
        living.hear(self.heard)

    def heard(self, _: object) -> None:
        """Tell that what is shown is of an earlier costume."""
        self.bar.tell(self.living, changed_words(self.asked, self.living.asked))

    def follow(self) -> None:
        """Make the view anew of the costume as it stands now; a refusal leaves the old one."""
        asked = self.living.asked
        try:
            made = self.make(self.living)
        except DraftError as error:
            self.said.value = refused_html(sentence(error, self.living.asked.told_in))
            return
        self.asked, self.made, self.said.value = asked, made, ""
        self.holder.children = [made.view]
        self.heard(None)

    def close(self) -> None:
        self.living.leave(self.heard)


class Sentences:
    """Sentences in a view's place."""

    def __init__(self, *rows: str) -> None:
        self.rows = rows
        self.view = _words(paragraphs_html(rows))


def _words(html: str) -> Any:
    words = widgets.HTML(html)
    words.add_class("page-said")
    return words
