"""Style lines on a body whose sides differ: both hands have them, and what one hand cannot have is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.draft.roles import SeamKind
from drafting.draft.walk import walk
from drafting.geometry import Path as Ring
from drafting.geometry.area import is_simple
from drafting.ground import tolerances as tol
from drafting.ground.errors import InputError

BODY = """title = "Uneven, invented"
unit = "cm"
[measures]
height = 176
bust_girth = 112
waist_girth = 121
hip_girth = 110
"""

CLOTH = """title = "Drill, invented"
unit = "cm"
width = 150
selvedge = 1
weave = "woven"
sort = "plain"
pretreated = true
"""

COSTUME = """title = "A yoked top, invented"
wearer = "body.toml"

[fabrics]
shell = "cloth.toml"

[garments.top]
block = "fitted-top"
fabric = "shell"

[[garments.top.style]]
do = "cut"
piece = "front"
from = { edge = "armhole", share = 0.5 }
to = { edge = "centre", distance = "11 cm", beside = "neck" }
name = "front-yoke"
holds = "neck"
"""

PLEATED = """
[[garments.top.style]]
do = "pleat"
piece = "front"
kind = "box"
from = { edge = "style_line", distance = "4.5 cm", beside = "centre" }
to = { edge = "hem", distance = "4.5 cm", beside = "centre" }
depth = "15 mm"
"""

FROM_THE_SHOULDER = """
[[garments.top.style]]
do = "cut"
piece = "back"
from = { edge = "shoulder", distance = "12.5 cm", beside = "neck" }
to = { edge = "hem", share = 0.5 }
name = "back-side"
"""


def costume(folder: Path, measure: str, more: str) -> Path:
    (folder / "body.toml").write_text(f"{BODY}{measure}\n", "utf-8")
    (folder / "cloth.toml").write_text(CLOTH, "utf-8")
    (folder / "costume.toml").write_text(COSTUME + more, "utf-8")
    return folder / "costume.toml"


def test_a_front_that_is_uneven_has_its_pleats_on_both_hands(tmp_path: Path) -> None:
    file = costume(tmp_path, "shoulder_drop = { left = 4.0, right = 6.5 }", PLEATED)
    draft = make(read_costume(file)).garments[0].draft
    laid = [seam for seam in draft.seams if seam.kind is SeamKind.LAID_PLEAT]
    assert len(laid) == 4
    assert {name.rsplit(" ", 1)[-1] for name in (seam.name for seam in laid)} == {"left", "right"}
    assert all(abs(walk(draft, seam).difference) < tol.SEAM_MATCH for seam in draft.seams)


def test_a_line_that_one_hand_alone_cannot_have_is_told_with_its_place(tmp_path: Path) -> None:
    file = costume(tmp_path, "shoulder_length = { left = 14.0, right = 11.0 }", FROM_THE_SHOULDER)
    with pytest.raises(InputError) as refused:
        make(read_costume(file))
    assert [(fault.field, fault.file) for fault in refused.value.faults] == [("garments.top.style[2]", str(file))]


def test_a_ring_whose_end_misses_its_start_by_a_reckonings_rest_is_simple() -> None:
    corners = (0j, 100 + 0j, 100 + 100j, 0 + 100j)
    assert is_simple(Ring.polygon(*corners))
    rest = Ring((*Ring.polygon(*corners).segments[:3], *Ring.polygon(100j, 4e-15 + 0j, 1 + 1j).segments[:1]))
    assert is_simple(rest)
    assert not is_simple(Ring.polygon(0j, 100 + 100j, 100 + 0j, 0 + 100j))
