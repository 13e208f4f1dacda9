"""Before cutting: what each cloth needs from its fibre, its care and its measured shrinkage.

A chain of steps a cloth: `cloth: shell` is marked and measured, washed or steamed as the costume will
be, dried, pressed square, measured again, marked, and tried on a scrap: it becomes `ready: shell`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.checks.treatments import FUSING, iron_limit
from drafting.costume.lays import cloth_for, materials
from drafting.costume.make import Made
from drafting.fabric import Fabric
from drafting.layout import Cloth
from drafting.making.model import Said, Step, said

DEGREES = {1: 110, 2: 150, 3: 200}
"""degrees C of the iron's dots (`Source.ISO_3758`)."""

SQUARE = 350.0
"""mm: side of the square that is marked before washing and measured after (`Source.ISO_5077`, from memory)."""

PRETENSION = {"woven": 1.0, "knit": 0.5}
"""cN for each cm of width under which a strip lies flat before it is stretched (`Source.ISO_20932`)."""

GROWTH = {"loose": (0.15, 0.30), "close": (0.35, 0.60)}
"""How far a knit is stretched along and across to see what stays (`Source.ASTM_D2594`)."""

STRETCHES = 0.10
"""Greatest stretch from which it is worth measuring (ours)."""

SOAK, DRY = 10.0, 24.0
"""hours: a soak overnight, and drying flat or on the line (common practice)."""

LIMITS = {"woven": 0.03, "knit": 0.05}
"""Shrinkage that the trade allows a finished cloth (common practice)."""

NEVER_WET = ("steam", "dry clean", "do not wash", "no wash")
"""Words of a care label that keep a cloth out of the water."""

BY_HAND = ("hand", "silk", "wool", "viscose", "rayon", "acetate")
"""Care words and fibres that want a hand wash rather than a machine (common practice)."""


@dataclass(frozen=True)
class Treated:
    """One cloth to make ready: its role, what is known of it, how it is laid, what it must take."""

    cloth: Cloth
    fabric: Fabric
    unwashed: bool
    fused: bool

    @property
    def role(self) -> str:
        return self.cloth.role


def washes(fabric: Fabric) -> bool:
    """Return whether the cloth may go into water; a label that says steam keeps it dry."""
    care = fabric.care.lower()
    return not any(word in care for word in NEVER_WET)


def by_hand(fabric: Fabric) -> bool:
    """Return whether a wash is done by hand: the label or the fibre asks for it."""
    words = f"{fabric.care} {fabric.fibre}".lower()
    return any(word in words for word in BY_HAND)


def treated(made: Made) -> tuple[Treated, ...]:
    """Return every cloth that something is cut from, with what is known of it."""
    return tuple(_treated(made))


def _treated(made: Made) -> Iterator[Treated]:
    stiffened = {g.fabric for g in made.garments for p in g.draft.pieces if p.material == "interfacing"}
    for found, _ in materials(made):
        role = found.role
        cloth = cloth_for(made.costume, role, made.garments)
        fabric = made.costume.fabrics.get(role) or Fabric(cloth.title)
        cut = [bool(g.choices.get("cut_unwashed", (False,))[0]) for g in made.garments if g.fabric == role]
        yield Treated(cloth, fabric, bool(cut) and all(cut), role in stiffened)


def treating_steps(made: Made) -> tuple[Step, ...]:
    """Return the steps that make every cloth ready to be cut, cloth by cloth.

    >>> from drafting.costume.make import make
    >>> from drafting.costume.file import read_costume
    >>> from drafting.ground.shipped import demo_costume
    >>> {step.stage for step in treating_steps(make(read_costume(demo_costume())))}
    {'treat'}
    """
    return tuple(step for cloth in treated(made) for step in _chained(cloth, tuple(_steps(cloth))))


def _chained(cloth: Treated, steps: tuple[Step, ...]) -> Iterator[Step]:
    """Yield the steps with their parts: each takes what the one before made."""
    part = f"cloth: {cloth.role}"
    for i, step in enumerate(steps):
        last = i == len(steps) - 1
        makes = f"ready: {cloth.role}" if last else f"{step.verb}: {cloth.role}"
        yield replace(step, key=f"{cloth.role}/{step.verb}", uses=(part,), makes=makes)
        part = makes


def _step(
    verb: str, say: tuple[Said, ...], *, minutes: float, wait: float = 0.0, cautions: tuple[Said, ...] = ()
) -> Step:
    return Step(
        key="",
        stage="treat",
        verb=verb,
        garment="",
        say=say,
        uses=(),
        makes="",
        cautions=cautions,
        minutes=minutes,
        wait=wait,
    )


def _steps(cloth: Treated) -> Iterator[Step]:
    if cloth.role == "interfacing":
        yield from _interfacing(cloth)
        return
    yield _read(cloth)
    if not cloth.fabric.pretreated and not cloth.unwashed:
        yield from _shrunk(cloth)
    yield _squared(cloth)
    yield _marked(cloth)
    yield _tried(cloth)


def _read(cloth: Treated) -> Step:
    fabric, limit = cloth.fabric, iron_limit(cloth.fabric)
    say = [said("treat.read", title=fabric.title, fibre=fabric.fibre or "not known")]
    if limit is None:
        say.append(said("treat.heat_unknown"))
    else:
        say.append(said("treat.heat", dots=limit, degrees=DEGREES[limit]))
    if fabric.care:
        say.append(said("treat.care", care=fabric.care))
    if cloth.unwashed:
        say.append(said("treat.unwashed"))
    return _step("read", tuple(say), minutes=5)


def _shrunk(cloth: Treated) -> Iterator[Step]:
    """Yield the steps that take the shrinkage out, as the costume will be washed, or by steam."""
    fabric = cloth.fabric
    yield _step("measure", (said("treat.mark_square", side=SQUARE),), minutes=10)
    if not washes(fabric):
        yield _step(
            "steam", (said("treat.steam"), *_pile(fabric)), minutes=30, wait=4.0, cautions=(said("caution.steam"),)
        )
    else:
        yield _step("soak", (said("treat.soak", hours=SOAK),), minutes=10, wait=SOAK)
        yield _step(
            "wash",
            (said("treat.wash_hand" if by_hand(fabric) else "treat.wash"), said("treat.no_wring")),
            minutes=25,
        )
        yield _step(
            "dry", (said("treat.dry_flat" if fabric.weave == "knit" else "treat.dry_hung"),), minutes=10, wait=DRY
        )
    yield _step("measure-again", tuple(_expected(cloth)), minutes=10)


def _expected(cloth: Treated) -> Iterator[Said]:
    fabric = cloth.fabric
    along, across = fabric.shrinkage_to_come
    yield said("treat.measure_again", along=SQUARE * (1 - along), across=SQUARE * (1 - across), side=SQUARE)
    yield said("treat.carry_back")
    if max(along, across) > LIMITS[fabric.weave]:
        yield said("treat.shrinks_much", share=max(along, across), limit=LIMITS[fabric.weave])


def _pile(fabric: Fabric) -> Iterator[Said]:
    if has_pile(fabric):
        yield said("treat.pile")


def has_pile(fabric: Fabric) -> bool:
    """Return whether the cloth has a pile or nap that an iron would crush: one way, faces unlike.

    A one-way print is one-way too, and is pressed from the wrong side all the same.
    """
    if fabric.sort is not None:
        return fabric.sort in ("pile", "napped")
    return fabric.one_way and not fabric.faces_alike


def _squared(cloth: Treated) -> Step:
    fabric = cloth.fabric
    say = [said("treat.square" if fabric.weave == "woven" else "treat.square_knit")]
    say += _pile(fabric)
    return _step("square", tuple(say), minutes=20, cautions=(said("caution.iron"),))


def _marked(cloth: Treated) -> Step:
    fabric = cloth.fabric
    say = [said("treat.face_alike" if fabric.faces_alike else "treat.face")]
    say.append(said("treat.one_way" if fabric.one_way else "treat.both_ways"))
    return _step("mark", tuple(say), minutes=5)


def _tried(cloth: Treated) -> Step:
    fabric, limit = cloth.fabric, iron_limit(cloth.fabric)
    say = [said("treat.try_heat", degrees=DEGREES[limit or 1]), said("treat.try_stitch")]
    if fabric.greatest_stretch >= STRETCHES:
        along, across = GROWTH["close"]
        say.append(said("treat.try_stretch", pull=PRETENSION[fabric.weave], share=along, across=across))
    if fabric.takes_starch:
        say.append(said("treat.try_starch"))
    if cloth.fused and fabric.takes_fusible:
        cool = limit is not None and limit < FUSING
        say.append(said("treat.try_fuse_cool" if cool else "treat.try_fuse"))
    fumes = (said("caution.fumes"),) if cloth.fused and fabric.takes_fusible else ()
    return _step("try", tuple(say), minutes=20, cautions=(said("caution.iron"), *fumes))


def _interfacing(cloth: Treated) -> Iterator[Step]:
    yield _step("read", (said("treat.fusible", title=cloth.fabric.title),), minutes=5)
    if not cloth.fabric.pretreated:
        yield _step("steep", (said("treat.steep"),), minutes=10, wait=DRY)
