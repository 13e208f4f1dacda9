"""`plan.html`: the making plan as one file that prints well and needs no network.

    Plan + Made -> page(plan, made) -> text of the file

`making/stages` draws each step, `sections` fills the templates beside it with
each part of the plan, `looks` holds the style and the few lines of script that remember ticks and add up minutes.
"""

from drafting.making.page.page import page

__all__ = ["page"]
