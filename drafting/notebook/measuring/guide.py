"""The measuring guide: a field for each measure, the figure beside it, the tape of the field in use."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from drafting.body import Body, wearer
from drafting.body.other_unit import NAMES
from drafting.checks.words import capital, plain
from drafting.costume.next_measure import Gain, next_measures
from drafting.ground.errors import DraftError
from drafting.ground.templates import macros
from drafting.notebook.errors_said import plainly
from drafting.notebook.measuring import state as ms
from drafting.notebook.measuring.fields import Field, said_html
from drafting.notebook.measuring.kept import keep_typed, taking_place, typed_before
from drafting.notebook.measuring.looks import style
from drafting.notebook.measuring.order import GROUPS, ORDER, Group
from drafting.notebook.measuring.picture import figure_picture
from drafting.notebook.measuring.words import answered, measured_of, placeholder, question, said_beside
from drafting.notebook.picture.place import PicturePlace
from drafting.notebook.when_resting import Later

STAND_IN = {"height": 1700.0, "bust_girth": 940.0, "waist_girth": 800.0, "hip_girth": 990.0}
"""mm: the figure shown until the four measures are there; invented, nobody's."""

STAND_IN_TITLE = "A figure to look at, until height, bust, waist and hip are there"


class MeasuringGuide:
    """Measure a wearer, field by field. Show it as the last line of a cell.

    `file` is the wearer's body file, which the button writes back. `taking` is all that the guide
    knows; what is typed and not saved yet is kept beside the file. Raises `InputError` for a file that is
    missing or no TOML; measures that are missing or wrong are said at their fields.
    """

    keeps = True
    """What is typed is on disk."""

    def __init__(self, file: Path | str) -> None:
        begun = ms.begin_measuring(file)
        self.taking = ms.typed_again(begun, typed_before(begun.path))
        self.fields = {name: self._field(name) for name in ORDER}
        self.picture = widgets.HTML()
        self.message = widgets.HTML()
        self.asked, self.ask_text = widgets.VBox(), widgets.HTML()
        self.yes = self._button("", partial(self.answer, True))
        self.no = self._button("No, leave it", partial(self.answer, False))
        self.next = self._button("", self._go_next)
        self.save_button = self._button("Save the measures", self.save)
        self.apart = widgets.Checkbox(
            description="Left and right apart, all over", indent=False, layout=widgets.Layout(width="auto")
        )
        self.apart.observe(lambda _: self._show_hands(), names="value")
        self.gain: Gain | None = None
        self.seeking = Later(partial(self._safely, self._show_next))
        self.view = self._laid_out()
        self._show()

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.view._repr_mimebundle_(**asked)

    @property
    def body(self) -> Body | None:
        """The last body that could be read from the fields."""
        return self.taking.body

    def type(self, name: str, *texts: str) -> None:
        """Put one text, or one for each hand, into the field of a measure."""
        self.taking = ms.typed(self.taking, name, texts)
        self._show()
        keep_typed(self.taking, name)

    def answer(self, yes: bool) -> None:
        """Answer the question whether some measures are in another unit."""
        asked = question(self.taking)
        if asked is not None:
            self.taking = answered(self.taking, asked, yes)
            self._show()
            keep_typed(self.taking, *ORDER)

    def save(self) -> Path:
        """Write the measures back to the file, its comments kept; raises `DraftError`."""
        names = ms.changed(self.taking)
        self.taking = ms.saved(self.taking)
        keep_typed(self.taking, *names)
        what = ", ".join(plain(name) for name in names) or "nothing had changed"
        self._say(f"Saved to {self.taking.path.name}: {what}.")
        return self.taking.path

    def _field(self, name: str) -> Field:
        def changed(texts: ms.Hands) -> None:
            self._safely(lambda: self.type(name, *texts))

        return Field(name, self.taking.fields.get(name, ()), changed)

    def _button(self, label: str, do: Callable[[], Any]) -> Any:
        button = widgets.Button(description=label, layout=widgets.Layout(width="auto"))
        button.on_click(lambda _: self._safely(do))
        return button

    def _laid_out(self) -> Any:
        self.asked.children = [self.ask_text, widgets.HBox([self.yes, self.no])]
        self.asked.add_class("question")
        self.save_button.add_class("save-measures")
        self.next.add_class("take-next")
        rows = [part for group in GROUPS for part in self._group(group)]
        column, right = widgets.VBox(rows), widgets.VBox([self.asked, self.picture])
        both = widgets.HBox([column, right])
        for part, name in ((column, "fields"), (right, "beside"), (self.picture, "figure"), (both, "guide-stage")):
            part.add_class(name)
        buttons = widgets.HBox(
            [self.save_button, self.next, self.apart, self.message], layout=widgets.Layout(flex_flow="row wrap")
        )
        self.message.layout.flex = "1 1 320px"  # beside the button that was pressed, where the hand looks
        hidden = widgets.HTML(style(ORDER), layout=widgets.Layout(display="none"))
        guide = widgets.VBox([hidden, PicturePlace(), both, buttons])
        guide.add_class("guide")
        return guide

    def _group(self, group: Group) -> list[Any]:
        before = macros(__file__).group(group.title, group.before)
        return [widgets.HTML(before), *(self.fields[name].row for name in group.measures)]

    def _show(self) -> None:
        """Show what stands: words first, then the figure; what to take next once the hand rests."""
        said = said_beside(self.taking)
        for name, field in self.fields.items():
            field.show_texts(self.taking.fields.get(name, ()))
            field.show_estimate(placeholder(self.taking, name))
            field.show_said(said.get(name, ()))
        self._say("The figure shows what could last be read." if self.taking.faults else self._unsaved())
        self.message.value += said_html(said.get("", ()))
        self._show_hands()
        self._show_question()
        self._show_figure()
        self.seeking.ask()

    def _unsaved(self) -> str:
        """Return which measures are not in the file yet; nothing where all are."""
        names = ms.changed(self.taking)
        if not names:
            return ""
        first = ", ".join(plain(name) for name in names[:3])
        more = f" and {len(names) - 3} more" if len(names) > 3 else ""
        return f"Not saved yet, kept in {taking_place(self.taking.path).name}: {first}{more}."

    def _show_hands(self) -> None:
        for field in self.fields.values():
            field.show_hands(self.apart.value)

    def _show_question(self) -> None:
        asked = question(self.taking)
        self.asked.layout.display = "none" if asked is None else ""
        words = "" if asked is None else asked.sentence
        self.yes.description = "" if asked is None else f"Yes, {NAMES[asked.unit]}"
        self.ask_text.value = macros(__file__).question(words)

    def _show_figure(self) -> None:
        body = self.taking.body
        try:
            shown = figure_picture(body or wearer(STAND_IN), self.taking.unit, "" if body else STAND_IN_TITLE)
        except DraftError as error:
            self._say(f"These measures make no figure that could be drawn ({error.said(self.taking.unit)}).")
            return
        self.picture.value = shown

    def _show_next(self) -> None:
        body = self.taking.body
        gains = () if body is None or self.taking.faults else next_measures(body, 1)
        self.gain = gains[0] if gains else None
        self.next.layout.display = "" if self.gain else "none"
        if self.gain is not None:
            self.next.description = f"Take next: {plain(self.gain.measure)}"
            self.next.tooltip = (
                f"{capital(plain(self.gain.measure))} is only estimated; taking it would move the "
                f"lines of a shirt most. {measured_of(body, len(ORDER))}."
            )

    def _go_next(self) -> None:
        if self.gain is not None:
            self.fields[self.gain.measure].focus()

    def _say(self, words: str) -> None:
        self.message.value = macros(__file__).message(words)

    def _safely(self, do: Callable[[], Any]) -> None:
        plainly(do, self._say, self.taking.unit)
