"""What a tape and a strain gauge would find on garments whose ease is known: a loose one on its own wearer, the
same on a larger one, a close top that was drafted smaller than its wearer."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from drafting.body import Body, read_body, wearer
from drafting.costume.garment import draft_garment
from drafting.ground.shipped import shipped
from drafting.worn.form import wearers_form
from tests.worn.dressed import dressed, levels, on_form, the_form, trial_wearer
from tests.worn.garments import KNIT, chart_body, drafted


def bust(larger: float, ease: float = 60.0) -> float:
    rest = dressed("bodice", larger, ease=ease)
    assert rest.settled
    return levels(rest, the_form(larger))["bust"].strain.p95


def test_a_bodice_with_6_cm_ease_is_hardly_strained_on_its_own_wearer() -> None:
    assert bust(0.0) < 0.005


def test_on_a_wearer_4_cm_larger_it_is_strained_at_the_bust() -> None:
    assert bust(40.0) >= 0.015


@pytest.mark.parametrize("body", [chart_body, trial_wearer], ids=["estimated", "measured"])
def test_a_close_top_is_stretched_as_it_was_drafted_to_be(body: Callable[[], Body]) -> None:
    """Drafted smaller than the body by a share; worn, the cloth is longer by that share, within 1 point.

    Its lengths are drafted shorter too. Hung by the nape alone it started, and stayed, with its hip line 33 mm
    over the hip of the estimated wearer, where it was stretched by 12.9 instead of 15 %.
    """
    form = wearers_form(body())
    rest = on_form(drafted("close-top", body()), "close-top", form)
    assert rest.settled
    measured = {one.name: one.wanted for one in form.report}
    for name in ("bust", "waist", "hip"):
        level = levels(rest, form)[name]
        drawn, worn = measured[f"{name}_girth"] / level.drafted - 1, level.worn / level.drafted - 1
        print(f"{name}: drafted {drawn:.4f}, worn {worn:.4f}, {level.height - form.levels[name]:+.0f} mm high")
        assert worn == pytest.approx(drawn, abs=0.01), name


def test_close_trousers_are_stretched_over_the_hip_as_drafted_where_the_wearer_is_known_to_be_so_high() -> None:
    """The kite's crotch was stretched by 31 %: where nobody measured her waist's height, her trousers and her form
    take it 5 cm apart, and their hip lines with it. Measured, both stand on it.
    """
    kite = read_body(shipped("measurements") / "bodies" / "kite.toml")
    taken = {name: kite[name] for name in kite.measures if kite.measured(name)}
    body = wearer({**taken, "outside_leg_length": 966.0}, waist_level="navel")
    choices = {"leg": "flared", "hem_width": 700.0, "waist_finish": "casing", "stretch_share": 0.25}
    rest = on_form(draft_garment(body, KNIT, "trouser", choices).draft, "close trousers", wearers_form(body))
    assert rest.settled
    hip = levels(rest, wearers_form(body))["hip"]
    print(f"hip: {hip.strain.mean:.3f} mean, {hip.strain.p95:.3f} at 95 %")
    drafted_for = body["hip_girth"] / hip.drafted - 1.0
    assert hip.strain.mean == pytest.approx(drafted_for, abs=0.015)
    assert hip.strain.p95 < drafted_for + 0.05
