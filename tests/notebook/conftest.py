"""One JupyterLab and one Chromium for all browser tests of a run."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from typing import Any

import pytest

from tests.notebook.lab import Lab, Tab, new_tab, running_chromium, running_lab


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    if shutil.which("chromium") is None:
        pytest.skip("chromium is not on the PATH; .ci/run installs it")
    with running_chromium() as started:
        yield started


@pytest.fixture(scope="session")
def lab(browser: Any, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Lab]:
    """Serve a maker's copy of notebooks and measurements."""
    with running_lab(tmp_path_factory.mktemp("work"), tmp_path_factory.mktemp("home")) as served:
        yield served


@pytest.fixture(scope="module")
def tab(browser: Any, lab: Lab) -> Iterator[Tab]:
    """Return one page for all tests of a file: opening a notebook takes longer than running it."""
    with new_tab(browser, lab) as opened:
        yield opened


@pytest.fixture
def nothing_failed_unseen(tab: Tab) -> Iterator[None]:
    """Hold after the test that no kernel, no page and no call to the outside has failed unseen."""
    yield
    assert tab.kernel_faults() == []
    assert tab.faults == []
    assert tab.outside == []
