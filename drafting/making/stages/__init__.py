"""A drawing for each step of the work, derived from draft and order: nothing here is drawn by hand.

    garment -> Goods -> SoFar, step by step -> figure (which drawing) -> StageDrawing -> inked -> Svg

`shapes`, `bent`, `so_far`, `pairing` know the cloth; each other module draws one kind of work; `figures`
chooses by what a step declares; `placed`, `inked`, `hatching`, `marks` put a `StageDrawing` on 60 mm of paper.
"""

from drafting.making.stages.drawn import drawings

__all__ = ["drawings"]
