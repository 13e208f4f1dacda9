"""How far the work is, on one line of a terminal; nothing where nobody looks (a pipe, a file)."""

from __future__ import annotations

import shutil
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import TextIO

from drafting.costume.telling import Tell

FIRST_GUESS = 0.04
"""Share of the work from which the time left is worth telling (ours)."""


@contextmanager
def progress(stream: TextIO, clock: Callable[[], float] = time.monotonic) -> Iterator[Tell]:
    """Give a function that hears what is being done and the share that is done (0 to 1).

    On a terminal each call rewrites one line, which is gone afterwards; elsewhere nothing is written.
    """
    if not stream.isatty():
        yield lambda words, share: None
        return
    start, shown = clock(), [""]

    def tell(words: str, share: float) -> None:
        line = progress_line(words, share, clock() - start)[: shutil.get_terminal_size().columns - 1]
        if line != shown[0]:
            stream.write("\r\x1b[K" + line)
            stream.flush()
            shown[0] = line

    try:
        yield tell
    finally:
        stream.write("\r\x1b[K")
        stream.flush()


def progress_line(words: str, share: float, seconds: float) -> str:
    """Return the line of progress: per cent, time left as it went so far, what is being done.

    >>> progress_line("Laying out shell", 0.25, 10.0)
    ' 25 %, about 30 s left: Laying out shell'
    >>> progress_line("Drafting", 0.0, 0.1)
    '  0 %: Drafting'
    """
    left = seconds * (1 - share) / share if share >= FIRST_GUESS else 0.0
    return f"{100 * share:3.0f} %{f', about {_rounded(left)} left' if left >= 1 else ''}: {words}"


def _rounded(seconds: float) -> str:
    """Return a time that is only a guess: to a second below ten, to five below a minute, else in minutes."""
    if seconds >= 90:
        return f"{seconds / 60:.0f} min"
    step = 1 if seconds < 10 else 5
    return f"{step * round(seconds / step)} s"


def within(tell: Tell, low: float, high: float) -> Tell:
    """Return a `tell` for a part of the work, whose 0 to 1 is `low` to `high` of the whole."""
    return lambda words, share: tell(words, low + (high - low) * share)
