"""Who does the work: this process, processes of this machine, or machines that a scheduler knows.

An engine takes jobs one by one as it has room for them, and gives outcomes as they come. Each wearer is
drafted by the same code on the same values, so that her bytes do not depend on the engine.
"""

from __future__ import annotations

import os
import signal
import sys
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import partial
from multiprocessing import get_context
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from pathlib import Path
from typing import Any

from drafting.blocks import use_blocks
from drafting.ground.errors import Fault
from drafting.output.cast.job import Outcome, WearerJob, done, refused_outcome

Engine = Callable[[Iterable[WearerJob], Path], Iterator[Outcome]]
"""Takes the jobs and the folder of the cast."""

TRIES = 3
"""Processes that may end at one wearer before she is given up (ours)."""

PATIENCE = 5.0
"""Seconds that a process is given to clear away what it has half done (ours)."""


def engine_of(count: int, blocks: Path | None) -> Engine:
    """Return the engine of `count` processes on this machine; one is this process itself."""
    return _here if count == 1 else partial(_in_processes, count=count, blocks=blocks)


def cores() -> int:
    """Return how many processes this machine runs at once."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _here(jobs: Iterable[WearerJob], place: Path) -> Iterator[Outcome]:
    for job in jobs:
        yield done(job, place)


@dataclass(eq=False)
class _Hand:
    """One process of ours: how it is spoken to, and what it has in work."""

    process: BaseProcess
    line: Connection
    job: WearerJob | None = None


@dataclass
class _Crew:
    """The processes, the jobs that have to be begun again, and how often each was."""

    start: Callable[[], _Hand]
    jobs: Iterator[WearerJob]
    hands: list[_Hand] = field(default_factory=list)
    again: deque[WearerJob] = field(default_factory=deque)
    tries: dict[str, int] = field(default_factory=dict)

    def busy(self) -> list[_Hand]:
        """Return the processes that have a job, each that was idle with a new one where there is any."""
        for hand in self.hands:
            if hand.job is None:
                hand.job = self.again.popleft() if self.again else next(self.jobs, None)
                if hand.job is not None:
                    hand.line.send(hand.job)
        return [hand for hand in self.hands if hand.job is not None]

    def answered(self, hand: _Hand) -> Outcome | None:
        """Return what a process answers; where it has ended, another begins its job again.

        Raises what ended the job there.
        """
        job, hand.job = hand.job, None
        assert job is not None
        try:
            answer = hand.line.recv()
        except (EOFError, OSError):
            return self._ended(hand, job)
        if isinstance(answer, BaseException):
            raise answer
        assert isinstance(answer, Outcome)
        return answer

    def _ended(self, hand: _Hand, job: WearerJob) -> Outcome | None:
        self.hands[self.hands.index(hand)] = self.start()
        self.tries[job.folder] = self.tries.get(job.folder, 0) + 1
        if self.tries[job.folder] < TRIES:
            self.again.append(job)
            return None
        what = f"the process that drafted her ended {TRIES} times (is there memory enough?)"
        return refused_outcome(job.folder, (Fault(what, "try it with --jobs 1"),))


def _in_processes(jobs: Iterable[WearerJob], place: Path, count: int, blocks: Path | None) -> Iterator[Outcome]:
    """Yield outcomes as they come from `count` processes; none is left when this ends, however it ends."""
    crew = _Crew(partial(_started, place, blocks), iter(jobs))
    with _let_go(crew.hands):
        crew.hands += [crew.start() for _ in range(count)]
        while busy := crew.busy():
            ready = wait([hand.line for hand in busy])
            for hand in busy:
                if hand.line in ready and (outcome := crew.answered(hand)):
                    yield outcome


def _started(place: Path, blocks: Path | None) -> _Hand:
    context = get_context("spawn")
    ours, theirs = context.Pipe()
    process = context.Process(target=_work, args=(theirs, place, blocks), daemon=True)
    process.start()
    theirs.close()
    return _Hand(process, ours)


@contextmanager
def _let_go(hands: list[_Hand]) -> Iterator[None]:
    """End the processes when the block ends; each clears away what it has half done."""
    try:
        yield
    finally:
        for hand in hands:
            hand.line.close()
            hand.process.terminate()
        for hand in hands:
            hand.process.join(PATIENCE)
            if hand.process.is_alive():
                hand.process.kill()
                hand.process.join()


def _work(line: Connection, place: Path, blocks: Path | None) -> None:
    """Do jobs until there are no more: what a process of ours runs."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the hand at the keyboard is answered by the first process
    signal.signal(signal.SIGTERM, _stop)
    use_blocks(blocks)
    while True:
        try:
            job = line.recv()
        except (EOFError, OSError):
            return
        answer: Any
        try:
            answer = done(job, place)
        except OSError as error:
            answer = error
        try:
            line.send(answer)
        except OSError:  # whoever asked is gone
            return


def _stop(*_: object) -> None:
    sys.exit(1)
