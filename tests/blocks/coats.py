"""Short ways for the tests of the tailcoat. All figures here are invented."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from drafting.blocks import Block, all_blocks
from drafting.body import Body, wearer
from drafting.checks import check_draft
from drafting.costume.choices import choose
from drafting.costume.garment import drafted
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.walk import notched
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin

LAMPLIGHTER = {
    "height": 1710.0,
    "bust_girth": 920.0,
    "high_bust_girth": 890.0,
    "waist_girth": 760.0,
    "hip_girth": 980.0,
    "shoulder_length": 125.0,
    "across_back_width": 356.0,
    "upper_arm_girth": 288.0,
    "back_waist_length": 412.0,
}
"""An invented wearer of the coat, mm."""


def lamplighter(**changes: float) -> Body:
    return wearer({**LAMPLIGHTER, **changes}, title="lamplighter")


def block() -> Block:
    return all_blocks()["tailcoat"]


def coat(body: Body, fabric: Fabric | None = None, **choices: Any) -> Draft:
    """Return the whole coat's draft with its notches, without finish."""
    given = {name: Given(value) for name, value in choices.items()}
    chosen = choose(block(), given, body_scale(body), Origin())
    return notched(drafted(body, fabric, block(), chosen))


def panels(draft: Draft) -> list[Piece]:
    """Return the tail's panels, from the back."""
    found = [p for p in draft.pieces if p.name.startswith("tail-") and not p.material]
    return sorted(found, key=lambda p: int(p.name.split("-")[1]))


def troubles(body: Body, choices: Mapping[str, Any]) -> list[str]:
    """Return every refusal and error finding for one body, its title in front."""
    try:
        draft = coat(body, **choices)
    except DraftError as refusal:
        return [f"{body.title}: refused: {refusal}"]
    found = (*draft.findings, *check_draft(draft, body))
    return [f"{body.title}: {f.where}: {f.message}" for f in found if f.level == "error"]


def said(draft: Draft, check: str) -> list[str]:
    """Return what findings of this name say."""
    return [f.message for f in draft.findings if f.check == check]
