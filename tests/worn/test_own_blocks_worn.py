"""A block from outside the kit wears itself, if it says how its pieces lie on the body; else it is told so."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest

from drafting.blocks import use_blocks
from drafting.ground.errors import DraftError
from drafting.worn.form import Form, wearers_form
from drafting.worn.placed import placed
from drafting.worn.sewn import sewn_mesh
from tests.blocks.own import EXAMPLE, SKIRT
from tests.worn.garments import PLIES, chart_body, drafted


@pytest.fixture(scope="module")
def form() -> Form:
    return wearers_form(chart_body())


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    yield tmp_path
    use_blocks(None)


def test_the_shipped_cape_falls_over_the_arms(form: Form, folder: Path) -> None:
    use_blocks(EXAMPLE)
    mesh = sewn_mesh(drafted("pelerine"), "pelerine", PLIES)
    points = placed(mesh, form)
    assert form.distance.distance(points).min() > 4.0
    hem = points[mesh.edges[("pelerine", "hem")]]
    elbow = form.arm[1]
    assert hem[:, 0].max() > elbow[0] - 60.0
    assert points[mesh.front, 1].max() < points[mesh.back, 1].min()
    stand = points[np.unique(mesh.sewn[mesh.piece == [p.name for p in mesh.pieces].index("pelerine-stand")])]
    assert stand[:, 2].max() > form.levels["nape"] + 20.0


def test_an_invented_wrap_skirt_hangs_from_the_waist(form: Form, folder: Path) -> None:
    (folder / "wrap_skirt.py").write_text(SKIRT, encoding="utf-8")
    use_blocks(folder)
    mesh = sewn_mesh(drafted("wrap-skirt"), "wrap-skirt", PLIES)
    points = placed(mesh, form)
    assert points[:, 2].max() == pytest.approx(form.levels["waist"], abs=15.0)
    assert form.distance.distance(points).min() > 4.0
    assert not mesh.on_middle[mesh.edges[("skirt", "back")]].any()  # tied at the waist, open below


def test_a_block_that_says_nothing_is_told_what_to_state(form: Form, folder: Path) -> None:
    told = SKIRT[: SKIRT.index("        frame=")] + SKIRT[SKIRT.index("\n", SKIRT.index("        frame=")) + 1 :]
    (folder / "wrap_skirt.py").write_text(told, encoding="utf-8")
    use_blocks(folder)
    mesh = sewn_mesh(drafted("wrap-skirt"), "wrap-skirt", PLIES)
    with pytest.raises(DraftError, match=r"piece skirt does not say where on the body it lies.*frame"):
        placed(mesh, form)
