"""The cutting layout: pieces on the cloth, on grain and stretch, in the least length.

    parts + Cloth -> job_of -> pack (own search, or with time the packing library too) -> Lay

Pure: pieces in, a `Lay` out. Engine 2 runs in a child process; everything is checked with shapely
before it is believed.
"""

from drafting.layout.by_hand import hand_row, laid_by_hand, with_cloth
from drafting.layout.cloth import Cloth, LayWishes, bolts_sold, cloth_of, step_sold
from drafting.layout.lay import Lay, OtherWay, lay_row
from drafting.layout.moved import moved, next_pose
from drafting.layout.outlines import Outline, Part
from drafting.layout.packing.model import Copy, Job, Kind, Packing, Pose, Spot, Strip
from drafting.layout.packing.pack import COUNT, pack
from drafting.layout.packing.verify import broken_rules
from drafting.layout.plan import lay_out

__all__ = [
    "COUNT",
    "Cloth",
    "Copy",
    "Job",
    "Kind",
    "Lay",
    "LayWishes",
    "OtherWay",
    "Outline",
    "Packing",
    "Part",
    "Pose",
    "Spot",
    "Strip",
    "bolts_sold",
    "broken_rules",
    "cloth_of",
    "hand_row",
    "laid_by_hand",
    "lay_out",
    "lay_row",
    "moved",
    "next_pose",
    "pack",
    "step_sold",
    "with_cloth",
]
