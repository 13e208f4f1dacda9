"""The mock-up of a costume: what `drafting mock-up` makes, from the garments as they are drafted.

Made -> tried -> finish -> marks -> its own lay -> MockUp
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from drafting.costume.garment import MadeGarment
from drafting.costume.lays import laid_out
from drafting.costume.make import Made
from drafting.costume.telling import Tell, tell_nobody
from drafting.draft.piece import Piece
from drafting.fabric import Fabric
from drafting.finish import FinishChoices, finish
from drafting.fitting.marks import marked_for_fitting
from drafting.fitting.mock_cloth import MockCloth, mock_cloth
from drafting.fitting.mock_up import left_out, tried
from drafting.ground.errors import InputError
from drafting.ground.frozen import freeze
from drafting.ground.remembered import remembered
from drafting.ground.scale import allowance_scale, body_scale
from drafting.layout import Lay
from drafting.printing.wishes import PrintWishes
from drafting.worn.cloth.guesses import MASS, guessed_bending_length

MORE = 1.1
"""Of a mock-up's cloth so much more is taken than its lay needs: something is always cut again
(common practice)."""


PLACED = 2500
"""Outlines placed to lay a mock-up's cloths (ours: on three costumes the same length to buy as with nearly twice
as many; it is cheap cloth, cut once)."""


@dataclass(frozen=True)
class MockUp:
    """A mock-up: `real` as it was drafted, `made` as it is tried on with the lays of its own cloths.

    `cloths` says for each garment what to take; `without` which pieces of it are left out.
    """

    real: Made
    made: Made
    cloths: Mapping[str, MockCloth]
    without: Mapping[str, tuple[Piece, ...]]

    def __post_init__(self) -> None:
        freeze(self, "cloths", "without")


def mock_up(real: Made, tell: Tell = tell_nobody) -> MockUp:
    """Return the mock-up of a costume with its lays; raises `InputError` for one that cannot be made at all."""
    tell("Laying out the mock-up's cloths", 0.1)
    mock = tried_on(real)
    return replace(mock, made=laid_out(mock.made, count=PLACED))


def tried_on(real: Made) -> MockUp:
    """Return the mock-up of a costume, its cloths chosen and not yet laid out.

    >>> from drafting.costume.file import read_costume
    >>> from drafting.costume.make import make
    >>> from drafting.ground.shipped import demo_costume
    >>> mock = tried_on(make(read_costume(demo_costume())))
    >>> mock.cloths["shirt"].ask_for, [cut.piece.name for cut in mock.made["shirt"].pattern.pieces]
    ('light calico', ['back', 'front', 'sleeve', 'cuff', 'collar-stand', 'collar'])
    """
    costume = real.costume
    cloths = {garment.name: cloth_to_try(real, garment) for garment in real.garments}
    scale = allowance_scale(body_scale(costume.wearer))
    garments = tuple(_tried(garment, cloths[garment.name], scale) for garment in real.garments)
    fabrics = {cloth.key: cloth.fabric for cloth in cloths.values()}
    prints = PrintWishes(papers=costume.prints.papers)
    own = replace(costume, fabrics=fabrics, lays={}, prints=prints)
    made = Made(own, garments, tuple(finding for garment in garments for finding in garment.findings))
    without = {garment.name: left_out(garment.draft) for garment in real.garments}
    return MockUp(real, made, cloths, without)


@remembered(2)
def laid_to_try(real: Made) -> MockUp | None:
    """Return the mock-up of a costume with its lays, and no table of other widths; None where it has no lay."""
    mock = tried_on(real)
    try:
        return replace(mock, made=laid_out(mock.made, count=PLACED, table=False))
    except InputError:
        return None


def mock_length(lay: Lay) -> float:
    """Return how much to take of a mock-up's cloth, mm: its lay, and a tenth for what is cut again."""
    return lay.cloth.step * math.ceil(round(MORE * lay.buy_length / lay.cloth.step, 9))


def cloth_to_try(real: Made, garment: MadeGarment) -> MockCloth:
    """Return what a garment's mock-up is cut from."""
    cloth = real.costume.fabrics.get(garment.fabric) or Fabric(garment.fabric)
    known = cloth.bending_length_along
    bending = guessed_bending_length(cloth, cloth.mass or MASS[cloth.weave]) if known is None else known
    return mock_cloth(cloth, garment.fabric, bending)


def _tried(garment: MadeGarment, cloth: MockCloth, scale: float) -> MadeGarment:
    draft = tried(garment.draft, scale)
    at = cloth.fabric.stretches_at
    pattern = finish(draft, garment.name, cloth.key, FinishChoices(), {} if at is None else {"": at})
    pattern = replace(pattern, pieces=tuple(marked_for_fitting(cut) for cut in pattern.pieces))
    return replace(
        garment,
        fabric=cloth.key,
        draft=draft,
        pattern=pattern,
        as_sewn=pattern,
        findings=pattern.findings,
        trims=(),
        choices={},
    )
