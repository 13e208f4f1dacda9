"""Six very different bodies' coats, and four settings of flare, on one sheet each, to be looked at.

`DRAFTING_REWRITE_GOLDEN=1` rewrites the pictures after a wanted change of shape; without it nothing
is written but the pictures of the present draft, into a folder of the test's own.
"""

from __future__ import annotations

from functools import partial
from pathlib import Path as FilePath
from typing import Any

import pytest

from drafting.body import wearer
from drafting.draft.draft import Draft
from drafting.finish import finish
from drafting.sheet import Layer, Sheet, Stroke, Text, assembled, box_around
from drafting.sheet.marks import piece_strokes
from drafting.sheet.overview import overview_sheet
from tests.blocks.coats import coat, lamplighter, panels
from tests.blocks.contact_pictures import drawn_and_stored
from tests.blocks.test_contact_sheet import SIX, in_columns
from tests.drawn_bodies import drawn
from tests.pace import paced

SETTINGS: dict[str, dict[str, Any]] = {
    "plain tail, one panel": {"panels": 1, "flare": 0.0},
    "four panels, 80 mm a seam, every other seam on the bias": {"panels": 4, "flare": 80.0},
    "the same on twice the panels, every flared seam on the bias": {"panels": 4, "flare": 80.0, "grain": "pairs"},
    "six panels, 250 mm a seam": {"panels": 6, "flare": 250.0},
}


def six_coats() -> list[Sheet]:
    """Return the shell of six coats, each as an overview of its own."""
    sheets = []
    for title, body in SIX.items():
        draft = coat(
            wearer({n: float(mm) for n, mm in body.items()}, title=title),
            lining="none",
            stiff_collar=False,
            stiff_front="none",
            stiff_tails="none",
        )
        sheets.append(overview_sheet([finish(draft, title, "shell")], title))
    return sheets


def flat_tail(title: str, draft: Draft) -> Sheet:
    """Return a tail's panels as they lie in the flat tail, seams closed, with warp and marks."""
    strokes: list[Stroke] = []
    texts: list[Text] = []
    pattern = finish(draft, "coat", "shell")
    for piece in panels(draft):
        marks = piece_strokes(pattern[piece.name])
        shown = (Layer.STITCH, Layer.GRAIN, Layer.NOTCH, Layer.PLACEMENT)
        strokes.append(Stroke(Layer.CUT, (piece.outline,), f"{piece.name}.fill", closed=True))
        strokes += [stroke for stroke in marks if stroke.layer in shown]
        waist = piece["waist"].path
        middle = waist.at(waist.length / 2)
        texts.append(Text(middle + 12j, 16, (piece.name.split("-")[1],), "middle", bold=True))
    facts = draft.facts
    numbers = (
        f"waist {facts['tail_waist']:.0f} mm, hem {facts['tail_sweep_plain']:.0f} + "
        f"{facts['tail_sweep'] - facts['tail_sweep_plain']:.0f} mm, turned {facts['tail_turned']:.0f} degrees"
    )
    x0, _, _, y1 = box_around(stroke.bounds for stroke in strokes)
    texts.append(Text(complex(x0, y1 + 110), 22, (title,), bold=True))
    texts.append(Text(complex(x0, y1 + 75), 18, (numbers,)))
    return assembled(title, tuple(strokes), tuple(texts), 20)


@pytest.mark.parametrize(("name", "columns", "least"), [("tailcoat", 2, 6), ("flare", 2, 4)])
def test_the_sheets_can_be_looked_at(name: str, columns: int, least: int, tmp_path: FilePath) -> None:
    if name == "tailcoat":
        sheets = six_coats()
    else:
        sheets = [flat_tail(t, coat(lamplighter(), **choices)) for t, choices in SETTINGS.items()]
    assert len(sheets) == least
    sheet = in_columns(sheets, columns)
    drawn_and_stored(sheet, f"contact-{name}.png", tmp_path, dpi=200, least=50_000)


def test_a_coat_takes_no_longer_than_six_times_a_fixed_piece_of_work() -> None:
    # 63 ms where that takes 10.5; 4.6 to 5.1 times were measured, quiet and beside others.
    bodies = drawn(20)
    coat(bodies[0])
    assert paced(*(partial(coat, body) for body in bodies)) < 6.0
