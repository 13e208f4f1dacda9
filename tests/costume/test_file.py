"""The costume file: paths, roles, names, and every fault of all its files at once."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.costume.file import CostumeFile, read_costume
from drafting.ground.errors import Fault, InputError
from drafting.ground.shipped import demo_costume, shipped

BODY = 'unit = "cm"\n[measures]\nheight = 168\nbust = 92\nwaist = 74\nhip = 98\n'
COSTUME = """title = "Coat ✂ & <tails>"
wearer = "../bodies/ada.toml"
[fabrics]
shell = "../cloth.toml"
[garments.riding-coat]
block = "tailcoat"
fabric = "shell"
[garments.riding-coat.choices]
tail_length = "78 cm"
"""


def lay_out(root: Path, costume: str = COSTUME, body: str = BODY, cloth: str = "width = '1.5 m'") -> Path:
    (root / "bodies").mkdir(exist_ok=True)
    (root / "costumes").mkdir(exist_ok=True)
    (root / "bodies" / "ada.toml").write_text(body, "utf-8")
    (root / "cloth.toml").write_text(cloth, "utf-8")
    path = root / "costumes" / "coat.toml"
    path.write_text(costume, "utf-8")
    return path


def faults(path: Path) -> list[Fault]:
    with pytest.raises(InputError) as error:
        read_costume(path)
    return list(error.value.faults)


def fields(path: Path) -> set[str]:
    return {fault.field for fault in faults(path)}


def test_a_costume_is_read_from_any_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = lay_out(tmp_path)
    monkeypatch.chdir("/")
    costume = read_costume(path)
    (coat,) = costume.garments
    assert costume.title == "Coat ✂ & <tails>"
    assert (coat.name, coat.block, coat.fabric, coat.line) == ("riding-coat", "tailcoat", "shell", 5)
    assert coat.choices["tail_length"].value == "78 cm"
    assert coat.choices["tail_length"].line == 9
    assert costume.wearer["bust_girth"] == 920.0
    assert costume.fabrics["shell"].usable_width is not None
    assert costume.unit is None


def test_another_wearer_takes_the_place_of_the_files_own(tmp_path: Path) -> None:
    path = lay_out(tmp_path, body="broken")
    other = tmp_path / "bo.csv"
    other.write_text("unit,cm\nheight,182\nbust,100\nwaist,88\nhip,101\n", "utf-8")
    assert read_costume(path, wearer=other).wearer.title == "bo"


def test_faults_of_costume_body_and_cloth_come_at_once(tmp_path: Path) -> None:
    text = COSTUME.replace('fabric = "shell"', 'fabric = "shel"\nlinning = 1') + "tail_length = 1\n"
    found = faults(lay_out(tmp_path, text, BODY.replace("92", "0"), "widht = 3"))
    places = {(Path(fault.file).name, fault.line, fault.field) for fault in found}
    assert places == {
        ("coat.toml", 11, "garments.riding-coat.choices.tail_length"),
        ("ada.toml", 4, "bust"),
        ("cloth.toml", 1, "widht"),
        ("coat.toml", 8, "garments.riding-coat.linning"),
        ("coat.toml", 7, "garments.riding-coat.fabric"),
    }


def test_a_lost_file_is_named_at_the_line_that_names_it(tmp_path: Path) -> None:
    text = COSTUME.replace("ada.toml", "adda.toml").replace("../cloth", "../clot")
    found = {fault.field: fault for fault in faults(lay_out(tmp_path, text))}
    assert {name: fault.line for name, fault in found.items()} == {"wearer": 2, "fabrics.shell": 4}
    assert "no such file" in found["wearer"].what


def test_a_costume_needs_a_wearer_a_garment_and_a_block(tmp_path: Path) -> None:
    assert fields(lay_out(tmp_path, "title = 'x'\n")) == {"wearer", "garments"}
    assert "garments.riding-coat" in fields(lay_out(tmp_path, COSTUME.replace("block", "blokc")))


@pytest.mark.parametrize(
    "name", ['"Riding Coat"', '"coat.tails"', '"../x"', '"-"', '"a--b"', '""', "nul", "x" * 41]
)
def test_a_garments_name_must_do_for_a_file(tmp_path: Path, name: str) -> None:
    text = COSTUME.replace("garments.riding-coat", f"garments.{name}")
    assert any("lower-case" in fault.right for fault in faults(lay_out(tmp_path, text)))


def test_the_only_cloth_need_not_be_named(tmp_path: Path) -> None:
    costume = read_costume(lay_out(tmp_path, COSTUME.replace('fabric = "shell"\n', "")))
    assert costume.garments[0].fabric == "shell"


def test_the_demo_costume_is_shipped_and_sound() -> None:
    costume = read_costume(demo_costume())
    assert isinstance(costume, CostumeFile)
    assert "invented" in costume.wearer.title
    assert {garment.fabric for garment in costume.garments} <= costume.fabrics.keys()
    kite = shipped("measurements") / "bodies" / "kite.toml"
    assert "kite" in read_costume(demo_costume(), wearer=kite).wearer.title


PIECES = st.sampled_from(
    [
        "title",
        "=",
        '"x"',
        "\n",
        "[garments.a]",
        "[fabrics]",
        "garments",
        "wearer",
        "block",
        "fabric",
        "{",
        "}",
        "[",
        "]",
        "1",
        "true",
        "choices",
        '"\\u0000"',
        '"../bodies/ada.toml"',
    ]
)


@given(st.lists(PIECES, max_size=40).map(" ".join) | st.text(max_size=80))
@settings(max_examples=200, deadline=None)
def test_random_text_is_a_costume_or_is_refused(tmp_path_factory: pytest.TempPathFactory, text: str) -> None:
    path = tmp_path_factory.getbasetemp() / "random-costume.toml"
    path.write_bytes(text.encode("utf-8", errors="surrogatepass"))
    try:
        costume = read_costume(path)
    except InputError:
        return
    assert costume.garments
