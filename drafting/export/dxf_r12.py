"""What a block of R12 holds, written as text: points, lines, polylines and words.

R12 has an entity for every corner. The library keeps an object for each, and some twenty thousand of them
took longer than all the drafting; here each is a few lines of text in one entity of its list. What is asked
for, and the numbers that entities bear, are as the library's own blocks have it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ezdxf.entities.dxfgfx import DXFGraphic


class WrittenBlock(DXFGraphic):
    """One entity in a block's list that writes all that the block holds."""

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[str] = []
        self.numbers: Any = None

    @classmethod
    def begun(cls, block: Any) -> WrittenBlock:
        """Return the text of an empty block, which stands in it from now on."""
        text = cls.new(doc=block.doc)
        text.numbers = block.doc.entitydb.handles
        block.block_record.entity_space.add(text)
        return text

    def _write(self, tagwriter: Any) -> None:
        tagwriter.write_str("".join(self.rows))

    export_dxf = _write  # what the library calls

    def add_point(self, location: tuple[float, float], *, dxfattribs: Mapping[str, Any]) -> None:
        """Add a point."""
        self.rows.append(f"{self._head('POINT', dxfattribs['layer'])}{_at(10, location)}")

    def add_line(
        self, start: tuple[float, float], end: tuple[float, float], *, dxfattribs: Mapping[str, Any]
    ) -> None:
        """Add a straight line."""
        self.rows.append(f"{self._head('LINE', dxfattribs['layer'])}{_at(10, start)}{_at(11, end)}")

    def add_text(self, words: str, *, height: float, dxfattribs: Mapping[str, Any]) -> None:
        """Add a line of words; `insert` is where it begins."""
        where = f"{self._head('TEXT', dxfattribs['layer'])}{_at(10, dxfattribs['insert'])}"
        self.rows.append(f"{where} 40\n{float(height)}\n  1\n{words}\n")

    def add_polyline2d(
        self, points: Sequence[tuple[float, float]], *, close: bool, dxfattribs: Mapping[str, Any]
    ) -> None:
        """Add a polyline: its head (66: corners follow; 70: closed or not), its corners, its end."""
        layer = dxfattribs["layer"]
        head = f"{self._head('POLYLINE', layer)} 66\n1\n{_at(10, (0, 0))} 70\n{int(close)}\n"
        end = self._head("SEQEND", layer)  # numbered before the corners
        corners = (f"{self._head('VERTEX', layer)}{_at(10, point)} 70\n0\n" for point in points)
        self.rows += (head, *corners, end)

    def _head(self, kind: str, layer: str) -> str:
        return f"  0\n{kind}\n  5\n{self.numbers.next()}\n  8\n{layer}\n"


def _at(code: int, spot: tuple[float, float]) -> str:
    return f" {code}\n{float(spot[0])}\n {code + 10}\n{float(spot[1])}\n {code + 20}\n0.0\n"
