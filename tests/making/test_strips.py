"""Raw necks and armholes: a strip that is drafted, cut and sewn, or a tape that is bought (common practice)."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.piece import EdgeKind
from drafting.making import planned
from drafting.making.model import Step
from drafting.making.order.used_up import GLUED, HELD_BY_TAPE
from drafting.making.rules import unsound
from drafting.making.words import texts
from tests.blocks.figures import errors
from tests.bodies import bdims
from tests.making.figures import laid
from tests.making.orders import KNIT, WOVEN, costume_of, order_of, uneven

BOUND: list[tuple[str, dict[str, Any]]] = [
    ("close-top", {}),
    ("close-top", {"opening": "back"}),
    ("puffed-top", {"opening": "front"}),
    ("sleeveless-top", {"facings": "neck", "back_shaping": "yoke", "bust_dart": "armhole-princess"}),
    ("sleeveless-top", {"facings": "armholes", "fastening": "buttons"}),
]


def drafted(block: str, choices: dict[str, Any], lopsided: bool = False) -> MadeGarment:
    cloth = KNIT if block in ("close-top", "puffed-top") else WOVEN
    return draft_garment(uneven(bdims()[5]) if lopsided else bdims()[5], cloth, block, choices)


@pytest.mark.parametrize("lopsided", [False, True])
@pytest.mark.parametrize(("block", "choices"), BOUND)
def test_a_strip_goes_round_every_raw_neck_or_armhole(block: str, choices: dict[str, Any], lopsided: bool) -> None:
    """As long as its edge on both hands; a knit's is cut 5 to 15 % shorter (common practice)."""
    garment = drafted(block, choices, lopsided)
    assert errors(garment) == []
    strips = [p for p in garment.draft.pieces if p.role.value == "binding"]
    assert strips
    for strip in strips:
        twice = 2 if strip.fold_edge else 1
        sewn = [s for s in garment.draft.seams for ref in s.a if ref[0] == strip.name]
        own = twice * math.fsum(strip[ref[1]].length for s in sewn for ref in s.a)
        edge = twice * math.fsum(garment.draft.edge(ref).length for s in sewn for ref in s.b)
        shorter = 1 - own / edge
        assert 0.05 - 1e-9 <= shorter <= 0.15 if block in ("close-top", "puffed-top") else abs(shorter) < 1e-9
        assert [n.at for s in sewn for n in garment.draft.edge(s.a[0]).notches]
    kinds = {edge.kind for p in garment.draft.pieces for edge in p.edges if edge.role.value in ("neck", "armhole")}
    assert EdgeKind.OPENING not in kinds


def test_a_strip_of_woven_cloth_lies_on_the_bias_and_a_knits_the_way_it_gives() -> None:
    (woven,) = [p for p in drafted(*BOUND[3]).draft.pieces if p.role.value == "binding"]
    assert woven.grain % 90 == 45
    (knit,) = [p for p in drafted("close-top", {}).draft.pieces if p.role.value == "binding"]
    assert knit.grain % 180 == 90  # drawn along x, its warp across it: this jersey gives most across the warp


@pytest.mark.parametrize(("block", "choices"), BOUND)
def test_a_strip_is_sewn_once_round_and_turned_inside(block: str, choices: dict[str, Any]) -> None:
    for lopsided in (False, True):
        garment = drafted(block, choices, lopsided)
        costume = costume_of(garment, KNIT if block in ("close-top", "puffed-top") else WOVEN)
        steps = order_of(costume)
        assert unsound(costume, steps) == ()
        strips = [p.name for p in garment.draft.pieces if p.role.value == "binding"]
        for strip in strips:
            (step,) = [s for s in steps if s.seams and f"{garment.name}.{strip}" in s.pieces]
            keys = [one.key for one in step.say]
            assert keys[-1].startswith("do.strip_turned")
            opened = bool(choices.get("opening")) or "fastening" in choices
            assert keys[0] == ("do.strip_ends" if opened else "do.strip_ring")


def test_a_centre_that_opens_is_turned_in_before_the_neck_takes_its_strip() -> None:
    garment = drafted("close-top", {"opening": "back"})
    steps = order_of(costume_of(garment, KNIT))
    turned = next(s.n for s in steps if ("back", "centre") in s.edges)
    strip = next(s.n for s in steps if "neck strip" in s.seams)
    assert turned < strip


def bare(block: str, **choices: Any) -> tuple[MadeGarment, tuple[Step, ...]]:
    garment = draft_garment(bdims()[5], WOVEN, block, choices)
    return garment, order_of(costume_of(garment, WOVEN))


def test_tape_is_bought_for_every_curve_that_a_single_block_leaves_raw() -> None:
    garment, steps = bare("bodice")
    whole = 0.0
    for piece in garment.draft.pieces:
        for edge in piece.edges:
            if edge.kind is EdgeKind.OPENING:
                whole += edge.length * 2  # two halves on the fold, or a pair
    taken = math.fsum(one.amount for s in steps for one in s.takes if one.what == "tape")
    assert whole < taken <= whole + 60.0


def test_a_waist_without_a_band_gets_a_ribbon_as_long_as_it_is_round() -> None:
    garment, steps = bare("trouser")
    waist = math.fsum(
        2 * edge.length
        for piece in garment.draft.pieces
        for edge in piece.edges
        if edge.role.value == "waist" and edge.kind is EdgeKind.OPENING
    )
    assert waist > 500
    taken = math.fsum(one.amount for s in steps for one in s.takes if one.what == "ribbon")
    assert waist < taken <= waist + 60.0


def test_behind_a_zip_lies_a_strip_as_long_as_both_its_edges() -> None:
    garment, steps = bare("fitted-top")
    (zip_step,) = [s for s in steps if any(n.startswith("zip") for n in s.notions)]
    opened = max(garment.draft.edge(ref).length for ref in zip_step.edges)
    taken = math.fsum(one.amount for one in zip_step.takes if one.what == "tape")
    assert 2 * opened < taken <= 2 * opened + 60.0


def test_what_is_glued_and_what_is_held_by_tape_is_what_the_words_say() -> None:
    twins = {
        key: text for key, text in texts().items() if key.split(".")[0] in ("cold", "clipped", "unfused", "piled")
    }
    glued = {key for key, text in twins.items() if "glue" in text}
    assert glued - {"clipped.baste_body"} == GLUED  # which says that nothing is glued yet
    taped = {key for key, text in twins.items() if "paper tape" in text}
    assert taped <= HELD_BY_TAPE


def test_a_step_that_asks_for_what_nobody_cuts_or_buys_is_found_out() -> None:
    garment = drafted("close-top", {})
    costume = costume_of(garment, KNIT)
    steps = order_of(costume)
    spoilt = tuple(
        replace(s, pieces=tuple(p for p in s.pieces if not p.endswith("strip"))) if "neck strip" in s.seams else s
        for s in steps
    )
    assert any("asks for a strip" in one for one in unsound(costume, spoilt))
    garment, steps = bare("fitted-top")
    costume = costume_of(garment, WOVEN)
    assert unsound(costume, steps) == ()
    bereft = tuple(replace(s, takes=()) for s in steps)
    assert any("asks for tape" in one for one in unsound(costume, bereft))
    loose = tuple(
        replace(s, pieces=tuple(p for p in s.pieces if not p.endswith("interfacing"))) if s.verb == "fuse" else s
        for s in steps
    )
    assert any("asks for an interfacing" in one for one in unsound(costume, loose))


def test_the_kites_strip_is_laid_bought_and_listed() -> None:
    costume = laid("kite")
    cut = {o.part.cut.piece.name for lay in costume.lays if lay.role == "jersey" for o in lay.outlines}
    assert "neck-strip" in cut
    assert any(row.piece == "neck-strip" for row in planned(costume).docket)
