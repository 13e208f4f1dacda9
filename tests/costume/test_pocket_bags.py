"""The bag of a pocket is cut, laid and bought of the cloth that is named for it, and a thick one is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.lays import laid_out
from drafting.costume.make import Made, make
from drafting.ground.errors import InputError
from tests.notebook.trials import CLOTH, UNEVEN

COSTUME = """title = "Cords, invented"
unit = "cm"
wearer = "wearer.toml"
[fabrics]
shell = "cloth.toml"
pocketing = "calico.toml"
[garments.trousers]
block = "trousers"
fabric = "shell"
[[garments.trousers.pockets]]
piece = "front"
kind = "{kind}"
edge = "side"
width = 5
along = 0.8
{more}
"""

CALICO = 'title = "Calico, invented"\nunit = "cm"\nwidth = 120\nfibre = "cotton"\n'


def made(folder: Path, more: str, kind: str = "slant", cloth: str = CLOTH) -> Made:
    texts = {"wearer": UNEVEN, "cloth": cloth, "calico": CALICO, "costume": COSTUME.format(kind=kind, more=more)}
    for name, text in texts.items():
        (folder / f"{name}.toml").write_text(text, "utf-8")
    return make(read_costume(folder / "costume.toml"))


def corduroy() -> str:
    """Return a pile cloth of the same width."""
    return 'title = "Corduroy, invented"\nunit = "cm"\nwidth = 140\nfibre = "cotton"\nsort = "pile"\n'


def test_a_bag_is_laid_and_bought_of_the_cloth_that_is_named(tmp_path: Path) -> None:
    """Pocket bags of corduroy trousers could be cut from corduroy only."""
    found = made(tmp_path, 'bag = "pocketing"', cloth=corduroy())
    draft = found["trousers"].draft
    bags = [p.name for p in draft.pieces if p.cut_from == "pocketing"]
    assert bags
    assert all("bag" in name for name in bags)
    assert draft[bags[0].replace("bag", "back")].cut_from == ""  # it shows in the mouth
    (lay,) = [lay for lay in laid_out(found).lays if lay.role == "pocketing"]
    assert 0.0 < lay.buy_length < 800.0
    assert not [f for f in found.findings if f.check == "pocket bag"]


def test_a_bag_of_pile_is_told_and_the_way_out_is_one_that_works(tmp_path: Path) -> None:
    (told, *more) = [f for f in made(tmp_path, "", cloth=corduroy()).findings if f.check == "pocket bag"]
    assert not more
    assert told.level == "warning"
    assert 'bag = "pocketing"' in told.sentence
    assert not [f for f in made(tmp_path, "").findings if f.check == "pocket bag"]


@pytest.mark.parametrize(
    ("kind", "more", "said"),
    [
        ("slant", 'bag = "pocketting"', "did you mean pocketing"),
        ("slant", "bag = 3", "is no role under"),
        ("patch", 'bag = "pocketing"\ninside = 8\nwidth = 12', "it has no bag"),
    ],
)
def test_a_bag_that_cannot_be_is_refused_with_its_line(tmp_path: Path, kind: str, more: str, said: str) -> None:
    costume = COSTUME.replace("width = 5\n", "") if "width" in more else COSTUME
    (tmp_path / "costume.toml").write_text(costume.format(kind=kind, more=more), "utf-8")
    for name, text in {"wearer": UNEVEN, "cloth": CLOTH, "calico": CALICO}.items():
        (tmp_path / f"{name}.toml").write_text(text, "utf-8")
    with pytest.raises(InputError) as caught:
        read_costume(tmp_path / "costume.toml")
    (fault,) = caught.value.faults
    assert said in str(fault)
    assert fault.line is not None
    assert fault.field.endswith("bag")
