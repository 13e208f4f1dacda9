"""A head passes the neck, or the maker is told: heads by recall, 540 to 600 mm for adults."""

from __future__ import annotations

import re
from typing import Any

import pytest

from drafting.body import wearer
from drafting.costume.file import read_costume
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.make import make
from drafting.fabric import Fabric
from drafting.ground.lengths import in_unit
from drafting.ground.shipped import shipped
from tests.population import KNIT

TAKEN = {"height": 1700.0, "bust_girth": 920.0, "waist_girth": 760.0, "hip_girth": 990.0}
WOVEN = Fabric(title="plain cotton, invented", mass=140.0)


def top(block: str, fabric: Fabric, head: float | None = None, **choices: Any) -> MadeGarment:
    body = wearer(TAKEN | ({"head_girth": head} if head else {}))
    return draft_garment(body, fabric, block, choices)


def said(garment: MadeGarment) -> list[str]:
    return [in_unit(f.sentence, "cm") for f in garment.findings if f.check == "head passes"]


def ring(garment: MadeGarment) -> float:
    """Return the neck of a top that is cut on the fold in front and behind, mm, from its own edges."""
    return 2 * sum(garment.draft[piece]["neck"].length for piece in ("front", "back"))


def test_a_woven_neck_that_a_head_does_not_pass_is_told_with_the_way_out() -> None:
    (text,) = said(top("bodice", WOVEN))
    assert "57 cm" in text
    assert "nobody measured" in text
    assert "closing" in text


@pytest.mark.parametrize("block", ["fitted-top", "sleeveless-top", "shirt", "tailcoat"])
def test_what_closes_needs_no_head_to_pass(block: str) -> None:
    assert said(top(block, WOVEN)) == []


@pytest.mark.parametrize("head", [None, 540.0, 600.0])
def test_the_ease_that_is_named_lets_the_head_through_and_less_does_not(head: float | None) -> None:
    tight = top("close-top", KNIT, head)
    (text,) = said(tight)
    found = re.search(r"([\d.]+) cm more `neck_ease`", text)
    assert found
    more = 10 * float(found[1])
    wide = top("close-top", KNIT, head, neck_ease=more + 5.0)
    assert said(wide) == []
    assert said(top("close-top", KNIT, head, neck_ease=more - 5.0)) != []
    assert ring(wide) - ring(tight) == pytest.approx(more + 5.0, abs=1.0)
    # a finished edge gives four fifths of the cloth's stretch (ours)
    assert ring(wide) * (1 + 0.8 * KNIT.greatest_stretch) >= (head or 570.0)


def test_the_shipped_costumes_can_be_put_on() -> None:
    """The kite's neck was 302 mm round in a jersey that gives a half: no head passed it."""
    for name in ("kite", "lamplighter"):
        costume = read_costume(shipped("measurements") / "costumes" / f"{name}.toml")
        assert [f for f in make(costume).findings if f.check == "head passes"] == []
