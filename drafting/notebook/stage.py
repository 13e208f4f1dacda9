"""Fields and the pieces they change, side by side: both stay in sight, with large letters too."""

from __future__ import annotations

from typing import Any

import ipywidgets as widgets

from drafting.ground.templates import beside


def stage_style() -> str:
    """Return the style sheet that a page with such a box needs."""
    return beside(__file__, ".css")


def in_two_columns(fields: Any, shown: Any) -> Any:
    """Return both in one box as high as the page; each scrolls by itself, `stage_style` gives the look."""
    shown.tabbable = True  # it scrolls: by key as well
    box = widgets.HBox([fields, shown])
    for name, part in {"kit-stage": box, "stage-fields": fields, "stage-shown": shown}.items():
        part.add_class(name)
    return box
