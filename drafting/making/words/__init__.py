"""The one place of the plan's words: a text for each key, in `*.toml` beside this file.

A text names its facts in braces with how each is shown: `{length:cm}` a length (mm) in cm, `{share:%}`
a fraction in per cent, `{n}` as it is, `{part:name}` a piece or edge name as a reader has it. Another
language is another set of files with the same keys.
"""

from __future__ import annotations

import string
import tomllib
from functools import cache
from importlib.resources import files
from typing import Any

from drafting.checks.words import plain
from drafting.making.model import Said


@cache
def texts() -> dict[str, str]:
    """Return every text by its key (`section.name`)."""
    found: dict[str, str] = {}
    for file in sorted(files(__package__).iterdir(), key=lambda f: f.name):
        if file.name.endswith(".toml"):
            for section, lines in tomllib.loads(file.read_text(encoding="utf-8")).items():
                found |= {f"{section}.{name}": text for name, text in lines.items()}
    return found


def text(said: Said | str) -> str:
    """Return the sentence; a KeyError names a text or a fact that is not there.

    >>> text(Said("do.fastener_plain", (("what", "hook"), ("where", "collar"))))
    'Sew on the hook at the collar.'
    """
    if isinstance(said, str):
        return text(Said(said))
    return _Shown().vformat(texts()[said.key], (), dict(said.facts))


class _Shown(string.Formatter):
    """How a fact is shown, by the word after its colon."""

    def format_field(self, value: Any, form: str) -> str:
        match form:
            case "cm":
                return f"{value / 10:.1f}".removesuffix(".0") + " cm"
            case "m":
                return f"{value / 1000:.2f} m"
            case "mm":
                return f"{value:.1f}".removesuffix(".0") + " mm"
            case "%":
                return f"{100 * value:.0f} %"
            case "name":
                return plain(str(value))
            case _:
                return str(super().format_field(value, form))
