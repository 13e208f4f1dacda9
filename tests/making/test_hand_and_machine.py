"""What is sewn by hand names a hand stitch and no machine; what a machine sews names its stitch and needle.

Read from the printed words alone, over every block, as a worker at the bench reads them (common practice: one line
says what to thread)."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from drafting.blocks import all_blocks, names
from drafting.costume.choices import choose
from drafting.costume.garment import make_garment
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError, InputError
from drafting.ground.scale import body_scale
from drafting.making.model import Step
from drafting.making.settings import setting_said
from drafting.making.words import plan_sentence
from drafting.reading.given import Given, Origin
from tests.blocks.figures import chart_woman
from tests.making.orders import KNIT, WOVEN, costume_of, order_of

CLOTHS = {
    "woven": WOVEN,
    "pile": Fabric("Velvet, invented", usable_width=1400.0, sort="pile"),
    "coated": Fabric("Oilskin, invented", usable_width=1400.0, sort="coated"),
    "knit": KNIT,
}

HAND = re.compile(
    r"(?<!or worked )by hand|slip-stitch|\b[Ff]ell (it|them|up)\b|[Cc]atch (it|its|the neck|the neatened)|"
    r"loose stitches|[Pp]ad-stitch|hand stitches|Sew (each|the) button|Sew on the|Tack |[Bb]aste "
)
"""Words of the trade for work of the hand."""

AFTER = re.compile(r"is left for the felling|the lining is felled to it|baste in a sewn-in interfacing instead")
GLUED = re.compile(r"\bglue\b|with clips|nothing by hand|Tape the|stitch it once close|paper tape")
MACHINE = re.compile(
    r"right sides together|and hem it|and stitch it\b|[Oo]vercast|Neaten|close zigzag|Stitch the bone casing|"
    r"Make up the|stitch the end down|[Ss]titch across|sew it on"
)
"""Words for what a machine sews (common practice), where one is at hand."""

CHOICES = {
    "lining": None,
    "lapel_style": None,
    "cape_neck": None,
    "fastening": None,
    "vent": None,
    "sleeve_opening": None,
    "turned_cuff": 80.0,
    "fall_front": True,
}


def asked(block: str) -> Iterator[dict[str, object]]:
    """Yield what a block is asked for: nothing, and each word of what changes how it is sewn."""
    yield {}
    for choice in all_blocks()[block].choices:
        if choice.name in CHOICES:
            own = CHOICES[choice.name]
            yield from ({choice.name: word} for word in (choice.words if own is None else (own,)))


def steps_of(block: str, fabric: Fabric, want: dict[str, object]) -> tuple[Step, ...]:
    kind, body = all_blocks()[block], chart_woman()
    try:
        chosen = choose(kind, {name: Given(value) for name, value in want.items()}, body_scale(body), Origin())
        garment = make_garment(body, fabric, kind, chosen, name=block, role="shell")
    except (DraftError, InputError):
        return ()
    return order_of(costume_of(garment, fabric))


def printed(step: Step) -> tuple[str, str]:
    """Return what a step says to do, and what it says of stitch, needle and foot."""
    do = " ".join(plan_sentence(one) for one in step.say)
    return do, " ".join(plan_sentence(one) for one in (*setting_said(step.setting), *step.by_hand))


@pytest.mark.parametrize("cloth", CLOTHS)
def test_no_work_of_the_hand_is_set_for_a_machine_and_none_of_a_machine_for_the_hand(cloth: str) -> None:
    read = 0
    for block in names(alone=True):
        for want in asked(block) if cloth == "woven" else ({},):
            for step in steps_of(block, CLOTHS[cloth], want):
                do, how = printed(step)
                where = (block, want, step.verb, do, how)
                hand = HAND.search(AFTER.sub("", do)) and not GLUED.search(do)
                machine = MACHINE.search(do)
                if step.verb in ("fit", "toile", "try"):
                    continue
                if hand:
                    assert "By hand" in how, where
                    assert machine or "Stitch" not in how or re.search(r"\bstitch\b|sew ", do), where
                if machine and not hand and step.verb != "hang":
                    assert "Stitch" in how or "By hand" in how, where
                assert "hand needle" in how or "By hand" not in how, where
                read += bool(hand)
    assert read > 20
