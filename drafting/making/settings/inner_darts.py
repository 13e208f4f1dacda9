"""How darts are sewn that lie wholly inside a piece, and so are no seam of the draft: plain, thin at both ends."""

from __future__ import annotations

from drafting.costume.workroom import Workroom
from drafting.fabric import Fabric
from drafting.fabric.handling import has_pile
from drafting.making.model import Setting, said
from drafting.making.settings.feet import foot_for, set_lighter
from drafting.making.settings.lengthening import Gives
from drafting.making.settings.needles import needle_for
from drafting.making.settings.pressing import heat, pressed_on
from drafting.making.settings.stitches import stitch_for, without_overedge
from drafting.making.settings.surface import layers_held, suited_length, surface_said


def inner_dart_key(piece: str) -> str:
    """Return the name under which the setting of a piece's inner darts stands."""
    return f"inner dart: {piece}"


def inner_dart_setting(fabric: Fabric | None, room: Workroom) -> Setting:
    """Return how inner darts are sewn and pressed: to the middle, both at the front and at the back."""
    knit = fabric is not None and fabric.weave == "knit"
    stitch = suited_length(stitch_for(Gives(), knit, without_overedge(room)), fabric)
    needle, stands_in = needle_for(fabric, room)
    foot = foot_for(fabric, 0.0, stitch.number, room)
    dots = heat((fabric,) if fabric is not None else (), room)
    return Setting(
        stitch=stitch.number,
        seam_class=1,
        stitch_length=stitch.length,
        needle=needle,
        foot=foot,
        width=stitch.width,
        pressure="lighter" if set_lighter(fabric, 0.0, foot, room) else "usual",
        press="to one side",
        onto=said("side.middle"),
        dots=dots,
        why=(
            *stitch.why,
            *([said("set.stand_in")] if stands_in else []),
            *pressed_on(fabric, dots, room),
            *surface_said(fabric, enclosed=True),
        ),
        holds=layers_held(fabric),
        pile=fabric is not None and has_pile(fabric),
    )
