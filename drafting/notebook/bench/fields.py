"""The controls on the page: one widget for all of them, built of the browser's own form fields.

`ipywidgets` 8 has sliders whose knob carries no name for a screen reader, and whose readout cuts a
typed value off at the end of the range. Here each choice has a labelled text field that takes any
value with its unit, a range that a screen reader can name, a way back, and room for a refusal.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import anywidget
import traitlets

from drafting.ground import palette
from drafting.ground.templates import beside


class Knobs(anywidget.AnyWidget):
    """The controls of one garment, by group.

    `groups` is `[{"heading", "why", "open", "knobs": [knob, ...]}]` with `controls.knob` for each;
    `states` has, by name, what a control shows: `{"value", "text", "low", "high", "refusal",
    "apart" (from the file), "n"}`. `moves` comes back from the page: by name `{"n", "stroke", "garment"}` and
    one of `"value"`, `"text"` or `"back"`. `n` counts all moves, so that none is taken twice and a
    state older than the hand's last move is not shown. `wanted` names the choices in sight, `samples` has
    by name a small picture of what each changes (SVG, "" where no line moves). `held` names the choice
    whose slider the hand came to last.
    """

    _esm = Path(__file__).with_suffix(".js")
    _css = palette.css() + beside(__file__, ".css")
    garment = traitlets.Unicode("").tag(sync=True)
    groups: Any = traitlets.List([]).tag(sync=True)
    states = traitlets.Dict({}).tag(sync=True)
    wanted: Any = traitlets.List([]).tag(sync=True)
    samples = traitlets.Dict({}).tag(sync=True)
    held = traitlets.Unicode("").tag(sync=True)
    moves = traitlets.Dict({}).tag(sync=True, echo_update=False)  # nobody reads an echo of it

    def take(self, moves: Mapping[str, Any], seen: int) -> list[tuple[str, dict[str, Any]]]:
        """Return the moves later than `seen`, in the order they were made."""
        new = [(name, move) for name, move in moves.items() if move["n"] > seen]
        return sorted(new, key=lambda item: int(item[1]["n"]))
