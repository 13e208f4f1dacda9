"""A costume made, and its cloths laid out: one lay a material."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from functools import partial
from typing import Any

from drafting.costume.file import CostumeFile
from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.fabric import handling
from drafting.ground.errors import DraftError, Fault, InputError
from drafting.layout import COUNT, Cloth, Lay, LayWishes, Packing, Part, bolts_sold, cloth_of, lay_out, step_sold


def laid_out(
    made: Made,
    seconds: float = 0.0,
    *,
    count: float = COUNT,
    seed: int = 0,
    table: bool = True,
    said: Callable[[str, Packing], None] | None = None,
    halted: Callable[[], bool] = bool,
    standing: Mapping[str, Lay] = {},
) -> Made:
    """Return `made` with a lay for each of its cloths, and what those have to say.

    Without `seconds` the search is limited by `count` and repeatable; with them both engines look.
    Either is shared out over the cloths, by the square of the number of pieces. `said` hears each
    better layout with the role of its cloth; a lay in `standing` is taken as it is, by
    its role. `table` asks what other widths of cloth would need. Raises `InputError` for a lay that cannot be
    made at all.
    Lengths of a lay are in mm.

    >>> from drafting.costume.make import make
    >>> from drafting.costume.file import read_costume
    >>> from drafting.ground.shipped import demo_costume
    >>> costume = read_costume(demo_costume())
    >>> shirt = make(replace(costume, garments=costume.garments[1:2]))
    >>> [lay.role for lay in laid_out(shirt, count=5).lays]
    ['shirting', 'interfacing']
    """
    start = time.perf_counter()
    wanted = list(materials(made))
    whole = sum(len(parts) ** 2 for _, parts in wanted) or 1
    lays = []
    for cloth, parts in wanted:
        hear = None if said is None else partial(said, cloth.role)
        share = len(parts) ** 2 / whole  # the search of a lay grows with the pairs of its pieces
        how: dict[str, Any] = {"seconds": seconds * share, "count": count * share, "seed": seed, "table": table}
        how |= {"said": hear, "halted": halted}
        lays.append(standing.get(cloth.role) or _laid(made, cloth, parts, how))
    findings = (*made.findings, *(finding for lay in lays for finding in lay.findings))
    timings = {**made.timings, "lay out": time.perf_counter() - start}
    return replace(made, lays=tuple(lays), findings=findings, timings=timings)


def _laid(made: Made, cloth: Cloth, parts: tuple[Part, ...], how: dict[str, Any]) -> Lay:
    try:
        return lay_out(parts, cloth, **how)
    except InputError:
        raise
    except DraftError as error:
        where = f"fabrics.{cloth.role}"
        raise InputError([Fault(error.said(made.costume.told_in), "", where, made.costume.path)]) from error


def materials(made: Made) -> Iterator[tuple[Cloth, tuple[Part, ...]]]:
    """Yield each cloth that something is cut from, with the pieces, in the order garments name them."""
    found: dict[str, list[Part]] = {}
    for garment in made.garments:
        for cut in garment.pattern.pieces:
            role = cut.piece.cut_from or garment.fabric
            found.setdefault(role, []).append(Part(garment.name, cut))
    for role, parts in found.items():
        yield cloth_for(made.costume, role, made.garments), tuple(parts)


def cloth_for(costume: CostumeFile, role: str, garments: tuple[MadeGarment, ...] = ()) -> Cloth:
    """Return the cloth that plays a role, its shrinkage left out where pieces are cut unwashed.

    It is kept dry where every garment that it goes into holds a cloth that takes no water.
    """
    own = [g for g in garments if g.fabric == role]
    unwashed = bool(own) and all(g.choices.get("cut_unwashed", (False,))[0] for g in own)
    wishes, faults = costume.lays.get(role, (LayWishes(), ()))
    into = [g for g in garments if role in cloth_roles(g)]
    dry = bool(into) and all(_kept_dry(costume, g) for g in into)
    cloth = cloth_of(role, costume.fabrics.get(role), wishes, unwashed, kept_dry=dry)
    return replace(cloth, faults=faults, bolts=bolts_sold(costume.told_in), step=step_sold(costume.told_in))


def cloth_roles(garment: MadeGarment) -> tuple[str, ...]:
    """Return the roles of every cloth that a garment is made of, its own first."""
    return tuple(dict.fromkeys((garment.fabric, *(p.cut_from for p in garment.draft.pieces if p.cut_from))))


def _kept_dry(costume: CostumeFile, garment: MadeGarment) -> bool:
    known = (costume.fabrics[role] for role in cloth_roles(garment) if role in costume.fabrics)
    return not all(handling(fabric).water for fabric in known)
