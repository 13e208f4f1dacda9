"""Where garments start: shoulder seams over the shoulders, whole fronts on both sides, panels below their arcs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np
import pytest

from drafting.blocks import names
from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.costume.wearing.sewn import COARSE, coarse_mesh
from drafting.draft.roles import PieceRole
from drafting.fabric import Fabric
from drafting.worn.form import wearers_form
from drafting.worn.nouns import Limb, Reals, SewnMesh
from drafting.worn.placed import placed
from drafting.worn.sewn import sewn_mesh
from tests.drawn_bodies import drawn
from tests.worn.dressed import on_form, plies_for
from tests.worn.garments import chart_body, drafted
from tests.worn.test_truth_depth import DEEPEST, deepest
from tests.worn.unusual import child, made_up, tall_and_round

DOUBLE = {"breasted": "double", "waistcoat_buttons": 4}


def test_a_wide_lap_on_a_round_back_comes_to_rest_before_the_arms() -> None:
    """Its front armholes started behind the arms and were caught there: no rest in 1,000 steps."""
    body = tall_and_round()
    form = wearers_form(body)
    rest = on_form(drafted("waistcoat", body, DOUBLE), "waistcoat", form)
    assert rest.settled
    assert deepest(body, rest) >= DEEPEST
    for hand, arm in (("left", form.arm_of("left")), ("right", form.arm_of("right"))):
        hole = rest.points[rest.mesh.edges[f"front-{hand}", "armhole"]]
        middle = hole[np.argsort(hole[:, 2])][len(hole) // 3 : -len(hole) // 3]  # neither underarm nor shoulder
        assert (middle[:, 1] < arm[0][1] + 20.0).all(), hand  # in front of the arm's axis, or beside it


@pytest.mark.parametrize("block", ["waistcoat", "shirt", "tailcoat"])
@pytest.mark.parametrize("who", range(5))
def test_shoulder_seams_start_over_the_shoulder(block: str, who: int) -> None:
    """A waistcoat's started up to 94 mm behind the line from the side of the neck to the shoulder point."""
    body: Body = (chart_body(), tall_and_round(), child(1160.0), *drawn(2))[who]
    form = wearers_form(body)
    mesh = sewn_mesh(
        drafted(block, body, DOUBLE if block == "waistcoat" else None), block, plies_for(block), COARSE
    )
    seam = placed(mesh, form)[mesh.shoulders]
    ends = [form.points[name] for name in ("side neck", "shoulder")]
    behind = seam[:, 1] - np.interp(np.abs(seam[:, 0]), [p[0] for p in ends], [p[1] for p in ends])
    assert len(seam) >= 3
    assert -15.0 < np.median(behind) < 40.0


@pytest.mark.parametrize("block", names(alone=True))
def test_no_piece_starts_torn_where_two_shoulders_differ(block: str) -> None:
    """A front cut whole had its left half laid over its right, as a lap is: at rest the top hung from one side.

    Between neighbouring vertices no cloth starts drawn to five times its length (that front: 12).
    """
    body = next(one for one in made_up() if one.title == "uneven shoulders")
    mesh, _ = coarse_mesh(drafted(block, body), block, plies_for(block), wearers_form(body))
    start = placed(mesh, wearers_form(body))
    longer = drawn_longer(mesh, start)
    for index, piece in enumerate(mesh.pieces):
        assert np.percentile(longer[mesh.piece == index], 99) < 5.0, piece.name


def test_a_front_cut_whole_hangs_on_both_shoulders_that_differ() -> None:
    body = next(one for one in made_up() if one.title == "uneven shoulders")
    rest = on_form(drafted("fitted-top", body), "fitted-top", wearers_form(body))
    assert rest.settled
    assert deepest(body, rest) >= DEEPEST
    for name, side in (("hem_left", 1.0), ("hem_right", -1.0)):
        hem = rest.points[rest.mesh.edges["front", name]]
        assert (side * hem[:, 0] > -15.0).all(), name
        assert np.ptp(hem[:, 2]) < 40.0, name


PANELS: tuple[tuple[str, Mapping[str, Any]], ...] = (
    ("cape", {"cape_length": 1300.0, "cape_cut": "full circle", "shoulder_fit": "none"}),
    ("cape", {"cape_ends": "knee", "cape_cut": "full circle"}),
    ("skirt", {"skirt_cut": "full circle", "skirt_ends": "floor"}),
    ("skirt", {"skirt_cut": "three-quarter circle", "skirt_ends": "ankle"}),
)


@pytest.mark.parametrize(("block", "choices"), PANELS)
def test_every_panel_of_a_circle_hangs_from_its_inner_arc(block: str, choices: Mapping[str, Any]) -> None:
    """Panels between the first and the last hung from a side seam: they started 4 to 14 times as long.

    At rest their seams ran in zigzags through one another.
    """
    body, narrow = chart_body(), Fabric("A narrow cloth, invented", usable_width=900.0)
    mesh, _ = coarse_mesh(
        draft_garment(body, narrow, block, choices).draft, block, plies_for(block), wearers_form(body)
    )
    longer = drawn_longer(mesh, placed(mesh, wearers_form(body)))
    hanging = [index for index, piece in enumerate(mesh.pieces) if piece.limb is Limb.HANGS]
    assert len(hanging) >= 4
    for index in hanging:
        assert np.percentile(longer[mesh.piece == index], 98) < 2.5, mesh.pieces[index].name


def test_a_godet_hangs_in_the_tails_that_it_is_let_into() -> None:
    """A coat whose flare was let in as godets could not be worn at all: nothing told where they lie.

    At rest a godet's tip lies at the top of its slit, and its hem no farther from the floor than its neighbours'.
    """
    body = chart_body()
    rest = on_form(drafted("tailcoat", body, {"flare_way": "godets"}), "tailcoat", wearers_form(body))
    longer = drawn_longer(rest.mesh, placed(rest.mesh, wearers_form(body)))
    godets = [index for index, piece in enumerate(rest.mesh.pieces) if piece.role is PieceRole.GODET]
    assert len(godets) >= 2
    assert rest.settled
    for index in godets:
        assert np.percentile(longer[rest.mesh.piece == index], 99) < 5.0, rest.mesh.pieces[index].name
        own = rest.points[np.unique(rest.mesh.sewn[rest.mesh.piece == index])]
        hem = rest.points[rest.mesh.edges[rest.mesh.pieces[index].name, "hem"]]
        tails = [rest.points[rest.mesh.edges[f"tail-{n}", "hem"]][:, 2] for n in (1, 2)]
        assert own[:, 2].max() - hem[:, 2].mean() > 150.0
        assert abs(hem[:, 2].mean() - np.concatenate(tails).mean()) < 60.0


def drawn_longer(mesh: SewnMesh, points: Reals) -> Reals:
    """Return (T, 3): how many times its flat length each side of each triangle is long."""
    flat, sewn = mesh.flat[mesh.triangles], points[mesh.sewn]
    lengths = (np.linalg.norm(at - np.roll(at, -1, axis=1), axis=2) for at in (sewn, flat))
    now, cut = lengths
    return np.asarray(now / cut)
