"""The button that writes the whole costume: a bar that moves, words for each step, and a way to stop."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from drafting.costume.file import CostumeFile
from drafting.costume.make import Made
from drafting.ground.templates import macros
from drafting.layout import Lay
from drafting.notebook.bench.exporting import Errand, Stopped, write_costume
from drafting.notebook.bench.own_folder import own_folder
from drafting.notebook.errors_said import plainly
from drafting.notebook.progress import Progress

FIRST = (
    ("open", "Open", ("plan.html", "overview.png", "shopping.csv")),
    ("print", "Print at 100 %, on the paper you have", ("sheets/*.pdf",)),
)
"""What is opened, and what is printed, above the list of all files."""


class WriteOut:
    """Writes what `asked` returns, with the lays that are `standing`, into `out`, or (None) a folder of its own.

    `say` hears what cannot be done, with lengths in `unit`.

    The work runs beside the kernel's own, so that a press on Stop is heard. `asked` raises where
    there is nothing that can be written.
    """

    def __init__(
        self,
        asked: Callable[[], CostumeFile],
        out: Path | None,
        say: Callable[[str], None],
        standing: Callable[[Made], Mapping[str, Lay]] | None = None,
        unit: Callable[[], str | None] = lambda: None,
    ) -> None:
        self.asked, self.out, self.say, self.standing, self.unit = asked, out, say, standing, unit
        self.errand = Errand()
        self.button = button("Write the pieces", "write-pieces", self.begin, "primary")
        self.cancel = button("Stop writing", "stop-writing", self.errand.stop)
        self.cancel.disabled = True
        self.progress, self.files = Progress(), widgets.Output()
        self.bar, self.words = self.progress.bar, self.progress.words
        row = widgets.HBox([self.button, self.cancel, self.bar, self.words])
        row.layout.flex_flow = "row wrap"
        row.layout.align_items = "center"
        self.view = widgets.VBox([row, self.files])

    def begin(self) -> None:
        """Start writing; a refusal that is known at once is said at once."""
        if self.errand.busy:
            return

        def start() -> None:
            costume = self.asked()
            out = own_folder(Path(costume.path)) if self.out is None else self.out
            self.say("")
            self.button.disabled, self.cancel.disabled = True, False
            self.progress.begin()
            self.errand.start(lambda: self._run(costume, out))

        plainly(start, self.say, self.unit())

    def _run(self, costume: CostumeFile, out: Path) -> None:
        try:
            plainly(lambda: self._write(costume, out), self._failed, costume.told_in)
        finally:
            self.button.disabled, self.cancel.disabled = False, True

    def _write(self, costume: CostumeFile, out: Path) -> None:
        try:
            tell = self.progress.tell
            self._link(write_costume(costume, out, tell, self.errand.halted, self.standing))
            tell("Done.", 1.0)
        except Stopped:
            left = "What lay in the folder lies there still." if out.exists() else ""
            self.progress.end(f"Stopped, nothing was written. {left}")

    def _failed(self, words: str) -> None:
        self.progress.end()
        self.say(words)

    def _link(self, out: Path) -> None:
        """Show where the files lie; links are relative to the notebook, as Jupyter follows them."""
        folders = sorted(folder for folder in (out, *out.rglob("*")) if folder.is_dir())
        rows = [(folder.name if folder != out else "", _links(folder)) for folder in folders]
        first = [(kind, words, _named_links(out, names)) for kind, words, names in FIRST]
        page = macros(__file__).written(out.resolve(), [row for row in rows if row[1]], first)
        shown = {"output_type": "display_data", "data": {"text/html": page}, "metadata": {}}
        self.files.outputs = (shown,)


def button(words: str, name: str, do: Callable[[], None], style: str = "") -> Any:
    """Return a button with words on it and a name for its looks."""
    layout = widgets.Layout(width="auto")
    made = widgets.Button(description=words, button_style=style, layout=layout)
    made.add_class(name)
    made.on_click(lambda _: do())
    return made


def _links(folder: Path) -> list[tuple[str, str]]:
    """Return where each file of a folder lies, and its name."""
    files = sorted(file for file in folder.iterdir() if file.is_file())
    return [(Path(os.path.relpath(file)).as_posix(), file.name) for file in files]


def _named_links(out: Path, names: tuple[str, ...]) -> list[tuple[str, str]]:
    found = [file for name in names for file in sorted(out.glob(name))]
    return [(Path(os.path.relpath(file)).as_posix(), file.name) for file in found]
