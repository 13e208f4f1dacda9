"""The making plan on a notebook page: the file that is written, in a frame of its own."""

from __future__ import annotations

from typing import Any

import ipywidgets as widgets

from drafting.costume.file import CostumeFile
from drafting.costume.lays import laid_out
from drafting.costume.make import Made, make
from drafting.ground.palette import Colour
from drafting.ground.templates import macros
from drafting.making import planned
from drafting.making.page import page


class PlanView:
    """The plan of a costume, its lays worked out where they are not yet. `plan` holds its facts.

    Show it as the last line of a cell. Raises `InputError` for a costume that cannot be drafted.
    """

    def __init__(self, costume: CostumeFile | Made, height: str = "760px") -> None:
        made = costume if isinstance(costume, Made) else make(costume)
        self.made = made if made.lays else laid_out(made)
        self.plan = planned(self.made)
        frame = macros(__file__).frame(page(self.plan, self.made), height, Colour.RULE, Colour.PAPER)
        self.view = widgets.HTML(frame, layout=widgets.Layout(width="100%"))

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.view._repr_mimebundle_(**asked)
