"""The lay table: how the pieces lie on each cloth, to be moved by hand, or searched for longer."""

from __future__ import annotations

import html
import threading
import time
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

import anywidget
import ipywidgets as widgets
import traitlets

from drafting.checks.words import capital
from drafting.costume import Made, make
from drafting.costume_file import CostumeFile
from drafting.cutting import materials
from drafting.errors import DraftError
from drafting.export.svg import svg_text
from drafting.layout import Lay, OtherWay, Packing, lay_out
from drafting.notebook import lays as ls
from drafting.notebook.plainly import plainly
from drafting.sheet.layout import layout_sheet
from drafting.units import show_length

FIRST = 40
"""Outlines placed for the lay that shows at once; a better one follows (ours: under half a second)."""

EVERY = 0.25
"""seconds between two moves of the progress bar."""

STYLE = """<style>
.lay-table svg { width: 100% !important; height: auto !important; max-height: 560px; touch-action: none; }
.lay-table svg * { pointer-events: none; }
.lay-table path.cut-line { pointer-events: all; cursor: grab; outline: none; }
.lay-table path.cut-line:focus { stroke-width: 5px; stroke-dasharray: 10 4; }
.lay-table path.held { cursor: grabbing; fill-opacity: .55; stroke-dasharray: 6 4; }
.lay-page .refusal:not(:empty) { border-left: 4px solid #b3261e; padding: 2px 8px; }
.lay-page table { border-collapse: collapse; }
.lay-page td, .lay-page th { padding: 1px 12px 1px 0; text-align: left; }
</style>"""


class Canvas(anywidget.AnyWidget):
    """The drawing: `picture` is the lay as SVG, `asked` what the hand or a key asks for."""

    _esm = Path(__file__).with_suffix(".js")
    picture = traitlets.Unicode("").tag(sync=True)
    asked = traitlets.Dict({}).tag(sync=True)


class LayTable:
    """The lays of a costume, one cloth at a time.

    Show it as the last line of a cell. `lays` holds what stands; `made` is the costume with those
    lays, ready to be written. Raises `InputError` for a costume that cannot be drafted.
    """

    def __init__(self, costume: CostumeFile | Made, seconds: float = 20.0) -> None:
        self.draft = costume if isinstance(costume, Made) else make(costume)
        self.parts = {cloth.role: (cloth, parts) for cloth, parts in materials(self.draft)}
        self.lays = ls.lays_of(tuple(self._quick(role) for role in self.parts))
        self.stop = threading.Event()
        self.looking: threading.Thread | None = None
        self._make_widgets(seconds)
        self.view = self._laid_out()
        self._show()

    def _quick(self, role: str) -> Lay:
        cloth, parts = self.parts[role]
        return lay_out(parts, cloth, count=FIRST, table=False)

    @property
    def role(self) -> str:
        return str(self.cloth.value)

    @property
    def lay(self) -> Lay:
        """The lay of the cloth that is shown."""
        return self.lays.now[self.role]

    @property
    def made(self) -> Made:
        """The costume with the lays as they stand."""
        settled = tuple(self.lays.now[role] for role in self.parts)
        found = tuple(finding for lay in settled for finding in lay.findings)
        return replace(self.draft, lays=settled, findings=(*self.draft.findings, *found))

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.view._repr_mimebundle_(**asked)

    def shift(self, outline: str, dx: float, dy: float, turn: bool = False) -> None:
        """Move or turn one outline of the cloth shown; what may not lie so is said and goes back."""
        try:
            lay = ls.shifted(self.lay, outline, dx, dy, turn)
        except DraftError as refused:
            self._say(f"{refused}. It went back to where it was.")
            self.canvas.send({"back": True})
            return
        self.lays = self.lays.with_lay(lay)
        self._show()

    def look_longer(self) -> None:
        """Search for a shorter lay of the cloth shown, in the background, until done or stopped."""
        if self.looking and self.looking.is_alive():
            return
        self.stop.clear()
        self.looking = threading.Thread(target=self._look, args=(self.role,), daemon=True)
        self.looking.start()

    def _look(self, role: str) -> None:
        seconds, start = float(self.seconds.value), time.monotonic()
        self.bar.max, self.bar.value = seconds, 0.0
        self.look.disabled, self.cancel.disabled = True, False
        done = threading.Event()
        clock = threading.Thread(target=self._tick, args=(start, done), daemon=True)
        clock.start()
        try:
            plainly(
                lambda: self._take(role, self._search(role, seconds)),
                self._say,
            )
        finally:
            done.set()
            clock.join()
            self.look.disabled, self.cancel.disabled = False, True
            self.bar.description = "stopped" if self.stop.is_set() else "done"

    def _search(self, role: str, seconds: float) -> Lay:
        cloth, parts = self.parts[role]

        def heard(packing: Packing) -> None:
            lay = self.lays.found[role]
            if not lay.left_out and packing.length < lay.length:
                self._take(role, replace(lay, packing=packing))

        return lay_out(parts, cloth, seconds=seconds, said=heard, halted=self.stop.is_set)

    def _tick(self, start: float, done: threading.Event) -> None:
        self.bar.description = "looking"
        while not done.wait(EVERY):
            self.bar.value = min(self.bar.max, time.monotonic() - start)

    def _take(self, role: str, lay: Lay) -> None:
        """Take a lay that was found, if it is shorter than the one found before."""
        best = ls.better(self.lays.found[role], lay)
        if best is not self.lays.found[role]:
            self.lays = replace(self.lays, found={**self.lays.found, role: best}).with_lay(best)
        self._show()

    def _make_widgets(self, seconds: float) -> None:
        titles = [(f"{role}: {self.parts[role][0].title}", role) for role in self.parts]
        self.cloth = widgets.Dropdown(options=titles, description="Cloth", layout=_wide("420px"))
        self.cloth.observe(lambda _: self._safely(self._show), names="value")
        self.canvas = Canvas()
        self.canvas.observe(
            lambda change: self._safely(partial(self._asked, change["new"])), names="asked"
        )
        self.said, self.refused, self.widths = widgets.HTML(), widgets.HTML(), widgets.HTML()
        self.seconds = widgets.BoundedFloatText(
            value=seconds, min=1, max=600, description="Seconds", layout=_wide("160px")
        )
        self.bar = widgets.FloatProgress(value=0, min=0, max=seconds, layout=_wide("260px"))
        self.undo = self._button("Undo", lambda: self._back(self.lays.undone(self.role)))
        self.redo = self._button("Redo", lambda: self._back(self.lays.redone(self.role)))
        self.reset = self._button("Back to the found lay", self._reset)
        self.look = self._button("Look longer", self.look_longer)
        self.cancel = self._button("Stop looking", self.stop.set)
        self.cancel.disabled = True

    def _button(self, words: str, do: Callable[[], None]) -> Any:
        button = widgets.Button(description=words, layout=_wide("auto"))
        button.add_class(words.lower().replace(" ", "-"))
        button.on_click(lambda _: self._safely(do))
        return button

    def _laid_out(self) -> Any:
        self.said.add_class("lay-said")
        first = widgets.HBox([self.cloth, self.undo, self.redo, self.reset])
        search = widgets.HBox([self.seconds, self.look, self.cancel, self.bar])
        style = widgets.HTML(STYLE, layout=widgets.Layout(display="none"))
        page = widgets.VBox(
            [style, first, self.canvas, self.refused, self.said, search, self.widths]
        )
        for row in (first, search):
            row.layout.flex_flow = "row wrap"
        page.add_class("lay-page")
        return page

    def _asked(self, asked: dict[str, Any]) -> None:
        if asked:
            self.shift(
                str(asked["outline"]), float(asked["dx"]), float(asked["dy"]), bool(asked["turn"])
            )

    def _back(self, lays: ls.Lays) -> None:
        self.lays = lays
        self._show()

    def _reset(self) -> None:
        self.lays = self.lays.with_lay(self.lays.found[self.role])
        self._show()

    def _show(self) -> None:
        lay, found = self.lay, self.lays.found[self.role]
        garments = [garment.name for garment in self.draft.garments]
        self.canvas.picture = svg_text(
            layout_sheet(lay, self.draft.costume.title, garments), fit=True
        )
        rest = [f.message for f in lay.findings if f.level in ("error", "warning")]
        rows = [ls.summary(lay, found), *rest]
        self.said.value = "".join(f"<p>{html.escape(row)}</p>" for row in rows)
        self.widths.value = _widths_html(lay)
        self.undo.disabled = not self.lays.before.get(self.role)
        self.redo.disabled = not self.lays.after.get(self.role)
        self._say("")

    def _say(self, words: str) -> None:
        text = f"<b>Not there.</b> {html.escape(capital(words))}" if words else ""
        self.refused.value = f'<div class="refusal" role="alert">{text}</div>'

    def _safely(self, do: Callable[[], None]) -> None:
        plainly(do, self._say)


def _widths_html(lay: Lay) -> str:
    """Return the table of what other bolt widths would need; nothing where it was not worked out."""
    if not lay.others:
        return ""
    rows = "".join(
        f"<tr><td>{show_length(o.width)}</td><td>{o.lay}</td><td>{_needed(o)}</td></tr>"
        for o in lay.others
    )
    return f"<table><tr><th>bolt width</th><th>spread</th><th>cloth needed</th></tr>{rows}</table>"


def _needed(other: OtherWay) -> str:
    if other.length:
        return show_length(other.length)
    return html.escape(f"too wide for it: {', '.join(other.sticks_out)}")


def _wide(width: str) -> Any:
    return widgets.Layout(width=width)
