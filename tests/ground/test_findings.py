"""What a maker reads in a finding: plain numbers, and no less than nothing."""

from __future__ import annotations

import pytest

from drafting.ground.findings import Finding


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("-0 mm (-0.0 %) are eased in", "0 mm (0.0 %) are eased in"),
        ("it turns -0.", "it turns 0."),
        ("-0.5 mm, -0.04 mm and -10 mm", "-0.5 mm, -0.04 mm and -10 mm"),
        ("runs turn -0.00, +3.1 and -0.01", "runs turn 0.00, +3.1 and -0.01"),
        ("10-0 buttons of tail-0", "10-0 buttons of tail-0"),
    ],
)
def test_a_number_that_rounds_to_nothing_has_no_minus(text: str, read: str) -> None:
    # Arithmetic: 0 has no sign; a dash between words or numbers is none.
    assert Finding("any", "note", "any", None, None, text).message == read
