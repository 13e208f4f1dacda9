"""What a call sheet says can be let out is what a tailor lets out.

*Common practice*: garments are let out at side, panel, centre back and seat seams, at the inside leg, the sleeve
and the shoulder. A fly, a waistband, a collar, a cuff, a pleat or a facing is cut to what it is sewn to.
"""

from __future__ import annotations

import pytest

from drafting.body import wearer
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.fabric import Fabric
from drafting.output.cast.let_out import WORTH, let_out

BODY = wearer({"height": 1700, "bust_girth": 920, "waist_girth": 760, "hip_girth": 990})
CLOTH = Fabric(title="plain cotton, invented", mass=140.0)

SEAMS = {
    "trousers": {"side", "inside leg", "back crotch"},
    "knee-breeches": {"side", "inside leg", "back crotch"},
    "shirt": {"side", "shoulder", "sleeve underarm"},
    "skirt": {"side", "centre back"},
    "waistcoat": {"side", "shoulder", "centre back"},
    "coat": {"back panel", "front panel", "centre back", "shoulder", "forearm", "hind arm"},
    "peplum-top": {"side", "peplum side", "shoulder", "sleeve underarm"},
}


def made(block: str, **choices: float) -> MadeGarment:
    return draft_garment(BODY, CLOTH, block, choices)


def named(garment: MadeGarment) -> set[str]:
    """Return every seam that is named, hems left out."""
    return {seam for _, seams in let_out(garment) for seam in seams.split("; ")} - {"hem"}


@pytest.mark.parametrize("block", SEAMS)
def test_with_wide_allowances_everywhere_only_what_a_tailor_lets_out_is_named(block: str) -> None:
    assert named(made(block, seam_allowance=20.0, let_out=20.0)) == SEAMS[block]


@pytest.mark.parametrize("closing", ["left over right", "right over left"])
def test_no_part_of_a_fly_is_named_whatever_its_allowance(closing: str) -> None:
    found = let_out(draft_garment(BODY, CLOTH, "trousers", {"fly_allowance": 25.0, "closing": closing}))
    assert not [seams for _, seams in found if "fly" in seams]


def test_what_is_said_lies_in_the_allowance_of_both_sides() -> None:
    garment = made("trousers", seam_allowance=20.0, let_out=20.0)
    widths = {cut.piece.name: cut.allowances for cut in garment.pattern.pieces}
    by = {seams: mm for mm, seams in let_out(garment)}
    assert by["side"] == min(widths["front"]["side"], widths["back"]["side"]) - 6  # 6 mm stay, as README says
    assert all(mm >= WORTH for mm in by.values())
