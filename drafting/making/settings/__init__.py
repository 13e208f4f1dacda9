"""How every seam is sewn: needle, stitch, foot, pressure, heat. Layer 5.

    cloth + how far the seam must lengthen + workroom -> Setting

`lengthening` asks the draft and the body, `needles` and `stitches` the tables of the trade;
`choosing` puts them together.
"""

from drafting.making.settings.choosing import easier, settings

__all__ = ["easier", "settings"]
