"""Interfacing, bones and lining of the coat: what is cut, how long, and what is said.

Common practice (interfacing, bones, cautions) and plane geometry.
"""

from __future__ import annotations

import math

import pytest
import shapely

from drafting.alter.sewn_in import sewn_in
from drafting.costume.garment import draft_garment
from drafting.draft.draft import Draft
from drafting.draft.piece import EdgeKind
from drafting.fabric import Fabric
from drafting.finish import finish
from drafting.geometry import Cubic, Path, line, turn
from drafting.geometry.area import distances, outside
from drafting.shaping.coat.bone import channel
from tests.blocks.coats import coat, lamplighter, panels, said
from tests.making.orders import WOVEN, costume_of, order_of
from tests.published import single, span_mm


@pytest.fixture(scope="module")
def plain() -> Draft:
    return coat(lamplighter())


def arc(radius: float, degrees: float) -> Path:
    """Return an arc of at most 60 degrees as one cubic (0.01 % off)."""
    a, d = radius + 0j, radius * turn(degrees)
    handle = 4 / 3 * math.tan(math.radians(degrees) / 4) * radius
    return Path((Cubic(a, a + 1j * handle, d - 1j * turn(degrees) * handle, d),))


# -------------------------------------------------------------------------------- interfacing


def test_interfacing_is_a_piece_of_its_own_to_the_stitching_line_and_3_mm(plain: Draft) -> None:
    # Common practice: own piece on own material, stitching line + at most 3 mm, same grain, same count.
    pattern = finish(plain, "coat", "shell")
    stiff = [p for p in plain.pieces if p.material == "interfacing"]
    assert {p.name for p in stiff} >= {"front-interfacing", "under-collar-interfacing", "tail-1-band"}
    for piece in stiff:
        source = plain[piece.name.rsplit("-", 1)[0]]
        assert piece.grain == source.grain
        assert piece.count == source.count
        assert outside(piece.outline, source.outline) < 1.0
        cut = pattern[piece.name]
        assert max(cut.allowances.values()) <= 3.0
        assert all(edge.kind is EdgeKind.FREE for edge in piece.edges)


def test_the_hem_band_is_as_deep_as_asked_all_along(plain: Draft) -> None:
    for piece in panels(plain):
        band = plain[f"{piece.name}-band"]
        off = distances(band["inner"].path, piece["hem"].path)
        assert off.min() == pytest.approx(60, abs=0.1)
        assert off.max() < 60 / math.cos(math.radians(25))


def test_the_whole_tail_may_be_stiffened_and_so_may_nothing() -> None:
    whole = coat(lamplighter(), stiff_tails="whole tail", stiff_front="lapel")
    assert whole["tail-2-interfacing"].area == pytest.approx(whole["tail-2"].area, abs=1)
    roll = whole["front-lapel-interfacing"]["roll"].path
    drawn = next(m.path for m in whole["front"].placements if m.what == "roll line")
    assert distances(roll, drawn).max() < 0.05
    none = coat(lamplighter(), stiff_tails="none", stiff_front="none", stiff_collar=False)
    assert not [p for p in none.pieces if p.material == "interfacing"]


def test_the_button_stand_may_be_stiffened_alone_or_with_the_lapel() -> None:
    both = coat(lamplighter(), stiff_front="lapel and stand")
    assert "front-lapel-interfacing" in both
    band = both["front-stand-interfacing"]
    off = distances(band["inner"].path, both["front"]["edge"].path)
    assert off.min() == pytest.approx(75, abs=0.1)
    assert outside(band.outline, both["front"].outline) < 1.0
    low = both["front"].points["break"].imag - 30
    for mark in both["front"].placements:
        if mark.what == "button" and mark.path.start.imag < low:
            assert outside(mark.path, band.outline) < 1.0, mark.name


def test_interfacing_with_the_full_allowance_is_said_to_need_block_fusing() -> None:
    wide = said(coat(lamplighter(), interfacing_margin=10.0), "interfacing")
    assert "fused to the cloth before cutting" in wide[0]
    assert not said(coat(lamplighter()), "interfacing")


def test_cloth_without_fusible_is_sewn_in_and_starch_is_told() -> None:
    velveteen = Fabric(title="velveteen, invented", takes_fusible=False, takes_starch=True, eases="well")
    draft = sewn_in(coat(lamplighter(), velveteen), velveteen)
    assert "sewn-in" in said(draft, "interfacing")[0]
    assert not [n for n in draft.notions if n.what == "interfacing" and "fusible" in n.kind]
    assert "starch" in said(draft, "starch")[0]


@pytest.mark.parametrize(
    ("block", "choices", "canvas"),
    [
        ("mutton-top", {"fastening": "buttons", "opening": "front"}, False),
        ("shirt", {}, False),
        ("coat", {"lining": "none"}, True),
        ("coat", {}, True),
    ],
)
def test_hair_canvas_is_a_coats_and_not_behind_the_buttons_of_a_blouse(
    block: str, choices: dict[str, object], canvas: bool
) -> None:
    """A neck's facing was taken for a lining, and canvas bought for a blouse (common practice: light cotton)."""
    silk = Fabric(title="taffeta, invented", takes_fusible=False, mass=130.0, thickness=0.25)
    notions = draft_garment(lamplighter(), silk, block, choices).draft.notions
    assert any("canvas" in n.kind for n in notions if n.what == "interfacing") is canvas


def test_cautions_of_a_workshop_are_shown(plain: Draft) -> None:
    told = said(plain, "care at work")[0].lower()
    # Common practice of workshops; what a university costume shop warns of.
    for words in ("scrap", "iron off", "steam away from the hands", "air the room", "blade"):
        assert words in told


# -------------------------------------------------------------------------------------- bones


def test_a_hem_bone_is_ten_to_fifteen_millimetres_shorter_than_its_channel(plain: Draft) -> None:
    low, high = span_mm("bone-short")
    (bone,) = [n for n in plain.notions if n.what == "boning"]
    channel_length = sum(m.path.length for p in panels(plain) for m in p.placements if m.what == "bone")
    assert bone.cut_length is not None
    assert low <= channel_length - bone.cut_length <= high
    assert bone.count == 2
    assert "cap or file both ends" in bone.note


def test_each_end_keeps_5_mm_free_as_corset_makers_ask() -> None:
    free = single("bone-free-end") * 10
    for short in (5.0, 7.5):
        draft = coat(lamplighter(), bone_short=short, hem_bone="flat, one a panel")
        bones = [n for n in draft.notions if n.what == "boning"]
        assert len(bones) == len(panels(draft))
        for bone, piece in zip(bones, panels(draft), strict=True):
            path = next(m.path for m in piece.placements if m.name == "hem_bone")
            assert bone.cut_length == pytest.approx(path.length - 2 * short, abs=1e-6)
            assert (path.length - float(bone.cut_length or 0)) / 2 >= free


def test_bone_lines_lie_at_their_height_above_the_hem(plain: Draft) -> None:
    for piece in panels(plain):
        path = next(m.path for m in piece.placements if m.name == "hem_bone")
        off = distances(path, piece["hem"].path)
        assert off.min() == pytest.approx(14, abs=0.1)
        assert off.max() < 16


def test_bone_lines_end_on_the_sides_of_their_panel(plain: Draft) -> None:
    # shapely's distance to the whole stitching line, the pleat's fold included
    for piece in panels(plain):
        path = next(m.path for m in piece.placements if m.name == "hem_bone")
        folds = [m.path for m in piece.placements if m.what == "fold"]
        drawn = [shapely.LineString(xy(p)) for p in (piece.outline, *folds)]
        for end in (path.start, path.end):
            point = shapely.Point(end.real, end.imag)
            assert min(line.distance(point) for line in drawn) < 0.002


def xy(path: Path) -> list[tuple[float, float]]:
    return [(p.real, p.imag) for p in path.flattened(1e-4)]


def test_a_flat_bone_that_would_bend_edgewise_is_warned_about_and_a_spiral_one_not() -> None:
    flat = coat(lamplighter(), hem_bone="flat")
    (message,) = said(flat, "flat bone")
    assert all(word in message for word in ("spiral", "round", "one flat bone a panel"))
    assert not said(coat(lamplighter(), hem_bone="spiral"), "flat bone")
    assert not said(coat(lamplighter(), hem_bone="flat, one a panel"), "flat bone")


def test_edge_strain_and_arc_height_are_those_of_a_circle() -> None:
    # Width 12 on a radius of 950: 12 / 1900 = 0.63 %; a straight bone in 156 mm of it: l2/8R = 3.2.
    found = channel("x", arc(950, math.degrees(156 / 950)))
    assert found.length == pytest.approx(156, abs=0.01)
    assert found.radius == pytest.approx(950, abs=1)
    assert found.strain(12) == pytest.approx(0.0063, abs=0.0001)
    assert found.height() == pytest.approx(3.2, abs=0.01)
    sagitta = 950 * (1 - math.cos(156 / 950 / 2))
    assert found.height() == pytest.approx(sagitta, rel=0.01)
    assert channel("straight", line(0j, 100 + 0j)).strain(12) == 0


def test_the_casing_is_a_bias_strip_long_and_wide_enough(plain: Draft) -> None:
    casing = plain["bone-casing"]
    assert casing.grain == 45
    x0, y0, x1, y1 = casing.outline.bounds
    assert x1 - x0 >= plain.facts["bone_channel"]
    assert y1 - y0 >= 6 + 2 + 2 * 5  # the bone, 2-3 mm of room (common practice), two turnings


def test_bones_down_the_seams_keep_clear_of_waist_and_hem() -> None:
    draft = coat(lamplighter(), seam_bones=True, hem_bone="none")
    bones = [n for n in draft.notions if n.what == "boning"]
    assert len(bones) == len(panels(draft)) - 1
    for bone, piece in zip(bones, panels(draft), strict=False):
        assert bone.cut_length == pytest.approx(piece["front"].length - 20, abs=1e-6)
        assert bone.size == 6.0
    tips = sum(n.count for n in draft.notions if n.what == "bone tip")
    assert tips == 2 * sum(bone.count for bone in bones)


@pytest.mark.parametrize("hem_bone", ["none", "spiral"])
def test_a_bone_down_a_seam_is_told_its_channel_which_is_bought(hem_bone: str) -> None:
    """It was bought without a width and without tips, and no step said in what it lies (common practice)."""
    asked = {"seam_bones": True, "hem_bone": hem_bone}
    made = costume_of(draft_garment(lamplighter(), WOVEN, "tailcoat", asked), WOVEN)
    (step,) = [step for step in order_of(made) if step.verb == "bone"]
    keys = [one.key for one in step.say]
    assert "do.bone_seams" in keys
    assert ("do.bone_closed" in keys) is (hem_bone != "none")
    seams = [n for n in made.garments[0].draft.notions if n.what == "boning" and n.edges]
    (casing,) = [one for one in step.takes if one.what == "tape"]
    assert casing.amount > sum(n.count * n.cut_length for n in seams)


def test_godets_are_boned_and_banded_with_the_panels() -> None:
    draft = coat(lamplighter(), flare_way="godets")
    assert "godet-1-band" in draft
    lines = [m for p in draft.pieces for m in p.placements if m.name == "hem_bone"]
    assert len(lines) == 7
    assert sum(m.path.length for m in lines) == pytest.approx(draft.facts["bone_channel"], abs=0.01)


# ------------------------------------------------------------------------------------- lining


def test_the_lining_has_an_ease_pleat_and_shorter_tails(plain: Draft) -> None:
    back = plain["back-lining"]
    assert 2 * back["ease_pleat"].length == pytest.approx(25, abs=1e-6)
    for piece in panels(plain):
        lining = plain[f"{piece.name}-lining"]
        off = distances(lining["hem"].path, piece["hem"].path)
        assert off.min() == pytest.approx(15, abs=0.1)
        assert lining["waist"].length == pytest.approx(piece["waist"].length, abs=1e-6)


def test_the_fronts_lining_and_its_facing_make_up_the_front(plain: Draft) -> None:
    front, facing, lining = (plain[n] for n in ("front", "front-facing", "front-lining"))
    assert facing.area + lining.area == pytest.approx(front.area, rel=0.001)


def test_a_body_lining_leaves_the_tails_unlined() -> None:
    draft = coat(lamplighter(), lining="body")
    assert "back-lining" in draft
    assert "tail-1-lining" not in draft
    assert "hem" not in draft["back-lining"]
    assert not [p for p in coat(lamplighter(), lining="none").pieces if p.material == "lining"]
