"""One leg altered alone: both hands still meet in one crotch and one fly."""

from __future__ import annotations

import cmath
import itertools
import math

import pytest

from drafting.body import Body
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import checked_garment, finished_garment
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin
from tests.bodies import ansur, bdims
from tests.drawn_bodies import drawn
from tests.fitting.test_followers import note
from tests.shared_data import SURVEY

PEOPLE: list[Body] = [*ansur()[::600], *bdims()[::120]] if SURVEY.is_file() else drawn(60)[::6]


@pytest.mark.parametrize(("verb", "amount"), [("take in", 12.0), ("take in", 8.0), ("let out", 12.0)])
@pytest.mark.parametrize("block", ["trousers", "knee-breeches"])
def test_the_inside_of_one_leg_is_altered_and_the_crotch_stays_one_curve(
    block: str, verb: str, amount: float
) -> None:
    """Of 22 people 18 got an error: the crotch turned by 4 degrees where the fly runs on into it, and two flies
    of unlike length pushed the fork of either hand off its inside leg. Common practice: a crotch has no corner."""
    kind = block_named(block)
    for body in PEOPLE:
        chosen = choose(kind, {}, body_scale(body), Origin())
        told = note("back.inseam", verb, amount, "right")
        made = finished_garment(body, None, kind, chosen, name=block, role="shell", notes=(told,))
        checked = checked_garment(made, body, None)
        assert [f.message for f in checked.findings if f.level == "error" and f.check != "least ease"] == []
        for hand in ("left", "right"):
            front = checked.draft[f"front-{hand}"]
            both = [edge.path for edge in front.edges if edge.role in (EdgeRole.FLY, EdgeRole.CROTCH)]
            assert len(both) == 2
            assert sharpest(Path.joined(both)) < 1.5, (body.title, hand)
        flies = {round(p["fly"].length, 1) for p in checked.draft.pieces if "fly" in p and "crotch" in p}
        assert len(flies) == 1


@pytest.mark.parametrize(("where", "verb"), [("waist", "take in"), ("front.inseam", "let out")])
def test_both_hands_have_the_fly_that_one_of_them_needs(where: str, verb: str) -> None:
    """A short fly that has to be longer for the hip was longer on one hand, and the forks moved apart."""
    kind = block_named("knee-breeches")
    for body in PEOPLE:
        chosen = choose(kind, {"fly_length": Given("40 mm", None)}, body_scale(body), Origin())
        told = note(where, verb, 6.0, "right")
        made = finished_garment(body, None, kind, chosen, name="it", role="shell", notes=(told,))
        wrong = [f.message for f in checked_garment(made, body, None).findings if f.level == "error"]
        assert [one for one in wrong if "nside leg" in one or "ly " in one] == [], body.title
        fronts = [made.draft[f"front-{hand}"] for hand in ("left", "right") if f"front-{hand}" in made.draft]
        lengths = [front["fly"].length for front in fronts]
        assert max(lengths, default=0.0) - min(lengths, default=0.0) < 0.1


def sharpest(path: Path) -> float:
    """Return the sharpest turn (degrees) between two segments of a path."""
    turns = [cmath.phase(b.leave / a.arrive) for a, b in itertools.pairwise(Path((s,)) for s in path)]
    return max((abs(math.degrees(turn)) for turn in turns), default=0.0)
