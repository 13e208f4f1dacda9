"""A bone in a casing along the hem of what hangs: how long, in how many parts, in what order, and how it is worn.

Lengths and lines are measured by shapely. That a ring's ends lap by 50 to 100, that others stop 5 mm or more
short, and that every end is capped is common practice.
"""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import pytest
from shapely.geometry import LineString

from drafting.body import Body
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.stand_in import stand_ins
from drafting.costume.wearing.worn import WornGarment, worn
from drafting.draft.by_role import edges_as, is_shell
from drafting.draft.draft import Notion
from drafting.draft.piece import Piece
from drafting.draft.roles import SLEEVES, EdgeRole
from drafting.fabric import Fabric
from drafting.geometry import Path
from drafting.making import planned
from drafting.making.rules import unsound
from drafting.worn.cloth.rods import bone_bends
from drafting.worn.stands.model import Hoop
from tests.alter.styles import ring
from tests.alter.test_stiff_hem import GARMENTS
from tests.blocks.figures import chart_woman, errors
from tests.drawn_bodies import drawn, far
from tests.making.orders import WOVEN, costume_of, order_of

RING, ENDED = ("do.bone_ring",), ("do.bone_short", "do.bone_closed")
RUNS: dict[str, tuple[list[tuple[int, bool]], tuple[str, ...]]] = {
    "straight": ([(1, False)], ENDED),  # from one side of the slit round to the other
    "gored": ([(1, True)], RING),
    "half circle": ([(1, True)], RING),
    "tiers": ([(1, True)], RING),
    "cape": ([(1, False)], ENDED),  # open in front
    "overskirt": ([(1, True)], RING),
    "peplum": ([(1, False)], ENDED),  # a zip behind
    "coat": ([(2, False), (1, False)], ENDED),  # each front with its side body, and the back between both vents
}
"""By garment: how often each bone is cut and whether it is joined to a ring, and what is said of its ends."""


def boned(body: Body, garment: str, **more: object) -> MadeGarment:
    block, own = GARMENTS[garment]
    slit = {"walking_slit": "yes"} if garment == "straight" else {}
    return draft_garment(body, WOVEN, block, {"stiff_hem": "bone", **slit, **own, **more})


def bones(made: MadeGarment) -> list[Notion]:
    return [notion for notion in made.draft.notions if notion.what == "boning"]


def measured(path: Path) -> LineString:
    return LineString([(z.real, z.imag) for z in path.points(0.01)])


def channels(made: MadeGarment) -> dict[str, tuple[Piece, LineString]]:
    """Return the line of the bone on each piece that has one."""
    return {
        piece.name: (piece, measured(mark.path))
        for piece in made.draft.pieces
        for mark in piece.placements
        if mark.what == "bone"
    }


@pytest.mark.parametrize("garment", RUNS)
def test_the_bone_is_as_long_as_its_line_round_the_hem_and_its_ends_are_as_the_hem_is(garment: str) -> None:
    for body in (chart_woman(), *drawn(2), *far()[::24]):
        made = boned(body, garment)
        assert errors(made) == [], body.title
        cut = bones(made)
        assert [(n.count, n.loop is not None) for n in cut] == RUNS[garment][0], body.title
        drawn_long = sum(line.length * (2 if p.both_hands else 1) for p, line in channels(made).values())
        laps = sum(n.count * (n.cut_length - (n.loop or 0.0)) for n in cut if n.loop)  # type: ignore[operator]
        short = 12.0 * sum(n.count for n in cut if not n.loop)
        assert 50.0 * sum(bool(n.loop) for n in cut) <= laps <= 100.0 * sum(bool(n.loop) for n in cut)
        bought = sum(n.count * (n.cut_length or 0.0) for n in cut)
        assert bought == pytest.approx(drawn_long + laps - short, abs=0.5)
        (tips,) = (n.count for n in made.draft.notions if n.what == "bone tip")
        assert tips == 2 * sum(n.count for n in cut)


@pytest.mark.parametrize("garment", RUNS)
def test_its_line_lies_as_high_over_the_hem_as_asked_on_every_piece_that_hangs(garment: str) -> None:
    made = boned(chart_woman(), garment, bone_height=22.0)
    for piece, line in channels(made).values():
        hem = [measured(e.path) for e in edges_as(piece, EdgeRole.HEM, EdgeRole.BOTTOM)]
        assert ring(piece).buffer(0.1).contains(line)
        for share in (0.1, 0.5, 0.9):
            at = line.interpolate(share, normalized=True)
            assert min(at.distance(one) for one in hem) == pytest.approx(22.0, abs=0.2), piece.name
    hung = {
        p.name for p in made.draft.pieces if is_shell(p) and p.role not in SLEEVES and edges_as(p, EdgeRole.HEM)
    }
    assert set(channels(made)) == hung


@pytest.mark.parametrize("garment", RUNS)
def test_it_is_slid_in_once_the_hem_is_turned_up_in_a_casing_that_is_bought(garment: str) -> None:
    costume = costume_of(boned(chart_woman(), garment), WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    (step,) = (one for one in steps if one.verb == "bone")
    boned_pieces = set(channels(costume.garments[0]))
    hems = [one for one in steps if one.verb == "hem" and boned_pieces & {piece for piece, _ in one.edges}]
    assert hems
    assert max(one.n for one in hems) < step.n
    early = [replace(one, n=n) for n, one in enumerate([step, *(s for s in steps if s is not step)], 1)]
    assert [said for said in unsound(costume, early) if "before the hem" in said]
    keys = [one.key for one in step.say]
    assert [key for key in keys if key in RING + ENDED] == list(RUNS[garment][1])
    long = sum(line.length * (2 if p.both_hands else 1) for p, line in channels(costume.garments[0]).values())
    (tape,) = (one.amount for one in step.takes if one.what == "tape")
    assert long <= tape <= long + 60.0 * step.count
    assert [one.key for one in step.cautions] == ["caution.bones"]


def test_the_plan_buys_the_bone_and_its_tips_and_the_care_sheet_takes_it_out() -> None:
    made = costume_of(boned(chart_woman(), "gored"), WOVEN)
    plan = planned(made)
    (cut,) = (n.cut_length for n in bones(made.garments[0]))
    assert cut is not None
    (long,) = (row.amount for row in plan.shopping if row.what == "boning")
    assert cut <= long <= cut + 110.0  # cut ends, and whole tenths of a metre
    assert [row.amount for row in plan.shopping if row.what == "bone tip"] == [2]
    assert "keep.bones" in [one.key for one in plan.keeping]


def test_a_flat_bone_is_warned_against_where_a_hem_curves_in_the_cloth_and_only_there() -> None:
    def warned(garment: str) -> list[str]:
        found = boned(chart_woman(), garment, bone_kind="flat").findings
        return [f.level for f in found if f.check == "flat bone"]

    assert warned("half circle") == ["warning"]
    assert warned("straight") == []


@pytest.mark.parametrize(("garment", "wide"), [("gored", False), ("overskirt", True)])
def test_a_ring_wider_than_a_doorway_is_told(garment: str, wide: bool) -> None:
    """A ring is as wide as its length over pi; a doorway is 80 cm wide (common practice)."""
    made = boned(chart_woman(), garment)
    across = sum(line.length * 2 for _, line in channels(made).values()) / math.pi
    assert (across > 800.0) == wide
    (said,) = (f.said("cm") for f in made.findings if f.check == "boning")
    assert f"{across / 10:.1f}".removesuffix(".0") in said
    assert ("a doorway" in said) == wide
    for words in ("Cap or file every end", "quick change", "candles"):
        assert words in said


def test_where_the_hands_differ_there_is_one_ring_and_a_sound_order() -> None:
    made = boned(stand_ins()[1], "gored")
    assert errors(made) == []
    (ring_cut,) = bones(made)
    assert ring_cut.count == 1
    long = sum(line.length * (2 if p.both_hands else 1) for p, line in channels(made).values())
    assert ring_cut.loop == pytest.approx(long, abs=0.1)
    assert ring_cut.where == "hem"
    costume = costume_of(made, WOVEN)
    assert unsound(costume, order_of(costume)) == ()


VELVET = replace(WOVEN, mass=330.0, bending_length_along=26.0, bending_length_across=24.0)
"""Heavy velveteen (invented figures)."""


@cache
def shown(kind: str, cloth: Fabric = WOVEN) -> WornGarment:
    block, own = GARMENTS["half circle"]
    asked = {"stiff_hem": "bone", "bone_kind": kind} if kind != "none" else {}
    made = draft_garment(chart_woman(), cloth, block, {**asked, **own})
    return worn(costume_of(made, cloth), mesh=40.0, treat=False).garments[0]


def hoop(worn_garment: WornGarment) -> Hoop:
    hem = worn_garment.found.hem
    assert worn_garment.found.settled
    assert hem is not None
    assert hem.hoop is not None
    return hem.hoop


def test_worn_a_ring_holds_the_hem_out_nearly_to_a_circle() -> None:
    """Geometry: no closed line is wider than half its length, and a circle is its length over pi wide."""
    limp, firm = shown("none").found, shown("round").found
    assert limp.settled
    assert firm.settled
    assert limp.hem is not None
    assert firm.hem is not None
    assert limp.hem.hoop is None
    (cut,) = bones(boned(chart_woman(), "half circle"))
    assert cut.loop is not None
    circle = cut.loop / math.pi
    assert limp.hem.width < 0.9 * circle < firm.hem.width < 1.2 * circle


@pytest.mark.parametrize("kind", ["round", "spiral"])
def test_worn_a_bone_keeps_its_length_however_stiff_it_is(kind: str) -> None:
    """A stiff rod that may crumple the cloth along it settles to a small ring: a bone is no shorter worn."""
    (cut,) = bones(boned(chart_woman(), "half circle"))
    assert cut.loop is not None
    assert hoop(shown(kind, VELVET)).across == pytest.approx(cut.loop / math.pi, rel=0.01)


def test_worn_a_soft_bone_is_drawn_into_folds_by_a_heavy_hem_and_that_is_told() -> None:
    """A ring of radius R gives way under 3 E I / R^3 a metre (buckling of rings, M. Levy, from memory): half
    a newton a metre, as the skirt's own weight draws, is less than a round rod bears, far more than a spiral."""
    round_it, soft = shown("round", VELVET), shown("spiral", VELVET)
    radius = hoop(round_it).across / 2000.0
    assert 3.0 * bone_bends("spiral", 6.0) / radius**3 < 0.1 < 1.0 < 3.0 * bone_bends("round", 6.0) / radius**3
    assert hoop(round_it).share > 0.95
    assert hoop(soft).share < 0.8
    assert "hem.drawn_in" in [said.key for said in soft.words]
    assert "hem.drawn_in" not in [said.key for said in round_it.words]


def test_a_soft_ring_is_told_before_it_is_bought() -> None:
    said = {
        kind: [
            f.said("cm")
            for f in boned(chart_woman(), "half circle", bone_kind=kind).findings
            if f.check == "boning"
        ]
        for kind in ("round", "spiral")
    }
    assert "holds a small ring" in said["spiral"][0]
    assert "holds a small ring" not in said["round"][0]
