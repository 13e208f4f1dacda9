"""What stands on the worn page, as plain data: the garment asked for, its shape, the shape before. No widgets."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from drafting.costume.file import CostumeFile
from drafting.costume.make import Made
from drafting.costume.wearing.worn import WornGarment, fallen_shape, look_of
from drafting.export.worn_views import image_png
from drafting.ground.errors import DraftError
from drafting.notebook.bench import state as st
from drafting.notebook.errors_said import sentence
from drafting.worn.form import HANGING, RAISED, STANDING, Form, Stance
from drafting.worn.nouns import AtRest
from drafting.worn.picture.draw import Image, drawn
from drafting.worn.picture.dressed import dressed_scene, off_scene
from drafting.worn.picture.view import BACK, FRONT, SIDE, THREE_QUARTERS, Eye, frame_for

VIEWS: Mapping[str, Eye] = {view.name: view for view in (FRONT, THREE_QUARTERS, SIDE, BACK)}

ARMS: Mapping[str, Stance] = {"a little out": STANDING, "hanging": HANGING, "raised": RAISED}
"""How the wearer holds the arms."""

COLOURS = {"as worn": dressed_scene, "where it stands off": off_scene}
"""What the colours may tell of a shape; where it pulls is told only of cloth at rest."""

ROUND_IT = 150.0
"""mm of the wearer that are shown above and below a garment (by eye)."""

WIDE, HIGH = 360, 520
"""Pixels of a picture: two of them beside each other, drawn in a third of a second (ours)."""


@dataclass(frozen=True, eq=False)
class WornStanding:
    """A garment as it could last be sewn up, and the one before; `refusal` says why no newer one could."""

    standing: st.Standing
    now: WornGarment
    before: WornGarment | None = None
    refusal: str = ""

    @property
    def shown(self) -> Made:
        """What the picture shows."""
        return self.standing.made


def begin_worn(costume: CostumeFile, garment: str, form: Form, asked: CostumeFile | None = None) -> WornStanding:
    """Return a garment as its file has it, or as it is `asked` by now; raises `DraftError` where neither can be
    drafted and sewn up."""
    standing = st.begin_standing(costume, garment, asked)
    return WornStanding(standing, _shaped(standing, form))


def worn_anew(worn: WornStanding, standing: st.Standing, form: Form) -> WornStanding:
    """Return what stands once the garment is drafted as asked; where it cannot be, the old shape stays."""
    if standing.refusal:
        return replace(worn, standing=standing, refusal=standing.refusal)
    try:
        return WornStanding(standing, _shaped(standing, form, worn.now.rest), worn.now)
    except DraftError as error:
        return replace(worn, standing=standing, refusal=sentence(error, standing.asked.told_in))


def _shaped(standing: st.Standing, form: Form, before: AtRest | None = None) -> WornGarment:
    return fallen_shape(standing.made, form, before)


def picture(worn: WornStanding, form: Form, view: str, colours: str) -> tuple[bytes, bytes]:
    """Return the shape before (blank where there is none) and now, from one side, as PNG."""
    skin, cloth = form.surface.points, worn.now.rest.points[:, 2]
    beside = (skin[:, 2] > cloth.min() - ROUND_IT) & (skin[:, 2] < cloth.max() + ROUND_IT)
    frame = frame_for(skin[beside], WIDE, HIGH)

    def seen(garment: WornGarment | None) -> Image:
        if garment is None:
            return np.full((HIGH, WIDE, 3), 255, np.uint8)
        return drawn(COLOURS[colours](form.surface, (look_of(garment, form, told=True),)), VIEWS[view], frame)

    return image_png(seen(worn.before)), image_png(seen(worn.now))
