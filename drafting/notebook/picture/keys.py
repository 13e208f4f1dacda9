"""Keys pressed in a list belong to the list: a notebook would take an arrow as a step to the next
cell, and a letter as a command."""

from __future__ import annotations

import anywidget


class QuietLists(anywidget.AnyWidget):
    """Unseen; marks every list of the bench it stands in as one that JupyterLab's keys pass by."""

    _esm = """
    function render({ el }) {
      el.style.display = "none";
      const mark = () => {
        if (!el.isConnected) return requestAnimationFrame(mark);
        const place = el.closest(".bench, .pattern-view");
        for (const list of place?.querySelectorAll("select") ?? [])
          list.setAttribute("data-lm-suppress-shortcuts", "true");
      };
      mark();
    }
    export default { render };
    """
