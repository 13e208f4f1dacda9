"""A setting in sentences: what is threaded, set and pressed, and why."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.making.model import Said, Setting, said
from drafting.making.settings.feet import BY_HAND
from drafting.making.settings.stitches import LITTLE
from drafting.making.words import text

LENGTHENED = {
    "": "set.lengthens",
    "around": "set.lengthens_around",
    "moves": "set.lengthens_moves",
    "passes": "set.lengthens_passes",
    "bias": "set.lengthens_bias",
}

WAYS = {"open": "side.open", "to one side": "side.one"}


def setting_said(setting: Setting | None, *, pressed: bool = False) -> Iterator[Said]:
    """Yield how a seam is sewn and pressed, in a few lines; nothing for a step without a seam.

    Where the step's own words say how it is `pressed`, its heat alone is told.
    """
    if setting is None:
        return
    yield _sewn(setting)
    if setting.lengthens > LITTLE:
        yield said(LENGTHENED[setting.cause], share=setting.lengthens)
    if setting.stayed:
        yield said("set.stayed")
    yield from setting.why
    if setting.press != "not" and pressed and setting.dots is not None:
        if setting.dots:
            yield said("set.heat_at", dots=setting.dots)
    elif setting.press != "not":
        yield _pressed(setting, setting.onto or said(WAYS[setting.press]))
    yield from setting.trials


def _pressed(setting: Setting, way: Said) -> Said:
    if setting.dots is None:
        return said("set.press", way=way)
    if setting.dots:
        return said("set.press_at", way=way, dots=setting.dots)
    return said("set.press_piled" if setting.pile else "set.press_cold", way=way)


def _sewn(setting: Setting) -> Said:
    """Return the line of numbers; a number that nobody is sure of is left to words."""
    name = text(f"stitch.{setting.stitch}")
    if setting.stitch in BY_HAND:
        return said("set.sewn_by_hand", name=name, length=setting.stitch_length)
    return said(
        "set.sewn_wide" if setting.width else "set.sewn",
        name=name,
        length=setting.stitch_length,
        width=setting.width,
        point=setting.needle.point,
        size=setting.needle.size,
        foot=setting.foot,
        pressure=setting.pressure,
        seam_class=setting.seam_class,
    )
