"""Pages and files out of templates: words and tags stand in a file beside the module that fills it.

A template (`x.html.jinja` beside `x.py`) holds macros, and the module calls them by name. Whatever is
handed over is escaped, unless it comes from a macro itself; a name that a template does not know is an
error, not an empty place.
"""

from __future__ import annotations

from base64 import b64encode
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

ENDING, TOML_ENDING = ".html.jinja", ".toml.jinja"

__all__ = ["Html", "beside", "macros", "page_policy", "toml_macros"]

Html = Markup
"""Text with tags in it, escaped already."""


@cache
def macros(module: str) -> Any:
    """Return the macros of the template beside a module, which hands over its `__file__`.

    Each macro is a function of plain values that returns `Html`.
    """
    return _macros(Path(module), ENDING, escape=True)


def page_policy(script: str) -> str:
    """Return what a page of one file may do: its own style, pictures within it, and this `script` alone."""
    own = b64encode(sha256(script.encode()).digest()).decode()
    return (
        "default-src 'none'; img-src data:; style-src 'unsafe-inline'; "
        f"script-src 'sha256-{own}'; base-uri 'none'; form-action 'none'"
    )


@cache
def toml_macros(module: str) -> Any:
    """Return the macros of the TOML template beside a module; nothing is escaped, so hand over TOML values."""
    return _macros(Path(module), TOML_ENDING, escape=False)


def _macros(place: Path, ending: str, *, escape: bool) -> Any:
    pages = Environment(
        loader=FileSystemLoader(place.parent),
        autoescape=escape,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    return pages.get_template(place.stem + ending).module


@cache
def beside(module: str, ending: str) -> str:
    """Return the text of the file beside a module that has its name and this ending (`.css`)."""
    return Path(module).with_suffix(ending).read_text("utf-8")
