"""Armholes, bellies and rounded backs as a cutter would draft them, on measured people.

Limits are ours; the people are ANSUR II (Gordon et al. 2014)
and bdims (Heinz et al. 2003). Every run looks at 120 people, `-m population` at all 3,541.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import replace

import pytest

from drafting.body import Body, usual_axilla, wearer
from drafting.costume.garment import draft_garment
from drafting.draft.by_role import dart_legs
from drafting.draft.piece import Piece
from drafting.ground.scale import body_scale
from tests.blocks.armholes import both, halves
from tests.blocks.figures import chart_man, chart_woman, errors, full_bust, girth, level, pair
from tests.blocks.unusual import bellies, body_of, everybody, front_of_growth, rows, some, torso

FRONT_RADIUS, BACK_RADIUS = 25.0, 18.0
"""mm at adult scale (ours)."""

WIDE, NARROW, TOO_NARROW = 0.28, 0.25, 0.22
"""Width of an armhole over the hanging upper arm: aimed at, said, warned (ours)."""


def armhole_troubles(body: Body, block: str) -> list[str]:
    """Return what a cutter would not accept in this body's armholes."""
    draft = torso(body, block)
    scale = draft.facts["scale"]
    back, front = both(draft)
    said = {f.check: f.level for f in draft.findings}
    found = []
    small = front.radius < FRONT_RADIUS * scale or back.radius < BACK_RADIUS * scale
    if small and "armhole turn" not in said:
        found.append(f"turns on {front.radius:.1f} in front, {back.radius:.1f} mm at the back")
    if front.waves or back.waves:
        found.append("waves")
    share = (front.width + back.width) / body["upper_arm_girth"]
    if share < NARROW - 0.003 and "armhole width" not in said:
        found.append(f"only {share:.3f} of the arm wide, and nobody says so")
    if share < TOO_NARROW - 0.003 and said.get("armhole width") != "warning":
        found.append(f"only {share:.3f} of the arm wide, and nobody warns")
    for path, piece in zip(halves(draft), ("back", "front"), strict=True):
        tip, across = path.start.real, level(draft, piece, f"across_{piece}")
        outside = across - tip if block == "bodice" else 0.0
        if outside > 10 * scale + 0.1:
            found.append(f"{piece} across point {outside:.1f} mm outside the shoulder's end")
        if outside > 0.6 * scale and "across point" not in said:
            found.append(f"{piece} across point {outside:.1f} mm outside, and nobody says so")
    return [f"{body.title}: {block}: {one}" for one in found]


def test_only_a_bust_dart_past_all_measure_may_turn_an_armhole_sharply_and_says_so() -> None:
    sharp = [body.title for body in some() if "armhole turn" in {f.check for f in torso(body).findings}]
    assert len(sharp) <= 1, sharp


def all_troubles(bodies: Iterable[Body], block: str) -> list[str]:
    return [one for body in bodies for one in armhole_troubles(body, block)]


@pytest.mark.parametrize("block", ["bodice", "coat-body"])
def test_every_armhole_is_round_wide_enough_or_said_and_inside_the_shoulders_end(block: str) -> None:
    assert all_troubles(some(), block) == []


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("block", ["bodice", "coat-body"])
def test_every_measured_adults_armhole_is_round_and_wide_enough_or_said(block: str) -> None:
    assert all_troubles(everybody(), block) == []


def test_nine_of_ten_armholes_are_as_wide_as_the_arm_wants() -> None:
    # Ours: the width aims at 0.28 of the hanging upper arm; where the body leaves no room for it
    # the rest is said. 92 of 100 of the survey have it (73 of 220 before).
    shares = []
    for body in some():
        back, front = both(torso(body))
        shares.append((back.width + front.width) / body["upper_arm_girth"])
    assert sum(share >= WIDE - 0.003 for share in shares) >= 0.88 * len(shares)
    assert min(shares) >= NARROW - 0.02  # what can give way gives way: nobody's is far below a quarter


@pytest.mark.parametrize("name", ["0984", "5590", "0550", "4372"])
def test_the_survey_rows_whose_armholes_could_not_be_cut(name: str) -> None:
    # They turned on 3.4, 6.4 and 7.0 mm, and 4372's coat was 45 mm wide for an arm of 389 mm (flexed).
    body = body_of(next(row for row in rows() if row["body"] == name))
    for block in ("bodice", "coat-body"):
        assert armhole_troubles(body, block) == []


@pytest.mark.parametrize("name", ["4958", "5058"])
def test_a_coats_armhole_is_as_wide_as_the_arm_wants_where_its_side_body_stands_upright(name: str) -> None:
    # The width was settled with the bust dart open at the side: joined up, 0.243 and 0.239 of the arm were left.
    body = body_of(next(row for row in rows() if row["body"] == name))
    draft = torso(body, "coat-body")
    back, front = both(draft)
    assert (back.width + front.width) / body["upper_arm_girth"] >= WIDE - 0.003
    assert armhole_troubles(body, "coat-body") == []


# -------------------------------------------------------------------------------------- the belly


@pytest.mark.parametrize("length", ["waist", "hip"])
@pytest.mark.parametrize("row", [bellies, None])
def test_seven_tenths_of_a_belly_lie_in_front(length: str, row: object) -> None:
    # Ours: past 0.80 of the bust, at least 70 % of each further mm of half waist.
    body = body_of(bellies(1)[0]) if row else chart_man()
    start = 0.8 * body["bust_girth"]
    drafts = [torso(body.changed(waist_girth=start + more), length=length) for more in (0.0, 100.0, 200.0, 320.0)]
    fronts = [level(draft, "front", "waist") for draft in drafts]
    backs = [level(draft, "back", "waist") for draft in drafts]
    for i in range(3):
        gained = fronts[i + 1] - fronts[i], backs[i + 1] - backs[i]
        assert gained[0] / sum(gained) >= 0.70
    for draft, more in zip(drafts, (0.0, 100.0, 200.0, 320.0), strict=True):
        assert girth(draft, "waist") == pytest.approx(start + more + 60, abs=1)


def swing(row: dict[str, str]) -> float:
    """Return how far (degrees) the side seam swings on the body because of the belly.

    The back's half waist is held against the one this body has without its belly, and what of the
    belly lies behind by the person's own breadth and depth.
    """
    body = body_of(row)
    chest = body["bust_girth"]
    lean = torso(body.changed(waist_girth=0.8 * chest))
    own = torso(body)
    grown = (body["waist_girth"] - 0.8 * chest) / 2
    behind = (1 - front_of_growth(row)) * grown
    moved = level(own, "back", "waist") - level(lean, "back", "waist") - behind
    high = abs(next(v for v in own["back"].levels if v.name == "bust").paths[0].start.imag)
    down = own["back"]["centre"].length - high
    return math.degrees(math.atan(moved / down))


def test_the_side_seam_stays_on_the_body_on_95_of_the_100_largest_bellies() -> None:
    swings = [swing(dict(row)) for row in bellies(100)]
    assert sum(abs(one) <= 3 for one in swings) >= 95


BUMPS = {"930": 1080.0, "940": 1150.0, "935": 1250.0}
"""High busts and waists of invented people with child, bust 1000, hip 1020 (mm)."""


@pytest.mark.parametrize("length", ["waist", "hip"])
@pytest.mark.parametrize("high_bust", BUMPS)
def test_a_belly_takes_the_bust_dart_before_the_front_armhole_is_turned_up(high_bust: str, length: str) -> None:
    # Ours: no radius under 25 mm. Side seam let out under an open dart, it was down to 13.8. Common practice:
    # the bust dart is turned to the waist first.
    body = wearer(
        {
            "height": 1680.0,
            "bust_girth": 1000.0,
            "high_bust_girth": float(high_bust),
            "waist_girth": BUMPS[high_bust],
            "hip_girth": 1020.0,
        }
    )
    for where in ("side", "shoulder", "waist", "shoulder-princess", "armhole-princess"):
        garment = draft_garment(body, None, "bodice", {"length": length, "bust_dart": where})
        front = both(garment.draft)[1]
        assert front.radius >= FRONT_RADIUS, where
        assert not front.waves
        assert errors(garment) == [], where
        if "front-side" not in garment.draft:
            assert girth(garment.draft, "waist") == pytest.approx(body["waist_girth"] + 60, abs=0.01)
        assert "armhole turn" not in {f.check for f in garment.findings}
        assert [f for f in garment.findings if f.check == "bust dart" and f.level == "note"]


def test_a_belly_that_takes_a_part_of_the_bust_dart_leaves_the_rest_of_it() -> None:
    body = wearer({**dict.fromkeys(("bust_girth", "waist_girth"), 1000.0), "height": 1680.0, "hip_girth": 1020.0})
    body = body.changed(high_bust_girth=940.0)
    whole = torso(body.changed(waist_girth=800.0)).facts["bust_dart_degrees"]
    left = torso(body).facts["bust_dart_degrees"]
    assert 0 < left < whole - 3
    less = torso(body.changed(waist_girth=960.0)).facts["bust_dart_degrees"]
    assert left < less <= whole


def test_a_childs_waist_is_no_belly() -> None:
    # A child's waist is nearly its bust: the rule comes in between a bust of 600 and one of 700 mm.
    small = chart_woman(height=1160.0, bust_girth=590.0, waist_girth=550.0, hip_girth=620.0)
    draft = torso(small)
    assert abs(level(draft, "back", "waist") - level(draft, "front", "waist")) < 12


# ---------------------------------------------------------------------------------- slope, slivers


def by_drop(body: Body, drop: float) -> Body:
    """Return the body with this shoulder drop and no measured depth of its armhole."""
    taken = {n: m.mm for n, m in body.measures.items() if m.source == "measured"}
    kept = {n: mm for n, mm in taken.items() if n not in ("scye_depth", "axilla_depth")}
    return wearer({**kept, "upper_arm_girth": body["upper_arm_girth"], "shoulder_drop": drop})


@pytest.mark.parametrize(("body", "most"), [(chart_woman, 8), (lambda: full_bust(1040.0), 9), (chart_man, 14)])
def test_a_shoulder_that_slopes_25_more_keeps_armhole_and_cap_and_shortens_the_side(
    body: Callable[[], Body], most: float
) -> None:
    # Ours: side -25 within 1, armhole (here front and back together) and cap within 8 on regular
    # bodies. A long shoulder's end moves inwards with the slope, by 14 mm on the chart man, and shortens the
    # armhole by as much; the full bust's by 0.3 mm too much.
    one, other = (pair(by_drop(body(), drop)) for drop in (40.0, 65.0))
    assert one.facts["armhole_drop"] == other.facts["armhole_drop"]
    assert other["back"]["side"].length - one["back"]["side"].length == pytest.approx(-25, abs=1)
    whole = [sum(half.length for half in halves(draft)) for draft in (one, other)]
    assert whole[1] == pytest.approx(whole[0], abs=most)
    assert other.facts["cap_height"] == pytest.approx(one.facts["cap_height"], abs=most)


def test_a_taped_scye_depth_wins_and_says_what_that_costs() -> None:
    plain = by_drop(chart_woman(), 40.0)
    taped = plain.changed(scye_depth=usual_axilla(plain) + 30)
    sloped = taped.changed(shoulder_drop=65.0)
    assert "scye depth" not in {f.check for f in torso(taped).findings}
    (said,) = [f for f in torso(sloped).findings if f.check == "scye depth"]
    assert "higher" in said.message
    lower = [
        draft["back"].points["underarm"].imag + draft.facts["armhole_drop"]
        for draft in map(torso, (taped, sloped))
    ]
    assert lower[0] == pytest.approx(lower[1])


def mouths(piece: Piece) -> dict[str, float]:
    """Return how wide (mm) each dart of a piece is: at its mouth, or in the middle of a diamond."""
    legs = dart_legs(piece)
    open_ones = {into.name: abs(into.path.start - out.path.end) for into, out in legs}
    inner = {d.name: abs(d.leg_a.segments[0].end - d.leg_b.segments[0].end) for d in piece.darts}
    return open_ones | inner


def slivers(bodies: Iterable[Body]) -> list[str]:
    """Return the darts under 8 mm (adult scale; ours) wherever the bust is shaped."""
    return [
        f"{body.title}: {where}, {length}: {piece.name} {name} of {mm:.1f} mm"
        for body in bodies
        for where, length in (("side", "waist"), ("armhole", "hip"), ("shoulder", "waist"), ("neck", "hip"))
        for piece in torso(body, bust_dart=where, length=length).pieces
        for name, mm in mouths(piece).items()
        if mm < 8 * body_scale(body) - 0.01
    ]


def test_no_dart_is_a_sliver() -> None:
    assert slivers(some()[::3]) == []


@pytest.mark.population
@pytest.mark.timeout(0)
def test_no_measured_adults_dart_is_a_sliver() -> None:
    assert slivers(everybody()) == []


def test_a_guessed_bust_is_asked_about_and_the_way_out_takes_the_dart_away() -> None:
    # 181 of 400 men got over 6 mm of estimated bust shaping without a word.
    asked = 0
    for row in [r for r in rows() if r["Gender"] == "Male"][::40]:
        body = body_of(row)
        said = [f for f in torso(body).findings if f.check == "bust shape"]
        guessed = body["bust_girth"] - body["high_bust_girth"] > 6
        assert bool(said) == guessed
        if said:
            asked += 1
            assert 'figure = "mens"' in said[0].message
        answered = torso(replace(body, figure="mens").changed())
        assert answered.facts["bust_dart_degrees"] == 0
        assert not [f for f in answered.findings if f.check == "bust shape"]
    assert asked >= 15
