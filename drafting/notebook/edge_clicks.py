"""An edge clicked on a page's pictures, and how far along it, told to the kernel."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import anywidget
import traitlets


class EdgeClicks(anywidget.AnyWidget):
    """Unseen; `place` is the last one clicked on what has the class `page`: the `edge` (piece.edge), its `share`
    of it in outline order (0 to 1), and `n`, which click it was."""

    _esm = Path(__file__).with_suffix(".js")
    page: Any = traitlets.Unicode("").tag(sync=True)
    place: Any = traitlets.Dict({}).tag(sync=True)
