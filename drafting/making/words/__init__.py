"""The one place of the plan's words: a text for each key, in `*.toml` beside this file.

A text names its facts in braces with how each is shown: `{length:length}` a length (mm) in the
maker's unit, `{size:small}` of a button or a bone, `{cloth:bought}` in metres or yards, `{zip:ready}` as it
is sold, `{stitch:mm}` in mm always, `{share:%}` a fraction in per cent, `{n}` as it is, `{n:seam|seams}` a
number with what it counts, `{part:name}` a piece or edge name as a reader has it; a length that is always the
same stands as `⟨50⟩`, in mm. Another language is another set of files with the same keys.
"""

from __future__ import annotations

import string
import tomllib
from functools import cache
from importlib.resources import files
from typing import Any

from drafting.checks.words import plain
from drafting.ground.lengths import counted, in_unit, told
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


def plan_sentence(said: Said | str, unit: str | None = "cm") -> str:
    """Return the sentence with its lengths in `unit`.

    >>> plan_sentence(Said("do.hem", (("depth", 38.1), ("names", "hem"))), "in")
    'Turn up 1 1/2 in at the hem and hem it.'
    """
    return in_unit(text(said), unit)


def text(said: Said | str) -> str:
    """Return the sentence, its lengths as they are `told` until it is read.

    A KeyError names a text or a fact that is not there.

    >>> text(Said("do.fastener_plain", (("what", "hook"), ("where", "collar"))))
    'Sew on the hook at the collar.'
    """
    if isinstance(said, str):
        return text(Said(said))
    return _Shown().vformat(texts()[said.key], (), dict(said.facts))


class _Shown(string.Formatter):
    """How a fact is shown, by the word after its colon."""

    def format_field(self, value: Any, form: str) -> str:
        if isinstance(value, Said):
            return text(value)
        match form:
            case "length":
                return told(value)
            case "small":
                return told(value, "small")
            case "bought":
                return told(value, "bought")
            case "ready":
                return told(value, "ready")
            case "mm":
                return f"{value:.1f}".removesuffix(".0") + " mm"
            case "hours":
                return _hours(value)
            case "%":
                return f"{100 * value:.0f} %"
            case "name":
                return plain(str(value))
            case _ if "|" in form:
                return counted(value, *form.split("|"))
            case _:
                return str(super().format_field(value, form))


def _hours(value: float) -> str:
    """Return hours of work as they are said; less than three quarters of one is no whole hour."""
    if value < 0.75:
        return "half an hour" if value >= 0.375 else "a quarter of an hour"
    return "1 hour" if round(value) == 1 else f"{value:.0f} hours"
