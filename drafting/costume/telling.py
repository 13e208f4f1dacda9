"""Who hears how far a long work has come, and what a line of it says."""

from __future__ import annotations

from collections.abc import Callable

Tell = Callable[[str, float], None]
"""Hears what is being done and how much of it is done, 0 to 1; what it raises ends the work."""

FIRST_GUESS = 0.04
"""Share of the work from which the time left is worth telling (ours)."""


def tell_nobody(words: str, share: float) -> None:
    """Tell nobody."""


def within(tell: Tell, low: float, high: float) -> Tell:
    """Return a `tell` for a part of the work, whose 0 to 1 is `low` to `high` of the whole."""
    return lambda words, share: tell(words, low + (high - low) * share)


def progress_line(words: str, share: float, seconds: float) -> str:
    """Return the line of progress: per cent, time left as it went so far, what is being done.

    >>> progress_line("Laying out shell", 0.25, 10.0)
    ' 25 %, about 30 s left: Laying out shell'
    >>> progress_line("Drafting", 0.0, 0.1)
    '  0 %: Drafting'
    """
    return f"{100 * share:3.0f} %{time_left(share, seconds)}: {words}"


def time_left(share: float, seconds: float) -> str:
    """Return what is left after so many seconds, as it went so far; nothing where it is too early to say.

    >>> time_left(0.25, 10.0), time_left(0.5, 400.0), time_left(0.01, 1.0)
    (', about 30 s left', ', about 7 min left', '')
    """
    left = seconds * (1 - share) / share if share >= FIRST_GUESS else 0.0
    return f", about {_rounded(left)} left" if left >= 1 else ""


def _rounded(seconds: float) -> str:
    """Return a time that is only a guess: to a second below ten, to five below a minute, else in minutes."""
    if seconds >= 90:
        return f"{seconds / 60:.0f} min"
    step = 1 if seconds < 10 else 5
    return f"{step * round(seconds / step)} s"
