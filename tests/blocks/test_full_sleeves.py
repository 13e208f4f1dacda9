"""Full sleeves on woven tops: leg-of-mutton, bishop, lantern, two puffs, cap; each fits a plain one's armhole.

Bodies: drawn from the published spread of ANSUR II and from its ends (tests/drawn_bodies.py), the six of the
contact sheet, a child, and 300 of the survey by `-m population`. Lengths are measured by shapely.
"""

from __future__ import annotations

import math
from functools import cache

import pytest

from drafting.body import Body, wearer
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole, Half, LevelKind, PieceRole, SeamKind
from drafting.draft.walk import walk
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.making.rules import unsound
from tests.blocks.figures import chart_woman, errors
from tests.blocks.small_pieces import ruled
from tests.blocks.test_contact_sheets_of_settings import six
from tests.bodies import ansur
from tests.drawn_bodies import drawn, far
from tests.making.orders import KNIT, WOVEN, costume_of, order_of
from tests.worn.unusual import child

CLOTH = Fabric("Twill 140 cm wide, invented", usable_width=1400.0)

HEM, TIER = EdgeRole.HEM, EdgeRole.PANEL

SLEEVES: dict[str, tuple[str, dict[str, object]]] = {
    "leg-of-mutton": ("mutton-top", {}),
    "bishop": ("bishop-top", {}),
    "lantern": ("fitted-top", {"sleeve_style": "lantern"}),
    "two puffs": ("fitted-top", {"sleeve_style": "two puffs"}),
    "two puffs on a cuff": ("shirt", {"sleeve_style": "two puffs", "tier_at": 0.5, "hem_fullness": 1.8}),
    "cap": ("fitted-top", {"sleeve_style": "cap"}),
}


def top(body: Body, sleeve: str, **choices: object) -> MadeGarment:
    block, own = SLEEVES[sleeve]
    return draft_garment(body, CLOTH, block, {**own, **choices})


@cache
def sample() -> tuple[Body, ...]:
    return (*drawn(4), *far()[::8], *six().values(), child(1160.0))


def test_a_level_reaches_from_seam_to_dart_though_the_dart_reaches_past_the_middle() -> None:
    """The tip of such a dart went forward with the front as the sleeve was opened: the elbow's line lost 22 cm."""
    for body in sample():
        made = top(body, "leg-of-mutton", puff_reach="hem", wrist_ease=133.0, elbow_bend=6.0, arm_ease=117.0)
        assert [one for one in errors(made) if "level" in str(one)] == [], body.title


@pytest.mark.parametrize("sleeve", SLEEVES)
def test_every_sleeve_on_the_sample_has_no_error(sleeve: str) -> None:
    for body in sample():
        made = top(body, sleeve)
        assert errors(made) == [], (body.title, errors(made))


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("sleeve", SLEEVES)
def test_three_hundred_people_of_the_survey_have_every_sleeve_without_an_error(sleeve: str) -> None:
    found = []
    for body in ansur(300):
        try:
            found += [f"{body.title}: {said}" for said in errors(top(body, sleeve))]
        except DraftError as error:
            found.append(f"{body.title}: refused: {error}")
    assert found == []


@pytest.mark.parametrize("sleeve", SLEEVES)
def test_its_order_of_work_is_sound(sleeve: str) -> None:
    costume = costume_of(top(chart_woman(), sleeve), WOVEN)
    assert unsound(costume, order_of(costume)) == ()


@pytest.mark.parametrize("sleeve", SLEEVES)
def test_its_cap_is_sewn_to_the_same_armhole_as_a_plain_sleeves(sleeve: str) -> None:
    block, _ = SLEEVES[sleeve]
    plain = draft_garment(chart_woman(), CLOTH, block, {}).draft
    full = top(chart_woman(), sleeve).draft
    for half in [s.name for s in plain.seams if s.kind is SeamKind.SET_IN]:
        a, b = (walk(d, next(s for s in d.seams if s.name == half)) for d in (plain, full))
        assert b.b_length == pytest.approx(a.b_length, abs=0.01)
        assert abs(b.difference) < 0.05


def test_a_leg_of_mutton_is_full_above_the_elbow_and_close_below_it() -> None:
    choices = {"puff_width": 0.0, "puff_height": 0.0}
    for body in sample():
        plain, full = top(body, "leg-of-mutton", **choices).draft, top(body, "leg-of-mutton").draft
        assert ruled(full["sleeve"]["hem"].path) == pytest.approx(ruled(plain["sleeve"]["hem"].path), abs=0.01)
        assert _arm(full) > _arm(plain) + 130.0 * min(1.0, body["bust_girth"] / 900)
        gathered = [e for e in edges_as(full["sleeve"], EdgeRole.CAP) if e.sewn is not None]
        assert len(gathered) == 2
        assert all(e.length > 1.2 * e.sewn_length for e in gathered)


def _arm(draft: Draft) -> float:
    return next(v for v in draft["sleeve"].levels if v.kind is LevelKind.UPPER_ARM).length


def test_both_tiers_of_a_lantern_are_as_long_at_their_seam_and_the_lower_is_a_part_of_a_ring() -> None:
    """A ring's part: outer arc - inner arc = angle x width, and both arcs are square to its sides."""
    for body in sample():
        draft = top(body, "lantern").draft
        lower = draft["sleeve-lower"]
        outer, inner = ruled(lower["top"].path), ruled(lower["hem"].path)
        assert outer == pytest.approx(ruled(draft["sleeve"]["tier"].path), abs=0.05), body.title
        side = sum(ruled(e.path) for e in lower.edges if e.half is Half.BACK)
        turned = lower["hem"].path.leave / lower["hem"].path.arrive
        angle = math.atan2(turned.imag, turned.real)
        assert outer - inner == pytest.approx(angle % (2 * math.pi) * side, abs=0.2), body.title
        corners = [i for i, e in enumerate(lower.edges) if {e.role, lower.edges[i - 1].role} & {HEM, TIER}]
        assert [lower.corner(i) for i in corners] == pytest.approx([90.0] * 4, abs=0.1), body.title


def test_two_puffs_are_gathered_to_one_length_between_them() -> None:
    for body in sample():
        draft = top(body, "two puffs").draft
        above, below = draft["sleeve"]["tier"], draft["sleeve-lower"]["top"]
        assert above.sewn_length == pytest.approx(below.sewn_length, abs=1e-6)
        assert above.length > 1.15 * above.sewn_length
        assert below.length == pytest.approx(1.8 * below.sewn_length, abs=0.01)


def test_a_cap_sleeve_ends_at_a_fifth_of_the_arm_and_runs_out_under_it() -> None:
    body = chart_woman()
    sleeve = top(body, "cap").draft["sleeve"]
    hem = sleeve["hem"].path
    middle = min(hem.evenly(201), key=lambda p: abs(p.real))
    assert sleeve.points["crown"].imag - middle.imag == pytest.approx(0.19 * body["arm_length"], abs=1.0)
    assert all(e.length < 40.0 for e in edges_as(sleeve, EdgeRole.UNDERARM))


def test_a_bishop_is_twice_as_wide_at_the_hem_as_its_cuff() -> None:
    hem = top(chart_woman(), "bishop").draft["sleeve"]["hem"]
    assert hem.length == pytest.approx(2 * hem.sewn_length, rel=0.02)


@pytest.mark.parametrize("block", ["mutton-top", "puffed-top"])
def test_two_tiers_under_a_puffed_cap_or_over_an_elastic_are_refused_in_words(block: str) -> None:
    cloth = KNIT if block == "puffed-top" else CLOTH
    with pytest.raises(DraftError, match="sleeve"):
        draft_garment(chart_woman(), cloth, block, {"sleeve_style": "lantern"})
    capped = draft_garment(chart_woman(), cloth, block, {"sleeve_style": "cap"})
    assert errors(capped) == []


def test_a_leg_of_mutton_is_in_proportion_on_a_large_body() -> None:
    # Plain arithmetic: style grows in proportion to a bust over 1 m, so what is let in keeps its share.
    let_in = {}
    for bust in (980.0, 1000.0, 1250.0, 1400.0):
        body = wearer(
            {"height": 1680.0, "bust_girth": bust, "waist_girth": bust - 150.0, "hip_girth": bust + 60.0},
            figure="womens",
        )
        plain, full = (top(body, "leg-of-mutton", **choices).draft for choices in ({"puff_width": 0.0}, {}))
        widths = [
            next(lv.length for lv in draft["sleeve"].levels if lv.kind is LevelKind.UPPER_ARM)
            for draft in (plain, full)
        ]
        let_in[bust] = widths[1] - widths[0]
    assert let_in[980.0] == pytest.approx(let_in[1000.0], rel=0.03)  # not below 1 m
    assert let_in[1250.0] / let_in[1000.0] == pytest.approx(1.25, rel=0.03)
    assert let_in[1400.0] / let_in[1000.0] == pytest.approx(1.40, rel=0.03)


@pytest.mark.parametrize("block", ["fitted-top", "shirt"])
def test_the_hem_of_a_cap_is_round_below_the_crown(block: str) -> None:
    """Common practice: a line that is sewn is even. On a shirt the two halves ran straight into a point, turning
    within 9 mm, where their ends point at each other."""
    for body in ansur(60):
        hem = draft_garment(body, None, block, {"sleeve_style": "cap"}).draft["sleeve"]["hem"].path
        sharpest = max(abs(hem.curvature(hem.length * i / 400)) for i in range(1, 400))
        assert 1 / sharpest > 40.0, body.title


@pytest.mark.parametrize("shorter", [150.0, 330.0, 420.0])
def test_a_leg_of_mutton_that_ends_under_the_arm_is_let_in_to_its_hem(shorter: float) -> None:
    # Led out by 110 over 60 mm its underarm seam lay nearly level under the cap, in an S.
    body = chart_woman()
    garment = top(body, "leg-of-mutton", sleeve_length=-shorter)
    (sleeve,) = [p for p in garment.draft.pieces if p.role is PieceRole.SLEEVE and not p.material]
    for edge in sleeve.edges:
        if edge.role is EdgeRole.UNDERARM:
            chord = edge.path.end - edge.path.start
            assert abs(chord.real) < 0.9 * abs(chord.imag)
    assert any("cannot taper" in f.said("cm") for f in garment.findings) is (shorter > 200)
    assert not [f for f in garment.findings if f.level == "error"]
