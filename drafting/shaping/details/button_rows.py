"""The marks of a front's buttons: one row on the middle, or a row on each of two fronts that lap. Mm."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from drafting.draft.piece import Placement
from drafting.shaping.details.buttons import Button, button_mark, hole_mark


def on_the_middle(places: Iterable[complex], button: Button, over: str, under: str) -> Iterator[Placement]:
    """Yield buttons on the hand beneath, and level holes in the one on top."""
    for number, at in enumerate(places, 1):
        yield button_mark(f"button_{under}_{number}", at, button.diameter, under)
        yield hole_mark(f"buttonhole_{over}_{number}", at, -1 + 0j, button.hole, over)


def on_both_fronts(
    places: Iterable[tuple[complex, complex | None]], button: Button, over: str
) -> Iterator[Placement]:
    """Yield a button on each front and, where a place has one, its hole in the front on top, whose own button is
    for show; a place is (button, hole)."""
    for number, (at, hole) in enumerate(places, 1):
        yield button_mark(f"button_{number}", at, button.diameter)
        if hole is not None:
            yield hole_mark(f"buttonhole_{over}_{number}", hole, -1 + 0j, button.hole, over)
