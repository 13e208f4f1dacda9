"""Style in proportion: shares of a measure and landmarks of the body, on any wearer; what stays one size."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.body import Body, wearer
from drafting.body.landmarks import ARM, TRUNK, down_to
from drafting.commands.cli import main
from drafting.costume.choices import block_named, garment_choices
from drafting.costume.file import read_costume
from drafting.costume.garment import draft_garment
from drafting.costume.make import finished
from drafting.costume.whole import read_whole_costume
from drafting.ground.errors import Fault, InputError

BODY = 'unit = "cm"\n[measures]\nheight = {}\nbust_girth = {}\nwaist_girth = {}\nhip_girth = {}\n'
ADULT, CHILD, LARGE = (170, 92, 74, 98), (118, 60, 55, 64), (172, 130, 118, 134)
COAT = """title = "A coat"
unit = "cm"
wearer = "body.toml"
[fabrics]
shell = "cloth.toml"
[garments.coat]
block = "tailcoat"
[garments.coat.choices]
"""


def costume(folder: Path, choices: str, size: tuple[int, int, int, int] = ADULT) -> Path:
    (folder / "body.toml").write_text(BODY.format(*size), "utf-8")
    (folder / "cloth.toml").write_text('width = "150 cm"\n', "utf-8")
    path = folder / "coat.toml"
    path.write_text(COAT + choices, "utf-8")
    return path


def value(folder: Path, name: str, said: str, size: tuple[int, int, int, int]) -> float:
    made = finished(read_costume(costume(folder, f"{name} = {said}\n", size)))
    found: float = made["coat"].choices[name][0]
    return found


@pytest.mark.parametrize("size", [ADULT, CHILD, LARGE])
def test_a_share_is_of_the_wearers_own_measure(tmp_path: Path, size: tuple[int, int, int, int]) -> None:
    lapel = value(tmp_path, "lapel_width", '{share = 0.08, of = "bust_girth"}', size)
    assert lapel == pytest.approx(0.8 * size[1], abs=1e-3)


@pytest.mark.parametrize("size", [ADULT, CHILD])
def test_tails_to_a_landmark_end_there_on_any_wearer(tmp_path: Path, size: tuple[int, int, int, int]) -> None:
    path = costume(tmp_path, 'tail_length = {at = "knee", plus = "2 cm"}\n', size)
    read = read_costume(path)
    body, made = read.wearer, finished(read)
    hem = body["nape_height"] - made["coat"].draft.facts["tail_length"]
    assert hem == pytest.approx(body["knee_height"] - 20.0, abs=0.01)


def test_landmarks_come_in_their_order_down_the_body() -> None:
    body = wearer({"height": 1700, "bust_girth": 920, "waist_girth": 740, "hip_girth": 980})
    for places, begin in ((TRUNK, "nape"), (ARM, "shoulder")):
        down = [down_to(body, place, begin) for place in places]
        assert down == sorted(down)
        assert down[0] == 0.0


@pytest.mark.parametrize(
    ("said", "wrong"),
    [
        ('lapel_width = {share = 0.08, of = "bust"}', ""),
        ('lapel_width = {share = 0.08, of = "bustt_girth"}', "is no measure of the body"),
        ('lapel_width = {share = 0.9, of = "bust_girth"}', "out of range"),
        ('lapel_width = {at = "knee"}', "is not measured down the body"),
        ('tail_length = {at = "elbow"}', "is no landmark"),
        ('tail_length = {at = "knee", minus = "2 cm"}', "is no proportion"),
        ('button_diameter = {share = 0.02, of = "bust_girth"}', "belongs to the hand"),
        ('seam_allowance = {share = 0.01, of = "bust_girth"}', "belongs to the hand"),
        ('panels = {share = 0.01, of = "bust_girth"}', "is no length"),
    ],
)
def test_what_cannot_be_is_refused_with_its_line(tmp_path: Path, said: str, wrong: str) -> None:
    path = costume(tmp_path, f"{said}\n")
    if not wrong:
        read_whole_costume(path)
        return
    with pytest.raises(InputError) as error:
        read_whole_costume(path)
    (fault,) = error.value.faults
    assert isinstance(fault, Fault)
    assert wrong in fault.what
    assert (fault.line, fault.file) == (9, str(path))


def of_size(size: tuple[int, int, int, int]) -> Body:
    names = ("height", "bust_girth", "waist_girth", "hip_girth")
    return wearer({name: 10.0 * cm for name, cm in zip(names, size, strict=True)})


def test_defaults_of_style_grow_and_shrink_and_those_of_the_hand_do_not() -> None:
    child, adult, large = (
        draft_garment(of_size(size), None, "tailcoat").choices for size in (CHILD, ADULT, LARGE)
    )
    for name in ("lapel_width", "flare", "vent_width"):
        assert child[name][0] < adult[name][0] < large[name][0]
    for name in ("button_diameter", "seam_allowance", "curve_allowance"):
        assert child[name][0] == adult[name][0] == large[name][0]
    hand = {choice.name for choice in garment_choices(block_named("tailcoat")) if choice.of_hand}
    assert {"button_diameter", "seam_allowance"} <= hand


def test_what_changes_from_wearer_to_wearer_is_printed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = costume(tmp_path, "")
    text = (
        path.read_text("utf-8").replace("coat", "shirt").replace("tailcoat", "shirt").replace("tailshirt", "shirt")
    )
    path.write_text(text, "utf-8")
    other = tmp_path / "large.toml"
    other.write_text(BODY.format(*LARGE), "utf-8")
    main(["make", str(path), "--out", str(tmp_path / "out"), "--wearer", str(other)])
    told = capsys.readouterr().out.split("What changed from the costume's own wearer", 1)[1]
    length = next(line for line in told.splitlines() if "longest piece" in line)
    assert length.count(" cm") == 2
    bought = next(line for line in told.splitlines() if "to buy" in line)
    before, after = (float(word) for word in bought.split() if word.replace(".", "").isdigit())
    assert after > before > 0.5
