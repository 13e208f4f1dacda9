"""One field of the measuring guide: its label, its text boxes, how the tape is laid, what is said."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

import ipywidgets as widgets

from drafting.body import DIMENSIONS
from drafting.checks.words import capital, plain
from drafting.ground.templates import Html, macros
from drafting.notebook.measuring.looks import tape_class
from drafting.notebook.measuring.order import BOTH_HANDS, CAN_DIFFER
from drafting.notebook.measuring.state import Hands
from drafting.notebook.measuring.words import FieldNote

WEIGHT = "In indoor clothes, without shoes. It is kept with the measures; nothing is drafted from it."

WORDS = {"mend": "Mend this.", "needed": "Needed.", "doubt": "Doubtful.", "note": "Note."}


class Field:
    """The row of one measure. `changed` is handed its texts whenever a maker changes one."""

    def __init__(self, name: str, texts: Hands, changed: Callable[[Hands], None]) -> None:
        self.name, self._changed, self._quiet = name, changed, False
        self.boxes = [self._box(label) for label in self._labels()]
        self.said = widgets.HTML()
        how = WEIGHT if name == "weight" else DIMENSIONS[name].how
        about = widgets.HTML(macros(__file__).how(how))
        self.row = widgets.VBox([*self.boxes, about, self.said])
        self.row.add_class("field")
        self.row.add_class(tape_class(name))
        self.show_texts(texts)
        self.show_hands(False)

    def _labels(self) -> list[str]:
        label = capital(plain(self.name))
        return [label, f"{label}, right"] if self.name in CAN_DIFFER else [label]

    def _box(self, label: str) -> Any:
        box = widgets.Text(
            description=label,
            continuous_update=False,
            layout=widgets.Layout(width="100%"),
            style={"description_width": "10.8em"},
        )
        box.observe(self._moved, names="value")
        return box

    def _moved(self, _: Any) -> None:
        if not self._quiet:
            self._changed(tuple(box.value for box in self.boxes))

    def focus(self) -> None:
        """Put the cursor into the field."""
        self.boxes[0].focus()

    def show_texts(self, texts: Hands) -> None:
        """Show what stands, without telling anybody that it changed."""
        self._quiet = True
        for i, box in enumerate(self.boxes):
            box.value = texts[i] if i < len(texts) else ""
        self._quiet = False

    def show_hands(self, apart: bool) -> None:
        """Show the box of the right hand where it is asked for, or holds something."""
        if len(self.boxes) == 2:
            two = apart or self.name in BOTH_HANDS or bool(self.boxes[1].value)
            self.boxes[1].layout.display = "" if two else "none"
            self.boxes[0].description = self._labels()[0] + (", left" if two else "")

    def show_estimate(self, words: str) -> None:
        for box in self.boxes:
            box.placeholder = words

    def show_said(self, said: Sequence[FieldNote]) -> None:
        """Show every sentence about this measure under its field."""
        self.said.value = said_html(said)


def said_html(said: Sequence[FieldNote]) -> Html:
    """Return sentences, each behind a word for how grave it is.

    >>> str(said_html([FieldNote("doubt", "Is 3 < 4?")]))
    '<div class="said doubt" role="status"><b>Doubtful.</b> Is 3 &lt; 4?</div>'
    """
    return Html(macros(__file__).said([(one.level, WORDS[one.level], one.sentence) for one in said]))
