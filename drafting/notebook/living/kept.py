"""The journal on disk, beside its costume file: added to line by line, emptied by a save."""

from __future__ import annotations

import os
import time
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path

from drafting.notebook.living.journal import JournalLine, line_of, moves_in
from drafting.notebook.whole_files import put_whole

ENDING = ".journal"

WAIT, STALE = 4.0, 2.0
"""Seconds that a page waits for another that writes, and after which such a mark was left by a crash (ours)."""


def journal_place(costume: Path | str) -> Path:
    """Return where the journal of a costume file stands.

    >>> journal_place("costumes/kite.toml").as_posix()
    'costumes/kite.journal'
    """
    return Path(costume).with_suffix(ENDING)


def kept_moves(journal: Path) -> tuple[JournalLine, ...]:
    """Return what the journal holds; nothing where there is none."""
    try:
        return moves_in(journal.read_text("utf-8", errors="replace"))
    except OSError:
        return ()


def keep(journal: Path, moves: Iterable[JournalLine]) -> None:
    """Add moves to the journal, in one piece; raises `OSError`.

    A line that a crash tore off is ended first, so that it spoils no other.
    """
    text = "".join(map(line_of, moves))
    if not text:
        return
    with _alone(journal), journal.open("ab+") as file:
        if file.tell():
            file.seek(-1, os.SEEK_END)
            text = text if file.read(1) == b"\n" else "\n" + text
        file.write(text.encode())
        file.flush()


def hold_fast(journal: Path) -> None:
    """Have what was kept reach the disk itself: against a machine that loses its power."""
    try:
        with journal.open("rb+") as file:
            os.fsync(file.fileno())
    except OSError:
        return


def let_go(journal: Path, written: Iterable[JournalLine]) -> None:
    """Take out what now stands in the costume file; a move that came meanwhile stays."""
    done = {(move.garment, move.choice): move for move in written}
    with _alone(journal):
        last = {(move.garment, move.choice): move for move in kept_moves(journal)}
        left = [move for named, move in last.items() if done.get(named) != move]
        if left:
            put_whole(journal, "".join(map(line_of, left)).encode())
        else:
            journal.unlink(missing_ok=True)


@contextmanager
def _alone(journal: Path) -> Iterator[None]:
    """Keep other pages out while the journal is written; raises `OSError`."""
    mark = journal.with_name(f".{journal.name}.busy")
    end = time.monotonic() + WAIT
    while True:
        try:
            os.close(os.open(mark, os.O_CREAT | os.O_EXCL | os.O_WRONLY))
            break
        except FileExistsError:
            if _left_behind(mark):
                mark.unlink(missing_ok=True)
            elif time.monotonic() > end:
                raise
            time.sleep(0.005)
    try:
        yield
    finally:
        mark.unlink(missing_ok=True)


def _left_behind(mark: Path) -> bool:
    try:
        return time.time() - mark.stat().st_mtime > STALE
    except OSError:
        return False
