"""One control for each choice, built from what its block states: unit, range, default, meaning."""

from __future__ import annotations

import html
from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

import ipywidgets as widgets

from drafting.checks.words import capital, plain
from drafting.choices import Choice

UNITS = {"mm": "cm", "deg": "degrees", "percent": "%", "ratio": "times", "count": ""}
"""What a maker reads; mm are shown in cm."""

REACH = 100
"""Steps either side of its value that a slider reaches where a choice states no range (ours)."""


@dataclass(frozen=True)
class Control:
    """A choice's `widget` (what is moved) and its `row` (that, and its meaning below)."""

    choice: Choice
    widget: Any
    row: Any


def control(choice: Choice, value: Any, usual: Any, changed: Callable[[Any], None]) -> Control:
    """Return the control of a choice that stands at `value` (mm, degrees, a word, yes or no).

    `usual` is what it is where the maker says nothing. `changed` is handed every new value, in the
    choice's own unit; a value that nobody moved is never handed back, so it is never rounded.
    """
    widget = _widget(choice, value)
    widget.tooltip = f"{capital(choice.meaning)}. Source: {choice.source}"
    widget.add_class("choice")
    widget.add_class(f"choice-{choice.name.replace('_', '-')}")
    kept = value

    def moved(change: dict[str, Any]) -> None:
        nonlocal kept
        new = taken(choice, change["new"], kept)
        if new != kept:
            kept = new
            changed(new)

    widget.observe(moved, names="value")
    about = widgets.HTML(f'<div class="meaning">{html.escape(meaning(choice, usual))}</div>')
    return Control(choice, widget, widgets.VBox([widget, about]))


def label(choice: Choice) -> str:
    """Return the words in front of a control.

    >>> from drafting.blocks import all_blocks
    >>> label(all_blocks()["bodice"].choices[0])
    'Bust ease, cm'
    """
    unit = UNITS.get(choice.unit, "")
    return capital(plain(choice.name)) + (f", {unit}" if unit else "")


def meaning(choice: Choice, usual: Any) -> str:
    """Return what a choice means, how far it reaches, and what is usual."""
    said = capital(choice.meaning)
    if choice.unit == "yes/no":
        return f"{said}. Usually {'yes' if usual else 'no'}."
    if choice.unit == "word":
        return f"{said}. Usually {usual}."
    if choice.low is None or choice.high is None:
        return f"{said}. Usually {_figure(choice, usual)}."
    ends = f"{shown(choice, choice.low):g} to {_figure(choice, choice.high)}"
    return f"{said}. {ends}, usually {_figure(choice, usual)}."


def shown(choice: Choice, value: float) -> float:
    """Return a value as its slider has it: mm in cm, exactly.

    >>> from drafting.blocks import all_blocks
    >>> shown(all_blocks()["bodice"].choices[0], 914.0)
    91.4
    """
    return float(Decimal(repr(float(value))) / 10) if choice.unit == "mm" else value


def taken(choice: Choice, new: Any, kept: Any) -> Any:
    """Return the value that a control's `new` stands for, in the choice's own unit.

    A readout that was only opened and closed comes back rounded to what it showed: then the value
    that was `kept` stays, to the last digit. The dust of a slider's own sums goes (9.600000000000001
    cm is 96 mm).
    """
    if choice.unit in ("word", "yes/no", "count"):
        return new
    if _rounded(choice, new) == _rounded(choice, shown(choice, kept)):
        return kept
    exact = float(Decimal(repr(float(new))) * 10) if choice.unit == "mm" else float(new)
    return round(exact, 9)


def reach(choice: Choice, value: float) -> tuple[float, float]:
    """Return the ends of a slider, in the choice's unit; the range grows to hold a real value."""
    low = value - REACH * choice.step if choice.low is None else choice.low
    high = value + REACH * choice.step if choice.high is None else choice.high
    return min(low, value), max(high, value)


def _widget(choice: Choice, value: Any) -> Any:
    looks = {"description": label(choice), "layout": widgets.Layout(width="100%")}
    looks["style"] = {"description_width": "9.6em"}
    match choice.unit:
        case "word":
            options = [(capital(plain(word)), word) for word in choice.words]
            return widgets.Dropdown(options=options, value=value, **looks)
        case "yes/no":
            return widgets.Checkbox(value=value, **looks)
        case "count":
            least, most = (int(end) for end in reach(choice, value))
            return widgets.IntSlider(
                value=value, min=least, max=most, step=int(choice.step), **looks
            )
        case _:
            low, high = (shown(choice, end) for end in reach(choice, value))
            return widgets.FloatSlider(
                value=shown(choice, value), min=low, max=high, step=shown(choice, choice.step),
                readout_format=f".{_places(choice)}f", **looks,
            )  # fmt: skip


def _places(choice: Choice) -> int:
    """Return the decimals shown: those of one step, and at least the millimetre."""
    step = Decimal(repr(shown(choice, choice.step))).normalize()
    return max(-int(step.as_tuple().exponent), 1 if choice.unit == "mm" else 0)


def _rounded(choice: Choice, value: float) -> str:
    return f"{value:.{_places(choice)}f}"


def _figure(choice: Choice, value: float) -> str:
    unit = UNITS.get(choice.unit, "")
    return f"{shown(choice, value):g} {unit}".strip()
