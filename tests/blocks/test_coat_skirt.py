"""A coat that goes on below its waist: length, girth at the seat, seams that walk, hem, vent, lining, facing.

Checked against plane geometry (lengths that add up, corners that close flat) and common practice (a hem turn of 40
to 50 mm, a lining that ends above it). Bodies as in the other block tests.
"""

from __future__ import annotations

import math

import pytest

from drafting.body import Body
from drafting.costume.garment import MadeGarment
from drafting.draft.by_role import edges_as, the_edge, vent_tops
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, LevelKind, PieceRole
from drafting.geometry import line
from drafting.ground.errors import DraftError
from drafting.making.rules import unsound
from tests.blocks.figures import chart_woman, errors, level
from tests.blocks.test_contact_sheets_of_settings import six
from tests.blocks.test_lapels import coat, sample
from tests.bodies import ansur
from tests.making.orders import WOVEN, costume_of, order_of, uneven
from tests.worn.unusual import child

LONG = {
    "jacket": {},
    "to the knee": {"coat_length": 1000.0, "vent": "centre", "skirt_flare": 40.0, "lapel_style": "shawl"},
    "double": {"breasted": "double", "front_overlap": 75.0, "overlap_above": 1.1, "lapel_style": "peaked"},
    "tunic": {"lapel_style": "none", "vent": "centre"},
    "side vents": {"vent": "sides", "coat_length": 800.0},
}


def made(body: Body, name: str = "jacket", **more: object) -> MadeGarment:
    return coat(body, "coat", **LONG[name], **more)


@pytest.mark.parametrize("name", LONG)
def test_every_length_on_the_sample_has_no_error_and_a_sound_order(name: str) -> None:
    for body in sample():
        share = {"to the knee": 0.62, "side vents": 0.46}.get(name)
        own = {"coat_length": share * body["height"]} if share else {}
        found = coat(body, "coat", **{**LONG[name], **own})
        assert errors(found) == [], (body.title, errors(found))
    costume = costume_of(found, WOVEN)
    assert unsound(costume, order_of(costume)) == ()


@pytest.mark.parametrize("asked", [650.0, 800.0, 1050.0])
def test_a_coat_is_as_long_as_asked_down_from_the_nape(asked: float) -> None:
    """Straight down: the centre back's drop, as its seam lies a little off the upright."""
    back = made(chart_woman(), coat_length=asked).draft["back"]
    hem = the_edge(back, EdgeRole.HEM).path
    assert -min(hem.start.imag, hem.end.imag) == pytest.approx(asked, abs=1.0)


@pytest.mark.parametrize("who", ["largest", "smallest", "full-bust"])
def test_the_seat_has_the_ease_that_was_asked_for(who: str) -> None:
    """The three hip lines, both halves, add up to body and ease: read off the pieces, not off the girth."""
    body = six()[who]
    draft = made(body, hip_ease=120.0).draft
    drawn = 2 * sum(level(draft, piece, "hip") for piece in ("back", "side-body", "front"))
    assert drawn == pytest.approx(body["hip_girth"] + 120.0, abs=0.5)


@pytest.mark.parametrize("flare", [0.0, 60.0])
def test_both_edges_of_a_seam_are_equally_long_and_the_hem_runs_on_flat(flare: float) -> None:
    draft = made(six()["full-bust"], skirt_flare=flare, coat_length=950.0).draft
    for one, other in (("back", "panel_back"), ("front", "panel_front")):
        assert draft[one]["panel"].length == pytest.approx(draft["side-body"][other].length, abs=0.05)
    for name in ("back", "side-body", "front"):
        piece = draft[name]
        for edge in edges_as(piece, EdgeRole.PANEL):
            at = piece.index(edge.name)
            below = at if piece.edges[at - 1].role is EdgeRole.HEM else (at + 1) % len(piece.edges)
            assert piece.corner(below) == pytest.approx(90.0, abs=0.1), (name, edge.name)


def test_flare_goes_on_every_edge_below_the_hip_even_of_a_waist_as_wide_as_the_seat() -> None:
    for body in (six()["waist-largest"], chart_woman()):
        wide = [
            sum(
                e.length
                for p in made(body, skirt_flare=f, coat_length=1000.0).draft.pieces
                if not p.material
                for e in edges_as(p, EdgeRole.HEM, EdgeRole.BOTTOM)
                if p.role in BODY
            )
            for f in (0.0, 50.0)
        ]
        assert wide[1] - wide[0] == pytest.approx(5 * 50.0, rel=0.06), "five edges: one at the centre, two a seam"


BODY = (PieceRole.BACK, PieceRole.SIDE_BODY, PieceRole.FRONT)


def test_a_vent_laps_as_asked_and_never_opens_above_the_waist() -> None:
    body = chart_woman()
    draft = made(body, "tunic", coat_length=850.0, vent_length=240.0, vent_width=50.0).draft
    _, vent = edges_as(draft["back"], EdgeRole.VENT)
    (fold,) = [m.path for m in draft["back"].placements if m.what == "fold"]
    assert fold.length == pytest.approx(240.0, abs=0.5)
    assert abs(vent.path.start - fold.start) == pytest.approx(50.0, rel=0.06)
    high = made(body, "tunic", vent_length=900.0).draft["back"]
    waist = next(own.paths[0].start.imag for own in high.levels if own.name == "waist")
    (fold,) = [m.path for m in high.placements if m.what == "fold"]
    assert max(fold.start.imag, fold.end.imag) < waist - 40.0


@pytest.mark.parametrize("flare", [0.0, 50.0])
@pytest.mark.parametrize("who", ["largest", "smallest", "waist-largest"])
def test_side_vents_open_both_edges_of_the_back_seams_alike_and_lap_as_asked(who: str, flare: float) -> None:
    """Plane geometry: fold on fold, the lap of each piece square to it at the hem; the seam above walks."""
    asked = {"vent_length": 230.0, "vent_width": 50.0, "skirt_flare": flare, "coat_length": 900.0}
    garment = coat(six()[who], "coat", vent="sides", **asked)
    back, side = garment.draft["back"], garment.draft["side-body"]
    assert back["panel"].length == pytest.approx(side["panel_back"].length, abs=0.05)
    folds = []
    for piece, seam in ((back, "panel"), (side, "panel_back")):
        (fold,) = [m.path for m in piece.placements if m.what == "fold"]
        folds.append(fold.length)
        low, high = sorted((fold.start, fold.end), key=lambda p: p.imag)
        assert min(abs(high - p) for p in (piece[seam].path.start, piece[seam].path.end)) < 1e-6
        top, edge = sorted(edges_as(piece, EdgeRole.VENT), key=lambda e: e.length)
        corners = {top.path.start, top.path.end} & {edge.path.start, edge.path.end}
        assert len(corners) == 1
        hem = the_edge(piece, EdgeRole.HEM).path
        assert min(abs(low - p) for p in hem.flattened(0.02)) < 0.05, "the fold ends on the hem"
        ends = {hem.start, hem.end} & {edge.path.start, edge.path.end}
        assert abs(ends.pop() - low) == pytest.approx(50.0, abs=1e-6)
    assert folds == pytest.approx([230.0, 230.0], abs=0.01)
    assert errors(garment) == []


def test_a_side_vent_stays_below_the_waist_of_a_body_whose_seat_is_high() -> None:
    """ANSUR 1260's hip lies 86 mm below the waist: vents up to 100 above it opened in the body of the coat."""
    body = next(person for person in ansur() if person.title == "ANSUR 1260")
    garment = coat(body, "coat", vent="sides", lapel_style="step")
    back = garment.draft["back"]
    (fold,) = [mark.path for mark in back.placements if mark.what == "fold"]
    waist = -body["back_waist_length"]
    assert max(fold.start.imag, fold.end.imag) < waist - 40.0
    assert errors(garment) == []


def test_a_side_vent_opens_no_higher_than_the_pockets_and_is_finished_and_barred_as_one() -> None:
    body = chart_woman()
    garment = made(body, "side vents", vent_length=600.0)
    (fold,) = [m.path for m in garment.draft["back"].placements if m.what == "fold"]
    hip = next(own.paths[0].start.imag for own in garment.draft["back"].levels if own.name == "hip")
    assert max(fold.start.imag, fold.end.imag) <= hip + 100.5
    steps = order_of(costume_of(garment, WOVEN))
    said = [one for step in steps for one in step.say if one.key in ("do.vent", "do.bars")]
    assert [one.key for one in said] == ["do.vent", "do.bars"]
    assert dict(said[1].facts)["n"] == 2, "one bar a vent, through both pieces"


@pytest.mark.parametrize("vent", ["centre", "sides"])
@pytest.mark.parametrize("length", [480, 540, 600, 660, 740])
def test_a_vent_is_one_and_a_half_laps_long_or_there_is_none_and_that_is_said(vent: str, length: float) -> None:
    """A lap wider than its vent is long is none; a coat too short for one is still a coat, lined too."""
    body, lap = chart_woman(), 45.0
    garment = coat(body, "coat", vent=vent, coat_length=length, vent_width=lap)
    vents = edges_as(garment.draft["back"], EdgeRole.VENT)
    said = [f.message for f in garment.draft.findings if f.check == "vent" and "no room" in f.message]
    assert errors(garment) == []
    assert bool(said) is not bool(vents)
    if vents:
        (fold,) = [m.path for m in garment.draft["back"].placements if m.what == "fold"]
        assert fold.length >= 1.5 * lap - 0.5
    if length == 480:
        assert said
    if length == 740:
        assert vents


def test_a_vent_asked_for_shorter_than_its_lap_lets_it_be_says_so() -> None:
    garment = coat(chart_woman(), "coat", vent="centre", vent_length=40.0, vent_width=70.0)
    assert not edges_as(garment.draft["back"], EdgeRole.VENT)
    (said,) = [f.message for f in garment.draft.findings if f.check == "vent"]
    assert "vent_length" in said
    assert "no room" not in said


@pytest.mark.parametrize("body", [chart_woman(), uneven(chart_woman())])
def test_one_centre_vent_is_finished_in_one_sentence_and_barred_once(body: Body) -> None:
    """Common practice: one bar goes through both sides of a vent, even shoulders or not."""
    steps = order_of(costume_of(made(body, "tunic", coat_length=850.0), WOVEN))
    said = [one for step in steps for one in step.say if one.key in ("do.vent", "do.bars", "do.bars_one")]
    assert [one.key for one in said] == ["do.vent", "do.bars_one"]
    (bar,) = [step for step in steps if step.verb == "bar"]
    assert bar.length == 10.0


def test_the_top_of_a_vent_is_where_the_seam_ends_though_its_lap_is_wider_than_the_vent_is_long() -> None:
    """Plane geometry: a back 200 by 500 whose vent is 40 long with a lap of 70; its top runs out from the seam."""
    at = [0j, 200 + 0j, 200 + 500j, 0 + 500j, 0 + 40j, -70 + 40j, -70 + 0j]
    names = ("hem", "side", "waist", "centre", "top", "vent", "lap hem")
    roles = {"centre": EdgeRole.CENTRE_SEAM, "top": EdgeRole.VENT, "vent": EdgeRole.VENT}
    kinds = {"top": EdgeKind.OPENING, "vent": EdgeKind.OPENING, "hem": EdgeKind.HEM, "lap hem": EdgeKind.HEM}
    ring = tuple(
        Edge(name, line(a, b), kinds.get(name, EdgeKind.SEAM), role=roles.get(name, EdgeRole.SIDE))
        for name, a, b in zip(names, at, [*at[1:], at[0]], strict=True)
    )
    back = Piece("back", ring, pair=True, role=PieceRole.BACK)
    assert [edge.name for edge in vent_tops(back)] == ["top"]
    assert back["top"].length > back["vent"].length


def test_facing_and_lining_follow_to_the_hem() -> None:
    draft = made(six()["largest"], "to the knee").draft
    front, facing = draft["front"], draft["front-facing"]
    for role in (EdgeRole.BOTTOM, EdgeRole.FRONT_EDGE):
        assert the_edge(facing, role).length == pytest.approx(the_edge(front, role).length, abs=1e-6)
    for name in ("back", "side-body", "front"):
        shell, lining = (the_edge(draft[n], EdgeRole.HEM).path for n in (name, f"{name}-lining"))
        gap = lining.at(lining.length / 2).imag - shell.at(shell.length / 2).imag
        assert gap == pytest.approx(15.0, abs=4.0), name
        assert 40.0 <= (the_edge(draft[name], EdgeRole.HEM).allowance or 0.0) <= 50.0


def test_a_coat_that_ends_above_the_waist_is_refused_with_the_spencer_named() -> None:
    with pytest.raises(DraftError, match="spencer"):
        made(chart_woman(), coat_length=300.0)


def test_a_long_coat_without_vent_or_flare_is_told_of_its_knees() -> None:
    found = [f for f in made(chart_woman(), coat_length=1100.0).draft.findings if f.check == "walking room"]
    assert "vent" in found[0].message
    assert not [f for f in made(chart_woman()).draft.findings if f.check == "walking room"]


def test_a_childs_coat_covers_its_seat_too() -> None:
    body = child(1160.0)
    assert made(body).draft.facts["coat_length"] > body["back_waist_length"] + body["waist_to_hip"]


@pytest.mark.parametrize(
    ("over", "key"), [(60.0, ""), (40.0, ""), (10.0, "caution.hem_low"), (-30.0, "caution.hem_trails")]
)
def test_a_coat_near_the_floor_is_warned_of_and_the_hem_is_sewn_with_its_caution(over: float, key: str) -> None:
    """By a ruler: the nape stands `nape_height` and the heel high; a hem nearer the floor than 50 mm trips."""
    body = chart_woman()
    floor = body["nape_height"] + body.heel
    garment = coat(body, "coat", **{**LONG["to the knee"], "coat_length": floor - over})
    said = [f for f in garment.findings if f.check == "hem clearance"]
    assert [f.level for f in said] == (["warning"] if over < 50 else [])
    assert [f.value for f in said] == pytest.approx([over] if over < 50 else [])
    hems = [s for s in order_of(costume_of(garment, WOVEN)) if s.makes.startswith("coat: hem hemmed")]
    assert hems
    assert all([one.key for one in hem.cautions] == ([key] if key else []) for hem in hems)


@pytest.mark.parametrize(
    ("length", "flare", "told"), [(0.0, 140.0, True), (0.0, 30.0, False), (1050.0, 140.0, False)]
)
def test_a_flare_that_makes_a_corner_at_the_hip_is_told_with_what_would_not(
    length: float, flare: float, told: bool
) -> None:
    """Plane geometry: 140 out over the 60 below the hip lean by 67 degrees. It was drawn without a word."""
    found = coat(chart_woman(), "coat", coat_length=length, skirt_flare=flare)
    said = [f for f in found.findings if f.check == "skirt flare"]
    assert bool(said) == told
    if said:
        front = found.draft["front"]
        panel = the_edge(front, EdgeRole.PANEL).path
        ends = max(panel.leave, panel.arrive, key=lambda way: abs(way.real))
        assert said[0].value == pytest.approx(math.degrees(math.atan2(abs(ends.real), abs(ends.imag))), abs=0.5)
        assert "up to 34 mm" in said[0].message  # tan 30 x 60
        assert not [f for f in coat(chart_woman(), "coat", skirt_flare=34.0).findings if f.check == "skirt flare"]


@pytest.mark.parametrize("name", ["to the knee", "double", "tunic"])
def test_the_front_edge_hangs_upright_below_the_waist(name: str) -> None:
    """Common practice: the edge of a coat's front is ruled from the waist down. It ran hollow by 4 to 9 mm."""
    for body in ansur(60):
        front = made(body, name).draft["front"]
        edge = the_edge(front, EdgeRole.FRONT_EDGE).path
        (waist,) = (one.paths[0].start.imag for one in front.levels if one.kind is LevelKind.WAIST)
        below = [p.real for p in edge.evenly(120) if p.imag < waist]
        assert len(below) > 5
        assert max(below) - min(below) < 1.0, body.title
