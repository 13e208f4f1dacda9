"""Where a picture stands on the page: how large its place is, and what only the page itself can do there."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import anywidget
import traitlets


class PicturePlace(anywidget.AnyWidget):
    """Unseen; tells the page's height to the style sheet and the picture's `size` (px) to the kernel.

    Keys pressed in a list of its bench belong to that list: a notebook would take an arrow as a step to
    the next cell, and a letter as a command. The button `full-screen`, and the key F anywhere but in a
    text, give the bench the whole screen.
    """

    _esm = Path(__file__).with_suffix(".js")
    size: Any = traitlets.List([]).tag(sync=True)
