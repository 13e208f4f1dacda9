"""Before cutting: what each cloth needs from its fibre, its care and its measured shrinkage.

A chain of steps a cloth: `cloth: shell` is marked and measured, washed or steamed as the costume will
be, dried, pressed square, measured again, marked, and tried on a scrap: it becomes `ready: shell`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from drafting.checks.treatments import FUSING, iron_limit
from drafting.costume.lays import cloth_for, cloth_roles, materials
from drafting.costume.make import Made
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import MarkedWith, has_pile
from drafting.layout import Cloth
from drafting.making.model import Said, Step, said
from drafting.making.stretch_trial import stretch_trial

DEGREES = {1: 110, 2: 150, 3: 200}
"""degrees C of the iron's dots (`Source.ISO_3758`)."""

SQUARE = 350.0
"""mm: side of the square that is marked before washing and measured after (`Source.ISO_5077`, from memory)."""

SOAK, DRY, REST = 10.0, 24.0, 8.0
"""hours: a soak overnight, drying flat or on the line, and lying flat under weights (common practice)."""

LIMITS = {"woven": 0.03, "knit": 0.05}
"""Shrinkage that the trade allows a finished cloth (common practice)."""

BY_HAND = ("hand", "silk", "wool", "viscose", "rayon", "acetate")
"""Care words and fibres that want a hand wash rather than a machine (common practice)."""


NEVER_SOAKED = ("silk", "wool", "acetate", "angora", "cashmere", "mohair")
"""Fibres that a long soak weakens or felts (common practice)."""

FACE: dict[MarkedWith, str] = {
    "chalk": "treat.face_chalk",
    "thread": "treat.face_thread",
    "paper": "treat.face_paper",
}
"""How the right side is marked, by what marks the cloth."""


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

    @property
    def washed(self) -> bool:
        """Whether it is washed before it is cut."""
        return self.cloth.shrunk_by == "wash"


def washes(fabric: Fabric) -> bool:
    """Return whether the cloth may go into water: its sort and its label both allow it."""
    return handling(fabric).water


def soaks(fabric: Fabric) -> bool:
    """Return whether colour is soaked out of it overnight: of no fibre that a long soak harms."""
    return washes(fabric) and not any(word in fabric.fibre.lower() for word in NEVER_SOAKED)


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
        fused = any_fused(made) if role == "interfacing" else role in stiffened
        yield Treated(cloth, fabric, bool(cut) and all(cut), fused)


def _known(made: Made, roles: Iterable[str]) -> tuple[Fabric, ...]:
    return tuple(made.costume.fabrics[role] for role in roles if role in made.costume.fabrics)


def garment_cloths(made: Made, garment: str) -> tuple[Fabric, ...]:
    """Return every cloth that a garment is made of, its own first."""
    return _known(made, cloth_roles(next(g for g in made.garments if g.name == garment)))


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
    verb: str,
    say: tuple[Said, ...],
    *,
    minutes: float,
    wait: float = 0.0,
    cautions: tuple[Said, ...] = (),
    heat: int | None = None,
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
        heat=heat,
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
    elif limit == 0:
        say.append(said("treat.no_iron_piled" if has_pile(fabric) else "treat.no_iron"))
    else:
        say.append(said("treat.heat", dots=limit, degrees=DEGREES[limit]))
    if fabric.care:
        say.append(said("treat.care", care=fabric.care))
    if cloth.unwashed:
        say.append(said("treat.unwashed"))
    return _step("read", tuple(say), minutes=5)


def _shrunk(cloth: Treated) -> Iterator[Step]:
    """Yield the steps that take the shrinkage out, as the costume will be washed, or by steam.

    What is neither washed nor steamed stays as it is.
    """
    fabric = cloth.fabric
    if not cloth.cloth.shrunk_by:
        key = "treat.leave_lined" if washes(fabric) else "treat.leave"
        yield _step("leave", (said(key),), minutes=5)
        return
    yield _step("measure", (said("treat.mark_square", side=SQUARE),), minutes=10)
    yield from _washed(fabric) if cloth.washed else _steamed(cloth)
    yield _step("measure-again", tuple(_expected(cloth)), minutes=10)


def _steamed(cloth: Treated) -> Iterator[Step]:
    key = "treat.steam_lined" if washes(cloth.fabric) else "treat.steam"
    say = (said(key), *_pile(cloth.fabric))
    yield _step("steam", say, minutes=30, wait=4.0, cautions=(said("caution.steam"),))


def _washed(fabric: Fabric) -> Iterator[Step]:
    if soaks(fabric):
        yield _step("soak", (said("treat.soak", hours=SOAK),), minutes=10, wait=SOAK)
    hand = "treat.wash_hand" if by_hand(fabric) else "treat.wash"
    yield _step("wash", (said(hand), said("treat.no_wring")), minutes=25)
    dry = "treat.dry_flat" if fabric.weave == "knit" else "treat.dry_hung"
    yield _step("dry", (said(dry),), minutes=10, wait=DRY)


def _expected(cloth: Treated) -> Iterator[Said]:
    fabric = cloth.fabric
    along, across = fabric.shrinkage_to_come
    if along or across:
        yield said("treat.measure_again", along=SQUARE * (1 - along), across=SQUARE * (1 - across), side=SQUARE)
    else:
        yield said("treat.measure_lost", side=SQUARE)
    yield said("treat.carry_back")
    if max(along, across) > LIMITS[fabric.weave]:
        key = "treat.shrinks_much" if cloth.washed else "treat.shrinks_much_steamed"
        yield said(key, share=max(along, across), limit=LIMITS[fabric.weave])


def _pile(fabric: Fabric) -> Iterator[Said]:
    if has_pile(fabric):
        yield said("treat.pile")


def _squared(cloth: Treated) -> Step:
    fabric, takes = cloth.fabric, handling(cloth.fabric)
    if has_pile(fabric):
        return _piled(fabric)
    if iron_limit(fabric) == 0:
        return _step("square", (said("treat.square_cold"),), minutes=10, wait=REST)
    say = [said("treat.square" if fabric.weave == "woven" else "treat.square_knit")]
    if takes.press_cloth:
        say.append(said("treat.press_cloth" if takes.steam else "treat.press_cloth_dry"))
    dots = iron_limit(fabric) or 1
    return _step("square", tuple(say), minutes=20, cautions=(said("caution.iron"),), heat=dots)


def _piled(fabric: Fabric) -> Step:
    """Return how a pile is squared: nothing is laid on it, and no iron set down (common practice)."""
    say = (said("treat.square_piled" if fabric.weave == "woven" else "treat.square_piled_knit"),)
    if not handling(fabric).steam:
        return _step("square", say, minutes=10, wait=REST)
    steamed = (said("caution.steam"),)
    return _step(
        "square", (*say, *_pile(fabric)), minutes=20, wait=REST, cautions=steamed, heat=iron_limit(fabric)
    )


def _marked(cloth: Treated) -> Step:
    fabric = cloth.fabric
    face = FACE[handling(fabric).marks]
    say = [said("treat.face_alike" if fabric.faces_alike else face)]
    along = "treat.same_way" if fabric.repeat_along else "treat.both_ways"
    say.append(said("treat.one_way" if fabric.one_way else along))
    return _step("mark", tuple(say), minutes=5)


def _tried(cloth: Treated) -> Step:
    fabric, limit = cloth.fabric, iron_limit(cloth.fabric)
    hot, fuses = limit != 0, cloth.fused and handling(cloth.fabric).fuses
    say = [said("treat.try_heat", degrees=DEGREES[limit or 1])] if hot else []
    taped = not hot and not has_pile(fabric)
    say.append(said("treat.try_stitch_cold" if taped else "treat.try_stitch"))
    say += stretch_trial(fabric)
    if fabric.takes_starch:
        say.append(said("treat.try_starch"))
    if fuses:
        cool = limit is not None and limit < FUSING
        say.append(said("treat.try_fuse_cool" if cool else "treat.try_fuse"))
    iron, fumes = (said("caution.iron"),) if hot else (), (said("caution.fumes"),) if fuses else ()
    dots, glue = (limit or 1) if hot else None, (said("caution.glue"),) if taped else ()
    return _step("try", tuple(say), minutes=20, cautions=(*iron, *fumes, *glue), heat=dots)


def any_fused(made: Made) -> bool:
    """Return whether any garment's interfacing is fused: its cloth takes one, or nobody knows it."""
    stiffened = {g.fabric for g in made.garments for p in g.draft.pieces if p.material == "interfacing"}
    known = made.costume.fabrics
    return any(role not in known or handling(known[role]).fuses for role in stiffened)


def _interfacing(cloth: Treated) -> Iterator[Step]:
    if not cloth.fused:
        yield _step("read", (said("treat.sewn_in"),), minutes=5)
        return
    yield _step("read", (said("treat.fusible", title=cloth.fabric.title),), minutes=5)
    if not cloth.fabric.pretreated:
        yield _step("steep", (said("treat.steep"),), minutes=10, wait=DRY)
