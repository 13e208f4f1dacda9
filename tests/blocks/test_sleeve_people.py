"""Sleeves, collars and grain on many measured people; nobody is refused. A sample runs always.

Adults of ANSUR II and of bdims (see `tests.bodies`); `-m population` drafts every one of them.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from drafting import draft_garment
from drafting.body import Body
from drafting.draft.roles import PieceRole
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from tests.blocks.sleeves import draft_of, middle_line
from tests.blocks.test_collar import top
from tests.blocks.test_sleeve_length import EXACT, too_long
from tests.blocks.test_two_piece_sleeve import below_own_seam
from tests.bodies import ansur, bdims
from tests.population import KNIT

PILE = Fabric("Velvet, invented", eases="well", sort="pile", one_way=True)

SAMPLED = (90, 30)
"""So many of each survey, evenly spread, are drafted on every run."""


def troubles(body: Body) -> Iterator[str]:
    """Yield what is wrong with this body's sleeves and collar."""
    for way in ("shirt", "puffed top"):
        if abs(by := too_long(body, way)) > EXACT:
            yield f"the sleeve of the {way} is {by:.1f} mm too long"
    shirt, coat = draft_of(body, "shirt"), draft_of(body, "tailcoat", PILE)
    if not 10 <= (ease := top(shirt) - body["neck_girth"]) <= 15:
        yield f"the collar has {ease:.1f} mm of ease"
    if abs(by := middle_line(coat["top-sleeve"], "cuff") - body["arm_length"]) > EXACT:
        yield f"the coat sleeve is {by:.1f} mm too long"
    if not 10 <= (by := below_own_seam(coat)) <= 60:
        yield f"the hind-arm seam begins {by:.1f} mm from the back's own seam"
    warps = [p.grain % 180 for p in coat.pieces if p.role is PieceRole.TAIL and not p.material]
    if max(warps) - min(warps) > 15:
        yield f"the tails' warps lie {max(warps) - min(warps):.0f} degrees apart on pile"


def amiss(bodies: tuple[Body, ...]) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for body in bodies:
        try:
            wrong = list(troubles(body))
        except DraftError as error:
            wrong = [f"refused: {error}"]
        if wrong:
            found[body.title] = wrong
    return found


def test_sleeves_collars_and_tails_are_right_on_a_sample_of_measured_people() -> None:
    assert amiss((*ansur(SAMPLED[0]), *bdims(SAMPLED[1]))) == {}


@pytest.mark.parametrize("which", range(0, SAMPLED[0], 15))
def test_every_piece_of_a_knit_carries_the_arrow_and_none_of_a_woven(which: int) -> None:
    body = ansur(SAMPLED[0])[which]
    for block, cloth in (("close-top", KNIT), ("puffed-top", KNIT), ("shirt", PILE)):
        made = draft_garment(body, cloth, block)
        carries = {c.stretch_arrow is not None for c in made.pattern.pieces if not c.piece.material}
        assert carries == {cloth is KNIT}, block


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("first", range(0, 3600, 200))
def test_sleeves_collars_and_tails_are_right_on_every_measured_body(first: int) -> None:
    assert amiss((*ansur(), *bdims())[first : first + 200]) == {}
