"""The making plan on a notebook page: the file that is written, in a frame of its own."""

from __future__ import annotations

import threading
import time
from typing import Any

import ipywidgets as widgets

from drafting.costume.file import CostumeFile
from drafting.costume.lays import laid_out
from drafting.costume.make import Made, make
from drafting.costume.telling import time_left
from drafting.ground.palette import Colour
from drafting.ground.templates import macros
from drafting.making import Plan, planned
from drafting.making.page import page
from drafting.notebook.errors_said import plainly
from drafting.notebook.living.living import Living
from drafting.notebook.said import paragraphs_html, refused_html

WORKING = "The plan is being worked out"


class PlanView:
    """The plan of a costume, its lays worked out where they are not yet. `plan` holds its facts.

    Show it as the last line of a cell. Raises `InputError` for a costume that cannot be drafted.
    """

    def __init__(self, costume: CostumeFile | Made | Living, height: str = "760px") -> None:
        self.costume, self.height = costume, height
        self.view = widgets.HTML(
            paragraphs_html([f"{WORKING} ..."]), layout=widgets.Layout(width="auto", min_height=height)
        )
        self._made: Made | None = None
        self._plan: Plan | None = None
        if isinstance(costume, Living):
            costume.made  # noqa: B018 - refuses here, where the page can say so
            self.work = threading.Thread(target=self._working_out, daemon=True)
            self.work.start()
        else:
            self._work_out()

    @property
    def made(self) -> Made:
        """The costume with the lays that the plan counts on, once they have been worked out."""
        self._wait()
        assert self._made is not None
        return self._made

    @property
    def plan(self) -> Plan:
        """The facts of the plan, once they have been worked out."""
        self._wait()
        assert self._plan is not None
        return self._plan

    def _wait(self) -> None:
        if isinstance(self.costume, Living):
            self.work.join()

    def _working_out(self) -> None:
        unit = self.costume.asked.told_in if isinstance(self.costume, Living) else None
        plainly(self._work_out, self._say, unit)

    def _work_out(self) -> None:
        if isinstance(self.costume, Living):
            start = time.monotonic()

            def tell(words: str, share: float) -> None:
                left = time_left(share, time.monotonic() - start)
                self.view.value = paragraphs_html([f"{WORKING}, {100 * share:.0f} %{left}: {words} ..."])

            self._made = self.costume.laid(tell)
        else:
            made = self.costume if isinstance(self.costume, Made) else make(self.costume)
            self._made = made if made.lays else laid_out(made)
        self._plan = planned(self._made)
        self.view.value = macros(__file__).frame(
            page(self._plan, self._made), self.height, Colour.RULE, Colour.PAPER
        )

    def _say(self, words: str) -> None:
        self.view.value = refused_html(words)

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.view._repr_mimebundle_(**asked)
