"""The care sheet of the finished costume: washing, starch, bones, repair."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.checks.treatments import iron_limit
from drafting.costume.make import Made
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import has_pile
from drafting.fitting.bands import GarmentSort, sort_of_garment
from drafting.making.model import Said, said
from drafting.making.treating import DEGREES, by_hand, garment_cloths, washes


def keeping(made: Made) -> tuple[Said, ...]:
    """Return the care sheet, garment by garment: the tenderest cloth in each decides."""
    return tuple(_each_garment(made)) + tuple(_whole(made))


def _each_garment(made: Made) -> Iterator[Said]:
    for garment in made.garments:
        cloths = garment_cloths(made, garment.name)
        if not cloths:
            yield said("keep.unknown", garment=garment.name)
            continue
        yield said(_washing(cloths), garment=garment.name)
        limits = [limit for cloth in cloths if (limit := iron_limit(cloth)) is not None]
        flat = _lies_flat(made, garment.name)
        if limits and min(limits) == 0:
            yield said("keep.no_iron_flat" if flat else "keep.no_iron")
        elif limits:
            yield said("keep.iron", dots=min(limits), degrees=DEGREES[min(limits)])
        if any(has_pile(cloth) and handling(cloth).steam for cloth in cloths):
            yield said("keep.pile")
        kinds = {notion.what for notion in garment.draft.notions}
        if "boning" in kinds:
            yield said("keep.bones")
        if "elastic" in kinds:
            yield said("keep.elastic")
        if any(cloth.takes_starch for cloth in cloths[:1]):
            yield said("keep.starch")
        if flat:
            yield said("keep.flat", garment=garment.name)
        if any(handling(cloth).holds == "clips" for cloth in cloths[:1]):
            continue  # a seam that is unpicked there leaves holes for good
        for finding in (f for f in garment.findings if f.check == "let out"):
            yield said("keep.let_out", seams=finding.where, more=float(finding.value or 0.0))


def _washing(cloths: tuple[Fabric, ...]) -> str:
    """Return the key of how a garment of these cloths is cleaned."""
    if any("coated" in cloth.possible_sorts or "wipe" in cloth.care.lower() for cloth in cloths):
        return "keep.wiped"
    if any({"sequinned", "foiled"} & set(cloth.possible_sorts) for cloth in cloths):
        return "keep.spotted"
    if not all(washes(cloth) for cloth in cloths):
        return "keep.not_washed"
    return "keep.by_hand" if any(by_hand(cloth) for cloth in cloths) else "keep.wash"


def _whole(made: Made) -> Iterator[Said]:
    yield said("keep.air")
    yield said("keep.scraps")
    if any(notion.what == "button" for g in made.garments for notion in g.draft.notions):
        yield said("keep.spare_button")
    knit = {role for role, cloth in made.costume.fabrics.items() if cloth.weave != "woven"}
    small = [g for g in made.garments if sort_of_garment(g.draft) is GarmentSort.FOOT]
    upright = [g for g in made.garments if g not in small and not _lies_flat(made, g.name)]
    grows = [garment.name for garment in upright if garment.fabric in knit]
    hangs = [garment.name for garment in upright if garment.fabric not in knit]
    if grows:
        yield said("keep.fold", garments=", ".join(grows))
    if hangs:
        yield said("keep.hang", garments=", ".join(hangs))
    if small:
        yield said("keep.small", garments=", ".join(garment.name for garment in small))


def _lies_flat(made: Made, garment: str) -> bool:
    """Return whether a garment is too heavy for a hanger: sequins drag the cloth long."""
    return any("sequinned" in cloth.possible_sorts for cloth in garment_cloths(made, garment))
