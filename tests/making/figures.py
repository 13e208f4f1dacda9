"""Made costumes and cloths for the tests of the making plan. Invented figures."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

from drafting.costume.file import read_costume
from drafting.costume.lays import laid_out
from drafting.costume.make import Made, make
from drafting.fabric import Fabric

ROOT = Path(__file__).resolve().parents[2]


@cache
def made(name: str) -> Made:
    """Return a shipped costume, drafted and checked."""
    return make(read_costume(ROOT / "measurements" / "costumes" / f"{name}.toml"))


@cache
def laid(name: str) -> Made:
    """Return a shipped costume with its lays, searched for a moment only."""
    return laid_out(made(name), count=50, table=False)


def with_cloth(name: str, role: str, **facts: Any) -> Made:
    """Return a shipped costume with a cloth that differs in these facts."""
    costume = made(name).costume
    fabrics = {**costume.fabrics, role: replace(costume.fabrics[role], **facts)}
    return make(replace(costume, fabrics=fabrics))


@cache
def on_the_bias() -> Made:
    """Return the lamplighter with a coat of plain cloth, whose tails lie on the bias, and its lays."""
    return laid_out(with_cloth("lamplighter", "shell", sort="plain", one_way=False), count=50, table=False)


NYLON = Fabric("Nylon, invented", usable_width=1480.0, fibre="nylon", takes_starch=False)
