"""A strip to paste over, as it is printed: cut round its paper, laid old line on old line, pasted, trimmed."""

from __future__ import annotations

from drafting.draft.pattern import CutPiece
from drafting.finish.label import piece_title, spoken
from drafting.fitting.strip import PasteOver
from drafting.geometry import line
from drafting.ground.lengths import in_unit, told
from drafting.ground.units import ShownUnit
from drafting.printing.piece_on_paper import PieceOnPaper
from drafting.sheet import Layer, Stroke, Text
from drafting.sheet.style import open_head

ARROW = 2.0
"""mm: a shorter way has no room for an arrow; its length is told all the same (ours)."""


def strip_on_paper(strip: PasteOver, cut: CutPiece, number: int, unit: ShownUnit = "cm") -> PieceOnPaper:
    """Return a strip true to scale; `cut` is the piece as it is now, `number` counts its strips."""
    name = f"{strip.piece}.strip-{number}"
    strokes = [
        Stroke(Layer.CUT, (strip.ring,), f"{name}.paper", closed=True),
        Stroke(Layer.STITCH, strip.new, f"{name}.new"),
        Stroke(Layer.GUIDE, (*strip.old, *strip.stays), f"{name}.old"),
        Stroke(Layer.NOTCH, strip.cut, f"{name}.cut-line"),
    ]
    if strip.moved > ARROW:
        shaft = line(strip.came_from, strip.at)
        head = open_head(strip.at, shaft.arrive, min(4.0, strip.moved / 2))
        strokes.append(Stroke(Layer.PLACEMENT, (shaft, head), f"{name}.moved"))
    title = f"{cut.number} {piece_title(cut.piece)}, strip {number}"
    return PieceOnPaper(
        name=name,
        title=title,
        strokes=tuple(stroke for stroke in strokes if stroke.paths),
        texts=(_words(strip, title, unit),),
        ring=tuple(strip.ring.points(0.5)[:-1]),
        area=abs(strip.ring.area),
    )


def _words(strip: PasteOver, title: str, unit: ShownUnit) -> Text:
    """Return what is written beside the new line, on the side of the cloth."""
    middle = strip.new[len(strip.new) // 2]
    inward = 1j * middle.tangent(middle.length / 2)
    edges = ", ".join(spoken(edge) for edge in strip.edges)
    lines = (
        title,
        edges,
        f"moved {in_unit(told(strip.moved, 'fine'), unit)} at most",
        "thin: the old line, on yours",
    )
    at = middle.at(middle.length / 2) + 9.0 * inward
    return Text(at, 2.6, lines, "start" if inward.real >= 0 else "end")
