"""A note that turns a sleeve whose cap is gathered: it is told, and the cap is the one that was drafted.

Source: common practice: gathers hide where a sleeve is turned; they are shared out anew at the try-on.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import MadeGarment, make
from drafting.draft.by_role import edges_as, piece_as
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.geometry import Path as Path2D
from drafting.ground import tolerances as tol
from tests.fitting.test_drawn_fair import NOTE
from tests.fitting.test_fitting_files import costume


def mutton(folder: Path, *fittings: str) -> MadeGarment:
    """Return the shirt of the test's costume as a top with leg-of-mutton sleeves."""
    folder.mkdir()
    path = costume(folder, *fittings)
    path.write_text(path.read_text("utf-8").replace('block = "shirt"', 'block = "mutton-top"'), "utf-8")
    return make(read_costume(path)).garments[0]


def caps(made: MadeGarment) -> list[Path2D]:
    sleeve = piece_as(made.draft, PieceRole.SLEEVE)
    assert sleeve is not None
    return [edge.path for edge in edges_as(sleeve, EdgeRole.CAP)]


@pytest.mark.parametrize("verb", ["move forward", "move back"])
def test_a_gathered_cap_is_as_drafted_after_a_note_that_would_turn_it(tmp_path: Path, verb: str) -> None:
    plain, noted = mutton(tmp_path / "plain"), mutton(tmp_path / "noted", NOTE.format("sleeve.cap_front", verb, 5))
    assert any("its cap is gathered" in finding.said("cm") for finding in noted.findings)
    for one, other in zip(caps(plain), caps(noted), strict=True):
        apart = [abs(p - q) for p, q in zip(one.evenly(33), other.evenly(33), strict=True)]
        assert max(apart) < tol.EXACT
    assert not [finding for finding in noted.findings if finding.level == "error"]
