"""Invented people and choices: whatever can be drafted can be sewn."""

from __future__ import annotations

import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from drafting.body import wearer
from drafting.costume.garment import draft_garment
from drafting.ground.errors import DraftError, InputError
from drafting.worn.sewn import sewn_mesh
from tests.random_drafts import asked
from tests.worn.garments import PLIES, corners, least_angle_but_corners, signed

SHARP = 12.0
"""degrees: nowhere sharper, whatever was drafted, but in corners that the pieces have themselves."""


@settings(max_examples=25, deadline=None)
@given(st.integers(0, 10_000))
def test_whatever_is_drafted_is_meshed_without_gaps_or_overlap(seed: int) -> None:
    turn = seed % 12
    one = list(asked(seed, turn + 1))[turn]
    try:
        made = draft_garment(wearer(one.measures), one.fabric, one.block, one.choices)
    except (DraftError, InputError):
        assume(False)
    assume(not any(f.check == "outline" and f.level == "error" for f in made.findings))
    mesh = sewn_mesh(made.draft, one.block, PLIES)
    areas = signed(mesh)
    assert areas.min() > 0.0
    assert least_angle_but_corners(mesh, made.draft) > SHARP
    a, b, c = corners(mesh)
    for index in range(len(mesh.pieces)):
        own = mesh.piece == index
        rings = [shapely.Polygon(three) for three in zip(a[own], b[own], c[own], strict=True)]
        covered = shapely.union_all(rings).area
        assert abs(covered - areas[own].sum()) < 1e-9 * covered
