"""What many tests have found together is printed once, at the end of the run."""

from __future__ import annotations

from typing import Any

import pytest

from tests.population import PROPERTY, table

SAID = "said"
"""Name of the report property that holds lines to be printed at the end as they are."""


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
