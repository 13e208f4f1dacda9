"""`plan.html`: the making plan as one file that prints well and needs no network.

    Plan + Made -> page(plan, made) -> text of the file

`step_drawing` draws pieces with the seam of the moment lit, `sections` turns each part of the plan into
HTML, `looks` holds the style and the few lines of script that remember ticks and add up minutes.
"""

from drafting.making.page.page import page

__all__ = ["page"]
