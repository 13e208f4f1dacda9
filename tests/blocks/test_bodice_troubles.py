"""The bodice against what goes wrong for makers; common practice unless said beside the check."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest

from drafting.body import wearer
from drafting.costume.file import read_costume
from drafting.costume.make import make
from tests.blocks.figures import (
    bust_dart,
    chart_woman,
    dart_mouth,
    errors,
    full_bust,
    girth,
    level,
    made,
    pair,
    walked,
)
from tests.checks.figures import sound


def test_me3_a_waist_that_is_the_largest_girth_leans_the_side_out_and_has_no_front_dart() -> None:
    # Makers' tutorials and question threads: bust 104, waist 112, hip 106, ease 4: no dart is negative. Three
    # quarters of a belly lie in front (ours): the back keeps its own shape, with its dart.
    body = wearer({"height": 1700.0, "bust_girth": 1040.0, "waist_girth": 1120.0, "hip_girth": 1060.0})
    garment = made(body, waist_ease=40.0)
    assert girth(garment.draft, "waist") == pytest.approx(1160, abs=2)
    assert errors(garment) == []
    assert dart_mouth(garment.draft, "front", "waist_dart") == 0
    assert 8 <= dart_mouth(garment.draft, "back", "waist_dart") <= 0.06 * body["bust_girth"] + 0.1
    assert garment.draft.facts["side_lean"] < 0


def doll_costume(folder: Path) -> Path:
    """Write a 40 cm doll and its shirt."""
    (folder / "doll.toml").write_text(
        'title = "Doll, invented"\nunit = "cm"\n[measures]\n'
        "height = 40\nbust_girth = 18\nwaist_girth = 16\nhip_girth = 19\n"
    )
    (folder / "cotton.toml").write_text('title = "Cotton, invented"\nwidth = "140 cm"\n')
    costume = folder / "costume.toml"
    costume.write_text(
        'title = "Doll"\nwearer = "doll.toml"\n[fabrics]\nshell = "cotton.toml"\n'
        '[garments.shirt]\nblock = "shirt"\n'
    )
    return costume


def test_me7_a_40_cm_doll_gets_a_shirt_in_its_own_proportions(tmp_path: Path) -> None:
    # Makers of dolls' clothes: finished bust <= 21 cm, darts under 3 mm left out, seam allowance proposed 6 mm.
    costume = make(read_costume(doll_costume(tmp_path)))
    (shirt,) = costume.garments
    assert [f.message for f in costume.findings if f.level == "error"] == []
    assert 180 < girth(shirt.draft, "bust") <= 210
    for piece in ("back", "front"):
        for dart in ("waist_dart", "bust_dart"):
            mouth = dart_mouth(shirt.draft, piece, dart)
            assert mouth == 0 or mouth >= 3 * shirt.draft.facts["scale"] - 1e-6
    assert shirt.choices["seam_allowance"][0] == pytest.approx(6, abs=0.5)


def test_dr1_a_fuller_bust_grows_the_dart_and_the_front_and_nothing_else() -> None:
    # Common practice: high bust 98, bust 112 against 103; back width, shoulder, neck equal within 0.1 mm,
    # front armhole within 5 mm, finished bust = body + ease in both.
    less, more = pair(full_bust(1030)), pair(full_bust(1120))
    assert level(more, "back", "across_back") == pytest.approx(level(less, "back", "across_back"), abs=0.1)
    for piece in ("back", "front"):
        for edge in ("shoulder", "neck"):
            assert more[piece][edge].length == pytest.approx(less[piece][edge].length, abs=0.1)
    assert more["front"]["armhole"].length == pytest.approx(less["front"]["armhole"].length, abs=5)
    assert dart_mouth(more, "front", "bust_dart") > dart_mouth(less, "front", "bust_dart") + 10
    assert more.facts["front_waist_length"] > less.facts["front_waist_length"] + 10
    for draft, bust in ((less, 1030), (more, 1120)):
        assert girth(draft, "bust") == pytest.approx(bust + 80, abs=1)


def test_dr1_the_front_grows_in_every_step_with_the_bust() -> None:
    drafts = [pair(full_bust(990 + 10 * i)) for i in range(14)]
    for fact in ("bust_dart_degrees", "front_waist_length"):
        found = [draft.facts[fact] for draft in drafts]
        assert all(b > a for a, b in pairwise(found)), fact


@pytest.mark.parametrize("where", ["side", "shoulder"])
def test_dr2_the_bust_dart_stops_short_and_aims_at_the_bust_point(where: str) -> None:
    # Common practice: tip 2 to 3.5 cm short, aims within 1 degree, a larger stop for a fuller bust.
    shorts = []
    for bust in (1010.0, 1040.0, 1070.0, 1120.0):
        front = pair(full_bust(bust), bust_dart=where)["front"]
        short, off = bust_dart(front)
        assert abs(off) <= 1
        shorts.append(short)
    assert all(20 <= short <= 35 for short in shorts)
    assert shorts == sorted(shorts)
    assert shorts[0] < shorts[-1]


@pytest.mark.parametrize("where", ["side", "shoulder"])
def test_dr3_legs_are_equal_the_folded_seam_is_straight_and_has_a_cap(where: str) -> None:
    # Common practice: legs within 0.5 mm; the seam across the folded dart straight or smooth; the allowance
    # follows the dart cap.
    garment = made(full_bust(1060), bust_dart=where)
    front = garment.draft["front"]
    assert front["bust_dart_in"].length == pytest.approx(front["bust_dart_out"].length, abs=0.2)
    seams = [s.name for s in garment.draft.seams if "dart" in s.name]
    angles = [walked(garment.draft, name).angles[0] for name in seams]
    assert angles == pytest.approx([180] * len(seams), abs=2)
    caps = {cap.edges for cap in garment.pattern["front"].caps}
    assert ("bust_dart_in", "bust_dart_out") in caps
    for cap in garment.pattern["front"].caps:
        gap = min(abs(cap.cut.at(cap.cut.length / 2) - p) for p in cap.stitch.flattened(0.1))
        assert gap > 5


def test_se1_the_checks_flag_a_side_seam_that_was_lengthened_afterwards() -> None:
    # Unequal seams are tried on figures made by hand in tests/checks; here: ours match, theirs would not.
    draft = pair(chart_woman())
    side = walked(draft, "side")
    assert side.seam.ease == 0
    assert side.a_sewn == pytest.approx(side.b_sewn, abs=0.5)
    assert walked(sound(), "side").difference == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize("bust", [1000.0, 1060.0, 1120.0])
@pytest.mark.parametrize("length", ["waist", "hip"])
def test_se3_joined_corners_run_on_smoothly(bust: float, length: str) -> None:
    # Common practice: 180 within 3 (ours 2) at shoulder tip, shoulder-neck, underarm and hem.
    draft = pair(full_bust(bust), length=length)
    for seam in draft.seams:
        ends = zip((seam.start, seam.end), walked(draft, seam.name).angles, strict=True)
        for corner, angle in ends:
            if corner == "smooth":
                assert angle == pytest.approx(180, abs=2), (seam.name, angle)
