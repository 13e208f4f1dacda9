"""The bench: sliders on the left, the pieces and what is to be said of them on the right."""

from __future__ import annotations

import html
import os
from collections.abc import Sequence
from functools import partial
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from drafting.costume import Made, make
from drafting.costume_file import CostumeFile
from drafting.cutting import laid_out
from drafting.errors import DraftError
from drafting.notebook import standing as st
from drafting.notebook.controls import Control, control
from drafting.notebook.findings_view import findings_html
from drafting.notebook.girths_view import girths_html
from drafting.notebook.looks import STYLE
from drafting.notebook.measures_view import measures_html
from drafting.notebook.plainly import plainly
from drafting.notebook.preview import Size, picture, shown_sheet
from drafting.output import write_output


class Bench:
    """One garment of a costume, with a control for each of its `choices` named.

    Show it as the last line of a cell. `standing` is all that the bench knows; the widgets only
    show it. `out` is the folder that the button writes, the same as `drafting make` does. Raises
    `InputError` where the costume cannot be drafted as it stands in its file.
    """

    def __init__(
        self, costume: CostumeFile, garment: str, choices: Sequence[str], out: Path | str = "../out"
    ) -> None:
        self.garment, self.out = garment, Path(out)
        self.standing = st.begin(costume, garment)
        self.page: Size = (0.0, 0.0)
        self.controls = {name: self._control(name) for name in choices}
        self.picture = widgets.HTML(layout=widgets.Layout(width="100%", height="520px", margin="0"))
        self.findings = widgets.HTML(layout=widgets.Layout(height="150px", overflow="auto"))
        self.girths = widgets.HTML()
        self.measures = widgets.HTML(measures_html(costume.wearer))
        self.said = widgets.HTML(layout=widgets.Layout(height="124px", overflow="auto"))
        self.button = widgets.Button(description="Write the pieces", button_style="primary")
        self.files = widgets.Output()
        self.view = self._laid_out()
        self._show()

    def _control(self, name: str) -> Control:
        """Return the control of one choice, at the value that is in use."""
        costume, garment = self.standing.asked, self.garment
        choice = st.choice_of(costume, garment, name)
        value = st.values_of(self.standing.made, garment)[name]
        usual = st.usual_values(costume, garment)[name]
        return control(choice, value, usual, lambda new: self._safely(partial(self.ask, name, new)))

    def _laid_out(self) -> Any:
        self.picture.add_class("pattern-preview")
        self.button.add_class("write-pieces")
        self.button.on_click(lambda _: self._safely(self._export_and_say))
        rows = [control.row for control in self.controls.values()]
        left = widgets.VBox([*rows, self.said, self.girths, self.button, self.files, self.measures])
        right = widgets.VBox([self.picture, self.findings])
        left.layout, right.layout = (
            widgets.Layout(flex="0 0 350px"),
            widgets.Layout(flex="1 1 420px"),
        )
        bench = widgets.HBox(
            [left, right], layout=widgets.Layout(width="100%", flex_flow="row wrap-reverse")
        )
        bench.add_class("bench")
        return widgets.VBox([widgets.HTML(STYLE, layout=widgets.Layout(display="none")), bench])

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.view._repr_mimebundle_(**asked)

    @property
    def made(self) -> Made:
        """What the picture shows."""
        return self.standing.made

    def ask(self, choice: str, value: Any) -> None:
        """Take a new value (mm, degrees, a word, yes or no) for one choice, and show what it gives.

        What cannot be drafted is said beside the controls, and the last picture stays.
        """
        self.standing = st.asked_for(self.standing, self.garment, choice, value)
        self._show()

    def export(self) -> Path:
        """Write the whole costume, lays and sheets too, as `drafting make` does; return the folder.

        Raises `InputError` where it may not be written.
        """
        if self.standing.refusal:
            raise DraftError(
                "nothing was written, as what the controls ask for cannot be drafted",
                turn="move the last one back first",
            )
        write_output(laid_out(make(self.standing.asked)), self.out)
        return self.out

    def _show(self) -> None:
        """Draw what stands. A refusal leaves picture, findings and girths as they are."""
        if self.standing.refusal:
            self._say(f"{self.standing.refusal} The picture shows the last that could be drafted.")
            return
        sheet = shown_sheet(self.made, self.standing.before, self.page)
        self.page = (sheet.width, sheet.height)
        self.picture.value = picture(sheet)
        self.findings.value = findings_html(self.made.findings)
        self.girths.value = girths_html(st.made_garment(self.made, self.garment))
        self._say("")

    def _say(self, words: str) -> None:
        said = f"<b>Not possible.</b> {html.escape(words)}" if words else ""
        self.said.value = f'<div class="refusal" role="alert">{said}</div>'

    def _safely(self, do: Any) -> None:
        plainly(do, self._say)

    def _export_and_say(self) -> None:
        self.button.disabled, label = True, self.button.description
        self.button.description = "Writing..."
        try:
            self._link(self.export())
        finally:
            self.button.disabled, self.button.description = False, label

    def _link(self, out: Path) -> None:
        """Show where the files lie; links are relative to the notebook, as Jupyter follows them."""
        files = sorted(file for file in out.rglob("*.*") if file.is_file())
        rows = "".join(f"<li>{_anchor(file)}</li>" for file in files)
        page = f"<p>Written to {html.escape(str(out.resolve()))}:</p><ul>{rows}</ul>"
        shown = {"output_type": "display_data", "data": {"text/html": page}, "metadata": {}}
        self.files.outputs = (shown,)


def _anchor(file: Path) -> str:
    href = Path(os.path.relpath(file)).as_posix()
    return f'<a href="{html.escape(href)}" target="_blank">{html.escape(file.name)}</a>'
