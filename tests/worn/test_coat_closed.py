"""A coat at rest is closed where it is buttoned; in pictures lapels, collar and laps lie on the cloth beneath."""

from __future__ import annotations

import numpy as np
import pytest

from drafting.body import wearer
from drafting.costume.wearing.sewn import COARSE
from drafting.worn.form import wearers_form
from drafting.worn.nouns import AtRest, Reals, Truth
from drafting.worn.picture.dressed import Look, dressed_scene, whole_cloth
from drafting.worn.picture.lapels import laid_on, turned_over
from drafting.worn.picture.tucked import OuterCloth, covered, tucked
from tests.worn.dressed import dressed, levels, on_form, the_form, trial_wearer
from tests.worn.garments import drafted
from tests.worn.made_up import tube
from tests.worn.posts import post_field

TURNED = {"front", "under-collar"}


@pytest.fixture(scope="module")
def coat() -> AtRest:
    rest = dressed("tailcoat", mesh=COARSE)
    assert rest.settled
    return rest


@pytest.fixture(scope="module")
def over(coat: AtRest) -> Truth:
    return turned_over(coat, TURNED, the_form().distance)


def test_the_fronts_meet_on_the_middle_at_the_buttons_and_lap_by_the_stand(coat: AtRest) -> None:
    """Drafted: the edge lies 26 mm beyond the centre front at the waist, 52 at the break."""
    mesh = coat.mesh
    front = np.unique(mesh.sewn[mesh.piece == [piece.name for piece in mesh.pieces].index("front")])
    buttons = [vertex for vertex in front if mesh.on_middle[vertex]]
    assert len(buttons) == 2
    assert (coat.points[buttons, 0] == 0.0).all()
    edge = coat.points[mesh.edges["front", "edge"]]
    assert -60.0 < edge[:, 0].min() < -20.0
    assert edge[:, 0].max() < 0.0
    assert edge[:, 2].min() < coat.points[buttons, 2].min()  # what hangs free below


def test_a_coat_over_a_belly_is_closed_on_its_own_middle() -> None:
    """Its centre front moves out by 42 mm at the waist; buttoned in the plane of the chest it pulled by 3.7 %."""
    belly = wearer({"height": 1900, "bust_girth": 1280, "waist_girth": 1300, "hip_girth": 1140})
    form, draft = wearers_form(belly), drafted("tailcoat", belly)
    assert draft.facts["front_edge_out"] > 40.0
    waist = levels(on_form(draft, "tailcoat", form, mesh=COARSE), form)["waist"]
    assert waist.worn == pytest.approx(waist.drafted, abs=6.0)
    assert waist.strain.p95 < 0.01


def outside(rest: AtRest, over: Truth) -> tuple[Reals, Truth]:
    """Return how far outside the rest of the garment each sewn point lies, and which belong to `over` alone."""
    free = np.zeros(rest.mesh.count, bool)
    free[rest.mesh.sewn[over]] = True
    free[rest.mesh.sewn[~over]] = False
    return OuterCloth(rest, the_form().distance, ~over).beneath(rest.points).outside, free


def test_lapel_and_collar_are_turned_over_and_the_front_beneath_is_not(coat: AtRest, over: Truth) -> None:
    mesh = coat.mesh
    names = np.array([piece.name for piece in mesh.pieces])[mesh.piece]
    assert set(names[over]) == TURNED
    lapel = mesh.flat[mesh.triangles[over & (names == "front")]].mean(axis=1)
    assert (lapel[:, 0] < 60.0).all()  # the roll line ends 54 mm from the centre front at the neck
    assert 0.1 < over[names == "front"].mean() < 0.4


def test_what_is_turned_over_is_laid_on_the_cloth_beneath(coat: AtRest, over: Truth) -> None:
    before, free = outside(coat, over)
    after, _ = outside(laid_on(coat, over, the_form().distance), over)
    assert (before[free] < 0.0).any()
    assert np.quantile(after[free], 0.05) > 0.0
    mesh, laid = coat.mesh, laid_on(coat, over, the_form().distance).points
    front = np.unique(mesh.triangles[mesh.piece == [piece.name for piece in mesh.pieces].index("front")])
    line = mesh.pieces[[piece.name for piece in mesh.pieces].index("front")].frame.front
    assert line is not None
    beyond = ((mesh.flat[front] @ np.array([1.0, 1j]) - line[0]) / (line[1] - line[0])).imag < 0.0
    seams = ~free & (coat.points[:, 0] >= 0.0)
    seams[mesh.merged[front[beyond]]] = False  # what laps over the middle is laid on the other hand
    assert (laid[seams] == coat.points[seams]).all()


def test_what_laps_over_the_middle_lies_on_the_other_hand(coat: AtRest, over: Truth) -> None:
    laid = laid_on(coat, over, the_form().distance)
    edge = coat.mesh.edges["front", "edge"][1:]
    beneath = OuterCloth(laid, the_form().distance, (laid.points[coat.mesh.sewn, 0] > -1.0).all(axis=1) & ~over)
    assert np.abs(beneath.beneath(laid.points[edge]).outside).max() < 5.0
    assert np.abs(beneath.beneath(coat.points[edge]).outside).max() > 5.0


def test_a_full_lap_is_laid_on_the_other_hand_in_its_whole_width_however_far_it_stood_off() -> None:
    """Stiffened fronts of two rows meet like a ridge: a lap of 80 mm stood off by 70, and was shown so."""
    asked = {"front_overlap": 80.0, "overlap_above": 1.0, "breasted": "double"}
    rest = on_form(drafted("spencer", trial_wearer(), asked), "spencer", the_form(), mesh=COARSE)
    laid = laid_on(rest, turned_over(rest, TURNED, the_form().distance), the_form().distance).points
    edge = rest.mesh.edges["front", "edge"][1:]  # from below the break down
    across = np.abs(laid[edge, 0])
    assert across.min() > 60.0  # 80 along the cloth, which bends round the body
    own = np.flatnonzero((laid[:, 0] > 20.0) & (laid[:, 0] < 110.0) & (laid[:, 1] < 0.0))
    for at in laid[edge]:
        beside = own[np.abs(rest.points[own, 2] - at[2]) < 25.0]
        assert at[1] > laid[beside, 1].min() - 12.0, "no farther out than the front that it lies on"


def test_the_right_hand_is_drawn_beneath_where_it_laps(coat: AtRest) -> None:
    whole = whole_cloth(coat)
    assert (whole.points[whole.behind > 0.0, 0] > 0.0).all()
    assert (whole.source[whole.behind > 0.0] >= 0).all()
    assert set(coat.mesh.edges["front", "edge"]) <= set(whole.source[whole.behind > 0.0])


def test_what_is_turned_over_shows_its_right_side(coat: AtRest, over: Truth) -> None:
    none = np.zeros(coat.mesh.count)
    look = Look(name="coat", rest=coat, faces={"": "#705070"}, pull=none, off=none, lines=(), over=over)
    cloth = dressed_scene(the_form().surface, (look,)).covers[1]
    one, two, three = (cloth.points[cloth.triangles[:, i]] for i in range(3))
    forward = -np.cross(two - one, three - one)[:, 1]
    assert cloth.over is not None
    lapel = cloth.over & (cloth.points[cloth.triangles][:, :, 1].max(axis=1) < -60.0)
    assert lapel.sum() > 10
    assert (forward[lapel] > 0.0).mean() > 0.9


def test_cloth_that_spans_the_open_between_the_walls_of_what_is_worn_over_it_is_not_shown() -> None:
    """A tube inside a tube is seen nowhere beneath, and one that hangs out below is shown there."""
    field = post_field(150.0)
    inner, outer = tube(178, 500, 1180, step=20), tube(170, 900, 1300, step=20)
    hidden = covered(tucked(inner, outer, field), outer, field).triangles
    low = inner.points[inner.mesh.sewn][:, :, 2].max(axis=1) < 850
    assert not hidden[low].any()
