"""The fields and buttons of the page of style lines, as widgets."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import ipywidgets as widgets

from drafting.checks.words import plain
from drafting.ground.units import ShownUnit
from drafting.notebook.style import fields as sf
from drafting.reading.pockets import CORNERS, POCKETS
from drafting.reading.style import HANDS, PLEATS

ORDER = ("garment", "do", "piece", "pocket", *sf.TYPED, "kind", "towards", "corners", "interfacing", "hand")
"""The fields from the top down."""


def fields_of(garments: Sequence[str], unit: ShownUnit) -> dict[str, Any]:
    """Return every field of the page, by its key in the costume file, lengths hinted at in her unit."""
    found: dict[str, Any] = {
        "garment": _chosen("Garment", [(plain(name), name) for name in garments]),
        "do": _chosen("What to do", [(deed, deed) for deed in sf.STEPS]),
        "piece": _typed("Piece", "click on one", widgets.Combobox),
        "kind": _chosen("Kind", [(kind, kind) for kind in PLEATS]),
        "towards": _chosen("Laid", [("to the edge's end", "end"), ("to its start", "start")]),
        "pocket": _chosen("Kind", [(kind, kind) for kind in POCKETS]),
        "corners": _chosen("Corners", [(kind, kind) for kind in CORNERS]),
        "interfacing": _chosen("Interfacing", [("yes", "yes"), ("no", "no")]),
        "hand": _chosen("Hand", [("both", ""), *((f"her {hand} alone", hand) for hand in HANDS)]),
    }
    return found | {key: _typed(words, sf.hint(key, unit)) for key, (words, _) in sf.TYPED.items()}


def _chosen(words: str, options: list[tuple[str, str]]) -> Any:
    looks = {"style": {"description_width": "80px"}, "layout": widgets.Layout(width="350px")}
    return widgets.Dropdown(options=options, value=options[0][1], description=words, **looks)


def _typed(words: str, hint: str, kind: type[Any] = widgets.Text) -> Any:
    looks = {"style": {"description_width": "80px"}, "layout": widgets.Layout(width="350px")}
    return kind(description=words, placeholder=hint, continuous_update=False, **looks)
