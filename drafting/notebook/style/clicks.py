"""A place clicked on the picture, told to the kernel."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import anywidget
import traitlets


class PlaceClicks(anywidget.AnyWidget):
    """Unseen; `place` is the last one clicked on its page: the `edge` (piece.edge), its `share` of it, and `n`,
    which click it was."""

    _esm = Path(__file__).with_suffix(".js")
    place: Any = traitlets.Dict({}).tag(sync=True)
