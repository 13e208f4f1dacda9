"""The wearer's form, from the tape to one smooth closed surface.

Body -> Sizes (levels, sections) -> Solid (knobs turned until the tape reads right) -> Form
"""

from __future__ import annotations

from drafting.worn.form.dials import HANGING, RAISED, RAISING, STANDING, Stance
from drafting.worn.form.form import Form, FormMeasure, wearers_form
from drafting.worn.form.held_so import arms_held

__all__ = [
    "HANGING",
    "RAISED",
    "RAISING",
    "STANDING",
    "Form",
    "FormMeasure",
    "Stance",
    "arms_held",
    "wearers_form",
]
