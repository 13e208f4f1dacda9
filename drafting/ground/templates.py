"""HTML out of templates: a page's words and tags stand in a file beside the module that fills it.

A template (`x.html.jinja` beside `x.py`) holds macros, and the module calls them by name. Whatever is
handed over is escaped, unless it comes from a macro itself; a name that a template does not know is an
error, not an empty place.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

ENDING = ".html.jinja"

__all__ = ["Html", "beside", "macros"]

Html = Markup
"""Text with tags in it, escaped already."""


@cache
def macros(module: str) -> Any:
    """Return the macros of the template beside a module, which hands over its `__file__`.

    Each macro is a function of plain values that returns `Html`.
    """
    place = Path(module)
    pages = Environment(
        loader=FileSystemLoader(place.parent),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    return pages.get_template(place.stem + ENDING).module


@cache
def beside(module: str, ending: str) -> str:
    """Return the text of the file beside a module that has its name and this ending (`.css`)."""
    return Path(module).with_suffix(ending).read_text("utf-8")
