"""A choice that a maker wrote and that nothing follows from is told, with what would have it count."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import Made, make
from drafting.ground.findings import Finding
from tests.notebook.trials import CLOTH, UNEVEN

COSTUME = """title = "Invented"
unit = "cm"
wearer = "wearer.toml"
[fabrics]
shell = "cloth.toml"
[garments.worn]
block = "{block}"
[garments.worn.choices]
{choices}
"""


def made(folder: Path, block: str, choices: str) -> Made:
    texts = {"wearer": UNEVEN, "cloth": CLOTH, "costume": COSTUME.format(block=block, choices=choices)}
    for name, text in texts.items():
        (folder / f"{name}.toml").write_text(text, "utf-8")
    return make(read_costume(folder / "costume.toml"))


def idle(made: Made) -> list[Finding]:
    return [finding for finding in made.findings if finding.check == "idle choice"]


def drawn(made: Made) -> list[object]:
    """Return what is cut and drawn of every piece, as the printer has it."""
    return [
        (
            cut.piece.name,
            cut.piece.count,
            tuple(cut.cut.points(0.5)),
            [p.path.length for p in cut.piece.placements],
        )
        for cut in made.garments[0].pattern.pieces
    ]


@pytest.mark.parametrize(
    ("block", "choices", "said"),
    [
        ("coat", 'hem_bone = "round"', "changes nothing on this coat: with what else is chosen"),
        ("coat", "hem_band = 8", 'it counts with `stiff_hem = "band"`'),
        ("skirt", 'skirt_cut = "full circle"\nhip_ease = 9', "`skirt_cut`, which you chose too, settles it"),
        ("trousers", 'leg = "flared"\nhem_width = 60', "`hem_width`, which you chose too, settles it"),
        ("waistcoat", "lap = 8", 'it counts with `breasted = "double"`'),
        ("tailcoat", "turned_cuff_spread = 3", "it counts with a `turned_cuff`"),
        ("trousers", "fall_depth = 25", "it counts with `fall_front = true`"),
        ("tailcoat", "flare_5 = 9", "it counts with more `panels`"),
    ],
)
def test_it_is_told_with_what_keeps_it_idle(tmp_path: Path, block: str, choices: str, said: str) -> None:
    (told,) = idle(made(tmp_path, block, choices))
    assert said in told.sentence, told.sentence
    assert told.level == "note"
    assert f"{told.where} = " in choices


@pytest.mark.parametrize(
    ("block", "choices"),
    [
        ("coat", "skirt_flare = 9"),
        ("skirt", "hip_ease = 9"),
        ("trousers", "hem_width = 60"),
        ("waistcoat", 'breasted = "double"\nlap = 8'),
        ("shirt", "bust_ease = 14"),
        ("tailcoat", "turned_cuff = 9\nturned_cuff_spread = 3"),
        ("trousers", "fall_front = true\nfall_depth = 25"),
        ("shirt", "seam_allowance = 2"),
    ],
)
def test_what_moves_a_line_of_a_piece_is_not_told_idle(tmp_path: Path, block: str, choices: str) -> None:
    """As the pieces are drawn for the printer, with the last choice and without."""
    with_it, without = made(tmp_path, block, choices), made(tmp_path, block, choices.rpartition("\n")[0])
    assert drawn(with_it) != drawn(without)
    assert idle(with_it) == []


@pytest.mark.parametrize(
    ("block", "choices"),
    [
        ("coat", 'breasted = "double"\ncoat_buttons = 3'),
        ("fitted-top", 'back_shaping = "ease"'),
        ("waistcoat", "waistcoat_buttons = 5"),
    ],
)
def test_what_a_figure_gets_untyped_and_another_value_would_change_is_not_told_idle(
    tmp_path: Path, block: str, choices: str
) -> None:
    """Three buttons, asked for on a coat that gets three: the maker was told to leave `breasted` out."""
    with_it, without = made(tmp_path, block, choices), made(tmp_path, block, choices.rpartition("\n")[0])
    assert drawn(with_it) == drawn(without)
    assert idle(with_it) == []


def test_what_is_told_idle_moves_no_line_of_a_piece(tmp_path: Path) -> None:
    with_it, without = made(tmp_path, "coat", "hem_band = 8"), made(tmp_path, "coat", "")
    assert idle(with_it)
    assert drawn(with_it) == drawn(without)


def test_a_value_that_it_would_have_untyped_is_not_told(tmp_path: Path) -> None:
    choices = {choice: value for choice, (value, _) in made(tmp_path, "waistcoat", "").garments[0].choices.items()}
    assert idle(made(tmp_path, "waistcoat", f'breasted = "{choices["breasted"]}"')) == []
