"""A general accessibility checker, asked of a page in a browser."""

from __future__ import annotations

from typing import Any

import pytest


def found_by_axe(page: Any, context: str = ".jp-OutputArea-output", least: int = 20) -> list[tuple[str, str]]:
    """Return what axe-core finds wrong with a part of the page, where more than `least` of its rules hold."""
    checker = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    found = checker.run(page, context=context).response
    assert len(found["passes"]) > least
    return [(rule["id"], node["html"]) for rule in found["violations"] for node in rule["nodes"]]
