"""Contact sheets: each place of the bust dart, the hip length, the close top, legs and fullness.

Six very different invented bodies on each, drawn by the kit's own overview. Nothing is compared:
the pictures are there to be looked at after a change of shape, and `DRAFTING_REWRITE_GOLDEN=1`
rewrites them.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path as FilePath

import pytest

from drafting.body import Body, wearer
from drafting.costume.choices import choose
from drafting.costume.garment import MadeGarment, draft_garment, make_garment
from drafting.fabric import Fabric
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin
from drafting.sheet.overview import overview_sheet
from tests.blocks.contact_pictures import drawn_and_stored
from tests.blocks.test_contact_sheet import SIX, in_columns
from tests.population import SETTINGS

SHOWN = (
    *(name for name in SETTINGS if name.startswith("waist") and name != "waist, side"),
    "hip, side",
    "hip, shoulder-princess",
    "close top",
)
"""Waist length with the side dart has its own sheet, with stored numbers."""

JERSEY = Fabric(
    "Stretch jersey, invented",
    weave="knit",
    stretch_across=0.5,
    stretch_along=0.3,
    recovery=0.95,
    eases="little",
    thickness=0.6,
    takes_fusible=False,
)

GARMENTS: dict[str, tuple[str, dict[str, object], Fabric | None]] = {
    "trouser": ("trouser", {}, None),
    "trousers": ("trousers", {}, None),
    "trouser-flared-stretch": (
        "trouser",
        {"leg": "flared", "stretch_share": 0.25, "waist_finish": "casing", "hem_width": 700},
        JERSEY,
    ),
    "breeches": ("breeches", {}, None),
    "puffed-top": ("puffed-top", {}, JERSEY),
    "full-sleeved-shirt": ("shirt", {"hem_fullness": 2.0, "overhang": 40}, None),
}
"""Legs, and what poofs: block, choices, cloth."""

DPI = 90


def six() -> dict[str, Body]:
    return {
        title: wearer({n: float(mm) for n, mm in measures.items()}, title=title) for title, measures in SIX.items()
    }


def drawn(setting: str, title: str, body: Body) -> MadeGarment:
    chosen = SETTINGS[setting]
    given = {name: Given(value) for name, value in chosen.choices.items()}
    filled = choose(chosen.kind, given, body_scale(body), Origin())
    return make_garment(body, chosen.fabric, chosen.kind, filled, name=title, role="shell")


@pytest.mark.parametrize("setting", SHOWN)
def test_six_bodies_are_drawn_and_none_has_an_error(setting: str, tmp_path: FilePath) -> None:
    garments = {title: drawn(setting, title, body) for title, body in six().items()}
    for title, garment in garments.items():
        assert [f.message for f in garment.findings if f.level == "error"] == [], title
    sheets = [overview_sheet([g.pattern], title) for title, g in garments.items()]
    sheet = replace(in_columns(sheets, 2), title=f"Torso and sleeve, {setting}, six invented bodies")
    shown = " ".join(line for text in sheet.texts for line in text.lines)
    assert shown.count("Sleeve") == len(SIX)
    name = f"contact-{setting.replace(', ', '-').replace(' ', '-')}.png"
    drawn_and_stored(sheet, name, tmp_path, dpi=DPI, least=20_000)


@pytest.mark.parametrize("name", GARMENTS)
def test_six_bodies_are_drawn_in_each_garment_and_none_has_an_error(name: str, tmp_path: FilePath) -> None:
    block, choices, cloth = GARMENTS[name]
    sheets = []
    for title, body in six().items():
        garment = draft_garment(body, cloth, block, choices, name=title)
        assert [f.message for f in garment.findings if f.level == "error"] == [], title
        sheets.append(overview_sheet([garment.pattern], title))
    sheet = replace(in_columns(sheets, 2), title=f"{name}, six invented bodies")
    drawn_and_stored(sheet, f"contact-{name}.png", tmp_path, dpi=60, least=20_000)
