"""Ease by level and place on this wearer, against the trade's bands and against what the cloth gives."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from drafting.body import Body
from drafting.body.body import SIDES
from drafting.checks.ease import GIVES
from drafting.checks.girths import finished_girth, sewn_girth
from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft, Girth
from drafting.fabric import Fabric
from drafting.fabric.cloth import needed_stretch
from drafting.fitting.bands import BANDS, EaseBand, sort_of_garment
from drafting.ground.scale import body_scale
from drafting.worn.stands.comfort import WORN_SHARE

UNSEEN = 0.05
"""mm: less than a maker is shown."""


class EaseVerdict(StrEnum):
    """How the ease at one level stands to the trade's band and to the cloth."""

    BELOW = "below the band"
    WITHIN = "in the band"
    STYLE = "above it: style"
    NO_BAND = "no band of the trade"
    WORN = "the cloth gives it"
    STRAINED = "strains the cloth"
    BEYOND = "more than the cloth gives"
    ELASTIC = "held by elastic"


@dataclass(frozen=True, slots=True)
class EaseRow:
    """One level of one garment, mm: body, garment, ease; `needs` and `gives` are fractions of stretch.

    `across` says that it is measured across, not round; `layer` is what is worn beneath, taken off the ease.
    `body` is the measure that the level lies on; of it `inside` is left bare on purpose, and not counted.
    """

    garment: str
    level: str
    side: str
    across: bool
    body: float
    drawn: float
    layer: float
    band: EaseBand | None
    needs: float
    gives: float
    verdict: EaseVerdict
    inside: float = 0.0

    @property
    def ease(self) -> float:
        """What is left between body and garment, mm, the layers beneath taken off."""
        return self.drawn + self.inside - self.body - self.layer


def ease_rows(garment: MadeGarment, body: Body, fabric: Fabric | None) -> Iterator[EaseRow]:
    """Yield a row for each level that the garment's draft accounts for, then one for each shoulder."""
    around = fabric.greatest_stretch if fabric else 0.0
    for girth in garment.draft.girths:
        yield _row(garment, girth, body, around)
    yield from _shoulders(garment, body, around)


def _shoulders(garment: MadeGarment, body: Body, around: float) -> Iterator[EaseRow]:
    """Yield the shoulder of each hand, along the chain that the draft says lies on it; both alike, once."""
    found = [(side, _shoulder(garment.draft, side)) for side in SIDES]
    alike = len({(round(drawn, 1), round(body.hand("shoulder_length", side), 1)) for side, drawn in found}) == 1
    for side, drawn in found[:1] if alike else found:
        if drawn:
            yield EaseRow(
                garment=garment.name,
                level="shoulder_length",
                side="" if alike else side,
                across=True,
                body=body.hand("shoulder_length", side),
                drawn=drawn,
                layer=0.0,
                band=None,
                needs=0.0,
                gives=around,
                verdict=EaseVerdict.NO_BAND,
                inside=max((girth.inside / 2 for girth in garment.draft.girths), default=0.0),
            )


def _shoulder(draft: Draft, side: str) -> float:
    """Return how long the garment's shoulder is, mm; 0 where no part of it ends on the wearer's."""
    refs = draft.chains.get("front_shoulder", draft.chains.get(f"front_shoulder_{side}", ()))
    return math.fsum(draft.edge(ref).sewn_length for ref in refs)


def layer_beneath(body: Body, girth: Girth) -> float:
    """Return what the layers worn beneath add at a level, mm."""
    return body.layer(f"{girth.level}_{'width' if girth.width else 'girth'}")


def drawn_girth(draft: Draft, girth: Girth) -> float:
    """Return what a level measures on the pieces, mm; as settled where no piece draws it."""
    found = finished_girth(draft, girth.level, girth.side)
    return girth.body + girth.settled_ease if found is None else found


def _row(garment: MadeGarment, girth: Girth, body: Body, around: float) -> EaseRow:
    cut, layer, lies_on = drawn_girth(garment.draft, girth), layer_beneath(body, girth), girth.body - girth.inside
    sewn = sewn_girth(garment.draft, girth.level, girth.side)
    drawn = cut if sewn is None else sewn
    band = None if girth.width else _scaled(BANDS.get((sort_of_garment(garment.draft), girth.level)), body)
    needs = max(0.0, needed_stretch(lies_on, drawn)) if drawn > 0 else 0.0
    elastic = drawn < cut - UNSEEN and needs > 0
    verdict = _verdict(drawn - lies_on - layer, band, needs, around)
    return EaseRow(
        garment=garment.name,
        level=girth.level,
        side=girth.side,
        across=girth.width,
        body=girth.body,
        drawn=drawn,
        layer=layer,
        band=band,
        needs=0.0 if elastic else needs,
        gives=around,
        verdict=EaseVerdict.ELASTIC if elastic else verdict,
        inside=girth.inside,
    )


def _scaled(band: EaseBand | None, body: Body) -> EaseBand | None:
    scale = body_scale(body)
    return band and EaseBand(band.low * scale, None if band.high is None else band.high * scale, band.source)


def _verdict(ease: float, band: EaseBand | None, needs: float, gives: float) -> EaseVerdict:
    if ease < -UNSEEN:
        if needs <= WORN_SHARE * gives + 1e-9:
            return EaseVerdict.WORN
        return EaseVerdict.STRAINED if needs <= gives else EaseVerdict.BEYOND
    if band is None:
        return EaseVerdict.NO_BAND
    if ease < band.low - UNSEEN:
        return EaseVerdict.WORN if gives >= GIVES else EaseVerdict.BELOW
    return EaseVerdict.STYLE if band.high is not None and ease > band.high + UNSEEN else EaseVerdict.WITHIN
