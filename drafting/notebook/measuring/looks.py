"""How the measuring guide looks, and which tape shows when: CSS alone, no round trip to the kernel."""

from __future__ import annotations

from collections.abc import Iterable

from drafting.notebook.said import style_html
from drafting.templates import Html, beside


def css_name(measure: str) -> str:
    """Return the class of a measure's field.

    >>> css_name("bust_girth")
    'field-bust-girth'
    """
    return f"field-{measure.replace('_', '-')}"


def style(measures: Iterable[str]) -> Html:
    """Return the style sheet, with one rule for each measure that shows its tape."""
    rules = [
        f'.guide:has(.{css_name(name)} input:focus) [id="tape.{name}"] {{ display: inline; }}' for name in measures
    ]
    return style_html(beside(__file__, ".css"), "\n".join(rules))
