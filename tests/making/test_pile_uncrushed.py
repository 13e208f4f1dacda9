"""A pile that takes no iron is crushed by nothing else either, and a step's words and its iron are of one cloth.

Common practice of velvet: nothing hard, heavy or clipped lies on a pile; what no iron flattens is caught down by
hand. A piece of another cloth than the garment's own is pressed as that cloth asks.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

import pytest

from drafting.blocks import all_blocks
from drafting.costume.choices import choose
from drafting.costume.garment import make_garment
from drafting.costume.make import Made
from drafting.fabric import Fabric
from drafting.ground.scale import body_scale
from drafting.making.model import Step
from drafting.making.settings import setting_said
from drafting.making.treating import treating_steps
from drafting.making.words import plan_sentence
from drafting.reading.given import Given, Origin
from tests.blocks.figures import chart_woman
from tests.making.orders import WOVEN, costume_of, order_of

COLD_VELVET = replace(WOVEN, title="Velvet, invented", sort="pile", care="no iron", takes_starch=False)
LINING = Fabric("Lining, invented", usable_width=1400.0, sort="plain", mass=90.0, iron_dots=1)

CRUSHES = re.compile(
    r"(?<!no )(?<!clapper or )\b(?:clapper|roller|boards|under a weight|weighted|glue)|with clips|"
    r"(?<!no )\btopstitch|[Pp]ress (?:it|the|them|both)\b"
)
"""What flattens a pile for good (common practice)."""

NO_IRON = re.compile(r"\bno iron\b(?! after)|takes no iron", re.IGNORECASE)
IRON = re.compile(r"[Ii]ron at no more|\bPress (?!no)")


def costume(block: str, shell: Fabric, inside: Fabric, **want: object) -> Made:
    kind, body = all_blocks()[block], chart_woman()
    chosen = choose(kind, {name: Given(value) for name, value in want.items()}, body_scale(body), Origin())
    alone = costume_of(make_garment(body, shell, kind, chosen, name=block, role="shell"), shell)
    return replace(alone, costume=replace(alone.costume, fabrics={"shell": shell, "lining": inside}))


def sewn(block: str, shell: Fabric, inside: Fabric, **want: object) -> tuple[Step, ...]:
    return order_of(costume(block, shell, inside, **want))


def printed(step: Step) -> Iterator[str]:
    how = setting_said(step.setting, pressed="presses" in step.does)
    yield from map(plan_sentence, (*step.say, *how, *step.by_hand))


@pytest.mark.parametrize("block", ["coat", "shirt", "waistcoat", "trousers", "cape", "peplum-top", "tailcoat"])
def test_nothing_hard_or_heavy_lies_on_a_pile_that_no_iron_may_touch(block: str) -> None:
    whole = costume(block, COLD_VELVET, LINING)
    shell = {f"{block}.{p.name}" for p in whole.garments[0].draft.pieces if not p.cut_from}
    own = [step for step in order_of(whole) if not step.pieces or shell.intersection(step.pieces)]
    read = [(step.verb, text) for step in own for text in printed(step)]
    assert len(read) > 20
    assert [one for one in read if CRUSHES.search(one[1])] == []


def test_a_pile_is_squared_with_nothing_on_it() -> None:
    whole = costume("cape", replace(COLD_VELVET, care="dry clean, no iron"), LINING)
    said = [
        plan_sentence(one) for step in treating_steps(whole) for one in step.say if step.key.startswith("shell")
    ]
    assert [text for text in said if CRUSHES.search(text) or "books" in text] == []
    assert any("with nothing on it" in text for text in said)


@pytest.mark.parametrize("shell", [WOVEN, COLD_VELVET], ids=["woven", "velvet"])
@pytest.mark.parametrize(
    "lining", [LINING, replace(LINING, care="do not iron", sort="plain")], ids=["warm", "cold"]
)
@pytest.mark.parametrize(("block", "want"), [("waistcoat", {}), ("cape", {"lining": "whole"}), ("coat", {})])
def test_no_step_forbids_the_iron_and_sets_it(
    shell: Fabric, lining: Fabric, block: str, want: dict[str, object]
) -> None:
    for step in sewn(block, shell, lining, **want):
        text = " ".join(printed(step))
        assert not (NO_IRON.search(text) and IRON.search(text)), text


def test_a_back_of_lining_is_pressed_as_the_lining_asks() -> None:
    steps = sewn("waistcoat", COLD_VELVET, LINING)
    (back,) = [step for step in steps if step.pieces == ("waistcoat.back",) and step.verb == "dart"]
    assert back.heat == 1
    (side,) = [step for step in steps if "side" in step.seams]
    assert side.heat is None
    assert side.holds == "basting"


def test_a_pile_that_is_pressed_lies_on_its_own_kind() -> None:
    """No steam, yet a cool iron: satin or pile, nobody said which."""
    unsure = replace(WOVEN, title="Panne, invented", sort=None, one_way=True, faces_alike=False, iron_dots=1)
    told = " ".join(text for step in sewn("skirt", unsure, LINING) for text in printed(step))
    assert "scrap of the same pile, never hard" in told
    assert "as pile walks" in told
