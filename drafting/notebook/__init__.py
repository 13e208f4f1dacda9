"""Widgets for the notebooks. and the one place for ipywidgets and IPython.

    CostumeFile -> Standing (pure: what is asked, what was made) -> Bench (thin: controls, picture)

One folder a screen. On the bench `state` holds every rule and no widget; `picture`, `findings` and `girths`
each turn one thing into something to see; `bench` joins them. A refusal that reaches a cell is shown
as its own sentences, without the Python lines behind it.
"""

from typing import TYPE_CHECKING, Any

from drafting.notebook.bench.bench import Bench
from drafting.notebook.cloth.loaded import LoadedStrip
from drafting.notebook.cloth.overhang import OverhangTest
from drafting.notebook.cloth.swatch import SwatchTest
from drafting.notebook.cloth.told import cloth_holds, cloth_numbers
from drafting.notebook.errors_said import show_refusals_plainly
from drafting.notebook.files import costume_path, take_own_blocks
from drafting.notebook.lay_table.table import LayTable
from drafting.notebook.measuring.guide import MeasuringGuide
from drafting.notebook.page.cloths import ClothTold
from drafting.notebook.page.page import CostumePage
from drafting.notebook.plan.view import PlanView

if TYPE_CHECKING:
    from drafting.notebook.worn_view.view import WornView

show_refusals_plainly()
take_own_blocks()

__all__ = [
    "Bench",
    "ClothTold",
    "CostumePage",
    "LayTable",
    "LoadedStrip",
    "MeasuringGuide",
    "OverhangTest",
    "PlanView",
    "SwatchTest",
    "WornView",
    "cloth_holds",
    "cloth_numbers",
    "costume_path",
]


def __getattr__(name: str) -> Any:
    """Open the worn view only for who asks for it: it brings the whole reckoning of cloth with it."""
    if name != "WornView":
        raise AttributeError(f"drafting.notebook has no {name}")
    from drafting.notebook.worn_view.view import WornView

    return WornView
