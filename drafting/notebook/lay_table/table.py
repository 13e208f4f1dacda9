"""The lay table: how the pieces lie on each cloth, to be moved by hand, or searched for longer."""

from __future__ import annotations

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
from drafting.costume.file import CostumeFile
from drafting.costume.make import Made, make
from drafting.export.svg import svg_text
from drafting.ground.errors import DraftError
from drafting.ground.templates import beside
from drafting.layout import COUNT, Lay, Packing, lay_out, with_cloth
from drafting.layout.packing.job import Kit
from drafting.layout.remarks import lay_findings
from drafting.notebook.errors_said import plainly
from drafting.notebook.lay_table import state as ls
from drafting.notebook.lay_table.faults import FaultFields, pressed_fault, with_fault
from drafting.notebook.lay_table.together import FIRST, LivingTable
from drafting.notebook.lay_table.words import lay_html, widths_html
from drafting.notebook.living.bar import LivingBar
from drafting.notebook.living.living import Living
from drafting.notebook.said import NOT_POSSIBLE, refused_html, status_html, style_html
from drafting.sheet.lay import layout_sheet

EVERY = 0.25
"""seconds between two moves of the progress bar."""


LOOKING = "Looking for shorter lays"


class Canvas(anywidget.AnyWidget):
    """The drawing: `picture` is the lay as SVG, `asked` what the hand or a key asks for."""

    _esm = Path(__file__).with_suffix(".js")
    picture = traitlets.Unicode("").tag(sync=True)
    asked = traitlets.Dict({}).tag(sync=True)
    marking = traitlets.Bool(False).tag(sync=True)


class LayTable(LivingTable):
    """The lays of a costume, one cloth at a time.

    Show it as the last line of a cell. A first lay of each cloth shows at once; better ones, and
    what other widths need, follow by themselves. `lays` holds what stands; `made` is the costume
    with those lays, ready to be written. Raises `InputError` for a costume that cannot be drafted.
    """

    def __init__(self, costume: CostumeFile | Made | Living, seconds: float = 20.0) -> None:
        self.living = costume if isinstance(costume, Living) else None
        self.lock = threading.RLock()
        self.kits: dict[str, Kit] = {}
        self.stop = threading.Event()
        self.looking: threading.Thread | None = None
        self._take_up(costume if isinstance(costume, Made) else None if self.living else make(costume))  # type: ignore[arg-type]
        self._make_widgets(seconds)
        self.view = self._laid_out()
        self._show()
        self.following = self._look_on(tuple(self.parts))
        if self.living:
            self.living.hear(self.heard)

    def _quick(self, role: str, count: float = FIRST) -> Lay:
        cloth, parts = self.parts[role]
        return lay_out(parts, cloth, count=count, table=False)

    @property
    def lay(self) -> Lay:
        """The lay of the cloth that is shown."""
        return self.lays.now[self.role]

    @property
    def made(self) -> Made:
        """The costume with the lays as they stand, once the first better ones have been found."""
        self.following.join()
        settled = tuple(self.lays.now[role] for role in self.parts)
        found = tuple(finding for lay in settled for finding in lay.findings)
        return replace(self.draft, lays=settled, findings=(*self.draft.findings, *found))

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.view._repr_mimebundle_(**asked)

    def shift(self, outline: str, dx: float, dy: float, turn: bool = False) -> None:
        """Move or turn one outline of the cloth shown; what may not lie so is said and goes back."""
        try:
            lay = ls.shifted(self.lay, outline, dx, dy, turn, self._kit())
        except DraftError as refused:
            self._say(f"{refused.said(self.draft.costume.told_in)}. It went back to where it was.", "Not there.")
            self.canvas.send({"back": True})
            return
        self._change(self.lays.with_lay(lay))

    def _kit(self) -> Kit:
        """Return the kit of the lay shown, kept from move to move."""
        kit = self.kits.get(self.role)
        if kit is None or kit.job != self.lay.job:
            kit = self.kits[self.role] = Kit(self.lay.job)
        return kit

    def mark_fault(self, along: float, across: float, length: float, width: float) -> None:
        """Leave a faulty place of the cloth shown out (mm, on the opened cloth), and lay it anew."""
        cloth, parts = self.parts[self.role]
        self._lay_anew((with_fault(cloth, along, across, length, width), parts))

    def forget_faults(self) -> None:
        """Lay the cloth shown anew, without any faulty place."""
        cloth, parts = self.parts[self.role]
        self._lay_anew((replace(cloth, faults=()), parts))

    def _lay_anew(self, parts: Any) -> None:
        """Lay the cloth shown anew; where a hand has laid it, what lies clear of the faults stays."""
        role, old = self.role, self.lay
        by_hand = self._by_hand(role)
        self.stop.set()
        self.parts[role] = parts
        kept = with_cloth(old, parts[1], parts[0]) if by_hand else None
        lays = self.lays.renewed(self._quick(role))
        self._change(lays.with_lay(kept) if kept else lays)
        self.following = self._look_on((role,), self.following)

    def _start(self, do: Callable[..., None], *given: Any) -> threading.Thread:
        thread = threading.Thread(target=do, args=given, daemon=True)
        thread.start()
        return thread

    def _look_on(self, roles: tuple[str, ...], after: threading.Thread | None = None) -> threading.Thread:
        """Say that better lays are looked for, and look, after the work before."""
        self.busy.value = status_html(f"{LOOKING} ...")
        return self._start(self._follow, roles, after)

    def _follow(self, roles: tuple[str, ...], after: threading.Thread | None = None) -> None:
        """Find the lays that `drafting make` would find, and what other widths need."""
        if after:
            after.join()
        whole = sum(len(parts) ** 2 for _, parts in self.parts.values()) or 1
        for number, role in enumerate(roles, 1):
            cloth, parts = self.parts[role]
            self.busy.value = status_html(f"{LOOKING}: {cloth.title}, {number} of {len(roles)}")
            count = COUNT * len(parts) ** 2 / whole
            unit = self.draft.costume.told_in
            plainly(lambda c=cloth, p=parts, n=count: self._take(self._found(c, p, n)), self._say, unit)  # type: ignore[misc]
        self.busy.value = ""

    def look_longer(self) -> None:
        """Search for a shorter lay of the cloth shown, in the background, until done or stopped."""
        if self.looking and self.looking.is_alive():
            return
        self.stop.clear()
        self.looking = self._start(self._look, self.role)

    def _look(self, role: str) -> None:
        seconds, start = float(self.seconds.value), time.monotonic()
        self.bar.max, self.bar.value = seconds, 0.0
        self.look.disabled, self.cancel.disabled = True, False
        done = threading.Event()
        clock = self._start(self._tick, start, done)
        try:
            plainly(
                lambda: self._take(self._search(role, seconds), ask=True), self._say, self.draft.costume.told_in
            )
        finally:
            done.set()
            clock.join()
            self.look.disabled, self.cancel.disabled = False, True
            self.bar.description = "stopped" if self.stop.is_set() else "done"

    def _search(self, role: str, seconds: float) -> Lay:
        cloth, parts = self.parts[role]

        def heard(packing: Packing) -> None:
            lay = replace(self.lays.found[role], packing=packing)
            if not lay.left_out and lay.cloth == cloth:
                self._take(replace(lay, findings=lay_findings(lay)), ask=True)

        return lay_out(parts, cloth, seconds=seconds, table=False, said=heard, halted=self.stop.is_set)

    def _tick(self, start: float, done: threading.Event) -> None:
        self.bar.description = "looking"
        while not done.wait(EVERY):
            self.bar.value = min(self.bar.max, time.monotonic() - start)

    def _take(self, lay: Lay, ask: bool = False) -> None:
        """Take a lay that was found, if it is of the cloth as it is now and no longer than before."""
        with self.lock:
            if lay.cloth == self.parts[lay.role][0]:
                self._change(self.lays.bettered(lay, ask))
                if ask and self.living and self.lays.now[lay.role].packing is lay.packing:
                    self.living.put_lay(lay, by_hand=True, by=self)

    def _by_hand(self, role: str) -> bool:
        return self.lays.now[role] is not self.lays.found[role]

    def _change(self, lays: ls.Lays) -> None:
        with self.lock:
            if lays is self.lays:
                return
            new = [role for role in lays.now if lays.now[role] is not self.lays.now.get(role)]
            self.lays = lays
            self._show()
            for role in new if self.living else ():
                own = self._by_hand(role) or lays.now[role].cloth.faults != self._written_faults(role)
                self.living.put_lay(lays.now[role], own, self)  # type: ignore[union-attr]

    def _make_widgets(self, seconds: float) -> None:
        titles = [(f"{role}: {self.parts[role][0].title}", role) for role in self.parts]
        self.cloth = widgets.Dropdown(options=titles, description="Cloth", layout=_wide("420px"))
        self.cloth.observe(lambda _: self._safely(self._show), names="value")
        self.living_bar = LivingBar(offer="Lay the pieces as they are now")
        self.living_bar.on_follow(lambda: self._safely(self.follow))
        self.canvas = Canvas()
        self.canvas.observe(lambda change: self._safely(partial(self._asked, change["new"])), names="asked")
        self.said, self.refused, self.widths, self.busy = (widgets.HTML() for _ in range(4))
        self.seconds = widgets.BoundedFloatText(
            value=seconds, min=1, max=600, description="Seconds", layout=_wide("160px")
        )
        self.bar = widgets.FloatProgress(value=0, min=0, max=seconds, layout=_wide("260px"))
        self.undo = self._button("Undo", lambda: self._change(self.lays.undone(self.role)))
        self.redo = self._button("Redo", lambda: self._change(self.lays.redone(self.role)))
        self.reset = self._button("Back to the found lay", self._reset)
        self.look = self._button("Look longer", self.look_longer)
        self.cancel = self._button("Stop looking", self.stop.set)
        self.cancel.disabled = True
        self.marking = widgets.ToggleButton(description="Mark faults on the cloth", layout=_wide("auto"))
        self.marking.add_class("mark-on-cloth")
        widgets.link((self.marking, "value"), (self.canvas, "marking"))
        self.faults = FaultFields(
            lambda *sizes: self._safely(partial(self.mark_fault, *sizes)),
            lambda: self._safely(self.forget_faults),
            self.draft.costume.told_in,
        )

    def _button(self, words: str, do: Callable[[], None]) -> Any:
        button = widgets.Button(description=words, layout=_wide("auto"))
        button.add_class(words.lower().replace(" ", "-"))
        button.on_click(lambda _: self._safely(do))
        return button

    def _laid_out(self) -> Any:
        self.said.add_class("lay-said")
        self.busy.add_class("lay-busy")
        first = widgets.HBox([self.cloth, self.undo, self.redo, self.reset, self.marking])
        search = widgets.HBox([self.seconds, self.look, self.cancel, self.bar])
        style = widgets.HTML(style_html(beside(__file__, ".css")), layout=widgets.Layout(display="none"))
        hands = [search, self.faults.view]  # above what grows as lays are found: no button moves from under a hand
        rows = [first, self.canvas, self.refused, self.said, *hands, self.busy, self.widths]
        page = widgets.VBox([style, self.living_bar, *rows])
        for row in (first, search):
            row.layout.flex_flow = "row wrap"
        page.add_class("lay-page")
        page.add_class("living-view")
        return page

    def _asked(self, asked: dict[str, Any]) -> None:
        if "fault" in asked:
            self.mark_fault(*pressed_fault(self.lay, *asked["fault"]))
        elif asked:
            self.shift(str(asked["outline"]), float(asked["dx"]), float(asked["dy"]), bool(asked["turn"]))

    def _reset(self) -> None:
        self._change(self.lays.with_lay(self.lays.found[self.role]))

    def _show(self) -> None:
        lay, found = self.lay, self.lays.found[self.role]
        unit, garments = self.draft.costume.told_in, [garment.name for garment in self.draft.garments]
        self.canvas.picture = svg_text(layout_sheet(lay, self.draft.costume.title, garments, unit), fit=True)
        self.said.value = lay_html(lay, found, unit)
        self.widths.value = widths_html(found, unit)
        self.undo.disabled = not self.lays.before.get(self.role)
        self.redo.disabled = not self.lays.after.get(self.role)

    def _say(self, words: str, head: str = NOT_POSSIBLE) -> None:
        self.refused.value = refused_html(capital(words), head)

    def _safely(self, do: Callable[[], None]) -> None:
        """Do what the hand asks for; what was said of the hand before no longer counts."""
        self._say("")
        plainly(do, self._say, self.draft.costume.told_in)


def _wide(width: str) -> Any:
    return widgets.Layout(width=width)
