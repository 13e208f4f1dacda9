"""A `Lay`: how the pieces of one cloth lie, how much to buy, and what other widths would need."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from drafting.fabric import cut_for
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.layout.cloth import SHRINKING, Cloth, LayName
from drafting.layout.outlines import Outline
from drafting.layout.packing.model import Job, Packing, Spot

LOOSE, TIGHT = 0.70, 0.80
"""Utilisation below which a lay is loose and from which it is tight (ours, on the published garment instances)."""

AS_LONG = 1.01
"""A lay no longer than this share of its longest piece cannot be bettered (ours)."""

LAYERS_LONG: dict[LayName, int] = {"open": 1, "folded": 1, "crosswise": 2, "double": 1}
"""How many times its own length a lay takes of the cloth."""

SPREAD: dict[LayName, str] = {
    "open": "opened out, one layer, right side up",
    "folded": "folded lengthwise, {layers}",
    "crosswise": "folded across, {layers}",
    "double": "on two folds, the selvedges meeting, {layers}",
}


@dataclass(frozen=True)
class OtherWay:
    """What another bolt width, or another way to spread the cloth, needs: None where pieces stick out.

    `width` is the bolt's, selvedges included; `length` is cloth, mm.
    """

    width: float
    lay: LayName
    length: float | None
    sticks_out: tuple[str, ...] = ()


@dataclass(frozen=True)
class Lay:
    """The cutting layout of one cloth."""

    cloth: Cloth
    lay: LayName
    job: Job
    outlines: tuple[Outline, ...]
    packing: Packing
    left_out: tuple[Outline, ...] = ()
    others: tuple[OtherWay, ...] = ()
    findings: tuple[Finding, ...] = ()

    @property
    def role(self) -> str:
        return self.cloth.role

    @property
    def length(self) -> float:
        """From the first to the last point of the pieces as they lie, mm."""
        return self.packing.length

    @cached_property
    def end(self) -> float:
        """Where the last point lies, from the start of the cloth, mm.

        That is `length` but where faults in the cloth put the first piece farther on.
        """
        boxes = (self.job.box(spot) for spot in self.packing.spots)
        return max((box[2] for box in boxes), default=0.0)

    @property
    def spread(self) -> str:
        """How the cloth is spread, in words."""
        layers = self.cloth.layers
        return SPREAD[self.lay].format(layers="right sides together" if layers == "single" else layers)

    @property
    def cloth_length(self) -> float:
        """The cloth taken: up to the last point, twice that where it is folded across, mm."""
        return self.end * LAYERS_LONG[self.lay]

    @property
    def buy_length(self) -> float:
        """The length to buy, mm: spare added, shrinkage to come divided out, rounded up to its step."""
        if not self.packing.spots:
            return 0.0
        return to_buy(self.cloth, self.cloth_length)

    @cached_property
    def area(self) -> float:
        """The area of all pieces of cloth that are cut, mm2 (a half piece counted whole)."""
        return math.fsum(
            self.job.kinds[copy.kind].area * (2 if copy.hand == "both" or self.job.kinds[copy.kind].fold else 1)
            for copy in self.job.copies
        )

    @property
    def lower_bound(self) -> float:
        """No lay of these pieces can be shorter: their area over the usable width, mm."""
        return self.area / (self.cloth.usable_width * LAYERS_LONG[self.lay])

    @property
    def utilisation(self) -> float:
        """The part of the cloth that goes into pieces, as a fraction."""
        return self.lower_bound / self.length if self.length else 0.0

    @property
    def words(self) -> str:
        """The utilisation in a word: loose, usual or tight, or what else decides the length."""
        boxes = [self.job.box(spot) for spot in self.packing.spots]
        longest = max((box[2] - box[0] for box in boxes), default=0.0)
        if self.length <= longest * AS_LONG and self.utilisation < TIGHT:
            return "as long as its longest piece"
        if self.utilisation < LOOSE:
            return "loose: worth another try"
        return "tight" if self.utilisation >= TIGHT else "usual for one costume"

    def outline(self, spot: Spot) -> Outline:
        return self.outlines[self.job.copies[spot.copy].kind]

    def id(self, spot: Spot) -> str:
        """Return the name of one outline: garment, piece, hand, number."""
        copy = self.job.copies[spot.copy]
        return f"{self.outline(spot).part.name}.{copy.hand}.{copy.n}"

    def summary(self) -> str:
        """Return what a maker asks first, in a sentence or two."""
        buy = told(self.buy_length, "bought")
        shrink = self.cloth.shrinkage[0]
        lost = f", {round(100 * shrink, 1):g} % for {SHRINKING[self.cloth.shrunk_by]}" if shrink else ""
        return (
            f"{self.cloth.title}, {told(self.cloth.usable_width)} usable, "
            f"{self.spread}: the pieces take {told(self.cloth_length)}. Buy {buy} "
            f"({told(self.cloth.wishes.spare)} to square the ends{lost}, rounded up). "
            f"{100 * self.utilisation:.0f} % of the cloth is used, {self.words}; "
            f"{told(self.lower_bound * LAYERS_LONG[self.lay])} is the least "
            "that any lay could take."
        )


def to_buy(cloth: Cloth, length: float) -> float:
    """Return the length to buy of a cloth of which so much is taken, both mm."""
    wanted = cut_for(length + cloth.wishes.spare, -cloth.shrinkage[0])
    return math.ceil(round(wanted / cloth.step, 9)) * cloth.step


def lay_row(lay: Lay) -> dict[str, Any]:
    """Return the lay as a row of `report.json`.

    `x`, `y` are the lower left corner of an outline's box; `rotation_deg` is the turn on the cloth,
    0 where the warp points along x (180: end for end); `mirrored` is against the piece as drawn.
    """
    return {
        "fabric": lay.role,
        "lay": lay.lay,
        "usable_width": lay.cloth.bought_width,
        "cut_for_width": lay.cloth.usable_width,
        "layer_width": lay.cloth.layer_width(lay.lay),
        "length": lay.length,
        "cloth_length": lay.cloth_length,
        "buy_length": lay.buy_length,
        "utilisation": lay.utilisation,
        "lower_bound": lay.lower_bound,
        "gap": lay.cloth.wishes.gap,
        "spare": lay.cloth.wishes.spare,
        "shrinkage_along": lay.cloth.shrinkage[0],
        "words": lay.words,
        "engine": lay.packing.engine,
        "placed": [_placed(lay, spot) for spot in lay.packing.spots],
        "left_out": [_left_out(outline) for outline in lay.left_out],
        "others": [
            {"width": o.width, "lay": o.lay, "length": o.length, "sticks_out": list(o.sticks_out)}
            for o in lay.others
        ],
    }


def _placed(lay: Lay, spot: Spot) -> dict[str, Any]:
    outline, copy = lay.outline(spot), lay.job.copies[spot.copy]
    return {
        "garment": outline.part.garment,
        "piece": outline.part.cut.piece.name,
        "hand": copy.hand,
        "n": copy.n,
        "x": spot.x,
        "y": spot.y,
        "rotation_deg": spot.pose.turn,
        "mirrored": spot.pose.mirror != outline.flipped,
        "on_fold": outline.fold,
        "opened": outline.opened,
    }


def _left_out(outline: Outline) -> dict[str, Any]:
    piece = outline.part.cut.piece
    return {"garment": outline.part.garment, "piece": piece.name, "count": piece.count}
