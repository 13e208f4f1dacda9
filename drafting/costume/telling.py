"""Who hears how far a long work has come."""

from __future__ import annotations

from collections.abc import Callable

Tell = Callable[[str, float], None]
"""Hears what is being done and how much of it is done, 0 to 1; what it raises ends the work."""


def tell_nobody(words: str, share: float) -> None:
    """Tell nobody."""
