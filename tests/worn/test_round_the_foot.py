"""What is worn on the foot, or on the leg below the knee, goes round it on people of every size.

Geometry: a tube that is on a leg lies on every side of it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from drafting.blocks import use_blocks
from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.costume.wearing.worn import Worn, worn
from drafting.worn.form import Form
from drafting.worn.nouns import AtRest, Reals
from tests.drawn_bodies import drawn
from tests.making.orders import WOVEN, costume_of
from tests.worn.unusual import child, made_up

PEOPLE = {
    "child": lambda: child(1040.0),
    "drawn": lambda: drawn(7)[3],
    "another": lambda: drawn(7)[5],
    "made up": lambda: made_up()[-1],
}

GAITER = '''"""A gaiter from the knee down, invented.

Source: ours
"""
from dataclasses import dataclass, replace
from drafting import *
from drafting.draft.frame import BodyFrame, BodyHeight, Limb

@dataclass(frozen=True)
class Choices:
    gaiter_ease: float = choice(40.0, "mm", "garment minus calf", low=20, high=80, source="ours")

def gaiter(body, fabric, choices):
    wide = body["calf_girth"] + choices.gaiter_ease
    low, high = -260.0, -40.0
    a, b, c, d = complex(0, low), complex(wide, low), complex(wide, high), complex(0, high)
    edges = (Edge("hem", line(a, b), EdgeKind.HEM), Edge("end", line(b, c)),
             Edge("top", line(c, d), EdgeKind.HEM), Edge("start", line(d, a)))
    frame = BodyFrame(limb=Limb.LEG, heights=((BodyHeight.KNEE, complex(wide / 2, 0)),))
    piece = Piece("gaiter", edges, pair=True, frame=frame)
    seam = Seam("gaiter", (("gaiter", "end"),), (("gaiter", "start"),), start=None, end=None)
    return Draft((piece,), (seam,))
'''


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    yield tmp_path
    use_blocks(None)


def on(body: Body, block: str) -> Worn:
    made = costume_of(draft_garment(body, WOVEN, block), WOVEN)
    return worn(replace(made, costume=replace(made.costume, wearer=body)), treat=False)


def sides_covered(form: Form, rest: AtRest, height: float) -> int:
    """Return in how many of twelve ways out of the left leg's middle there is cloth within 20 mm of a height."""
    points: Reals = rest.points[(np.abs(rest.points[:, 2] - height) < 20.0) & (rest.points[:, 0] > 0.0)]
    middle = [np.interp(height, form.leg[::-1, 2], form.leg[::-1, i]) for i in range(2)]
    turns = np.arctan2(points[:, 1] - middle[1], points[:, 0] - middle[0])
    return len(np.unique(np.floor(turns / (np.pi / 6))))


@pytest.mark.parametrize("who", PEOPLE)
def test_spats_go_round_leg_and_foot(who: str) -> None:
    """They could not be shown at all; sewn up with the buttoned side open they fell off, through the foot."""
    body = PEOPLE[who]()
    found = on(body, "spats")
    assert not found.left_out
    (spats,) = found.garments
    assert spats.rest.settled
    assert found.form.distance.distance(spats.rest.points).min() >= -2.0
    ankle = found.form.levels["ankle"]
    assert sides_covered(found.form, spats.rest, ankle) == 12
    for level in spats.found.levels:
        assert level.worn == pytest.approx(level.drafted, abs=6.0), level.name
    assert any(one.key == "foot.bare" for one in spats.words)


def test_the_toes_stay_free_and_the_tongue_lies_on_the_instep() -> None:
    found = on(drawn(7)[3], "spats")
    (spats,) = found.garments
    mesh, points = spats.rest.mesh, spats.rest.points
    front = points[mesh.edges[("spat-inner", "front")]]
    foot = found.form.surface.points[found.form.surface.points[:, 2] < 60.0]
    toes, heel = foot[:, 1].min(), foot[:, 1].max()
    reach = (front[:, 1].min() - toes) / (heel - toes)
    assert 0.05 < reach < 0.6
    assert found.form.distance.distance(front).max() < 40.0


def test_what_a_maker_drafts_for_the_calf_is_worn_below_the_knee(folder: Path) -> None:
    (folder / "gaiter.py").write_text(GAITER, encoding="utf-8")
    use_blocks(folder)
    found = on(drawn(7)[3], "gaiter")
    (gaiter,) = found.garments
    knee = found.form.levels["knee"]
    assert found.form.distance.distance(gaiter.rest.points).min() >= -2.0
    assert sides_covered(found.form, gaiter.rest, float(gaiter.rest.points[:, 2].mean())) == 12
    assert gaiter.rest.points[:, 2].max() < knee + 20.0
