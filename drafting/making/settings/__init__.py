"""How everything is sewn: needle, stitch, foot, pressure, heat.

    cloth + how far the seam must lengthen on this body + workroom -> Setting

`lengthening` and `pulling_on` ask the draft and the body; `needles`, `stitches`, `feet` and `pressing`
hold the tables of the trade; `seams` puts them together for seams, `edges` for hems and openings;
`sentences` puts one into sentences.
"""

from drafting.making.settings.edges import edge_key
from drafting.making.settings.more_tools import easier
from drafting.making.settings.seams import settings
from drafting.making.settings.sentences import setting_said

__all__ = ["easier", "edge_key", "setting_said", "settings"]
