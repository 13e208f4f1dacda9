"""Layers of a drawing as vector editors know them, by svgwrite's own extension; the description's stops."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
import svgwrite
from svgwrite.extensions import Inkscape

from drafting.export.svg import svg_text
from drafting.sheet.piece import piece_sheet
from tests.export import invented
from tests.export.reading import EDITOR, check

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def text() -> str:
    return svg_text(piece_sheet(invented.front(), invented.KITE))


def test_every_group_lies_in_a_named_layer_written_as_the_library_writes_one(text: str) -> None:
    drawing = svgwrite.Drawing()
    layer = Inkscape(drawing).layer(label="cut line")
    wanted = {key.partition(":")[2] for key in layer.attribs if key.startswith("inkscape:")}
    groups = [child for child in ElementTree.fromstring(text.encode()) if child.tag == f"{SVG}g"]
    assert len(groups) > 5
    for group in groups:
        own = {key.removeprefix(EDITOR): value for key, value in group.attrib.items()}
        assert set(own) == wanted
        assert own["groupmode"] == layer.attribs["inkscape:groupmode"]
    labels = [group.get(f"{EDITOR}label") for group in groups]
    assert len(labels) == len(set(labels))
    assert {"cut line", "stitch line", "grainline", "label", "scale check"} <= set(labels)
    check(text)


def test_the_description_has_one_stop_behind_each_sentence(text: str) -> None:
    said = ElementTree.fromstring(text.encode()).findtext(f"{SVG}desc") or ""
    assert "Make a mock-up first." in said
    assert not re.search(r"\.\s*\.", said)
    assert said.endswith(".")


def test_a_drawing_for_the_screen_has_no_layers_of_an_editor() -> None:
    assert "inkscape" not in svg_text(piece_sheet(invented.front(), invented.KITE), fit=True)
