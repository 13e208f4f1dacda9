"""How far the work is, on one line of a terminal; nothing where nobody looks (a pipe, a file)."""

from __future__ import annotations

import shutil
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import TextIO

from drafting.costume.telling import Tell, progress_line


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
