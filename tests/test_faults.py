"""Every fault that `python -m tests.faults` plants has its place in today's kit, and the harness finds one."""

from __future__ import annotations

from tests.faults import PLANTED, ROOT, misplaced


def test_every_fault_has_its_place() -> None:
    assert misplaced() == []
    assert len(PLANTED) == len({fault.name for fault in PLANTED}) == 51


def test_every_test_that_is_likely_to_find_one_is_there() -> None:
    tests = {path for fault in PLANTED for path in (fault.likely + " " + fault.rooms).split()}
    assert [path for path in tests if not (ROOT / "tests" / path).exists()] == []
