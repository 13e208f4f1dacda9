"""Progress: on a terminal one line with the time left, which is gone afterwards; nothing in a pipe."""

from __future__ import annotations

import io

import pytest

from drafting.commands.progress import progress
from drafting.costume.telling import progress_line, within


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_a_terminal_is_told_and_left_clean() -> None:
    terminal, hours = Terminal(), iter((0.0, 1.0, 10.0, 60.0))
    with progress(terminal, lambda: next(hours)) as tell:
        tell("Drafting", 0.0)
        tell("Laying out shell", 0.5)
        tell("Writing", 0.75)
    said = terminal.getvalue().split("\r\x1b[K")
    assert said == [
        "",
        "  0 %: Drafting",
        " 50 %, about 10 s left: Laying out shell",
        " 75 %, about 20 s left: Writing",
        "",
    ]


def test_a_pipe_stays_quiet() -> None:
    pipe = io.StringIO()
    with progress(pipe) as tell:
        tell("Drafting", 0.5)
    assert pipe.getvalue() == ""


def test_a_refusal_leaves_no_half_line() -> None:
    terminal = Terminal()

    def stopped() -> None:
        with progress(terminal) as tell:
            tell("Drafting", 0.5)
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        stopped()
    assert terminal.getvalue().endswith("\r\x1b[K")


@pytest.mark.parametrize(
    ("share", "seconds", "left"), [(0.5, 3.0, "3 s"), (0.5, 42.0, "40 s"), (0.1, 30.0, "4 min"), (0.01, 9.0, "")]
)
def test_the_time_left_goes_by_the_time_so_far(share: float, seconds: float, left: str) -> None:
    line = progress_line("x", share, seconds)
    assert (f"about {left} left" in line) if left else ("left" not in line)


def test_a_part_of_the_work_is_told_as_a_part_of_the_whole() -> None:
    heard: list[float] = []
    within(lambda _, share: heard.append(share), 0.2, 0.6)("x", 0.5)
    assert heard == [pytest.approx(0.4)]
