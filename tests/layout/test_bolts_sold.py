"""The table of other widths names the bolts that are sold where the maker buys: whole inches, or centimetres.

*Common practice*: by the inch cloth is sold 36, 45, 54 and 60 in wide; by the centimetre 90, 112, 137, 150, 160.
"""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from drafting.costume.file import CostumeFile, read_costume
from drafting.costume.lays import laid_out
from drafting.costume.make import make
from drafting.fabric import Fabric
from drafting.ground.units import ShownUnit
from drafting.layout import bolts_sold, cloth_of, lay_out
from drafting.notebook.lay_table.words import widths_html
from tests.layout.figures import COAT, cloth

BY_THE_INCH = {"36 in", "45 in", "54 in", "60 in"}
BY_THE_CM = {"90 cm", "112 cm", "137 cm", "150 cm", "160 cm"}
FILES = {
    "wearer.toml": 'title = "Invented"\nunit = "cm"\n[measures]\nheight = 168\nbust_girth = 92\n'
    "waist_girth = 74\nhip_girth = 98\n",
    "cloth.toml": 'title = "Invented"\nunit = "cm"\nwidth = 148\n',
}


def costume(folder: Path, unit: str) -> CostumeFile:
    for name, text in FILES.items():
        (folder / name).write_text(text, "utf-8")
    path = folder / "costume.toml"
    path.write_text(
        f'title = "Invented"\nunit = "{unit}"\nwearer = "wearer.toml"\n[fabrics]\nshell = "cloth.toml"\n'
        '[garments.shirt]\nblock = "shirt"\nfabric = "shell"\n',
        "utf-8",
    )
    return read_costume(path)


@pytest.mark.parametrize(("unit", "sold", "unsold"), [("in", BY_THE_INCH, "44 1/8"), ("cm", BY_THE_CM, "114.3")])
def test_page_07_tells_the_bolts_of_the_unit_that_the_maker_works_in(
    tmp_path: Path, unit: ShownUnit, sold: set[str], unsold: str
) -> None:
    for lay in laid_out(make(costume(tmp_path, unit)), count=5).lays:
        heads = set(re.findall(r"<th[^>]*row[^>]*>([^<]+)<", widths_html(lay, unit)))
        assert sold <= heads, lay.role
        assert not [head for head in heads if head.startswith(unsold)]
        assert len(heads) <= len(bolts_sold(unit)) + 1  # and the cloth's own


@pytest.mark.parametrize("unit", ["in", "cm"])
def test_a_wider_bolt_never_needs_more(unit: ShownUnit) -> None:
    lay = lay_out(COAT, replace(cloth(), bolts=bolts_sold(unit)), count=60)
    for way in ("folded", "open"):
        rows = sorted((o for o in lay.others if o.lay == way), key=lambda o: o.width)
        lengths = [o.length for o in rows if o.length is not None]
        assert lengths == sorted(lengths, reverse=True)


@pytest.mark.parametrize("width", bolts_sold("in"))
def test_a_cloth_of_a_width_that_is_sold_stands_once(width: float) -> None:
    # A cloth that shrinks: its width is worked out from what the wash leaves, to the last digit but one.
    bought = Fabric("Invented", usable_width=width - 20, width=width, selvedge=10, shrinkage_across=0.035)
    own = replace(cloth_of("shell", bought), bolts=bolts_sold("in"))
    assert own.width == pytest.approx(width)
    assert len(own.widths) == len(bolts_sold("in"))
