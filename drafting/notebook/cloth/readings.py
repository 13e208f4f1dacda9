"""What a trial of a cloth was told and no file holds yet, kept beside a file. No widgets.

`cloth.readings` is JSON: for each trial the figures of each strip by their names, the last one told last. A
save takes a strip out again; what is torn or strange in it is passed over.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite
from pathlib import Path
from typing import Any

from drafting.ground.frozen import freeze
from drafting.ground.shipped import INSTALLED
from drafting.notebook.whole_files import put_whole

ENDING = ".readings"

SliderFigures = Mapping[str, float]


@dataclass(frozen=True)
class KeptReadings:
    """The readings of one `trial` kept at `place` (None: nowhere); `bounds` are each figure's least and most, and
    `lengths` name those that are read on the ruler."""

    place: Path | None
    trial: str
    bounds: Mapping[str, tuple[float, float]]
    lengths: tuple[str, ...]

    def __post_init__(self) -> None:
        freeze(self, "bounds")

    def before(self) -> dict[str, dict[str, float]]:
        """Return what was told and not saved, by strip; nothing where nothing is kept."""
        strips = _rows(self.place).get(self.trial)
        if not isinstance(strips, dict):
            return {}
        return {strip: figures for strip, figures in strips.items() if self._sound(figures)}

    def keep(self, strip: str, figures: SliderFigures | None) -> None:
        """Keep the figures of a strip, or forget them; raises `OSError`."""
        if self.place is None:
            return
        rows, strips = _rows(self.place), self.before()
        strips.pop(strip, None)
        if figures is not None:
            strips[strip] = dict(figures)
        rows.pop(self.trial, None)
        if strips:
            rows[self.trial] = strips
        if rows:
            put_whole(self.place, (json.dumps(rows, ensure_ascii=False, indent=1) + "\n").encode())
        else:
            self.place.unlink(missing_ok=True)

    def _sound(self, figures: Any) -> bool:
        if not isinstance(figures, dict) or set(figures) != set(self.bounds):
            return False
        plain = all(isinstance(one, int | float) and isfinite(one) for one in figures.values())
        return plain and all(low <= figures[name] <= high for name, (low, high) in self.bounds.items())


def readings_beside(file: Path | None) -> Path | None:
    """Return where the readings of a file are kept; nowhere for none, and for what belongs to the kit.

    >>> readings_beside(Path("rosa/linen.toml")).as_posix()
    'rosa/linen.readings'
    """
    return None if file is None or INSTALLED in file.resolve().parents else file.with_suffix(ENDING)


def _rows(place: Path | None) -> dict[str, Any]:
    try:
        rows = json.loads(place.read_text("utf-8")) if place else {}
    except (OSError, ValueError, RecursionError):
        return {}
    return rows if isinstance(rows, dict) else {}
