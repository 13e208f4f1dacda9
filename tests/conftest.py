"""What many tests have found together is printed once, at the end of the run."""

from __future__ import annotations

import asyncio
from collections.abc import Iterator
from typing import Any

import pytest

from tests.population import PROPERTY, table

SAID = "said"
"""Name of the report property that holds lines to be printed at the end as they are."""


@pytest.fixture(autouse=True)
def no_loop_of_a_browser(request: pytest.FixtureRequest) -> Iterator[None]:
    """Hide the loop that Playwright leaves running in its thread from tests that have no page.

    Where a loop runs, what may wait does, and no other can be started.
    """
    loop = asyncio._get_running_loop()
    if loop is None or request.node.get_closest_marker("browser"):
        yield
        return
    asyncio._set_running_loop(None)
    yield
    asyncio._set_running_loop(loop)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Print the population table and the distributions of all tests that left some."""
    reports: list[Any] = [
        report
        for kind in ("passed", "failed")
        for report in terminalreporter.stats.get(kind, [])
        if isinstance(report, pytest.TestReport) and report.when == "call"
    ]
    rows = [row for report in reports for row in _left(report, PROPERTY)]
    lines = [line for report in reports for line in _left(report, SAID)]
    if rows:
        terminalreporter.section("population")
        for line in table(rows):
            terminalreporter.write_line(line)
    if lines:
        terminalreporter.section("how far off")
        for line in sorted(lines):
            terminalreporter.write_line(line)


def _left(report: pytest.TestReport, name: str) -> list[Any]:
    return [one for key, value in report.user_properties if key == name for one in value]
