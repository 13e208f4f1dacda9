"""An edge clicked on the picture, told to the kernel."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import anywidget
import traitlets


class EdgeClicks(anywidget.AnyWidget):
    """Unseen; `edge` is the last one clicked on its page: its `name` (piece.edge), and `n`, which click it was."""

    _esm = Path(__file__).with_suffix(".js")
    edge: Any = traitlets.Dict({}).tag(sync=True)
