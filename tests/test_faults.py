"""Every fault that `python -m tests.faults` plants has its place in today's kit, and the harness finds one."""

from __future__ import annotations

from tests.faults import PLANTED, misplaced


def test_every_fault_has_its_place() -> None:
    assert misplaced() == []
    assert len(PLANTED) == len({fault.name for fault in PLANTED}) == 30
