"""A lay as a sheet: the cloth, every piece where it lies, names, hands and arrows.

x runs along the selvedge, left to right; on folded cloth the fold is the lower edge. True to scale.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from drafting.draft.piece import Piece
from drafting.finish.label import piece_title, spoken
from drafting.geometry import Path, line
from drafting.ground.lengths import in_unit, told
from drafting.ground.names import clean_text, name_in_words
from drafting.ground.palette import Colour
from drafting.ground.units import ShownUnit, show_length
from drafting.layout import Lay, Spot
from drafting.layout.cloth import LayName
from drafting.sheet import LEADING, Layer, Sheet, Stroke, Text, assembled, box_path, text_width
from drafting.sheet.faces import face
from drafting.sheet.room import Room, near
from drafting.sheet.scale import scale_bar
from drafting.sheet.style import HEAD, open_head

SIZES = (1.0, 0.8, 0.62, 0.48, 0.36)
"""Shares of the full text size tried for a name in its piece (ours)."""

HANDS = {"left": "left", "right": "right", "both": "left + right", "single": ""}


@dataclass(frozen=True)
class _Placed:
    """One outline of a lay where it lies."""

    lay: Lay
    spot: Spot

    @cached_property
    def cut(self) -> Path:
        outline = self.lay.outline(self.spot)
        path = outline.placed(self.spot, outline.path)
        return path.reversed() if path.area < 0 else path

    @cached_property
    def grain(self) -> Path | None:
        outline = self.lay.outline(self.spot)
        drawn = outline.part.cut.grainline
        if drawn is None:
            return None
        return outline.placed(self.spot, drawn.mapped(outline.base))

    @property
    def piece(self) -> Piece:
        return self.lay.outline(self.spot).part.cut.piece

    @property
    def number(self) -> int:
        return self.lay.outline(self.spot).part.cut.number


def layout_sheet(lay: Lay, title: str = "", garments: Sequence[str] = (), unit: ShownUnit = "cm") -> Sheet:
    """Return the lay drawn true to scale, told in `unit`; `garments` names all of the costume, in order."""
    placed = [_Placed(lay, spot) for spot in lay.packing.spots]
    order = list(dict.fromkeys([*garments, *(p.lay.outline(p.spot).part.garment for p in placed)]))
    size = min(26.0, max(10.0, (lay.length + lay.cloth.layer_width(lay.lay)) / 90))
    strokes = [*_cloth(lay), *(s for p in placed for s in _piece(p, order))]
    texts = [*_heading(lay, title, size, unit), *(t for p in placed for t in _name(p, size))]
    texts += _edges(lay, size)
    low = -2.6 * size
    bar, figures = scale_bar(complex(0, low - 2.2 * size), 0.7 * size, unit=unit)
    key, words = _key(lay, order, complex(560.0, low - 2.2 * size), size)
    head = " - ".join(filter(None, (clean_text(title), lay.cloth.title)))
    return assembled(
        head, (*strokes, *bar, *key), (*texts, *figures, *words), 12.0, f"Layout. {in_unit(lay.summary(), unit)}"
    )


def _cloth(lay: Lay) -> Iterator[Stroke]:
    end, high = lay.end, lay.cloth.layer_width(lay.lay)
    whole = box_path((0.0, 0.0, max(end, 1.0), high))
    yield Stroke(Layer.CLOTH, (whole,), "cloth", closed=True, tint=Colour.CLOTH)
    meet = lay.job.strip.meet
    if lay.lay == "folded" or meet is not None:
        yield Stroke(Layer.FOLD, (line(0j, complex(max(end, 1.0), 0)),), "fold")
    if meet is not None:
        yield Stroke(Layer.FOLD, (line(1j * high, complex(max(end, 1.0), high)),), "fold.2")
        yield Stroke(Layer.PLACEMENT, (line(1j * meet, complex(max(end, 1.0), meet)),), "selvedges-meet")
    if lay.lay == "crosswise":
        yield Stroke(Layer.FOLD, (line(0j, complex(0, high)),), "fold")
    for n, box in enumerate(lay.job.strip.blocked, 1):
        x0, y0, x1, y1 = box
        cross = (box_path(box), line(complex(x0, y0), complex(x1, y1)), line(complex(x0, y1), complex(x1, y0)))
        yield Stroke(Layer.PLACEMENT, cross, f"fault.{n}")


def _piece(placed: _Placed, order: list[str]) -> Iterator[Stroke]:
    lay, spot = placed.lay, placed.spot
    garment = lay.outline(spot).part.garment
    tint = face(placed.piece.cut_from, order.index(garment))
    name = lay.id(spot)
    yield Stroke(Layer.CUT, (placed.cut,), name, closed=True, tint=tint)
    if grain := placed.grain:
        size = min(HEAD, grain.length / 6)
        ends = [(grain.start, -grain.leave), (grain.end, grain.arrive)]
        if lay.cloth.one_way:  # one arrow head: the way the piece points on one-way cloth
            ends = [max(ends, key=lambda tip: tip[1].real)]
        heads = tuple(open_head(tip, heading, size) for tip, heading in ends)
        yield Stroke(Layer.GRAIN, (grain,), f"{name}.grainline")
        yield Stroke(Layer.GRAIN, heads, f"{name}.grainline.heads")


def _name(placed: _Placed, full: float) -> tuple[Text, ...]:
    """Return number, name and hand, as large as they fit in the piece clear of its grainline."""
    outline = placed.lay.outline(placed.spot)
    hand = HANDS[placed.lay.job.copies[placed.spot.copy].hand]
    lies = "on fold" if outline.fold else "opened" if outline.opened else ""
    what = (lies, hand)
    short = (f"{placed.number} {piece_title(placed.piece)}",)
    tail = tuple(filter(None, (clean_text(outline.part.of), ", ".join(filter(None, what)))))
    tries = ((*short, *tail), (*short[0].split(), *tail), (str(placed.number), *tail))
    room = Room.inside(placed.cut, [placed.grain] if placed.grain else [])
    x0, y0, x1, y1 = placed.cut.bounds
    for share in SIZES:
        for said in tries[: 2 if share > SIZES[-1] else 3]:
            text = Text(0j, share * full, said, "middle")
            wide, high = text_width(text) + 2, LEADING * text.size * len(said) + 2
            corner = room.place(wide, high, near(complex(x0 + x1, y0 + y1) / 2, wide, high))
            if corner is not None:
                first = corner + complex(wide / 2, high - 1 - 0.85 * text.size)
                return (text.moved(first),)
    middle = complex(x0 + x1, y0 + y1) / 2 - 0.12j * full
    return (Text(middle, SIZES[-1] * full, (str(placed.number),), "middle"),)


def _heading(lay: Lay, title: str, size: float, unit: ShownUnit) -> Iterator[Text]:
    top = lay.cloth.layer_width(lay.lay)
    rows = [
        f"{lay.cloth.title}, {lay.spread}",
        f"lay {show_length(lay.length, unit)}, buy {in_unit(told(lay.buy_length, 'bought'), unit)}; "
        f"{100 * lay.utilisation:.0f} % used, {lay.words}",
    ]
    if lay.left_out:
        names = ", ".join(name_in_words(outline.part.name) for outline in lay.left_out)
        rows.append(f"NOT LAID, wider than the cloth: {names}")
    at = complex(0, top + 2.4 * size + LEADING * size * len(rows))
    yield Text(at + 0.6j * size, 1.5 * size, (clean_text(title) or "Layout",), bold=True)
    yield Text(at - LEADING * size * 1j, size, tuple(rows))


def _edges(lay: Lay, size: float) -> Iterator[Text]:
    top = lay.cloth.layer_width(lay.lay)
    small = 0.8 * size
    low, high = EDGES.get(lay.lay, ("selvedge", "selvedge"))
    turned = "nap this way up: every piece points right" if lay.cloth.one_way else ""
    yield Text(complex(0, -1.2 * small), small, (low,), layer=Layer.LABEL)
    yield Text(complex(0, top + 0.4 * small), small, (high,), layer=Layer.LABEL)
    if turned:
        at = complex(max(lay.end, 1.0), top + 0.4 * small)
        yield Text(at, small, (turned,), "end")


EDGES: dict[LayName, tuple[str, str]] = {
    "folded": ("fold", "selvedges"),
    "double": ("fold", "second fold; the selvedges meet at the thin line between, and nothing lies across it"),
}
"""What the lower and the upper edge of folded cloth are."""


def _key(lay: Lay, order: list[str], at: complex, size: float) -> tuple[list[Stroke], list[Text]]:
    """Return the face of each garment that lies here, beside the scale bar."""
    strokes, texts = [], []
    parts = [lay.outline(spot).part for spot in lay.packing.spots]
    here = {part.garment: part.cut.piece.cut_from for part in reversed(parts)}
    for n, garment in enumerate(order):
        if garment in here:
            box = box_path((at.real, at.imag, at.real + 2 * size, at.imag + size))
            tint = face(here[garment], n)
            strokes.append(Stroke(Layer.PLACEMENT, (box,), f"key.{garment}", True, tint))
            text = Text(at + complex(2.4 * size, 0.1 * size), 0.8 * size, (spoken(garment),))
            texts.append(text)
            at += 3.5 * size + text_width(text)
    return strokes, texts
