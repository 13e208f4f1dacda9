"""Lays whose shortest length can be proved: the pieces of a rectangle, on cloth as wide as it was.

No lay is shorter than area over width, and the pieces as they were cut reach it. How near ours must
come was measured at this count of tries (the pieces have to fit to the millimetre, as those of a
garment never do); the published instances of garments are the benchmark's
(tests/benchmarks/strip_packing.py).
"""

from __future__ import annotations

import pytest

from drafting.layout import broken_rules
from drafting.layout.packing.pack import pack
from tests.layout.cut_up import LENGTH, cut_up

TRIES = 6000


@pytest.mark.parametrize(("pieces", "slant"), [(6, 0.0), (12, 0.0), (9, 12.0)])
def test_the_pieces_as_they_were_cut_are_a_lay_of_the_shortest_length(pieces: int, slant: float) -> None:
    cut = cut_up(pieces, slant, seed=0)
    assert broken_rules(cut.job, cut.shortest) == []
    assert cut.shortest.length == pytest.approx(LENGTH)


@pytest.mark.parametrize("seed", [0, 1])
@pytest.mark.parametrize(
    ("pieces", "slant", "over"),
    [(6, 0.0, 0.001), (9, 0.0, 0.05), (12, 0.0, 0.08), (6, 12.0, 0.09), (9, 12.0, 0.23)],
)
def test_a_cut_up_rectangle_is_laid_near_its_own_length_and_never_shorter(
    pieces: int, slant: float, over: float, seed: int
) -> None:
    cut = cut_up(pieces, slant, seed)
    found = pack(cut.job, count=TRIES)
    assert broken_rules(cut.job, found) == []
    assert found.length >= LENGTH - 0.01
    assert found.length <= (1 + over) * LENGTH
