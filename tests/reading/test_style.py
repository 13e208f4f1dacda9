"""The `style` tables of a costume file: read, and refused with file, line and what would be right."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.ground.errors import InputError
from drafting.reading.cursor import opened
from drafting.reading.style import CutWish, PleatWish, StyleWish, read_style
from drafting.reading.style_places import OutlinePlace

HEAD = 'unit = "cm"\n[[garments.top.style]]\n'


def read(folder: Path, text: str) -> tuple[StyleWish, ...]:
    path = folder / "costume.toml"
    path.write_text(HEAD + text, "utf-8")
    table = opened(path)
    found = read_style(table.table("garments").table("top"))
    table.refuse()
    return found


def test_steps_come_in_their_order_lengths_in_mm(tmp_path: Path) -> None:
    text = """do = "cut"
piece = "back"
from = { edge = "armhole", share = "40 %" }
to = { edge = "centre", distance = 9, beside = "neck" }
name = "back-yoke"
bow = "-1/4 in"
[[garments.top.style]]
do = "pleat"
piece = "back"
from = { edge = "style_line", share = 0.5 }
to = { edge = "hem", level = "hip" }
depth = "30 mm"
"""
    cut, pleat = read(tmp_path, text)
    assert isinstance(cut, CutWish)
    assert cut.start == OutlinePlace("armhole", share=0.4)
    assert cut.end == OutlinePlace("centre", distance=90.0, beside="neck")
    assert cut.bow == pytest.approx(-6.35)
    assert isinstance(pleat, PleatWish)
    assert (pleat.depth, pleat.number, pleat.kind) == (30.0, 1, "knife")
    assert pleat.end == OutlinePlace("hem", level="hip")


@pytest.mark.parametrize(
    ("text", "line", "said"),
    [
        ('do = "cutt"\n', 3, "move dart"),
        ('do = "cut"\npiece = "back"\nname = "x"\nto = { edge = "hem", share = 1 }\n', 2, "needs from"),
        ('do = "cut"\npiece = "b"\nname = "x"\nfrom = { edge = "h" }\nto = { dart = "w" }\n', 6, "no place"),
        ('do = "move edge"\nedge = "back.hem"\n', 2, "moves nothing"),
        ('do = "join"\nedge = "back.hem"\nside = "left"\n', 5, "is not known here"),
        (
            'do = "pleat"\npiece = "b"\nfrom = { edge = "a", share = 2 }\nto = { dart = "b" }\ndepth = 1\n',
            5,
            "out of range",
        ),
    ],
)
def test_what_is_wrong_is_said_with_its_line(tmp_path: Path, text: str, line: int, said: str) -> None:
    with pytest.raises(InputError) as error:
        read(tmp_path, text)
    faults = error.value.faults
    assert line in [fault.line for fault in faults]
    assert any(said in f"{fault.what} {fault.right}" for fault in faults)


def test_an_amount_that_cannot_be_is_told_once(tmp_path: Path) -> None:
    """A share of 1.5 was out of range, and the place was said besides to name no share."""
    cut = 'do = "cut"\npiece = "b"\nname = "x"\nfrom = {{ edge = "h", {} }}\nto = {{ dart = "w" }}\n'
    for amount in ("share = 1.5", 'share = "half"', 'distance = "3 miles"'):
        with pytest.raises(InputError) as refused:
            read(tmp_path, cut.format(amount))
        assert len(refused.value.faults) == 1
        assert "names no place" not in str(refused.value)
