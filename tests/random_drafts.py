"""Invented people and choices, each drawn by itself within its stated range, for drafts nobody foresaw.

A person is drawn about ordinary proportions or wholly at random within the bands of the dimensions;
any measure may be there, missing, or other on the left than on the right. A choice is its default, or
anywhere in its range.
"""

from __future__ import annotations

import random
import time
import traceback
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from drafting.blocks import all_blocks, names
from drafting.body import wearer
from drafting.body.dimensions import DIMENSIONS
from drafting.costume.garment import draft_garment
from drafting.fabric import Fabric
from drafting.ground.choices import Choice
from drafting.ground.errors import DraftError, InputError

LONGEST = 2.0
"""s: a draft, its pieces and checks take no longer on one core (project design)."""

DOCUMENTED = (DraftError, InputError)


@dataclass(frozen=True)
class Asked:
    """One draft that is asked for: block, choices, measures in mm, and the cloth (None: none named)."""

    block: str
    choices: Mapping[str, Any]
    measures: Mapping[str, Any]
    fabric: Fabric | None


@dataclass(frozen=True)
class Answer:
    """What came of it: `refused` with which sentence, `crossed` outlines, a `trace`, and seconds."""

    asked: Asked
    refused: str = ""
    crossed: tuple[str, ...] = ()
    trace: str = ""
    seconds: float = 0.0


def asked(seed: int, count: int) -> Iterator[Asked]:
    """Yield `count` drafts, the blocks in turn, the same for one `seed`."""
    blocks = names(alone=True)
    for number in range(count):
        rnd = random.Random(f"{seed} {number}")
        block = blocks[number % len(blocks)]
        measures = _measures(rnd)
        yield Asked(block, _choices(rnd, block), measures, _cloth(rnd))


def answer(one: Asked) -> Answer:
    """Return what came of one draft; nothing that it raises gets out."""
    start = time.process_time()
    try:
        made = draft_garment(wearer(one.measures), one.fabric, one.block, one.choices)
    except DOCUMENTED as error:
        return Answer(one, refused=str(error), seconds=time.process_time() - start)
    except Exception:
        return Answer(one, trace=traceback.format_exc(limit=-4), seconds=time.process_time() - start)
    crossed = tuple(f.message for f in made.findings if f.check == "outline" and f.level == "error")
    return Answer(one, crossed=crossed, seconds=time.process_time() - start)


# ------------------------------------------------------------------------------------- what is drawn


def _measures(rnd: random.Random) -> dict[str, Any]:
    taken = ordinary(rnd) if rnd.random() < 0.75 else _independent(rnd)
    for name, value in tuple(taken.items()):
        if rnd.random() < 0.15:
            apart = rnd.uniform(-0.12, 0.12) * value
            taken[name] = (value + apart / 2, value - apart / 2)
    return taken


def ordinary(rnd: random.Random) -> dict[str, Any]:
    """Return a person of ordinary proportions, of any size, some further measures a little off."""
    height = rnd.uniform(1100, 2000)
    bust = height * rnd.uniform(0.46, 0.75)
    waist = bust * rnd.uniform(0.68, 1.08)
    taken: dict[str, Any] = {
        "height": height,
        "bust_girth": bust,
        "waist_girth": waist,
        "hip_girth": max(waist * 0.95, bust * rnd.uniform(0.92, 1.2)),
    }
    try:
        known = wearer(taken)
    except InputError:
        return taken
    for name in sorted(set(known.measures) - set(taken)):
        if rnd.random() < 0.3:
            taken[name] = known[name] * rnd.uniform(0.88, 1.12)
    return taken


def _independent(rnd: random.Random) -> dict[str, Any]:
    """Return measures that know nothing of each other, each within its adult band."""
    least = ("height", "bust_girth", "waist_girth", "hip_girth")
    return {
        name: rnd.uniform(one.low, one.high)
        for name, one in DIMENSIONS.items()
        if name in least or rnd.random() < 0.25
    }


def _choices(rnd: random.Random, block: str) -> dict[str, Any]:
    share = rnd.choice((0.1, 0.3, 0.8))
    return {c.name: value_of(rnd, c) for c in all_blocks()[block].choices if rnd.random() < share}


def value_of(rnd: random.Random, choice: Choice) -> Any:
    """Return a value of a choice, in its unit: half of them near what is usual, else anywhere in its range."""
    if choice.unit == "word":
        return rnd.choice(choice.words)
    if choice.unit == "yes/no":
        return rnd.random() < 0.5
    low, high = choice.low or 0.0, choice.high if choice.high is not None else 2 * float(choice.default) + 1
    if rnd.random() < 0.5:  # near what is usual, else anywhere
        reach = 0.3 * (high - low)
        low, high = max(low, choice.default - reach), min(high, choice.default + reach)
    value = rnd.uniform(low, high)
    return float(round(value)) if choice.unit == "count" else value


def _cloth(rnd: random.Random) -> Fabric | None:
    if rnd.random() < 0.1:
        return None
    if rnd.random() < 0.5:
        return Fabric("woven, invented", usable_width=1450.0, thickness=rnd.uniform(0.2, 3.0), mass=200.0)
    return Fabric(
        "knit, invented",
        weave="knit",
        stretch_across=rnd.uniform(0.0, 1.0),
        stretch_along=rnd.uniform(0.0, 0.6),
        recovery=0.95,
    )
