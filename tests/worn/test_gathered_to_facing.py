"""A neck that is gathered to its facing is worn as long as the facing, which is not meshed itself."""

from __future__ import annotations

import numpy as np
import pytest

from drafting.costume.wearing.worn import worn
from tests.alter.test_gathered_dart import gathered
from tests.making.orders import WOVEN, costume_of

MESH = 40.0


def test_a_neck_gathered_to_its_facing_is_drawn_up() -> None:
    """It was worn as wide as it is cut, twice its facing, and stood off as a frill.

    Plane geometry: a gathered edge is as long as what it is sewn to.
    """
    garment = gathered("neck", 0)
    edge = next(e for e in garment.draft["front"].edges if e.sewn is not None)
    assert edge.length > 1.2 * edge.sewn_length
    made = costume_of(garment, WOVEN)
    (top,) = worn(made, mesh=MESH, treat=False).garments
    rest = top.rest
    (thread,) = rest.mesh.elastics
    assert thread.rest == pytest.approx(edge.sewn_length)
    run = rest.points[thread.vertices]
    long = float(np.linalg.norm(np.diff(run, axis=0), axis=1).sum())
    assert long == pytest.approx(edge.sewn_length, rel=0.05)
