"""What many tests share: what a module's fixture makes is made once, and what they found is printed at the end."""

from __future__ import annotations

import asyncio
import gc
from collections.abc import Iterator
from typing import Any

import pytest

from tests.population import PROPERTY, table

SAID = "said"
"""Name of the report property that holds lines to be printed at the end as they are."""


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Send tests that share what a fixture makes for their whole module to one worker."""
    for item in items:
        if isinstance(item, pytest.Function) and not item.get_closest_marker("xdist_group"):
            known = item._fixtureinfo.name2fixturedefs
            shared = {name for name, made in known.items() if made[-1].scope == "module"}
            if shared:
                spec = getattr(item, "callspec", None)
                which = [f"{n}{i}" for n, i in spec.indices.items() if n in shared] if spec else []
                item.add_marker(pytest.mark.xdist_group("-".join((item.module.__name__, *sorted(which)))))


def pytest_collection_finish() -> None:
    """Have Python look for rubbish seldom, and never again at what the tests themselves are.

    A run makes and drops many small objects in a heap that is large already: looking takes a tenth of its time.
    """
    gc.collect()
    gc.freeze()
    gc.set_threshold(50_000, 20, 100)


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
