"""Read a PDF back with general libraries, never with our own code; lengths in mm, y up.

pdfplumber gives paths with their curves, moved to where they are drawn; pypdfium2 gives pixels.
"""

from __future__ import annotations

import io
import math
from collections.abc import Iterator
from typing import Any

import numpy as np
import pdfplumber
import pikepdf
import pypdfium2
from numpy.typing import NDArray

MM = 25.4 / 72

CUT, SQUARE = 0.7, 0.15
"""mm: widths of the lines that are looked for (the cut line; squares and joins)."""


class Traced:
    """One path of a page: its points, with curves cut into many chords."""

    def __init__(self, commands: list[Any], height: float, width: float, curves: int) -> None:
        self.points = commands_to_points(commands, height)
        self.closed = commands[-1][0] == "h"
        self.width, self.curves = width, curves

    @property
    def length(self) -> float:
        return float(np.abs(np.diff(self.points)).sum())

    @property
    def area(self) -> float:
        a, b = self.points[:-1], self.points[1:]
        return abs(float((a.conjugate() * b).imag.sum())) / 2

    @property
    def box(self) -> tuple[float, float, float, float]:
        x, y = self.points.real, self.points.imag
        return float(x.min()), float(y.min()), float(x.max()), float(y.max())


def commands_to_points(commands: list[Any], height: float) -> NDArray[np.complex128]:
    found: list[complex] = []
    for name, *operands in commands:
        p = [complex(x, height - y) * MM for x, y in operands]
        if name == "c":
            a, t = found[-1], np.linspace(0, 1, 401)[1:]
            b, c, d = p
            along = (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t**2 * c + t**3 * d
            found += [complex(q) for q in along]
        elif name == "h":
            found.append(found[0])
        else:
            found += p
    return np.array(found)


def pages(data: bytes) -> Iterator[tuple[Any, list[Traced]]]:
    """Yield each page and its single paths (those of several parts are left out)."""
    with pdfplumber.open(io.BytesIO(data)) as pdf:
        for page in pdf.pages:
            height = float(page.height)
            yield (
                page,
                [
                    Traced(o["path"], height, o["linewidth"] * MM, sum(c[0] == "c" for c in o["path"]))
                    for o in (*page.curves, *page.rects, *page.lines)
                ],
            )


def squares(paths: list[Traced], side: float, within: float = 0.3) -> list[Traced]:
    """Return the closed four-cornered paths about so large."""
    found = []
    for path in paths:
        x0, y0, x1, y1 = path.box
        if path.closed and len(path.points) == 5 and max(abs(x1 - x0 - side), abs(y1 - y0 - side)) < within:
            found.append(path)
    return found


def cut_lines(paths: list[Traced]) -> list[Traced]:
    return [p for p in paths if p.closed and math.isclose(p.width, CUT, abs_tol=0.01)]


def layers(data: bytes) -> list[str]:
    with pikepdf.open(io.BytesIO(data)) as pdf:
        return [str(group.Name) for group in pdf.Root.OCProperties.OCGs]


def only(data: bytes, keep: Any) -> bytes:
    """Return the file with every layer off for which `keep(name)` is false."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        groups = pdf.Root.OCProperties
        off = [g for g in groups.OCGs if not keep(str(g.Name))]
        groups.D.ON = pikepdf.Array([g for g in groups.OCGs if keep(str(g.Name))])
        groups.D.OFF = pikepdf.Array(off)
        out = io.BytesIO()
        pdf.save(out)
    return out.getvalue()


def pixels(data: bytes, per_mm: int) -> list[NDArray[np.uint8]]:
    """Return each page in grey, row 0 at the top."""
    pdf = pypdfium2.PdfDocument(data)
    scale = per_mm * MM
    return [np.asarray(page.render(scale=scale, grayscale=True).to_pil()) for page in pdf]


def labels(data: bytes) -> list[str]:
    pdf = pypdfium2.PdfDocument(data)
    return [pdf.get_page_label(n) for n in range(len(pdf))]


def words(data: bytes) -> str:
    """Return all text in the order written, however it is turned."""
    pdf = pypdfium2.PdfDocument(data)
    return " ".join(page.get_textpage().get_text_range() for page in pdf)
