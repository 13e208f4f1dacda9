"""How much to buy, and what the lay says about stripes, stretch, faults and the wash."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from shapely.geometry import Polygon
from shapely.geometry import box as rectangle

from drafting.costume.garment import draft_garment
from drafting.draft.piece import Level
from drafting.draft.roles import PieceRole
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.errors import DraftError
from drafting.ground.lengths import in_unit
from drafting.layout import LayWishes, Part, cloth_of, hand_row, laid_by_hand, lay_out, lay_row
from drafting.layout.outlines import outline_of
from drafting.layout.packing.model import box_of
from drafting.layout.packing.verify import broken_rules
from tests.bodies import bdims
from tests.layout.figures import COAT, box, breaks, cloth, part

LENGTHWISE = (part("panel", box(700, 1000), pair=True),)


def test_the_length_to_buy_is_lay_and_spare_over_what_the_wash_leaves_rounded_up() -> None:
    # ISO 5077: what is cut must be longer by 1 / (1 - shrinkage). (1000 + 50) / 0.96 = 1093.75.
    washed = replace(cloth(), shrinkage=(0.04, 0.0))
    lay = lay_out(LENGTHWISE, washed, count=5, table=False)
    assert lay.length == pytest.approx(1000, abs=0.01)
    assert lay.buy_length == 1100
    assert "5 cm to square the ends, 4 % for the wash" in in_unit(lay.summary(), "cm")
    assert lay_out(LENGTHWISE, cloth(), count=5, table=False).buy_length == 1100
    more = replace(washed, wishes=LayWishes(spare=100.0))
    assert lay_out(LENGTHWISE, more, count=5, table=False).buy_length == 1200  # 1145.8


def test_cloth_washed_before_or_cut_unwashed_needs_nothing_divided_out() -> None:
    fabric = Fabric("Linen", usable_width=1480, shrinkage_along=0.05)
    assert cloth_of("shell", fabric).shrinkage == (0.05, 0.0)
    assert cloth_of("shell", fabric, unwashed=True).shrinkage == (0.0, 0.0)
    assert cloth_of("shell", replace(fabric, pretreated=True)).shrinkage == (0.0, 0.0)


def test_a_cloth_is_laid_on_the_width_that_the_wash_leaves_and_said_to_be() -> None:
    """Pieces that fit before the wash and no more after it are turned or left out, not drawn over the edge."""
    linen = Fabric("Linen", usable_width=1480, care="wash at 40", shrinkage_along=0.05, shrinkage_across=0.06)
    cloth = cloth_of("shell", linen)
    assert cloth.usable_width == pytest.approx(1480 * 0.94)
    assert (cloth.bought_width, cloth.width) == pytest.approx((1480, 1480 + 2 * linen.selvedge))
    assert cloth.at_width(cloth.width) == replace(cloth, faults=())
    lay = lay_out(LENGTHWISE, cloth, count=5, table=False)
    row = lay_row(lay)
    assert (row["usable_width"], row["cut_for_width"]) == pytest.approx((1480, 1391.2))
    assert max(box_of(lay.job.posed(spot))[3] for spot in lay.packing.spots) <= 1391.2
    (said,) = [f for f in lay.findings if f.check == "width after the wash"]
    assert "139.1 cm" in in_unit(said.sentence, "cm")
    whole = lay_out(LENGTHWISE, cloth_of("shell", linen, unwashed=True), count=5, table=False)
    assert not [f for f in whole.findings if f.check == "width after the wash"]
    assert whole.length < lay.length  # two of 700 lie side by side on 1480 only


def test_what_is_never_washed_is_steamed_or_left_and_told_so() -> None:
    wool = Fabric("Wool", usable_width=1480, care="dry clean only", shrinkage_along=0.03, shrinkage_across=0.02)
    assert cloth_of("shell", wool).shrunk_by == "steam"
    assert "for the steaming" in in_unit(lay_out(LENGTHWISE, cloth_of("shell", wool), count=5).summary(), "cm")
    lining = Fabric("Cotton", usable_width=1480, care="wash at 60", shrinkage_along=0.05)
    assert cloth_of("lining", lining).shrunk_by == "wash"
    assert cloth_of("lining", lining, kept_dry=True).shrunk_by == "steam"


def test_folded_across_takes_its_length_twice() -> None:
    lay = lay_out(LENGTHWISE, cloth(lay="crosswise"), count=5, table=False)
    assert lay.length == pytest.approx(1000, abs=0.01)
    assert lay.cloth_length == pytest.approx(2000, abs=0.01)
    assert lay.lower_bound <= lay.length
    assert breaks(lay, LENGTHWISE) == []


@pytest.mark.parametrize(("wide", "words"), [(730, "tight"), (550, "usual"), (300, "loose")])
def test_the_words_follow_the_share_of_cloth_used(wide: float, words: str) -> None:
    # Ours, on the published garment instances: under 70 % loose, 70 to 80 usual, over 80 tight.
    parts = (part("panel", box(wide, 500), pair=True, copies=3),)
    lay = lay_out(parts, cloth(1480), count=30, table=False)
    assert lay.words.startswith(words), (lay.utilisation, lay.words)


def test_a_lay_as_long_as_its_longest_piece_is_not_sent_back() -> None:
    parts = (part("facing", box(80, 600), pair=True),)
    assert lay_out(parts, cloth(), count=5, table=False).words == "as long as its longest piece"


def test_faults_in_the_cloth_are_laid_round_in_both_layers() -> None:
    fault = (200.0, 1000.0, 260.0, 1040.0)  # on the far half: on the folded cloth at 260 to 300
    spoilt = replace(cloth(), faults=(fault,))
    lay = lay_out(COAT, spoilt, count=100, table=False)
    assert lay.lay == "folded"
    assert lay.job.strip.blocked == ((200.0, 260.0, 260.0, 300.0),)

    for spot in lay.packing.spots:
        shape = Polygon([(p.real, p.imag) for p in lay.job.posed(spot)])
        assert shape.intersection(rectangle(200, 260, 260, 300)).area < 1e-3
    assert breaks(lay, COAT) == []


def test_a_repeat_along_the_cloth_brings_one_level_of_every_piece_onto_it() -> None:
    level = Level("bust", (line(10 + 333j, 90 + 333j),))
    other = Level("bust", (line(10 + 120j, 90 + 120j),))
    parts = (
        part("front", box(300, 500), pair=True, levels=(level,)),
        part("side", box(200, 470), pair=True, levels=(other,)),
    )
    striped = replace(cloth(), repeat_along=75.0)
    lay = lay_out(parts, striped, count=60, table=False)
    places = []
    for spot in lay.packing.spots:
        outline = lay.outline(spot)
        at = outline.placed(
            spot,
            level.paths[0].mapped(outline.base)
            if outline.part.cut.piece.name == "front"
            else other.paths[0].mapped(outline.base),
        )
        places.append(at.start.real)
    for x in places:
        assert math.remainder(x - places[0], 75.0) == pytest.approx(0, abs=0.01)
    assert any(f.check == "repeat" for f in lay.findings)
    assert breaks(lay, parts) == []


def test_on_folded_cloth_a_pair_keeps_half_the_gap_from_the_fold() -> None:
    """Common practice: 5 mm between pieces; opened, a left and a right lie across the fold from each other."""
    lay = lay_out(COAT, cloth(lay="folded", gap=6.0), count=60, table=False)
    rows = lay_row(lay)["placed"]
    assert {row["hand"] for row in rows} == {"both", "single"}
    for row in rows:
        assert row["y"] >= (-1e-6 if row["on_fold"] else 3.0 - 0.01)


def test_one_way_cloth_is_never_folded_across() -> None:
    """Common practice: nap and print run one way; a crosswise fold would turn the upper layer round."""
    with pytest.raises(DraftError, match=r"one-way and cannot be folded across.*turn the upper one round"):
        lay_out(COAT, cloth(lay="crosswise", one_way=True), count=5, table=False)


def test_on_open_cloth_every_grainline_lies_on_the_same_place_of_a_stripe() -> None:
    """Common practice: stripes are matched from piece to piece; the grainline is each one's line."""
    grained = {"front": line(70 + 20j, 70 + 400j), "side": line(115 + 20j, 115 + 300j)}
    sizes = {"front": box(300, 500), "side": box(200, 470)}
    cuts = [part(name, sizes[name], pair=True).cut for name in grained]
    parts = tuple(Part("coat", replace(cut, grainline=grained[cut.piece.name])) for cut in cuts)
    lay = lay_out(parts, replace(cloth(lay="open"), repeat_across=24.0), count=40, table=False)
    assert broken_rules(lay.job, lay.packing) == []
    assert breaks(lay, parts) == []
    places = [
        lay.outline(spot).placed(spot, drawn.mapped(lay.outline(spot).base)).start.imag
        for spot in lay.packing.spots
        for drawn in [grained[lay.outline(spot).part.cut.piece.name]]
    ]
    assert len(places) == 4
    for y in places:
        assert math.remainder(y - places[0], 24.0) == pytest.approx(0, abs=0.1)
    assert any("stripe" in f.message for f in lay.findings if f.check == "repeat")


def test_on_cloth_hardly_two_repeats_wide_pieces_lie_in_two_columns() -> None:
    """Lines were counted from the selvedge: one lay down the middle, and eighteen metres were bought for nine.

    A pattern that mirrors itself on the middle of the cloth does so half a repeat to either side as well (plane
    geometry), so two columns of 330 have room on 720 of cloth: two lengths of 1000, not four.
    """
    drawn = line(165 + 100j, 165 + 900j)
    cut = part("panel", box(330, 1000), pair=True, copies=2).cut
    parts = (Part("coat", replace(cut, grainline=drawn)),)
    bolt = replace(cloth(720.0, lay="open", one_way=True), repeat_across=375.0)
    lay = lay_out(parts, bolt, count=40, table=False)
    assert broken_rules(lay.job, lay.packing) == []
    outlines = [(lay.outline(spot), spot) for spot in lay.packing.spots]
    places = [o.placed(spot, drawn.mapped(o.base)).start.imag for o, spot in outlines]
    assert len(places) == 4
    for y in places:
        assert math.remainder(y - 360.0, 187.5) == pytest.approx(0, abs=0.1)
        assert math.remainder(y - places[0], 375.0) == pytest.approx(0, abs=0.1)
    assert lay.length < 2.1 * 1000
    assert any("mirrors itself" in f.message for f in lay.findings if f.check == "repeat")
    again = laid_by_hand(parts, bolt, hand_row(lay))
    assert again is not None
    assert again.length == pytest.approx(lay.length)


def test_on_folded_cloth_what_stripes_need_is_said() -> None:
    lay = lay_out(COAT, replace(cloth(), repeat_across=12.0), count=20, table=False)
    assert [f.message for f in lay.findings if "fold it on a stripe" in f.message]


def test_a_piece_whose_stretch_would_not_go_round_the_body_is_warned_of() -> None:
    knit = replace(cloth(), stretch_turned=False)
    parts = (part("right", box(200, 500)), part("wrong", box(200, 500), stretch=90.0))
    warned = [f.where for f in lay_out(parts, knit, count=20, table=False).findings if f.check == "stretch"]
    assert warned == ["coat.wrong"]


def test_bias_is_silent_where_a_piece_is_declared_to_need_it_and_told_where_a_grain_was_turned() -> None:
    """A strip, an under collar, a bone's casing, a godet, a tail and its hem band do (common practice)."""
    knit = replace(cloth(), stretch_turned=False)
    bias = ("binding", "bone casing", "under collar", "godet", "tail", "hem band")
    for role in PieceRole:
        parts = (part("piece", box(200, 500), grain=45.0, role=role),)
        told = [f for f in lay_out(parts, knit, count=4, table=False).findings if f.check == "stretch"]
        assert bool(told) is (role.value not in bias)
    along = (part("strip", box(200, 40), grain=0.0, role=PieceRole.BINDING),)
    assert [f for f in lay_out(along, knit, count=4, table=False).findings if f.check == "stretch"]


@pytest.mark.parametrize(
    ("block", "asked", "piece"),
    [
        ("waistcoat", {"back_cloth": "own"}, "strap"),
        ("spats", {}, "spat-strap"),
        ("shirt", {"sleeve_opening": "bound"}, "slit-strip"),
        ("shirt", {"sleeve_opening": "placket"}, "slit-strip"),
    ],
)
def test_a_strap_and_the_strip_of_a_slit_are_not_asked_to_stretch(
    block: str, asked: dict[str, str], piece: str
) -> None:
    """A strap is drawn close and must hold (common practice); of a vinyl's it was said that it would not stretch
    around the body."""
    garment = draft_garment(bdims()[3], None, block, asked)
    (own,) = (cut.piece for cut in garment.pattern.pieces if cut.piece.name == piece)
    along = part(piece, box(200, 40), grain=own.grain, stretch=own.stretch, role=own.role)
    for turned in (False, True):
        knit = replace(cloth(), stretch_turned=turned)
        told = [f.message for f in lay_out((along,), knit, count=4, table=False).findings if f.check == "stretch"]
        assert bool(told) is turned
        assert piece == "slit-strip" or not any("around the body" in one for one in told)


@pytest.mark.parametrize("grain", ["edge", "middle"])
def test_a_circle_stretches_round_the_body_whatever_its_grain(grain: str) -> None:
    made = draft_garment(bdims()[3], None, "skirt", {"skirt_cut": "half circle", "circle_grain": grain})
    panels = [cut for cut in made.pattern.pieces if cut.piece.role in (PieceRole.FRONT, PieceRole.BACK)]
    assert panels
    for cut in panels:
        assert (cut.piece.grain - cut.piece.stretch) % 180 == pytest.approx(90.0)


def test_face_down_only_where_both_faces_are_alike() -> None:
    parts = (part("skew", [(0, 0), (500, 0), (100, 400)], pair=True),)
    for alike in (False, True):
        bolt = replace(cloth(lay="open"), faces_alike=alike)
        job = lay_out(parts, bolt, count=20, table=False).job
        over = [{pose.mirror for pose in copy.poses} for copy in job.copies]
        assert over == ([{False, True}] * 2 if alike else [{False}, {True}])


def test_an_opened_piece_is_its_half_twice_and_keeps_its_curves() -> None:
    (back,) = (p for p in COAT if p.cut.piece.name == "back")
    whole = outline_of(back, "open")
    assert whole.path.area == pytest.approx(2 * back.cut.cut.area)
    assert len(whole.path.segments) == 2 * (len(back.cut.cut.segments) - 1)
    row = lay_row(lay_out((back,), cloth(lay="open"), count=5, table=False))
    assert row["placed"][0]["hand"] == "single"
