"""A drawing of R2000 by a general DXF library, which is loaded by whoever asks for that version only.

It has the calls of `dxf_r12`, so that one construction draws both versions.
"""

from __future__ import annotations

import io
import logging
import threading
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from typing import Any

from drafting.export.dxf_layers import MEANING
from drafting.export.dxf_r12 import PlaceInDrawing

logger = logging.getLogger("ezdxf")

_one_at_a_time = threading.Lock()


class LibraryLayout:
    """A layout of the library's."""

    def __init__(self, layout: Any) -> None:
        self.layout = layout
        self.add_point, self.add_line, self.add_text = layout.add_point, layout.add_line, layout.add_text
        self.add_blockref = layout.add_blockref

    def add_polyline2d(
        self, points: Sequence[PlaceInDrawing], *, close: bool, dxfattribs: Mapping[str, Any]
    ) -> None:
        """Add a polyline of the kind that this version knows."""
        self.layout.add_lwpolyline(points, close=close, dxfattribs=dxfattribs)


class LibraryDrawing:
    """A drawing of R2000 while it is made: the colours of its layers by name, its blocks, its space."""

    def __init__(self, unit: int) -> None:
        from ezdxf.filemanagement import new

        with _undated():
            self.document: Any = new("R2000")
        self.document.units = unit
        self.document.header["$MEASUREMENT"] = 1
        self.layers: dict[str, int] = {}
        self.space = LibraryLayout(self.document.modelspace())

    def block(self, name: str) -> LibraryLayout:
        """Return a new block."""
        return LibraryLayout(self.document.blocks.new(name))

    def text(self, least: PlaceInDrawing, most: PlaceInDrawing) -> str:
        """Return the file; the head says how far the drawing reaches."""
        meanings = {str(number): meaning for number, meaning in MEANING.items()}
        for name, colour in self.layers.items():
            self.document.layers.add(name, color=colour).description = meanings.get(name, "")
        self.document.modelspace().reset_extents((*least, 0.0), (*most, 0.0))  # the writer puts them into the head
        stream = io.StringIO()
        with _undated():
            self.document.write(stream)
        return stream.getvalue()


@contextmanager
def _undated() -> Iterator[None]:
    """Hold the library from stamping time and ids, which a switch of its own decides, and from saying anything."""
    from ezdxf import options  # type: ignore[attr-defined]

    with _one_at_a_time:
        before, told = options.write_fixed_meta_data_for_testing, logger.level
        options.write_fixed_meta_data_for_testing = True
        logger.setLevel(logging.ERROR)
        try:
            yield
        finally:
            options.write_fixed_meta_data_for_testing = before
            logger.setLevel(told)
