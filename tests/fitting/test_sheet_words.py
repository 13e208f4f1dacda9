"""A fitting sheet's words are of the garment that is tried, and of no other (common practice)."""

from __future__ import annotations

import pytest

from drafting import draft_garment
from drafting.fitting.words import order_at_the_body, to_mind
from tests.making.figures import made


@pytest.mark.parametrize(
    ("block", "has", "lacks"),
    [
        ("waistcoat", ["armhole", "Clip armhole and neck"], ["sleeve", "collar", "lapel", "hood"]),
        ("shirt", ["sleeve: pitch", "collar", "Clip armhole and neck"], ["lapel", "hood"]),
        ("tailcoat", ["sleeve: pitch", "collar", "lapel"], ["hood"]),
        ("cape", ["both arms", "Clip neck to the line"], ["hood", "armhole", "lapel"]),
        ("skirt", ["Waist level"], ["Clip", "armhole", "neck"]),
        ("trousers", ["crotch length"], ["Clip", "armhole", "neck"]),
    ],
)
def test_a_fitting_sheet_speaks_of_the_parts_that_the_garment_has(
    block: str, has: list[str], lacks: list[str]
) -> None:
    """A waistcoat's asked for the pitch of its sleeve, a skirt's for its armholes to be clipped."""
    draft = draft_garment(made("lamplighter").costume.wearer, None, block).draft
    said = " ".join((*order_at_the_body(draft), *to_mind(draft)))
    assert [word for word in has if word in said] == has
    assert [word for word in lacks if word in said] == []


def test_a_hood_is_tried_over_the_wig_where_there_is_one() -> None:
    hooded = draft_garment(made("lamplighter").costume.wearer, None, "cape", {"cape_neck": "hood"}).draft
    assert "hood, over the wig" in " ".join(order_at_the_body(hooded))
