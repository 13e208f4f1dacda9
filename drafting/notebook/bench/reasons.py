"""Why the trade turns the choices of a group: prose beside the controls, from `reasons.toml`."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path


def reason(heading: str) -> str:
    """Return the trade's reason for a group of controls; "" for a group of a maker's own block.

    >>> reason("Waistband").startswith("A band is cut firm")
    True
    """
    return _reasons().get(heading, "")


@cache
def _reasons() -> dict[str, str]:
    return tomllib.loads(Path(__file__).with_suffix(".toml").read_text("utf-8"))
