"""Whole costumes nobody foresaw, written as a maker's files: any wearer, garments, cloths and choices of one seed.

They are asked for at random from the ranges that `drafting blocks` tells. What cannot be is refused in words;
anything else is made to its end. Invented.
"""

from __future__ import annotations

import json
import random
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from drafting.blocks import all_blocks, names
from drafting.fabric.sorts import SORTS
from tests.random_drafts import ordinary, value_of

KNIT = 'weave = "knit"\nstretch_along = "40 %"\nstretch_across = "60 %"\nrecovery = "95 %"\n'


def written(folder: Path, seed: str) -> Path:
    """Write a costume's files into `folder`; return the costume's own."""
    rnd = random.Random(f"odd {seed}")
    unit, inches = rnd.choice((("cm", 10.0), ("in", 25.4)))
    folder.mkdir(parents=True, exist_ok=True)
    wearer = "\n".join(_measures(rnd, inches))
    (folder / "wearer.toml").write_text(f'title = "odd"\nunit = "{unit}"\n[measures]\n{wearer}\n', "utf-8")
    blocks = [rnd.choice(names(alone=True)) for _ in range(rnd.choice((1, 2, 2, 3)))]
    for number, block in enumerate(blocks):
        (folder / f"cloth-{number}.toml").write_text(_cloth(rnd, number, block), "utf-8")
    cloths = "\n".join(f'cloth-{number} = "cloth-{number}.toml"' for number in range(len(blocks)))
    garments = "\n".join(line for number, block in enumerate(blocks) for line in _garment(rnd, number, block))
    costume = folder / "costume.toml"
    head = f'title = "odd"\nunit = "{unit}"\nwearer = "wearer.toml"\n'
    costume.write_text(f"{head}[fabrics]\n{cloths}\n{garments}\n", "utf-8")
    return costume


def _measures(rnd: random.Random, unit: float) -> Iterator[str]:
    for name, taken in ordinary(rnd).items():
        if rnd.random() < 0.1 and name != "height":
            yield f"{name} = {{ left = {taken * 1.015 / unit:.2f}, right = {taken * 0.985 / unit:.2f} }}"
        else:
            yield f"{name} = {taken / unit:.2f}"


def _cloth(rnd: random.Random, number: int, block: str) -> str:
    sort = rnd.choice((*SORTS, "knit"))
    head = f'title = "cloth {number}, invented"\nunit = "cm"\nusable_width = {rnd.choice((90, 112, 140, 150))}\n'
    smaller = any(one.name == "stretch_share" and one.default for one in all_blocks()[block].choices)
    stretches = sort == "knit" or smaller
    return head + (KNIT if stretches else f'sort = "{sort}"\n')


def _garment(rnd: random.Random, number: int, block: str) -> Iterator[str]:
    yield f'[garments.g{number}]\nblock = "{block}"\nfabric = "cloth-{number}"'
    yield f"[garments.g{number}.choices]"
    for choice in all_blocks()[block].choices:
        if rnd.random() < rnd.choice((0.05, 0.15, 0.3)):
            yield f"{choice.name} = {_told(value_of(rnd, choice), choice.unit)}"


def _told(chosen: Any, unit: str) -> str:
    return json.dumps(f"{round(chosen)} mm" if unit == "mm" else round(chosen, 2) if unit == "ratio" else chosen)
