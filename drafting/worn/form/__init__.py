"""The wearer's form, from the tape to one smooth closed surface.

Body -> Sizes (levels, sections) -> Solid (knobs turned until the tape reads right) -> Form
"""

from __future__ import annotations

from drafting.worn.form.dials import HANGING, STANDING, Stance
from drafting.worn.form.form import Form, FormMeasure, wearers_form

__all__ = ["HANGING", "STANDING", "Form", "FormMeasure", "Stance", "wearers_form"]
