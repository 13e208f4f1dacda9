"""Choices that more than one block asks for; one name means one thing in a whole garment."""

from __future__ import annotations

from drafting.choices import choice

ARM_EASE: float = choice(
    50.0, "mm", "garment minus body at the upper arm; the armhole is fitted to it", low=0, high=400,
    step=5, scales=True, source="trouble SL3: at least 50 mm in woven cloth", group="fit",
)  # fmt: skip


def stretch_share(default: float) -> float:
    """Return the choice of how much of the cloth's stretch a piece uses, with this default."""
    share: float = choice(
        default, "ratio", "how much of the cloth's stretch is worn; 0 drafts with ease instead",
        low=0, high=0.6, step=0.05, source="row E48: 0.2-0.5 is worn with comfort, from memory",
    )  # fmt: skip
    return share
