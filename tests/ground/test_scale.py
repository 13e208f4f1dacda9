"""Adult constants shrink with a small body, without a jump (ours)."""

from __future__ import annotations

import pytest

from drafting.ground.scale import scale_of_bust


def test_adults_keep_their_constants_and_a_doll_has_bust_over_900() -> None:
    assert [scale_of_bust(bust) for bust in (700, 912, 1600)] == [1, 1, 1]
    assert scale_of_bust(400) == pytest.approx(400 / 900)


@pytest.mark.parametrize("bust", [600.0, 700.0])
def test_the_two_rules_meet_without_a_jump(bust: float) -> None:
    below, above = scale_of_bust(bust - 1e-9), scale_of_bust(bust + 1e-9)
    assert above - below == pytest.approx(0, abs=1e-9)


def test_it_never_falls_as_the_bust_grows() -> None:
    scales = [scale_of_bust(bust) for bust in range(200, 1000)]
    assert scales == sorted(scales)
