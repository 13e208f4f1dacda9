"""Keys pressed in a list belong to the list: a notebook would take an arrow as a step to the next
cell, and a letter as a command."""

from __future__ import annotations

from pathlib import Path

import anywidget


class QuietLists(anywidget.AnyWidget):
    """Unseen; marks every list of the bench it stands in as one that JupyterLab's keys pass by."""

    _esm = Path(__file__).with_suffix(".js")
