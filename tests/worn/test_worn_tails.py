"""The tails of the lamplighter let fall under each treatment, from three starts: width, reach, folds.

Minutes, so started by hand; the figures are printed.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
import pytest

from drafting.costume.wearing.sewn import cloths_of
from drafting.costume.wearing.treated import AGAIN, seat_back
from drafting.costume.wearing.worn import worn
from drafting.worn.cloth import Treatment, stiffened
from drafting.worn.nouns import Limb, Reals, SewnMesh
from drafting.worn.picture.tucked import kept_off
from drafting.worn.settled import Limits, at_rest
from drafting.worn.stands.hems import hem_lines, hem_worn, hems_of
from drafting.worn.stands.treated import SWING, hanging_points, swung, treated_mesh
from tests.worn.standing import one_garment

pytestmark = pytest.mark.timeout(0)

TRIED = (Treatment.PLAIN, Treatment.STARCHED_HEAVY, Treatment.FUSED_MEDIUM, Treatment.BAND, Treatment.BONED)


@dataclass(frozen=True)
class Fall:
    """A hem as it fell: width and reach behind the seat in mm, and how many times it turns in again."""

    width: float
    reach: float
    folds: int


def folds(mesh: SewnMesh, points: Reals, hems: tuple[tuple[str, str], ...]) -> int:
    """Count the stretches of one side's hem, from above, that turn by over 10 degrees against its main turn."""
    hung = {piece.name for piece in mesh.pieces if piece.limb is Limb.HANGS}
    lines = [points[mesh.edges[ref]][:, :2] for ref in hems if ref in mesh.edges and ref[0] in hung]
    line = lines[0]
    for following in lines[1:]:
        assert np.allclose(line[-1], following[0]), "the tail panels' hems do not follow one another"
        line = np.concatenate([line, following[1:]])
    steps = np.diff(line @ [1.0, 1.0j])
    turns = np.degrees(np.angle(steps[1:] / steps[:-1]))
    back = turns * np.sign(turns.sum()) < 0
    starts = np.flatnonzero(np.diff(back, prepend=False))
    runs = np.split(np.abs(turns), starts)
    against = [run.sum() for run, at in zip(runs[1:], starts, strict=True) if back[at]]
    return sum(1 for run in against if run > 10.0)


@pytest.fixture(scope="module")
def fallen() -> dict[Treatment, list[Fall]]:
    made = one_garment("coat")
    costume = worn(made, treat=False, limits=Limits(steps=1000))
    (garment,), form = costume.garments, costume.form
    rest, cloth = garment.rest, cloths_of(made, made.garments[0])[""]
    assert rest.settled
    hems, held = hems_of(made.garments[0].draft), ~hanging_points(rest.mesh)
    found: dict[Treatment, list[Fall]] = {}
    for treatment in TRIED:
        mesh = treated_mesh(rest.mesh, hems, stiffened(cloth, treatment))
        for by in (0.0, SWING, -SWING):
            start = replace(rest, points=kept_off(swung(rest, by), form.distance))
            fall = at_rest(mesh, start, form.distance, AGAIN, held=held)
            assert fall.settled, f"{treatment}, {by:+.0f} mm: {fall.residual:.3f}"
            hem = hem_worn(hem_lines(fall, hems), seat_back(form))
            assert hem is not None
            one = Fall(hem.width, hem.back_reach, folds(mesh, fall.points, hems))
            print(f"{treatment}, {by:+.0f} mm: {one.width:.1f} wide, {one.reach:.1f} back, {one.folds} folds")
            found.setdefault(treatment, []).append(one)
    return found


def spread(falls: list[Fall]) -> tuple[float, float]:
    widths = [fall.width for fall in falls]
    return min(widths), max(widths)


@pytest.mark.population
@pytest.mark.parametrize("treatment", TRIED[1:])
def test_a_stiffened_hem_is_as_wide_from_whatever_start(
    treatment: Treatment, fallen: dict[Treatment, list[Fall]]
) -> None:
    least, most = spread(fallen[treatment])
    assert most / least - 1.0 <= 0.01


@pytest.mark.population
def test_a_limp_hem_is_a_range_below_the_starched_and_the_banded_one(fallen: dict[Treatment, list[Fall]]) -> None:
    """Closed at its buttons: limp 483 to 497 mm, starched 503 to 504, with a fused band 498 to 502."""
    limp = spread(fallen[Treatment.PLAIN])
    assert limp[1] - limp[0] < 30.0
    assert limp[1] < spread(fallen[Treatment.STARCHED_HEAVY])[0]
    assert limp[1] < spread(fallen[Treatment.BAND])[0]


@pytest.mark.population
def test_fused_all_over_it_stands_out_behind_farther_than_limp(fallen: dict[Treatment, list[Fall]]) -> None:
    """Its width, 496 to 497 mm, lies within the limp hem's range: how far it stands out tells them apart."""
    behind = max(fall.reach for fall in fallen[Treatment.PLAIN])
    assert behind + 5.0 < min(fall.reach for fall in fallen[Treatment.FUSED_MEDIUM])


@pytest.mark.population
def test_a_boned_hem_reaches_farthest_back_with_the_fewest_folds(fallen: dict[Treatment, list[Fall]]) -> None:
    boned = fallen[Treatment.BONED]
    others = [fall for treatment, falls in fallen.items() if treatment is not Treatment.BONED for fall in falls]
    assert min(fall.reach for fall in boned) > 1.2 * max(fall.reach for fall in others)
    assert max(fall.folds for fall in boned) <= min(fall.folds for fall in others)
    assert max(fall.folds for fall in boned) < max(fall.folds for fall in fallen[Treatment.PLAIN])
