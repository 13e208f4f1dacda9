"""Read an SVG back with a general SVG library, never with our own code; lengths in mm."""

from __future__ import annotations

import io
from typing import Any
from xml.etree import ElementTree

from svgelements import SVG, Matrix, Path, Shape
from svgwrite.validator2 import get_validator

EDITOR = "{http://www.inkscape.org/namespaces/inkscape}"
"""The name space of svgwrite's extension for layers (`svgwrite.extensions.Inkscape`)."""

PPI = 25.4
"""With 25.4 dots to the inch the library gives millimetres."""


def page(text: str) -> Any:
    return SVG.parse(io.StringIO(text), ppi=PPI)


def shapes(text: str, kind: str) -> dict[str, Any]:
    """Return the shapes of one class by id, moved to where they are drawn."""
    found = [e for e in page(text).elements() if isinstance(e, Shape)]
    return {e.id: Path(e) * Matrix() for e in found if e.values.get("class") == kind}


def corners(shape: Any) -> list[complex]:
    return [complex(s.end) for s in shape if type(s).__name__ != "Move"]


def point(shape: Any, t: float) -> complex:
    at = shape.point(t)
    return complex(at.x, at.y)


def length(shape: Any) -> float:
    return float(shape.length(error=1e-9))


def check(text: str) -> None:
    """Have svgwrite check every element and attribute against SVG 1.1, full profile; it raises."""
    rules = get_validator("full")

    def visit(element: ElementTree.Element) -> None:
        name = element.tag.rpartition("}")[2]
        own = {key: value for key, value in element.attrib.items() if not key.startswith(EDITOR)}
        rules.check_all_svg_attribute_values(name, own)
        for child in element:
            rules.check_valid_children(name, child.tag.rpartition("}")[2])
            visit(child)

    visit(ElementTree.fromstring(text.encode()))
