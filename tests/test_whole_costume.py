"""One refusal for everything: the costume, its wearer, its cloths, its workroom, and what it names in them."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from drafting.commands.cli import main
from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.costume.whole import read_whole_costume
from drafting.ground.errors import Fault, InputError
from drafting.ground.shipped import demo_costume, shipped

BODY = """unit = "cm"
[measures]
height = 168
bust = 0
waist = 74
hp = 98
shoulder_length = {left = 12}
"""
CLOTH = """unit = "cm"
widht = 150
weave = "wovne"
stretch_along = "lots"
"""
ROOM = """title = "Everything wrong"
stitches = [301, "zigzag three-step"]
[prices]
tread = 3
button = -1
"""
COSTUME = """title = "Everything wrong"
unit = "cm"
wearer = "body.toml"
workroom = "room.toml"
worn_on = "soon"
[fabrics]
shell = "cloth.toml"
[garments.coat]
block = "tailcoat"
fabric = "shel"
[garments.coat.choices]
bust_eese = 3
waist_ease = "3 m"
[[garments.coat.trims]]
edge = "front.lapel"
width = "12 mm"
[[garments.coat.trims]]
edge = "front.lapell"
kind = "brade"
width = "12 mm"
[[garments.coat.appliques]]
piece = "tale-2"
edge = "hem"
width = 6
inside = 12
[garments.shirt]
block = "shrit"
[garments.top]
block = "shirt"
fabric = "shell"
[[garments.top.fullness]]
edge = "sleeve.hem"
gather = 9
[[garments.top.fullness]]
edge = "sleev.hem"
gather = 2
[print]
papers = ["a33"]
pieces = [
  "top.front",
  "top.frnt",
  "vest.front",
]
model = "1:7"
[lays.shell]
gap = -3
faults = [
  {along = 1, across = 2, length = 3, width = 4},
  {along = 1, across = "x", length = 3, width = 4},
]
"""
WRONG = [
    ("body.toml", 4, "bust"),
    ("body.toml", 6, "hp"),
    ("body.toml", 7, "shoulder_length"),
    ("cloth.toml", 2, "widht"),
    ("cloth.toml", 3, "weave"),
    ("cloth.toml", 4, "stretch_along"),
    ("costume.toml", 5, "worn_on"),
    ("costume.toml", 10, "garments.coat.fabric"),
    ("costume.toml", 12, "garments.coat.choices.bust_eese"),
    ("costume.toml", 13, "garments.coat.choices.waist_ease"),
    ("costume.toml", 17, "garments.coat.trims[2]"),
    ("costume.toml", 19, "garments.coat.trims[2].kind"),
    ("costume.toml", 21, "garments.coat.appliques[1]"),
    ("costume.toml", 27, "garments.shirt.block"),
    ("costume.toml", 33, "garments.top.fullness[1].gather"),
    ("costume.toml", 34, "garments.top.fullness[2]"),
    ("costume.toml", 38, "print.papers"),
    ("costume.toml", 41, "print.pieces"),
    ("costume.toml", 42, "print.pieces"),
    ("costume.toml", 44, "print.model"),
    ("costume.toml", 46, "lays.shell.gap"),
    ("costume.toml", 49, "lays.shell.faults[2].across"),
    ("room.toml", 2, "stitches"),
    ("room.toml", 4, "prices.tread"),
    ("room.toml", 5, "prices.button"),
]


def laid_out(folder: Path, costume: str = COSTUME, **others: str | None) -> Path:
    """Write the four files (None: one is left out) and return the costume's path."""
    texts: dict[str, str | None] = {"body": BODY, "cloth": CLOTH, "room": ROOM} | others
    for name, text in texts.items():
        if text is not None:
            (folder / f"{name}.toml").write_text(text, "utf-8")
    (folder / "costume.toml").write_text(costume, "utf-8")
    return folder / "costume.toml"


def faults(path: Path) -> tuple[Fault, ...]:
    with pytest.raises(InputError) as refused:
        read_whole_costume(path)
    return refused.value.faults


def places(found: tuple[Fault, ...]) -> list[tuple[str, int | None, str]]:
    return [(Path(fault.file).name, fault.line, fault.field) for fault in found]


def test_everything_wrong_in_four_files_comes_once_by_file_and_line(tmp_path: Path) -> None:
    assert places(faults(laid_out(tmp_path))) == WRONG


def test_the_command_says_all_of_it_and_writes_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = laid_out(tmp_path)
    assert main(["make", str(path), "--out", str(tmp_path / "out")]) == 2
    assert len(capsys.readouterr().err.splitlines()) == len(WRONG)
    assert {file.name for file in tmp_path.iterdir()} == {"body.toml", "cloth.toml", "room.toml", "costume.toml"}


@pytest.mark.parametrize(
    ("lost", "line", "field"), [("body", 3, "wearer"), ("cloth", 7, "fabrics.shell"), ("room", 4, "workroom")]
)
def test_a_file_that_is_lost_hides_nothing_of_the_others(lost: str, line: int, field: str, tmp_path: Path) -> None:
    found = places(faults(laid_out(tmp_path, **{lost: None})))
    others = [place for place in WRONG if place[0] != f"{lost}.toml"]
    assert Counter(found) == Counter([*others, ("costume.toml", line, field)])


HOME = shipped("measurements").as_posix()
SOUND = f"""unit = "cm"
wearer = "{HOME}/bodies/lamplighter.toml"
[fabrics]
shell = "{HOME}/fabrics/striped-shirting.toml"
[garments.shirt]
block = "shirt"
"""


@pytest.mark.parametrize("head", ["[[garments.shirt.trims]]", "[[ garments . shirt . trims ]] # 2"])
def test_a_mistake_in_the_second_of_several_tables_stands_at_its_own_line(head: str, tmp_path: Path) -> None:
    one = 'edge = "front.hem"\nwidth = "12 mm"\n'
    two = 'edge = "front.neck"\nwidth = "12 furlongs"\nkindd = "braid"\n'
    path = laid_out(tmp_path, f"{SOUND}{head}\n{one}{head}\n{two}")
    assert places(faults(path)) == [
        ("costume.toml", 12, "garments.shirt.trims[2].width"),
        ("costume.toml", 13, "garments.shirt.trims[2].kindd"),
    ]


def test_a_mistake_in_the_second_of_a_list_stands_at_its_own_line(tmp_path: Path) -> None:
    trims = 'trims = [\n  {edge = "front.hem", width = 1},\n  {edge = "front.neck", width = -1},\n]\n'
    assert places(faults(laid_out(tmp_path, SOUND + trims))) == [
        ("costume.toml", 9, "garments.shirt.trims[2].width")
    ]


def test_a_wish_that_the_draft_cannot_have_stands_at_its_own_line(tmp_path: Path) -> None:
    wishes = '[[garments.shirt.trims]]\nedge = "front.hem"\nwidth = 1\n' * 2
    wishes += '[[garments.shirt.trims]]\nedge = "front.brim"\nwidth = 1\n'
    wishes += '[[garments.shirt.fullness]]\nedge = "back.shoulder"\nflat = "9 m"\n'
    wishes += '[print]\npieces = ["shirt.sleeves"]\n'
    with pytest.raises(InputError) as refused:
        make(read_whole_costume(laid_out(tmp_path, SOUND + wishes)))
    assert places(refused.value.faults)[0] == ("costume.toml", 13, "garments.shirt.trims[3]")
    assert places(refused.value.faults)[1][1:] == (16, "garments.shirt.fullness[1]")
    assert refused.value.faults[0].what.endswith("stand_neck, facing_neck, facing, facing_hem and stand_hem")


def test_a_piece_to_print_that_there_is_not_is_refused(tmp_path: Path) -> None:
    path = laid_out(tmp_path, SOUND + '[print]\npieces = ["shirt.cuff", "shirt.sleeves"]\n')
    with pytest.raises(InputError) as refused:
        make(read_whole_costume(path))
    (fault,) = refused.value.faults
    assert (fault.line, fault.right) == (8, "did you mean sleeve?")


@pytest.mark.parametrize("choices", ['bust_dart = "sholder-princess"', 'bust_drat = "shoulder-princess"'])
def test_a_piece_that_only_the_misspelt_choice_gives_is_not_refused(choices: str, tmp_path: Path) -> None:
    text = SOUND.replace('"shirt"', '"bodice"') + f"[garments.shirt.choices]\n{choices}\n"
    text += '[[garments.shirt.trims]]\nedge = "front-side.princess"\nwidth = 1\n'
    text += '[[garments.shirt.trims]]\nedge = "front-sidee.princess"\nwidth = 1\n'
    assert [place[1] for place in places(faults(laid_out(tmp_path, text)))] == [8, 12]


def test_a_piece_of_one_hand_is_not_refused_where_the_body_cannot_be_read(tmp_path: Path) -> None:
    text = SOUND.replace(f"{HOME}/bodies/lamplighter.toml", "body.toml")
    for number, edge in enumerate(("back.neck", "front-left.hem", "front-lft.hem"), 1):
        text += f'[[garments.shirt.trims]]\nedge = "{edge}"\nwidth = {number}\n'
    found = places(faults(laid_out(tmp_path, text)))
    assert found[-1] == ("costume.toml", 13, "garments.shirt.trims[3]")
    assert [place[0] for place in found].count("costume.toml") == 1


def test_a_sound_costume_is_read_as_it_was() -> None:
    assert read_whole_costume(demo_costume()) == read_costume(demo_costume())


def test_every_offer_is_of_a_few_names(tmp_path: Path) -> None:
    for fault in faults(laid_out(tmp_path)):
        assert fault.right.count(", ") < 8, str(fault)
        assert len(str(fault)) - len(fault.file) < 240
