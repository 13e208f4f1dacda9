"""Choices that more than one block asks for; one name means one thing in a whole garment."""

from __future__ import annotations

from drafting.choices import choice

ARM_EASE: float = choice(
    50.0, "mm", "garment minus body at the upper arm; the armhole is fitted to it", low=0, high=400,
    step=5, scales=True, source="trouble SL3: at least 50 mm in woven cloth", group="fit",
)  # fmt: skip
