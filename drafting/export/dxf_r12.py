"""A drawing of R12, written as text: layers, blocks, and what stands in them.

R12 has an entity for every corner. A library that keeps an object for each took longer over some twenty
thousand of them than all the drafting, and as long again to be loaded; here each is a few lines. The groups
are those of the DXF reference (from memory): 0 what it is, 2 its name, 8 its layer, 10 20 30 where. Numbers
of entities may be left out in R12, and are. What is asked for has the library's names, so that one
construction draws both versions; a general library reads the drawing back in tests.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

PlaceInDrawing = tuple[float, float]


class TextLayout:
    """A block, or the space that blocks are placed in: points, lines, polylines, words, blocks placed."""

    def __init__(self, name: str = "") -> None:
        self.name = name
        self.rows: list[str] = []

    def add_point(self, location: PlaceInDrawing, *, dxfattribs: Mapping[str, Any]) -> None:
        """Add a point."""
        self.rows.append(f"{_head('POINT', dxfattribs['layer'])}{_at(10, location)}")

    def add_line(self, start: PlaceInDrawing, end: PlaceInDrawing, *, dxfattribs: Mapping[str, Any]) -> None:
        """Add a straight line."""
        self.rows.append(f"{_head('LINE', dxfattribs['layer'])}{_at(10, start)}{_at(11, end)}")

    def add_text(self, words: str, *, height: float, dxfattribs: Mapping[str, Any]) -> None:
        """Add a line of words; `insert` is where it begins."""
        where = f"{_head('TEXT', dxfattribs['layer'])}{_at(10, dxfattribs['insert'])}"
        self.rows.append(f"{where} 40\n{float(height)}\n  1\n{words}\n")

    def add_polyline2d(
        self, points: Sequence[PlaceInDrawing], *, close: bool, dxfattribs: Mapping[str, Any]
    ) -> None:
        """Add a polyline: its head (66: corners follow; 70: closed or not), its corners, its end."""
        layer = dxfattribs["layer"]
        corner = _head("VERTEX", layer)
        self.rows.append(f"{_head('POLYLINE', layer)} 66\n1\n{_at(10, (0.0, 0.0))} 70\n{int(close)}\n")
        self.rows += [f"{corner} 10\n{x!r}\n 20\n{y!r}\n 30\n0.0\n" for x, y in points]
        self.rows.append(_head("SEQEND", layer))

    def add_blockref(self, name: str, insert: PlaceInDrawing, *, dxfattribs: Mapping[str, Any]) -> None:
        """Place a block."""
        self.rows.append(f"{_head('INSERT', dxfattribs['layer'])}  2\n{name}\n{_at(10, insert)}")

    def as_block(self) -> str:
        """Return the layout as a block of the drawing."""
        begun = f"{_head('BLOCK', '0')}  2\n{self.name}\n 70\n0\n{_at(10, (0.0, 0.0))}  3\n{self.name}\n"
        return f"{begun}{''.join(self.rows)}{_head('ENDBLK', '0')}"


class TextDrawing:
    """A drawing of R12 while it is made: the colours of its layers by name, its blocks, its space."""

    def __init__(self, unit: int) -> None:
        self.unit = unit
        self.layers: dict[str, int] = {"0": 7}
        self.space = TextLayout()
        self.blocks: list[TextLayout] = []

    def block(self, name: str) -> TextLayout:
        """Return a new block."""
        self.blocks.append(TextLayout(name))
        return self.blocks[-1]

    def text(self, least: PlaceInDrawing, most: PlaceInDrawing) -> str:
        """Return the file; the head says how far the drawing reaches.

        The head names its unit too: a reader of R12 that knows no such word passes it over (DXF reference, from
        memory: 4 is millimetres, and a variable that is not known is left out).
        """
        head = (
            f"  9\n$ACADVER\n  1\nAC1009\n  9\n$INSUNITS\n 70\n{self.unit}\n  9\n$DWGCODEPAGE\n  3\nANSI_1252\n"
            f"  9\n$INSBASE\n{_at(10, (0.0, 0.0))}  9\n$EXTMIN\n{_at(10, least)}  9\n$EXTMAX\n{_at(10, most)}"
        )
        blocks = "".join(block.as_block() for block in self.blocks)
        parts = {"HEADER": head, "TABLES": self._tables(), "BLOCKS": blocks, "ENTITIES": "".join(self.space.rows)}
        return "".join(f"  0\nSECTION\n  2\n{name}\n{part}  0\nENDSEC\n" for name, part in parts.items()) + END

    def _tables(self) -> str:
        """Return the tables that a drawing cannot do without: one line type, the layers, one style of words."""
        layers = [
            f"  0\nLAYER\n  2\n{name}\n 70\n0\n 62\n{colour}\n  6\nCONTINUOUS\n"
            for name, colour in self.layers.items()
        ]
        tables = {"LTYPE": [LINE_TYPE], "LAYER": layers, "STYLE": [WORDS]}
        return "".join(
            f"  0\nTABLE\n  2\n{name}\n 70\n{len(rows)}\n{''.join(rows)}  0\nENDTAB\n"
            for name, rows in tables.items()
        )


LINE_TYPE = "  0\nLTYPE\n  2\nCONTINUOUS\n 70\n0\n  3\nSolid line\n 72\n65\n 73\n0\n 40\n0.0\n"
WORDS = "  0\nSTYLE\n  2\nSTANDARD\n 70\n0\n 40\n0.0\n 41\n1.0\n 50\n0.0\n 71\n0\n 42\n2.5\n  3\ntxt\n  4\n\n"
END = "  0\nEOF\n"


def _head(kind: str, layer: str) -> str:
    return f"  0\n{kind}\n  8\n{layer}\n"


def _at(code: int, spot: PlaceInDrawing) -> str:
    return f" {code}\n{float(spot[0])!r}\n {code + 10}\n{float(spot[1])!r}\n {code + 20}\n0.0\n"
