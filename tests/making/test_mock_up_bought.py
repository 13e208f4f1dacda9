"""The cheap cloth on the shopping list: of every lay of its kind, and by area where a piece has no room on it."""

from __future__ import annotations

from dataclasses import replace

from drafting.body import wearer
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.make import Made
from drafting.costume.mock_up import laid_to_try, mock_length
from drafting.fabric import Fabric
from drafting.making.model import ShoppingRow, Step
from drafting.making.supplies import mock_up_cloth
from tests.making.figures import made
from tests.making.orders import KNIT, WOVEN, costume_of

TALL = wearer({"height": 1850.0, "bust_girth": 1100.0, "waist_girth": 950.0, "hip_girth": 1150.0})


def bought(costume: Made) -> tuple[ShoppingRow, ...]:
    toiles = [
        Step(key=f"{one.name}/toile", stage="fit", verb="toile", garment=one.name, say=(), uses=(), makes="")
        for one in costume.garments
    ]
    return tuple(mock_up_cloth(costume, toiles, laid_to_try(costume)))


def test_two_cloths_of_one_kind_are_both_bought() -> None:
    """Plain arithmetic: what the folder of the mock-up says of either lay, added up."""
    base = made("kite")
    fabrics: dict[str, Fabric] = {"one": KNIT, "two": replace(KNIT, title="Another jersey, invented")}
    body = base.costume.wearer
    garments: tuple[MadeGarment, ...] = tuple(
        draft_garment(body, KNIT, block, name=role, role=role)
        for block, role in (("close-top", "one"), ("skirt", "two"))
    )
    costume = replace(base, garments=garments, costume=replace(base.costume, fabrics=fabrics))
    mock = laid_to_try(costume)
    assert mock is not None
    lengths = [mock_length(lay) for lay in mock.made.lays]
    assert len(lengths) == 2
    (row,) = bought(costume)
    assert row.amount == sum(lengths)


def test_a_panel_wider_than_the_cheap_cloth_is_bought_by_its_area() -> None:
    """A full circle down to the floor: no lay of its panels on 140 cm, but cloth for all of them."""
    choices = {"skirt_cut": "full circle", "skirt_ends": "floor"}
    skirt = draft_garment(TALL, replace(WOVEN, usable_width=2900.0), "skirt", choices)
    costume = costume_of(skirt, WOVEN)
    mock = laid_to_try(costume)
    assert mock is not None
    assert any(lay.left_out for lay in mock.made.lays)
    (row,) = bought(costume)
    shells = [cut for cut in skirt.pattern.pieces if not cut.piece.material]
    area = sum(one.cut.area * one.piece.count * (2 if one.piece.fold_edge else 1) for one in shells)
    assert 0.0 <= row.amount - area / (1400.0 * 0.7) < 100.0  # bought by full 10 cm
    assert row.detail.key == "shop.mock_up_about"
