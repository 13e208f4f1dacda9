"""How the plan looks on a screen and on paper, and the few lines that remember what is done."""

from __future__ import annotations

from importlib.resources import files

STYLE = "".join(
    files(__package__).joinpath(f"{name}.css").read_text(encoding="utf-8") for name in ("plan", "stages")
)
SCRIPT = files(__package__).joinpath("plan.js").read_text(encoding="utf-8")
