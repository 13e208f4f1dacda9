"""What a tape and a strain gauge would find on garments whose ease is known: a loose one on its own wearer, the
same on a larger one, a close top that was drafted smaller than its wearer."""

from __future__ import annotations

import pytest

from tests.worn.dressed import dressed, levels, the_form


def bust(larger: float, ease: float = 60.0) -> float:
    rest = dressed("bodice", larger, ease=ease)
    assert rest.settled
    return levels(rest, the_form(larger))["bust"].strain.p95


def test_a_bodice_with_6_cm_ease_is_hardly_strained_on_its_own_wearer() -> None:
    assert bust(0.0) < 0.005


def test_on_a_wearer_4_cm_larger_it_is_strained_at_the_bust() -> None:
    assert bust(40.0) >= 0.015


def test_a_close_top_is_stretched_as_it_was_drafted_to_be() -> None:
    """Drafted smaller than the body by a share; worn, the cloth is longer by that share, within 1 point."""
    rest, form = dressed("close-top"), the_form()
    assert rest.settled
    body = {one.name: one.wanted for one in form.report}
    for name in ("bust", "waist", "hip"):
        level = levels(rest, form)[name]
        drafted, worn = body[f"{name}_girth"] / level.drafted - 1, level.worn / level.drafted - 1
        assert worn == pytest.approx(drafted, abs=0.01), name
