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


def setting_said(setting: Setting | None) -> Iterator[Said]:
    """Yield how a seam is sewn and pressed, in a few lines; nothing for a step without a seam."""
    if setting is None:
        return
    yield _sewn(setting)
    if setting.lengthens > LITTLE:
        yield said(LENGTHENED[setting.cause], share=setting.lengthens)
    if setting.stayed:
        yield said("set.stayed")
    yield from setting.why
    way = setting.onto or setting.press
    if setting.press != "not" and setting.dots == 0:
        yield said("set.press_cold", way=way)
    elif setting.press != "not":
        key = "set.press" if setting.dots is None else "set.press_at"
        yield said(key, way=way, dots=setting.dots or 0)
    yield from setting.trials


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
