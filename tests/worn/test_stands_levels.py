"""What stands tells of a tube of cloth round a post: every figure worked out by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from drafting.fabric import Fabric
from drafting.worn.contact import DistanceField
from drafting.worn.stands.comfort import gives_at
from drafting.worn.stands.hems import hem_lines, hem_worn
from drafting.worn.stands.levels import levels_worn
from drafting.worn.stands.model import GarmentWorn, LevelWorn, StandsOff, Strain
from drafting.worn.stands.told import garment_told, most_serious_first, pull_verdict
from drafting.worn.stands.words import worded
from tests.worn.made_up import tube
from tests.worn.posts import post_field

RADIUS = 150.0


@pytest.fixture(scope="module")
def field() -> DistanceField:
    return post_field(RADIUS)


def test_a_loose_tube_stands_off_by_its_ease_over_a_whole_turn(field: DistanceField) -> None:
    """Ease / 2 pi: the difference of two radii by that of their circles."""
    rest = tube(RADIUS + 20, 800, 1200)
    (waist,) = levels_worn(rest, field, 1300, {})
    drafted = 2 * math.pi * (RADIUS + 20)
    assert waist.drafted == pytest.approx(drafted)
    assert waist.worn == pytest.approx(drafted, rel=2e-3)  # chords of 20 mm on a radius of 170: 0.06 %
    assert {o.where: round(o.mm) for o in waist.stands_off} == {"front": 20, "side": 20, "back": 20}
    assert waist.strain.p95 < 2e-3
    assert not waist.strain.pulls
    assert waist.slack == pytest.approx(2 * math.pi * 20, rel=0.02)


@pytest.mark.parametrize("stretched", [0.02, 0.05])
def test_a_tube_that_was_drafted_too_small_is_strained_by_as_much(field: DistanceField, stretched: float) -> None:
    rest = tube(RADIUS, 800, 1200, stretched=stretched)
    (waist,) = levels_worn(rest, field, 1300, {})
    assert waist.strain.mean == pytest.approx(stretched, abs=1e-3)
    assert waist.strain.p95 == pytest.approx(stretched, abs=1e-3)
    assert waist.strain.pulls
    assert all(o.mm < 1.5 for o in waist.stands_off)
    assert waist.slack < 3.0


def test_a_cloth_that_stretches_is_not_said_to_pull(field: DistanceField) -> None:
    rest = tube(RADIUS, 800, 1200, stretched=0.10)
    knit = Fabric("jersey", weave="knit", stretch_across=0.5, stretch_along=0.2)
    (waist,) = levels_worn(rest, field, 1300, {"": knit})
    assert waist.strain.gives == pytest.approx(0.25)
    assert not waist.strain.pulls
    assert levels_worn(rest, field, 1300, {})[0].strain.pulls


def test_strain_above_the_armhole_is_not_trusted(field: DistanceField) -> None:
    rest = tube(RADIUS, 800, 1200, stretched=0.05)
    (waist,) = levels_worn(rest, field, 900, {})
    assert not waist.strain.trusted
    found = GarmentWorn("tube", True, 0.01, 100, (waist,), None)
    said = " ".join(worded(sentence, "cm") for sentence in garment_told(found))
    assert "not told" in said
    assert "stretched" not in said


def test_what_has_not_settled_tells_no_number(field: DistanceField) -> None:
    rest = tube(RADIUS + 20, 800, 1200)
    levels = levels_worn(rest, field, 1300, {})
    (said,) = garment_told(GarmentWorn("tube", False, 3.0, 100, levels, None))
    words = worded(said, "cm")
    assert "shape only" in words
    assert not any(letter.isdigit() for letter in words)


def test_words_are_in_the_makers_unit(field: DistanceField) -> None:
    levels = levels_worn(tube(RADIUS + 20, 800, 1200), field, 1300, {})
    sentences = garment_told(GarmentWorn("tube", True, 0.01, 100, levels, None))
    assert (
        worded(sentences[0], "cm")
        == "At the waist it stands off 2 cm in front, 2 cm at the sides and 2 cm behind."
    )
    assert worded(sentences[0], "in") == (
        "At the waist it stands off 3/4 in in front, 3/4 in at the sides and 3/4 in behind."
    )
    assert worded(sentences[1], "cm") == "Nothing pulls."


def test_the_hem_of_a_tube(field: DistanceField) -> None:
    """A wave of 25 mm on a radius of 185 has a crest in front, behind, and on neither side."""
    rest = tube(185, 900, 1350, wave=25)
    hem = hem_worn(hem_lines(rest, [("body", "hem")]), seat_back=RADIUS)
    assert hem is not None
    assert hem.back_reach == pytest.approx(185 + 25 - RADIUS, abs=0.01)
    x = np.linspace(0, math.pi, 100_000)
    assert hem.width == pytest.approx(2 * ((185 + 25 * np.cos(6 * x)) * np.sin(x)).max(), rel=0.01)
    assert (hem.lowest, hem.highest) == (900, 900)
    assert hem.range == (hem.width, hem.width)


@pytest.mark.parametrize("angle", [0.0, 22.5, 45.0, 67.5, 90.0])
def test_what_a_cloth_gives_goes_evenly_from_warp_to_weft(angle: float) -> None:
    """At the three ways a swatch is pulled it is half of what the swatch gave; between them between."""
    cloth = Fabric("any", stretch_along=0.1, stretch_across=0.3, stretch_bias=0.4)
    known = {0.0: 0.05, 45.0: 0.20, 90.0: 0.15}
    (gives,) = gives_at(cloth, np.array([angle]))
    if angle in known:
        assert gives == pytest.approx(known[angle])
    else:
        low, high = sorted(known[a] for a in known if abs(a - angle) < 45)
        assert low <= gives <= high


@pytest.mark.parametrize(
    ("mean", "p95", "pulls"), [(0.003, 0.019, False), (0.0073, 0.025, True), (0.02, 0.02, True)]
)
def test_stretch_at_single_places_is_no_pull(mean: float, p95: float, pulls: bool) -> None:
    assert Strain(mean, p95, 0.01, True).pulls is pulls


def test_what_touches_in_two_places_and_what_is_stretched_here_and_there_is_told_so(field: DistanceField) -> None:
    (waist,) = levels_worn(tube(RADIUS + 20, 800, 1200), field, 1300, {})
    off = (StandsOff("front", 42.0), StandsOff("side", 1.0), StandsOff("back", 2.0))
    level = replace(waist, stands_off=off, strain=Strain(0.002, 0.018, 0.01, True))
    words = [worded(said, "cm") for said in garment_told(GarmentWorn("tube", True, 0.01, 100, (level,), None))]
    assert words[0] == "At the waist it stands off 4 cm in front, and touches at the sides and behind."
    assert "begins to pull, at single places: there it is stretched by up to 1.8 %" in words[1]
    assert not [word for word in words if "othing pulls" in word]


def level_stretched(name: str, field: DistanceField, mean: float, p95: float, gives: float) -> LevelWorn:
    (waist,) = levels_worn(tube(RADIUS + 20, 800, 1200), field, 1300, {})
    return replace(waist, name=name, strain=Strain(mean, p95, gives, True))


def test_each_place_has_one_verdict_the_worst_first(field: DistanceField) -> None:
    levels = (
        level_stretched("hip", field, 0.0, 0.004, 0.01),
        level_stretched("waist", field, 0.002, 0.014, 0.01),
        level_stretched("bust", field, 0.02, 0.03, 0.01),
        level_stretched("upper arm", field, 0.05, 0.06, 0.25),
    )
    found = GarmentWorn("tube", True, 0.01, 100, levels, None)
    said = [word for word in most_serious_first(garment_told(found)) if word.key.startswith("pull.")]
    told = [worded(word, "cm") for word in said]
    assert [word.key for word in said] == ["pull.over", "pull.places", "pull.elsewhere", "pull.within"]
    assert told[0].startswith(
        "At the bust it pulls: it is stretched by 2 % all along and up to 3 %; this cloth gives 1 %"
    )
    assert told[3].startswith("At the upper arm it is stretched by up to 6 %, which this cloth bears")
    assert "Nothing pulls." not in told
    assert most_serious_first(garment_told(found))[0].key == "pull.over"


def test_nothing_pulls_is_said_alone_or_of_what_the_cloth_bears(field: DistanceField) -> None:
    for p95, keys in ((0.004, ["pull.nothing"]), (0.06, ["pull.nothing", "pull.within"])):
        level = level_stretched("waist", field, p95 / 2, p95, 0.25)
        said = garment_told(GarmentWorn("tube", True, 0.01, 100, (level,), None))
        assert [word.key for word in said if word.key.startswith("pull.")] == keys


@pytest.mark.parametrize("gives", [0.01, 0.05, 0.25])
@pytest.mark.parametrize("mean", [0.0, 0.005, 0.02, 0.2])
@pytest.mark.parametrize("p95", [0.0, 0.0099, 0.0101, 0.03, 0.3])
def test_words_and_record_agree_on_what_pulls(gives: float, mean: float, p95: float) -> None:
    strain = Strain(min(mean, p95), p95, gives, True)
    assert (pull_verdict(strain) == "over") == strain.pulls
    assert (pull_verdict(strain) in ("over", "places")) == (p95 > gives)
