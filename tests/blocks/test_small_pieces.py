"""Collar, cuff, waistband, casing, facings: over many bodies, against measures and published rows.

Where a figure has no source beside it, it is invented.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

import pytest
import shapely

from drafting.body import wearer
from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.shaping.details.collar_lines import StandEdges, stand_lines
from tests.blocks.figures import chart_woman, errors
from tests.blocks.small_pieces import BANDED, SHIRT, Parts, made, many, middle, people, ruled
from tests.bodies import bdims

FACED: Parts = {"bodice": {}, "facings": {"facings": "neck and armholes"}}
CASED: Parts = {"bodice": {}, "casing": {}}

MATCH = 0.1
"""mm: a collar on its neckline and a cuff on its hem (asked of these pieces)."""


@pytest.fixture(scope="module")
def shirt() -> MadeGarment:
    return made(chart_woman(), button_diameter=14.0)


# ------------------------------------------------------------------------------------------- collars


def neckline(draft: Draft) -> float:
    """Return the half neckline with the stand, as drawn on front and back, ruled by shapely."""
    refs = (*draft.chains["front_neck"], *draft.chains["back_neck"])
    return math.fsum(ruled(draft.edge(ref).path) for ref in refs)


def test_on_every_body_the_collar_walks_neck_base_ease_and_both_stands() -> None:
    for body, garment in zip(people(), many(), strict=True):
        collar = 2 * ruled(garment.draft["collar-stand"]["neck"].path)
        assert collar == pytest.approx(2 * neckline(garment.draft), abs=MATCH)
        asked = body["neck_base_girth"] + garment.choices["neck_ease"][0]
        stands = 2 * garment.draft.facts["button_stand"]
        assert collar == pytest.approx(asked + stands, abs=1.0)  # the neckline within 1


@pytest.mark.parametrize("style", ["stand", "turn-down"])
@pytest.mark.parametrize("opening", ["front", "back"])
def test_both_collars_sit_on_a_neckline_with_or_without_a_stand(style: str, opening: str) -> None:
    garment = made(chart_woman(), collar=style, opening=opening)
    assert errors(garment) == []
    assert ("collar" in garment.draft) == (style == "turn-down")
    neck = ruled(garment.draft["collar-stand"]["neck"].path)
    assert neck == pytest.approx(neckline(garment.draft), abs=MATCH)


def test_a_fall_is_longer_outside_than_at_its_stand_and_covers_it() -> None:
    for garment in many():
        fall, stand = garment.draft["collar"], garment.draft["collar-stand"]
        assert fall["centre"].length >= stand["centre"].length + 5
        x0, _, x1, _ = fall["outer"].path.bounds
        assert x1 - x0 > ruled(fall["stand"].path)


def test_a_neck_too_short_for_the_rise_is_refused_with_a_way_out() -> None:
    with pytest.raises(DraftError, match=r"collar stand.*mm.*less rise"):
        stand_lines(StandEdges(60.0, 25.0, 0.0, 32.0), 40.0)


def test_on_a_doll_collar_cuffs_and_buttons_shrink_with_the_body() -> None:
    doll = wearer({"height": 640, "bust_girth": 400, "waist_girth": 380, "hip_girth": 420})
    garment, grown = made(doll), made(chart_woman())
    assert errors(garment) == []
    sizes = [g.draft["collar-stand"]["centre"].length for g in (garment, grown)]
    assert sizes[0] / sizes[1] == pytest.approx(400 / 900, abs=0.1)  # bust / 900


# --------------------------------------------------------------------------------- cuffs and bands


def test_on_every_body_a_cuff_is_wrist_and_ease_and_underlap_long() -> None:
    for body, garment in zip(people(), many(), strict=True):
        cuff, chosen = garment.draft["cuff"], {k: v for k, (v, _) in garment.choices.items()}
        wrist = body["wrist_girth"] + chosen["wrist_ease"]
        assert cuff["sleeve"].length == pytest.approx(wrist, abs=1.0)
        assert cuff["underlap"].length == pytest.approx(chosen["cuff_underlap"])
        hem = math.fsum(ruled(garment.draft.edge(r).path) for r in garment.draft.chains["sleeve_hem"])
        assert cuff["sleeve"].length == pytest.approx(hem, abs=MATCH)
        assert garment.draft.facts["sleeve_slit"] > 0


def test_sleeve_and_cuff_together_reach_the_wrist() -> None:
    body = chart_woman()
    garment = made(body)
    top, low = garment.draft["sleeve"].points["crown"], garment.draft["sleeve"].outline.bounds[1]
    sleeve = top.imag - min(low, middle(garment.draft["sleeve"]["hem"].path).imag)
    deep = garment.choices["cuff_depth"][0]
    bow = garment.draft["sleeve"]["hem"].path.bounds[3] - low
    assert sleeve + deep == pytest.approx(body["arm_length"], abs=bow + 1.0)


def test_gathers_onto_a_cuff_are_marked_in_quarters_on_both(shirt: MadeGarment) -> None:
    cuff, hem = shirt.draft["cuff"]["sleeve"], shirt.draft["sleeve"]["hem"]
    for edge in (cuff, hem):  # common practice: quarter marks on the gathered edge and on the band
        assert [n.at / edge.length for n in edge.notches] == pytest.approx([0.25, 0.5, 0.75])


@pytest.mark.parametrize("cut", ["folded", "seamed"])
def test_a_band_cut_either_way_holds_every_check(cut: str) -> None:
    garment = made(chart_woman(), BANDED, cuff_cut=cut, band_cut=cut)
    assert errors(garment) == []
    doubled = {name: garment.draft[name].copies for name in ("cuff", "waistband")}
    assert set(doubled.values()) == ({1} if cut == "folded" else {2})


def test_on_every_body_a_waistband_is_half_of_waist_and_ease_and_stand_long() -> None:
    for body, garment in zip(people(), many(), strict=True):
        ease = garment.choices["waist_ease"][0]
        wanted = (body["waist_girth"] + ease) / 2 + garment.draft.facts["button_stand"]
        assert garment.draft["waistband"]["waist"].length == pytest.approx(wanted, abs=1.0)


def test_a_casing_is_the_elastic_and_its_play_deep() -> None:
    garment = made(chart_woman(), CASED, elastic_width=30.0, elastic_play=4.0)
    casing = garment.draft["casing"]
    assert casing["end"].length == pytest.approx(34.0)
    assert errors(garment) == []


@pytest.mark.parametrize("across", [0.5, 0.2])
def test_bands_of_a_knit_stretch_round_wrist_and_waist_and_of_a_woven_hold_there(across: float) -> None:
    # Common practice: a band gives the way its garment does. A cuff's warp lay round the wrist in a knit too.
    knit = Fabric("knit, invented", weave="knit", stretch_across=across, stretch_along=0.35, recovery=0.95)
    for parts in (BANDED, CASED):
        for cut in made(chart_woman(), parts, knit).pattern.pieces:
            sewn = {"cuff": "sleeve", "waistband": "waist", "casing": "waist"}.get(cut.piece.name)
            if sewn and cut.stretch_arrow:
                band, arrow = cut.piece[sewn].path, cut.stretch_arrow
                gives, round_it = (arrow.end - arrow.start), (band.end - band.start)
                assert abs((gives.conjugate() * round_it).imag) < 1e-6 * abs(gives) * abs(round_it)
        woven = made(chart_woman(), parts).draft
        assert {p.grain % 180 for p in woven.pieces if p.name in ("cuff", "waistband", "casing")} == {0.0}


# ------------------------------------------------------------------------------------------- facings


def test_facings_lie_on_the_garment_they_face() -> None:
    for body in (chart_woman(), *bdims(6)):
        garment = made(body, FACED)
        assert errors(garment) == []
        for name in ("front-neck-facing", "back-neck-facing", "back-armhole-facing"):
            piece = garment.draft[name]
            laid = shapely.Polygon(points(piece.mirrored()))
            under = shapely.Polygon(points(garment.draft[name.split("-")[0]]))
            assert laid.difference(under).area < 1.0
            assert piece["inner"].kind == "free"


def points(piece: Piece) -> Iterator[tuple[float, float]]:
    return ((p.real, p.imag) for p in piece.outline.flattened(0.005))


def test_a_neckline_with_a_collar_gets_no_facing() -> None:
    garment = made(chart_woman(), {**SHIRT, "facings": {}})
    assert not any("neck-facing" in p.name for p in garment.draft.pieces)
    assert any(f.check == "facing" for f in garment.findings)


# --------------------------------------------------------------------------------------- the whole


def test_no_check_finds_an_error_on_any_of_these_bodies() -> None:
    assert [message for garment in many() for message in errors(garment)] == []


def test_the_shirt_of_two_different_sides_walks_as_well() -> None:
    body = wearer(
        {
            "height": 1700,
            "bust_girth": 950,
            "waist_girth": 780,
            "hip_girth": 1000,
            "shoulder_length": (128.0, 118.0),
            "wrist_girth": (165.0, 155.0),
        }
    )
    garment = made(body, BANDED)
    stand = garment.draft["collar-stand"]  # whole: the two halves meet at the centre back
    assert stand.fold_edge is None
    assert "cuff-right" in garment.draft
    assert errors(garment) == []
