"""A piece has one face: the same in the overview, on the bench, on the lay and in the plan."""

from __future__ import annotations

import re
from functools import cache

from drafting.costume.file import read_costume
from drafting.costume.make import Made
from drafting.export.svg import svg_text
from drafting.ground.palette import Colour
from drafting.ground.shipped import demo_costume
from drafting.notebook.bench import state as st
from drafting.notebook.picture import garment_svg
from drafting.output.sheets import piece_label
from drafting.sheet import Layer
from drafting.sheet.lay import layout_sheet
from drafting.sheet.overview import overview_sheet
from drafting.sheet.piece import piece_sheet
from tests.export.reading import shapes
from tests.making.figures import laid


@cache
def made() -> Made:
    return laid("lamplighter")


def faces_of_the_overview() -> dict[str, str]:
    sheet = overview_sheet([garment.pattern for garment in made().garments])
    return {s.id.removesuffix(".cut-line"): str(s.tint) for s in sheet.on(Layer.CUT)}


def fills(text: str) -> dict[str, str]:
    """Return the fill of each cut line by its id, as svgelements reads it."""
    read = shapes(text, "cut-line")
    return {name: path.values["fill"] for name, path in read.items()}


def test_the_kinds_of_cloth_have_faces_of_their_own() -> None:
    faces = faces_of_the_overview()
    kinds = {
        (garment.name, piece.material): faces[f"{garment.name}.{piece.name}"]
        for garment in made().garments
        for piece in garment.draft.pieces
    }
    assert kinds["coat", ""] == Colour.OWN_1
    assert kinds["coat", "lining"] == Colour.LINING_1
    assert kinds["shirt", "interfacing"] == Colour.INTERFACING_2
    assert kinds["breeches", ""] == Colour.OWN_3
    assert len(set(kinds.values())) == len(kinds)


def test_a_piece_has_the_same_face_on_the_bench() -> None:
    faces, names = faces_of_the_overview(), [garment.name for garment in made().garments]
    for garment in names:
        alone = st.begin_standing(read_costume(demo_costume()), garment).made
        text = garment_svg(alone, garment, garments=names)
        shown = dict(re.findall(r'class="cut-line" d="[^"]*" id="([^"]*)\.cut-line" fill="([^"]*)"', text))
        assert shown == {n: f for n, f in faces.items() if n.startswith(f"{garment}.")}


def test_a_piece_has_the_same_face_on_the_lay() -> None:
    faces, names = faces_of_the_overview(), [garment.name for garment in made().garments]
    seen = set()
    for lay in made().lays:
        for name, fill in fills(svg_text(layout_sheet(lay, "", names))).items():
            piece = ".".join(name.split(".")[:2])
            assert fill == faces[piece]
            seen.add(piece)
    assert seen == faces.keys()


def test_a_piece_of_paper_is_not_inked_all_over() -> None:
    """What is printed true to scale shows lines alone."""
    garment = made().garments[0]
    sheet = piece_sheet(garment.pattern.pieces[0], piece_label(made(), garment))
    assert {stroke.tint for stroke in sheet.strokes} == {None}
