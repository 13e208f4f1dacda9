"""A body whose waist was falsified shows on the form the sign that a fitting looks for; the true one does not."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.body import Body, wearer
from drafting.costume.file import CostumeFile, Garment
from drafting.costume.make import make
from drafting.costume.wearing.signs import SignSeen, signs_worn
from drafting.costume.wearing.worn import worn
from drafting.fabric import Fabric
from tests.drawn_bodies import drawn

TAPED = wearer({"height": 1700, "bust_girth": 900, "waist_girth": 720, "hip_girth": 970})


def shown(drafted_for: Body, worn_by: Body) -> dict[str, SignSeen]:
    """Return the signs of a bodice that is drafted for one body and put on another."""
    cloth = {"shell": Fabric("calico", usable_width=1400.0)}
    garment = Garment("bodice", "bodice", "shell", {})
    costume = CostumeFile(
        title="a bodice", wearer=drafted_for, garments=(garment,), fabrics=cloth, path="a.toml", unit="cm"
    )
    made = make(costume)
    on_her = worn(replace(made, costume=replace(costume, wearer=worn_by)))
    (found,) = on_her.garments
    assert found.found.settled
    return {seen.sign.name: seen for seen in signs_worn(found, made["bodice"].draft)}


def test_a_true_body_shows_no_sign() -> None:
    assert shown(TAPED, TAPED) == {}


@pytest.mark.parametrize("body", [TAPED, *drawn(1)], ids=["taped", "drawn"])
def test_a_waist_taken_too_small_shows_lines_that_cross_there(body: Body) -> None:
    false = body.changed(waist_girth=body["waist_girth"] - 100.0)
    seen = shown(false, body)
    assert "waist tight" in seen
    # 100 mm too small, less the ease it was drafted with, is what the cloth has to give there.
    assert 0.02 < seen["waist tight"].value < 0.15
    assert "waist loose" not in seen
