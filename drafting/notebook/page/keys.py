"""Keys pressed at a control are the control's: none is a command for the notebook round it."""

from __future__ import annotations

from pathlib import Path

import anywidget


class OwnKeys(anywidget.AnyWidget):
    """Unseen: in JupyterLab an arrow pressed at a list would else go to the next cell."""

    _esm = Path(__file__).with_suffix(".js")
