"""Which seams are stayed with a tape: what bears weight off the thread, and never what closes a sleeve.

Common practice: shoulders of soft cloth and of knits are taped, as the whole garment hangs from them; a sleeve's
underarm seam bears nothing, and a tape there would bind the arm.
"""

from __future__ import annotations

import pytest

from drafting.body import Body
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.roles import SeamKind
from drafting.fabric import Fabric
from drafting.fabric.sorts import SORTS, Sort
from drafting.making.settings import settings
from tests.drawn_bodies import drawn
from tests.making.orders import costume_of

SOFT = {"pile", "napped", "satin", "sheer", "lace"}
"""Sorts that grow on the bias (common practice); what is coated, felted or set with sequins keeps its length."""


def stayed(garment: MadeGarment, fabric: Fabric) -> set[SeamKind]:
    found = settings(costume_of(garment, fabric))
    return {seam.kind for seam in garment.draft.seams if found[garment.name, seam.name].stayed}


def made_of(body: Body, fabric: Fabric, block: str, **choices: object) -> MadeGarment:
    return draft_garment(body, fabric, block, choices)


@pytest.mark.parametrize("body", drawn(3), ids=lambda body: body.title)
@pytest.mark.parametrize("block", ["mutton-top", "bishop-top", "shirt", "coat"])
def test_no_sleeve_is_taped_along_its_underarm(body: Body, block: str) -> None:
    for sort in ("plain", "napped"):
        fabric = Fabric("Cloth, invented", usable_width=1400.0, sort=sort)
        assert SeamKind.SLEEVE not in stayed(made_of(body, fabric, block), fabric)


@pytest.mark.parametrize("sort", SORTS)
def test_shoulders_are_taped_in_soft_cloth_alone(sort: Sort) -> None:
    fabric = Fabric("Cloth, invented", usable_width=1400.0, sort=sort)
    (body,) = drawn(1)
    assert (SeamKind.SHOULDER in stayed(made_of(body, fabric, "fitted-top"), fabric)) is (sort in SOFT)


def test_a_shoulder_that_something_else_holds_is_not_taped() -> None:
    """A yoke of two layers holds its shoulder, and a front that is interfaced all over (common practice)."""
    (body,) = drawn(1)
    soft = Fabric("Flannel, invented", usable_width=1400.0, sort="napped")
    assert SeamKind.SHOULDER not in stayed(made_of(body, soft, "waistcoat"), soft)
    plain = Fabric("Cotton, invented", usable_width=1400.0, sort="plain", stretch_bias=0.15, thickness=0.4)
    assert SeamKind.SHOULDER in stayed(made_of(body, plain, "shirt"), plain)
    assert SeamKind.SHOULDER not in stayed(made_of(body, plain, "shirt", back_shaping="yoke"), plain)
