"""A cloth made ready: the square that tells how it shrinks, the bath, the rail, the iron, the marks on it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import numpy as np

from drafting.layout import Lay
from drafting.making.stages.picture import Face, Ink, InkLine, InkMark, StageDrawing, drawn_panel

SIDE, CORNER = 350.0, 120.0
"""mm: the square that is sewn into a corner, as the plan has it, and how far it lies from both edges (ours)."""

LONG = 0.62
"""Length of cloth that is shown, as a share of its width (ours)."""

SHOWN = 0.08
"""Share by which a square that shrank is drawn smaller at least: less is not seen on paper (ours)."""


def made_ready(work: str, lay: Lay) -> StageDrawing | None:
    """Return the drawing of a kind of work that makes a cloth ready; None where words suffice."""
    draw = DRAWN.get(work)
    return StageDrawing("made ready", (drawn_panel(draw(lay)),)) if draw else None


def _cloth(lay: Lay) -> Iterator[Ink]:
    """Yield the end of a cloth, wrong side up, both selvedges."""
    wide = lay.cloth.width
    yield Face("wrong", np.array([0j, wide + 0j, complex(wide, wide * LONG), 1j * wide * LONG]))
    for x in (30.0, wide - 30.0):
        yield InkLine("fine", np.array([complex(x, 0), complex(x, wide * LONG)]))


def _square(side: tuple[float, float], stroke: str) -> InkLine:
    low = complex(CORNER, CORNER)
    corners = np.array([0j, side[0] + 0j, complex(*side), 1j * side[1], 0j]) + low
    return InkLine("firm" if stroke == "firm" else "hidden", corners)


def _measured(lay: Lay) -> Iterator[Ink]:
    yield from _cloth(lay)
    yield _square((SIDE, SIDE), "firm")


def _measured_again(lay: Lay) -> Iterator[Ink]:
    along, across = (max(share, SHOWN) for share in lay.cloth.shrinkage)
    yield from _measured_before(lay)
    yield _square((SIDE * (1 - across), SIDE * (1 - along)), "firm")
    yield InkMark("move", complex(CORNER + SIDE * (1 - across), CORNER + SIDE / 2), -1 + 0j, 50.0)
    yield InkMark("move", complex(CORNER + SIDE / 2, CORNER + SIDE * (1 - along)), -1j, 50.0)


def _measured_before(lay: Lay) -> Iterator[Ink]:
    yield from _cloth(lay)
    yield _square((SIDE, SIDE), "hidden")


def _bathed(lay: Lay) -> Iterator[Ink]:
    """Yield a basin with the cloth in it, under water."""
    wide = lay.cloth.width / 2
    yield Face("notion", np.array([0j, wide + 0j, complex(wide * 1.2, wide / 2), complex(-wide * 0.2, wide / 2)]))
    turn = np.linspace(0, 4 * np.pi, 48)
    for level in (0.42, 0.34):
        yield InkLine("fine", np.linspace(-wide * 0.12, wide * 1.12, 48) + 1j * (wide * level + 12 * np.sin(turn)))
    folds = [complex(wide * (0.15 + 0.1 * (i % 2) + 0.08 * i), wide * (0.06 + 0.2 * (i % 2))) for i in range(8)]
    yield InkLine("sewn", np.array(folds))


def _dried(lay: Lay) -> Iterator[Ink]:
    """Yield the cloth over a rail, its ends even."""
    wide = lay.cloth.width
    yield InkLine("edge", np.array([-120 + 0j, wide + 120.0]))
    yield Face("wrong", np.array([0j, wide + 0j, complex(wide, -wide * LONG), -1j * wide * LONG]))
    yield InkLine("hidden", np.array([complex(20, -wide * LONG + 40), complex(wide - 20, -wide * LONG + 40)]))


def _smooth(lay: Lay) -> Iterator[Ink]:
    """Yield the cloth flat and unstretched, smoothed along its length."""
    yield from _cloth(lay)
    middle = complex(lay.cloth.width / 2, lay.cloth.width * LONG / 2)
    yield from (InkMark("grain", middle + x + 120j, 1j, 90.0) for x in (-300.0, 0.0, 300.0))


def _weighed(lay: Lay) -> Iterator[Ink]:
    """Yield the cloth flat under boards."""
    yield from _cloth(lay)
    wide = lay.cloth.width
    for x in (0.1, 0.55):
        corners = [wide * (place + complex(x, LONG / 2 - 0.2)) for place in (0j, 0.35 + 0j, 0.35 + 0.4j, 0.4j)]
        yield Face("notion", np.array(corners))


def _ironed(lay: Lay) -> Iterator[Ink]:
    """Yield the cloth wrong side up under the iron, which goes along the threads."""
    yield from _cloth(lay)
    middle = complex(lay.cloth.width / 2, lay.cloth.width * LONG / 2)
    yield InkMark("iron", middle, 1j, 60.0)
    yield InkMark("move", middle + 260j, 1j, 70.0)


def _squared(lay: Lay) -> Iterator[Ink]:
    """Yield the cloth with one thread of its weft drawn square to the selvedge."""
    yield from _cloth(lay)
    wide = lay.cloth.width
    yield InkLine("hidden", np.array([complex(0, wide * 0.2), complex(wide, wide * 0.27)]))
    yield InkLine("firm", np.array([complex(0, wide * 0.27), complex(wide, wide * 0.27)]))
    yield InkMark("move", complex(60, wide * 0.27), 1j, 50.0)
    yield InkMark("grain", complex(wide * 0.9, wide * 0.55), 1j, 60.0)


def _marked(lay: Lay) -> Iterator[Ink]:
    """Yield the cloth wrong side up, a mark every half metre, each with the way up."""
    yield from _cloth(lay)
    for x in np.arange(250.0, lay.cloth.width, 500.0):
        for y in np.arange(250.0, lay.cloth.width * LONG, 500.0):
            yield InkMark("grain", complex(x, y + 60), 1j, 50.0)
            yield InkMark("dot", complex(x, y - 60), size=8.0)


def _tried(lay: Lay) -> Iterator[Ink]:
    """Yield a scrap folded in two with three rows: down the warp, along the weft, and on the bias."""
    yield Face("wrong", np.array([0j, 300 + 0j, 300 + 220j, 220j]))
    yield InkLine("fold", np.array([0j, 300 + 0j]))
    rows = ((60 + 30j, 60 + 190j), (110 + 40j, 270 + 40j), (120 + 70j, 240 + 190j))
    yield from (InkLine("sewing", np.array(row)) for row in rows)
    yield InkMark("grain", 20 + 190j, 1j, 40.0)


DRAWN: dict[str, Callable[[Lay], Iterator[Ink]]] = {
    "mark_square": _measured,
    "soak": _bathed,
    "wash": _bathed,
    "wash_hand": _bathed,
    "steep": _bathed,
    "dry_hung": _dried,
    "dry_flat": _smooth,
    "steam": _ironed,
    "steam_lined": _ironed,
    "measure_again": _measured_again,
    "measure_lost": _measured_again,
    "square": _squared,
    "square_knit": _smooth,
    "square_cold": _weighed,
    "square_piled": _squared,
    "square_piled_knit": _smooth,
    "face_chalk": _marked,
    "face_thread": _marked,
    "face_paper": _marked,
    "face_alike": _marked,
    "try_heat": _tried,
    "try_stitch": _tried,
    "try_stitch_cold": _tried,
}
"""By the name of the step's first sentence; a label that is read and a cloth that is left alone need none."""
