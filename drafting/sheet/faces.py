"""The face of a piece: the colour its cloth has in every picture, overview, bench, lay and plan.

The kind of cloth gives the hue, the garment's place in its costume the shade: on a lay that several
garments share, each is told apart, in grey too.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from drafting.draft.pattern import CutPiece
from drafting.ground.palette import Colour
from drafting.sheet import Layer, Stroke

OWN = (Colour.OWN_1, Colour.OWN_2, Colour.OWN_3, Colour.OWN_4)

FACES = {
    "lining": (Colour.LINING_1, Colour.LINING_2, Colour.LINING_3, Colour.LINING_4),
    "interfacing": (Colour.INTERFACING_1, Colour.INTERFACING_2, Colour.INTERFACING_3, Colour.INTERFACING_4),
}
"""Shades by the material of a piece; a piece of any other cloth shows that cloth's own side."""


def face(material: str, place: int) -> Colour:
    """Return the face of a piece of `material` ("": the garment's own) in the garment at `place`.

    >>> face("lining", 0) is Colour.LINING_1, face("", 5) is face("", 1)
    (True, True)
    """
    shades = FACES.get(material, OWN)
    return shades[place % len(shades)]


def faced(cut_piece: CutPiece, strokes: Iterable[Stroke], place: int) -> tuple[Stroke, ...]:
    """Return a piece's strokes with its cut line filled by its face."""
    tint = face(cut_piece.piece.cut_from, place)
    return tuple(replace(s, tint=tint) if s.layer is Layer.CUT else s for s in strokes)
