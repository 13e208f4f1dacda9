"""The lamplighter's tails let fall from three starts under each treatment: ranges, and which reaches farthest."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import finished
from drafting.costume.worn import worn
from drafting.ground.shipped import demo_costume


@pytest.mark.population
def test_each_treatment_falls_alike_from_three_starts_and_a_bone_reaches_farthest() -> None:
    costume = read_costume(demo_costume())
    coat = tuple(one for one in costume.garments if one.name == "coat")
    (garment,) = worn(finished(replace(costume, garments=coat))).garments
    hems = {one.name: one.hem for one in garment.treated}
    print({name: hem and (hem.width, hem.range, hem.back_reach) for name, hem in hems.items()})
    found = {name: hem for name, hem in hems.items() if hem}
    assert found.keys() == hems.keys()
    for name in ("fused", "boned"):
        low, high = found[name].range
        assert high <= 1.04 * low, name
    assert found["plain"].range[0] <= found["plain"].width <= found["plain"].range[1]
    assert found["boned"].back_reach == max(hem.back_reach for hem in found.values())
