"""What is said of bodies whose two sides differ: each sentence says what differs, in the maker's own unit."""

from __future__ import annotations

import pytest

from drafting.draft.centres import middle_said


@pytest.mark.parametrize(("left", "right", "longer"), [(1038.9, 1038.0, "left"), (1038.0, 1041.0, "right")])
def test_a_middle_that_differs_by_less_than_its_length_shows_is_told_by_how_much(
    left: float, right: float, longer: str
) -> None:
    """A coat's centre back "came out 40 7/8 in long on the left and 40 7/8 in on the right"."""
    by = {"left": "0.9 mm", "right": "1/8 in"}[longer]
    assert f"came out {by} longer on the {longer} than on the" in middle_said("back", "hem", left, right).said(
        "in"
    )
