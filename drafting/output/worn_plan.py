"""What the making plan and the checks take over from the costume on the wearer's form."""

from __future__ import annotations

import base64
from collections.abc import Iterator

from drafting.costume.wearing.worn import Worn, WornGarment, form_words, look_of
from drafting.export.worn_views import image_png
from drafting.ground.findings import Finding, Severity
from drafting.ground.names import name_in_words
from drafting.making.page.sections import WornShown
from drafting.output.worn import shape_only, side_by_side, unit_of_costume
from drafting.worn.stands.words import worded

ON_THE_PLAN = 420
"""Pixels: how high a view is on the plan's first page."""


def worn_shown(costume: Worn) -> WornShown:
    """Return picture and verdict for the plan."""
    unit = unit_of_costume(costume)
    looks = tuple(look_of(garment, costume.form) for garment in costume.garments)
    picture = image_png(side_by_side(costume, looks, ON_THE_PLAN))
    words = [(name_in_words(g.name), tuple(worded(said, unit) for said in g.words)) for g in costume.garments]
    general = tuple(dict.fromkeys((*shape_only(costume), *(worded(said, unit) for said in form_words(costume)))))
    data = f"data:image/png;base64,{base64.b64encode(picture).decode('ascii')}"
    return WornShown(data, (("", general), *words))


def worn_findings(costume: Worn) -> Iterator[Finding]:
    """Yield the verdict on each garment as findings: what pulls warns, what did not settle is noted."""
    for garment in costume.garments:
        yield from _garment(costume, garment)
    for name, why in costume.left_out:
        yield Finding("worn", "note", name, None, None, f"{name} cannot be shown worn: {why}")


def _garment(costume: Worn, garment: WornGarment) -> Iterator[Finding]:
    unit = unit_of_costume(costume)
    for said in garment.words:
        section = said.key.partition(".")[0]
        level: Severity = "warning" if said.key in WARN else "note"
        yield Finding(f"worn: {SECTIONS[section]}", level, garment.name, None, None, worded(said, unit))


WARN = (
    "pull.over",
    "hem.trails",
    "hem.touches",
    "hem.drawn_in",
    "held.braces",
    "held.hooked",
    "held.sinks_floor",
    "held.sinks_round_floor",
)
"""What warns; all else that is said of a worn garment is a note."""

SECTIONS = {
    "shape": "settled",
    "held": "held up",
    "off": "stands off",
    "pull": "pulls",
    "girth": "girth",
    "hem": "hem",
    "treated": "treatment",
    "puff": "puff",
}
"""The question that each section of words answers."""
