"""Where the names of `drafting.__all__` stand.

Type checkers follow these lines, and `drafting.__getattr__` reads them as text, so that one name
loads no more than its own module; nothing imports this file as a whole.
"""

from __future__ import annotations

from drafting.blocks import all_blocks, use_blocks
from drafting.body import DIMENSIONS, Body, read_bodies, read_body
from drafting.checks import check_all
from drafting.costume.file import CostumeFile, read_costume
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.lays import laid_out
from drafting.costume.make import Made, checked, finished, make
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Girth, Notion, Seam, SeamNotch
from drafting.draft.frame import BodyFrame, BodyHeight, Limb
from drafting.draft.pattern import Pattern
from drafting.draft.piece import Edge, EdgeKind, InnerDart, Level, Notch, Piece, Placement
from drafting.fabric import Fabric, read_fabric
from drafting.finish import finish as finish_draft
from drafting.geometry import Path, line, smooth, solve, turn
from drafting.geometry.arc import arc
from drafting.ground.choices import Choice, choice
from drafting.ground.errors import DraftError, Fault, InputError
from drafting.ground.findings import Finding, worst
from drafting.ground.scale import body_scale
from drafting.ground.shipped import demo_costume
from drafting.making import planned
from drafting.making.rules import unsound
from drafting.making.shopping import shopping_csv
from drafting.making.treating import treating_steps
from drafting.making.words import plan_sentence
from drafting.output.strips import strips_pdf
from drafting.output.write import write_output
from drafting.printing.scale_repair import typed_repair
