"""An across back that goes with no figure of such a bust is doubted, and hardly anybody's own is.

Held against the survey (`tests/bodies.py`: the shared adults of ANSUR II) and against published size charts.
"""

from __future__ import annotations

import pytest

from drafting.body import Body, wearer
from drafting.ground.findings import Finding
from tests.bodies import ansur
from tests.drawn_bodies import drawn

PLUS = {"height": 1650.0, "bust_girth": 1400.0, "waist_girth": 1300.0, "hip_girth": 1450.0}
"""An invented plus-size wearer, mm; by the rule of women's charts (from memory, 34.4 cm at a bust of 88, and 1.2
cm more for each 5) her across back is 47 cm."""

BIG = 1150.0
"""mm of bust from which a figure is counted among the large ones below."""


def doubted(body: Body) -> list[Finding]:
    return [f for f in body.findings if f.where == "across_back_width" and f.check == "measure expected"]


@pytest.mark.parametrize("across", [290.0, 330.0, 380.0, 620.0])
def test_an_across_back_of_another_size_is_doubted_with_what_is_likely(across: float) -> None:
    (finding,) = doubted(wearer({**PLUS, "across_back_width": across}))
    assert finding.level == "warning"
    for words in (f"across_back_width {across / 10:g} cm", "where about 49.8 cm", "this bust has", "measure both"):
        assert words in finding.said("cm")


@pytest.mark.parametrize("across", [430.0, 470.0, 520.0])
def test_what_the_charts_have_at_such_a_bust_is_taken_as_it_is(across: float) -> None:
    assert not doubted(wearer({**PLUS, "across_back_width": across}))


@pytest.mark.parametrize("bust", [760.0, 920.0, 1080.0, 1240.0, 1400.0])
def test_across_backs_of_other_sizes_are_doubted_at_every_bust(bust: float) -> None:
    # 34.4 cm at a bust of 88, and 1 cm for each 4 (from memory, women's charts); 55 cm of bust away is
    # another size.
    girths = {"height": 1680.0, "bust_girth": bust, "waist_girth": 0.82 * bust, "hip_girth": 1.06 * bust}
    own = 344.0 + (bust - 880.0) / 4
    assert not doubted(wearer({**girths, "across_back_width": own}))
    assert doubted(wearer({**girths, "across_back_width": own + 550 / 4}))
    assert doubted(wearer({**girths, "across_back_width": own - 550 / 4}))


def few(bodies: tuple[Body, ...], most: float, name: str) -> None:
    """Print how many of a people are doubted, and hold it to a share."""
    people = [body for body in bodies if body.measures["across_back_width"].source == "measured"]
    large = [body for body in people if body["bust_girth"] > BIG]
    told, told_large = (sum(bool(doubted(body)) for body in some) for some in (people, large))
    of_large = f"{told_large} of {len(large)} with a bust over 115 cm"
    print(f"{name}: across back doubted of {told} of {len(people)}, of {of_large}")
    assert people
    assert told <= most * len(people)
    assert told_large <= most * len(large)


def test_hardly_any_surveyed_adult_is_doubted() -> None:
    few(ansur(), 0.002, "ANSUR II")


def test_hardly_anybody_drawn_from_the_survey_is_doubted() -> None:
    few(tuple(drawn(260)), 0.01, "drawn")
