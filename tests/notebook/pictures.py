"""The live picture read back by a general SVG library, as mm."""

from __future__ import annotations

import io
import re
from typing import Any
from xml.etree import ElementTree

from svgelements import SVG

SPACE = "{http://www.w3.org/2000/svg}"


def view_box(text: str) -> tuple[float, float, float, float]:
    """Return x, y, width and height of what is shown, in the picture's mm."""
    found = re.search(r'viewBox="([^"]*)"', text)
    assert found
    x, y, width, height = map(float, found[1].split())
    return x, y, width, height


def read_picture(text: str) -> dict[str, Any]:
    """Return every element with an id, in the picture's own mm wherever it is looked at."""
    sized = re.sub(r'viewBox="[^"]*"', 'viewBox="0 0 9 9"', text, count=1)
    sized = sized.replace('width="100%" height="100%"', 'width="9mm" height="9mm"', 1)
    page = SVG.parse(io.StringIO(sized), ppi=25.4)
    return {element.id: element for element in page.elements() if element.id}


def root(text: str) -> ElementTree.Element:
    return ElementTree.fromstring(text)
