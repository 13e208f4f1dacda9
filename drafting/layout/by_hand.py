"""A lay that a hand has made, as plain rows that can be kept, and made again of the same pieces."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from drafting.ground.errors import DraftError
from drafting.layout.cloth import Cloth
from drafting.layout.lay import Lay
from drafting.layout.moved import moved
from drafting.layout.outlines import Part
from drafting.layout.packing.model import Packing, Pose, Spot
from drafting.layout.packing.verify import broken_rules
from drafting.layout.pieces import Pieces
from drafting.layout.remarks import lay_findings

BY_HAND = "moved by hand"


def hand_row(lay: Lay) -> dict[str, Any]:
    """Return a lay as plain values: how the cloth is spread, its faulty places, where each outline lies (mm)."""
    places = [
        {"outline": lay.id(s), "x": s.x, "y": s.y, "turn": s.pose.turn, "mirror": s.pose.mirror}
        for s in lay.packing.spots
    ]
    return {"spread": lay.lay, "faults": [list(box) for box in lay.cloth.faults], "places": places}


def laid_by_hand(parts: tuple[Part, ...], cloth: Cloth, row: Mapping[str, Any]) -> Lay | None:
    """Return the lay of a row made again of these pieces, faulty places and all.

    None where they are other pieces, or no longer fit so: what lies over another or off the cloth.
    """
    try:
        faults = tuple((float(a), float(b), float(c), float(d)) for a, b, c, d in row["faults"])
        cloth = replace(cloth, faults=tuple(dict.fromkeys((*cloth.faults, *faults))))
        spread = row["spread"]
        if spread not in ("open", "folded", "crosswise", "double"):
            return None
        job, outlines, left_out = Pieces(parts, cloth).job(spread)
        bare = Lay(cloth, spread, job, outlines, Packing(0.0, ()), left_out)
        places = {str(place["outline"]): place for place in row["places"]}
        spots = tuple(_spot(n, places[bare.id(Spot(n, Pose(), 0.0, 0.0))]) for n in range(len(job.copies)))
    except (KeyError, TypeError, ValueError, DraftError):
        return None
    if len(spots) != len(places):
        return None
    return _kept(replace(bare, packing=job.packing(spots, BY_HAND)))


def with_cloth(lay: Lay, parts: tuple[Part, ...], cloth: Cloth) -> Lay | None:
    """Return a lay on a cloth whose faulty places have changed: what lies clear of them stays where it is.

    What lies on one goes to the nearest place that is free, else behind all others. None where that
    cannot be.
    """
    job, outlines, left_out = Pieces(parts, cloth).job(lay.lay)
    if len(job.copies) != len(lay.packing.spots):
        return None
    new = replace(lay, cloth=cloth, job=job, outlines=outlines, left_out=left_out)
    if not broken_rules(job, new.packing):
        return _kept(new)
    spots, end = list(new.packing.spots), new.end
    away = []
    for n, spot in enumerate(spots):
        if broken_rules(job, job.packing((spot,), BY_HAND)) != broken_rules(
            lay.job, lay.job.packing((spot,), BY_HAND)
        ):
            away.append(spot)
            spots[n] = replace(spot, x=end + job.strip.gap)
            end = replace(new, packing=job.packing((spots[n],), BY_HAND)).end
    aside = _kept(replace(new, packing=job.packing(tuple(spots), BY_HAND)))
    return None if aside is None else _nearer(aside, away)


def _nearer(lay: Lay, away: list[Spot]) -> Lay:
    """Return the lay with what was put aside brought back as near as it may lie to where it was."""
    for spot in away:
        try:
            lay = moved(lay, lay.id(spot), spot.x, spot.y)
        except DraftError:
            continue
    return lay


def _spot(copy: int, place: Mapping[str, Any]) -> Spot:
    pose = Pose(int(place["turn"]), bool(place["mirror"]))
    return Spot(copy, pose, float(place["x"]), float(place["y"]))


def _kept(lay: Lay) -> Lay | None:
    if broken_rules(lay.job, lay.packing):
        return None
    return replace(lay, findings=lay_findings(lay))
