"""What stands is spared by later clean-ups; what has become rubbish is not kept for ever."""

from __future__ import annotations

import gc
import weakref

import pytest

from drafting.notebook.memory import spare_what_stands


class Ring:
    """Rubbish that only a clean-up finds: it holds itself."""

    def __init__(self) -> None:
        self.me = self


@pytest.fixture(autouse=True)
def as_before() -> object:
    yield
    gc.unfreeze()


def test_what_stands_is_passed_over() -> None:
    spare_what_stands()
    assert gc.get_freeze_count() > 10_000
    assert len(gc.get_objects()) < 0.1 * gc.get_freeze_count()


def test_rubbish_of_the_last_time_goes_at_the_next() -> None:
    ring = Ring()
    known = weakref.ref(ring)
    spare_what_stands()
    del ring
    gc.collect()
    assert known() is not None
    spare_what_stands()
    assert known() is None
