"""The band below the knee: on many bodies, by plain arithmetic. Choices are invented."""

from __future__ import annotations

import math
from typing import Any

import pytest

from drafting.body import Body
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import MadeGarment, make_garment
from drafting.draft.roles import EdgeRole, LevelKind, SeamKind
from drafting.draft.walk import walk
from drafting.ground.errors import DraftError
from drafting.ground.scale import body_scale
from drafting.making.rules import unsound
from drafting.reading.given import Given, Origin
from tests.blocks.figures import errors
from tests.blocks.sleeves import odd_bodies
from tests.bodies import ansur, bdims
from tests.drawn_bodies import at_hand
from tests.making.orders import WOVEN, costume_of, order_of

SOME = [*odd_bodies().values(), *at_hand(6), *bdims(4)]


def breeches(body: Body, block: str = "knee-breeches", **choices: Any) -> MadeGarment:
    kind = block_named(block)
    given = {name: Given(value) for name, value in choices.items()}
    chosen = choose(kind, given, body_scale(body), Origin())
    return make_garment(body, None, kind, chosen, name="breeches", role="shell")


def holds(body: Body, finish: str) -> None:
    garment = breeches(body, knee_finish=finish)
    assert errors(garment) == [], body.title
    draft = garment.draft
    chosen = {name: value for name, (value, _) in garment.choices.items()}
    for name in ("front", "back"):
        piece = draft[name]
        knee = next(v for v in piece.levels if v.kind is LevelKind.KNEE).paths[0].start.imag
        middle = piece["hem"].path.at(piece["hem"].length / 2).imag
        # Plain arithmetic: the hem is cut off so far below the knee; it is a shallow curve, square to both seams.
        assert knee - middle == pytest.approx(chosen["knee_band_below"], abs=12.0), body.title
        assert piece["slit"].length >= 10.0 - 1e-6
    assert draft["front"]["slit"].length == pytest.approx(draft["back"]["slit"].length, abs=0.1)
    (seam,) = [s for s in draft.seams if s.name == "knee band"]
    assert walk(draft, seam).difference == pytest.approx(0.0, abs=0.05)
    drawn = math.fsum(draft[name]["hem"].length for name in ("front", "back"))
    band = draft["knee-band"]["leg"].length
    assert band <= drawn + 1e-6
    # Between the knee and the calf a leg is about as round as these (plain reading of the tape).
    least, most = sorted((body["knee_girth"], body["calf_girth"]))
    assert 0.97 * least < band - chosen["knee_band_ease"] < 1.03 * most or band == pytest.approx(drawn), body.title


@pytest.mark.parametrize("finish", ["band", "buckle"])
@pytest.mark.parametrize("body", SOME, ids=lambda body: body.title)
def test_the_band_holds_every_check_on_a_sample(body: Body, finish: str) -> None:
    holds(body, finish)


@pytest.mark.population
def test_the_band_holds_on_three_hundred_people() -> None:
    for body in (*ansur(200), *bdims(100)):
        holds(body, "band")


def test_the_front_end_laps_over_the_back_one_at_the_side() -> None:
    # Common practice: the opening lies at the outer side; the front's end, with the buttonhole, lies on top. The
    # chains of a seam run against each other: the band's start meets the end of the edge listed first.
    draft = breeches(SOME[0]).draft
    (seam,) = [s for s in draft.seams if s.name == "knee band"]
    assert seam.b == (("front", "hem"), ("back", "hem"))
    front, band = draft["front"], draft["knee-band"]
    assert front.edges[(front.index("hem") + 1) % len(front.edges)].role is EdgeRole.SLIT
    (hole,) = [m for m in band.placements if m.what == "buttonhole"]
    leg = band["leg"].path
    assert abs(hole.path.start - leg.start) < abs(hole.path.start - leg.end)


def test_the_slit_is_finished_and_the_leg_closed_before_the_band_is_sewn_on() -> None:
    for finish in ("band", "buckle"):
        garment = breeches(SOME[0], knee_finish=finish)
        costume = costume_of(garment, WOVEN)
        steps = order_of(costume)
        assert unsound(costume, steps) == ()
        slit = next(i for i, s in enumerate(steps) if ("front", "slit") in s.edges)
        band = next(i for i, s in enumerate(steps) if "knee band" in s.seams)
        inside = next(i for i, s in enumerate(steps) if "inside leg" in s.seams)
        assert inside < band
        assert slit < band


def test_without_an_opening_no_band_is_made_and_without_a_word_the_elastic_stays() -> None:
    with pytest.raises(DraftError, match="does not open above its hem"):
        breeches(SOME[0], "breeches", knee_finish="band")
    draft = breeches(SOME[0], "breeches").draft
    assert "knee-band" not in draft
    assert [n.what for n in draft.notions if n.edges == (("front", "hem"), ("back", "hem"))] == ["elastic"]
    assert all(seam.kind is not SeamKind.ATTACHED or "hem" not in str(seam.b) for seam in draft.seams)
    banded = breeches(SOME[0], "breeches", knee_finish="band", leg_slit=150.0).draft
    assert [n.what for n in banded.notions].count("elastic") == 1  # the waist's


def test_a_leg_too_narrow_to_kneel_in_is_told() -> None:
    # From memory: a bent knee is 5 to 15 % more round than a straight one.
    tight = breeches(SOME[0], knee_ease=20.0)
    assert [f.level for f in tight.findings if f.check == "knee band" and f.level == "warning"]
    assert [f.level for f in breeches(SOME[0]).findings if f.check == "knee band"] == ["note"]


@pytest.mark.parametrize("asked", [None, 80.0, 120.0])
@pytest.mark.parametrize("body", SOME)
def test_the_side_is_open_above_the_band_as_far_as_is_told(body: Body, asked: float | None) -> None:
    """By a ruler; 80 to 120 mm above a band below the knee is common practice."""
    garment = breeches(body) if asked is None else breeches(body, leg_slit=asked)
    draft, (told,) = garment.draft, [f.value for f in garment.findings if f.check == "heel"]
    assert draft["front"]["slit"].length == pytest.approx(draft["back"]["slit"].length, abs=0.1)
    assert draft["front"]["slit"].length == pytest.approx(told, abs=0.1)
    if body_scale(body) > 0.6:  # a doll's leg is not so long
        assert told >= (asked or 80.0 * min(1.0, body_scale(body))) - 0.1
    assert errors(garment) == []
