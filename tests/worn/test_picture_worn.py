"""A garment in a picture: both hands, its face, what colours tell, what lies beneath what, the page that turns."""

from __future__ import annotations

import base64
import json
import math
import re
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from drafting.fabric import Fabric
from drafting.ground.palette import Colour
from drafting.worn.nouns import AtRest, Limb
from drafting.worn.picture.draw import drawn
from drafting.worn.picture.dressed import Look, dressed_scene, off_scene, pull_scene, whole_cloth
from drafting.worn.picture.maps import PULLS, STANDS_OFF, Ramp, distance_off, greatest_stretch, pull_share, shades
from drafting.worn.picture.scene import channels
from drafting.worn.picture.tucked import OuterCloth, covered, tucked
from drafting.worn.picture.turned import scales, shape_of, thinned, turned_page
from drafting.worn.picture.view import FRONT, frame_for
from tests.worn.made_up import post, tube
from tests.worn.posts import post_field

RADIUS = 150.0


def look(rest: AtRest, face: str = "#7a4a70") -> Look:
    field = post_field(RADIUS)
    return Look(
        name="tube",
        rest=rest,
        faces={"": face},
        pull=pull_share(rest, {}, 1500),
        off=distance_off(rest, field),
        lines=tuple(rest.mesh.edges),
    )


def area(points: np.ndarray, triangles: np.ndarray) -> float:
    a, b, c = (points[triangles[:, k]] for k in range(3))
    return float(np.linalg.norm(np.cross(b - a, c - a), axis=1).sum() / 2)


def test_a_halved_tube_is_whole_and_closed_with_its_mirror_image() -> None:
    rest = tube(180, 800, 1200)
    whole = whole_cloth(rest)
    assert area(whole.points, whole.triangles) == pytest.approx(2 * math.pi * 180 * 400, rel=2e-3)
    edges = np.sort(np.concatenate([whole.triangles[:, [i, j]] for i, j in ((0, 1), (1, 2), (2, 0))]), axis=1)
    _, count = np.unique(edges, axis=0, return_counts=True)
    open_edges = (count == 1).sum()
    assert set(count) == {1, 2}
    assert open_edges == 2 * 2 * round(math.pi * 180 / 20)  # the rim above and below, nothing in the middle


def test_no_seam_is_drawn_under_other_cloth() -> None:
    """A coat's armpit showed the armhole seam of the shirt beneath, a trouser's side the hem of the top in it."""
    rest = tube(180, 800, 1200)
    under = covered(rest, tube(185, 1000, 1250), post_field(RADIUS)).points
    assert under[rest.points[:, 2] > 1050.0].all()
    assert not under[rest.points[:, 2] < 950.0].any()
    drawn_all = dressed_scene(post(RADIUS, 1600), (look(rest),)).traces
    assert any((trace.points[:, 2] > 1100.0).any() for trace in drawn_all)
    kept = dressed_scene(post(RADIUS, 1600), (replace(look(rest), under=under),)).traces
    assert kept
    assert all((trace.points[:, 2] < 1021.0).all() for trace in kept)


def test_a_shirts_tail_is_not_seen_where_it_is_tucked_into_legs() -> None:
    """It hung between the legs in the open, and came through the seat of a stout man's trousers."""
    shirt, trousers = tube(180, 700, 1300), tube(185, 800, 1000)
    legs = replace(trousers.mesh.pieces[0], limb=Limb.LEG)
    worn = replace(trousers, mesh=replace(trousers.mesh, pieces=(legs, *trousers.mesh.pieces[1:])))
    hidden = covered(shirt, worn, post_field(RADIUS)).triangles
    top = shirt.points[shirt.mesh.sewn][:, :, 2].max(axis=1)
    assert hidden[top < 960.0].all()
    assert not hidden[top > 1030.0].any()
    low = covered(shirt, trousers, post_field(RADIUS)).triangles  # what hangs out below a skirt is seen
    assert not low[top < 780.0].any()


@pytest.mark.parametrize("stretched", [0.0, 0.01, 0.03])
def test_the_greatest_stretch_of_a_tube_runs_round_it(stretched: float) -> None:
    stretch, turned = greatest_stretch(tube(RADIUS, 800, 1200, stretched=stretched))
    assert np.median(stretch) == pytest.approx(stretched, abs=1e-3)
    if stretched:
        assert np.median(np.abs(np.cos(np.radians(turned)))) > 0.99


def test_pull_is_a_share_of_what_the_cloth_gives_that_way_and_untold_above_the_armhole() -> None:
    rest = tube(RADIUS, 800, 1200, stretched=0.10)
    knit = Fabric("jersey", weave="knit", stretch_across=0.4, stretch_along=0.4, stretch_bias=0.4)
    share = pull_share(rest, {"": knit}, armhole=1100)
    low = rest.points[:, 2] <= 1100
    assert np.median(share[low]) == pytest.approx(0.10 / 0.20, abs=0.01)
    assert np.isnan(share[~low]).all()


def test_how_far_a_tube_stands_off() -> None:
    off = distance_off(tube(RADIUS + 30, 800, 1200), post_field(RADIUS))
    assert off == pytest.approx(30, abs=0.5)


@pytest.mark.parametrize("ramp", [PULLS, STANDS_OFF])
def test_a_scale_grows_darker_all_the_way_so_that_grey_tells_it(ramp: Ramp) -> None:
    """Luma by the weights of ITU-R BT.709."""
    grey = [0.2126 * r + 0.7152 * g + 0.0722 * b for r, g, b in map(channels, shades(ramp, 40))]
    assert all(a >= b for a, b in pairwise(grey))
    assert grey[0] - grey[-1] > 0.5


def test_the_face_of_the_cloth_is_what_is_seen() -> None:
    rest, surface = tube(180, 700, 1200), post(RADIUS, 1600)
    frame = frame_for(surface.points, 200, 300)
    scene = dressed_scene(surface, (look(rest, "#c02020"),))
    at = frame.seen(np.array([[0.0, -180, 950]]), FRONT)[0].astype(int)
    red, green, blue = drawn(scene, FRONT, frame)[at[1], at[0]].astype(int)
    assert red > 2 * green
    assert red > 2 * blue


def test_no_skin_is_seen_beside_cloth_that_has_sunk_in_a_little() -> None:
    """A shoulder's bone shone through a top beside its seam, where the form was seen from along it."""
    surface, frame = post(RADIUS, 1600), frame_for(post(RADIUS, 1600).points, 900, 1350)
    scene = dressed_scene(surface, (look(tube(RADIUS - 2.0, 700, 1200), "#c02020"),))
    picture = drawn(replace(scene, traces=()), FRONT, frame).astype(int)
    middle, bare = (int(frame.seen(np.array([[0.0, 0.0, z]]), FRONT)[0, 1]) for z in (950.0, 400.0))

    def skin(row: int) -> int:
        _, green, blue = picture[row].T  # red cloth and white paper have as much of one as of the other
        return int((green > blue + 3).sum())

    assert skin(bare) > 100
    assert skin(middle) == 0


def test_a_costume_of_which_nothing_is_worn_shows_the_form_as_it_is() -> None:
    """Spats alone: the form has no shoes to wear them on."""
    surface = post(RADIUS, 1600)
    (body,) = dressed_scene(surface, ()).covers
    assert (body.points == surface.points).all()


def test_both_maps_colour_the_same_garment_differently() -> None:
    rest, surface = tube(180, 700, 1200), post(RADIUS, 1600)
    frame = frame_for(surface.points, 100, 150)
    pulls, off = (drawn(s(surface, (look(rest),)), FRONT, frame) for s in (pull_scene, off_scene))
    assert (pulls != off).any()


def test_what_lies_beneath_is_pressed_inside_and_not_into_the_form() -> None:
    field = post_field(RADIUS)
    inner, outer = tube(178, 820, 1180, step=15), tube(170, 700, 1300, step=15)
    pressed = tucked(inner, outer, field)
    assert OuterCloth(outer, field).beneath(inner.points).outside.min() > 5
    assert OuterCloth(outer, field).beneath(pressed.points).outside.max() < -1
    assert field.distance(pressed.points).min() > 0
    assert (pressed.points[inner.mesh.on_middle, 0] == 0).all()


@pytest.mark.parametrize(("top", "stays_out"), [(1120.0, False), (1360.0, True)])
def test_what_hangs_far_before_it_is_tucked_in_where_it_goes_up_far_above(top: float, stays_out: bool) -> None:
    """A shirt falls straight from a great belly; a coat's front is no cover of what stands out so far."""
    field = post_field(RADIUS)
    inner, outer = tube(290, 900, 1380, step=15), tube(170, 700, top, step=15)
    pressed = tucked(inner, outer, field).points
    low = inner.points[:, 2] < 1050
    out = np.hypot(pressed[low, 0], pressed[low, 1])
    assert bool(out.max() > 250) is stays_out
    assert out.min() > RADIUS


def test_what_hangs_out_below_is_left_as_it_is() -> None:
    inner, outer = tube(178, 500, 1180, step=20), tube(170, 900, 1300, step=20)
    pressed = tucked(inner, outer, post_field(RADIUS))
    low = inner.points[:, 2] < 800
    assert np.abs(pressed.points - inner.points)[low].max() < 1


def packed(text: str, kind: str) -> np.ndarray:
    return np.frombuffer(base64.b64decode(text), kind)


def test_the_page_that_turns_holds_the_shape_and_needs_nothing_else() -> None:
    rest, surface = tube(180, 700, 1200), post(RADIUS, 1600)
    page = turned_page(
        surface,
        (look(rest),),
        title="Kite & <b>",
        caution="A form, not a fitting.",
        unsettled=("Shape only.",),
        told=(("Tube", ("Nothing pulls.",)),),
        unit="cm",
    )
    assert not re.search(r"(?:src|href)\s*=|https?:|@import|url\(", page)
    assert "Kite &amp; &lt;b&gt;" in page
    assert "Shape only." in page
    shape = json.loads(re.search(r'id="shape">(.*?)</script>', page, re.DOTALL)[1])  # type: ignore[index]
    cover = shape["covers"][1]
    points = packed(cover["points"], "<i2").reshape(-1, 3) / shape["per_mm"]
    assert np.abs(points - rest.points).max() <= 0.05 + 1e-9
    assert (packed(cover["triangles"], "<u2").reshape(-1, 3) == rest.mesh.sewn).all()
    off = packed(cover["maps"][1], "u1")
    assert np.abs(off / (len(shape["ramps"][1]["shades"]) - 1) * STANDS_OFF.top - 30).max() < 2
    assert shape["tints"] == [Colour.SKIN, "#7a4a70"]


def test_what_is_not_told_is_one_step_beyond_the_scale() -> None:
    rest = tube(180, 700, 1200)
    untold = replace(look(rest), pull=np.full(rest.mesh.count, np.nan))
    shape = shape_of(post(RADIUS, 1600), (untold,))
    assert set(packed(shape["covers"][1]["maps"][0], "u1")) == {len(shape["ramps"][0]["shades"])}


def test_scales_are_told_in_the_makers_unit() -> None:
    assert scales("cm")[1]["ends"][-1] == "6 cm and more"
    assert scales("in")[1]["ends"][-1] == "2 3/8 in and more"


def test_a_thinned_form_keeps_its_size_with_fewer_triangles() -> None:
    surface = post(RADIUS, 1600, around=200, rows=200)
    points, triangles = thinned(surface, 21.0)
    assert len(triangles) < 0.35 * len(surface.triangles)
    assert area(points, triangles) == pytest.approx(area(surface.points, surface.triangles), rel=0.02)
    assert len(points) < 65_536
