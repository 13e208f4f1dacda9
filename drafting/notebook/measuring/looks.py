"""How the measuring guide looks, and which tape shows when: CSS alone, no round trip to the kernel."""

from __future__ import annotations

from collections.abc import Iterable

from drafting.ground.templates import Html, beside
from drafting.notebook.said import style_html


def tape_class(measure: str) -> str:
    """Return the class of a measure's field.

    >>> tape_class("bust_girth")
    'field-bust-girth'
    """
    return f"field-{measure.replace('_', '-')}"


def style(measures: Iterable[str]) -> Html:
    """Return the style sheet, with one rule for each measure that shows its tape."""
    rules = [
        f'.guide:has(.{tape_class(name)} input:focus) [id="tape.{name}"] {{ display: inline; }}'
        for name in measures
    ]
    return style_html(beside(__file__, ".css"), "\n".join(rules))
