"""What a cloth holds by itself, plain and stiffened, as sentences for its page."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.sources import printed
from drafting.worn.cloth import Treatment, ply_of, ply_range, stiffened
from drafting.worn.cloth.treatments import FACTORS_FROM
from drafting.worn.hang.flare import FOLDS_FROM, fold_count, free_flare
from drafting.worn.hang.puff import puff
from drafting.worn.hang.strip import UPRIGHT_FROM, bending_length_of, free_edge, upright_limit

TRIED = (
    Treatment.PLAIN,
    Treatment.STARCHED_HEAVY,
    Treatment.FUSED_LIGHT,
    Treatment.FUSED_MEDIUM,
    Treatment.FUSED_HEAVY,
    Treatment.BAND,
)

CALLED = {
    Treatment.PLAIN: "Plain",
    Treatment.STARCHED_LIGHT: "Starched lightly",
    Treatment.STARCHED_HEAVY: "Starched stiff",
    Treatment.FUSED_LIGHT: "With light fusible",
    Treatment.FUSED_MEDIUM: "With medium fusible",
    Treatment.FUSED_HEAVY: "With heavy fusible",
    Treatment.BAND: "With a fused band at the hem",
    Treatment.BONED: "With a bone in a fused band at the hem",
}


def what_it_holds(
    cloth: Fabric,
    edge: float = 80.0,
    puffed: tuple[float, float] = (180.0, 100.0),
    flare: tuple[float, float, float] = (700.0, 1900.0, 600.0),
) -> tuple[str, ...]:
    """Return what becomes of a free `edge` (mm), of a puff (mm of cloth, mm between its seams) and of a
    flare (mm of waist, hem and length), by treatment."""
    sources = printed(FACTORS_FROM, UPRIGHT_FROM, *FOLDS_FROM)
    return (
        *_edges(cloth, edge),
        *_puff(cloth, *puffed),
        *_flare(cloth, *flare),
        f"Factors, limits and folds: {sources}.",
    )


def _edges(cloth: Fabric, edge: float) -> Iterator[str]:
    for treatment in (one for one in TRIED if _is_taken(cloth, one)):
        found = free_edge(stiffened(cloth, treatment), edge)
        sure = "" if treatment is Treatment.PLAIN else f" ({_range(cloth, treatment)})"
        yield f"{CALLED[treatment]}{sure}: {found.words}"
    limit = told(upright_limit(ply_of(cloth)))
    yield f"Plain, a ruffle stands upright alone up to {limit}."


def _is_taken(cloth: Fabric, treatment: Treatment) -> bool:
    """Say whether a cloth takes a treatment, by its file or by a strip of it that had it."""
    if treatment is Treatment.PLAIN or any(one.treatment == treatment for one in cloth.treated):
        return True
    starch = {Treatment.STARCHED_LIGHT, Treatment.STARCHED_HEAVY}
    return cloth.takes_starch if treatment in starch else cloth.takes_fusible


def _range(cloth: Fabric, treatment: Treatment) -> str:
    if any(one.treatment == treatment for one in cloth.treated):
        return "your own strip"
    spread = ply_range(cloth, treatment)
    low, high = bending_length_of(spread.low), bending_length_of(spread.high)
    return f"bending length {told(low, 'small')} to {told(high, 'small')}"


def _puff(cloth: Fabric, length: float, span: float) -> Iterator[str]:
    try:
        yield f"{told(length)} over {told(span)}: {puff(ply_of(cloth), length, span).words}"
    except DraftError as error:
        yield f"No puff: {error.sentence}."


def _flare(cloth: Fabric, waist: float, hem: float, length: float) -> Iterator[str]:
    ply = ply_of(cloth)
    found = free_flare(ply, waist, hem, length)
    yield (
        f"A flare from {told(waist)} to {told(hem)}, {told(length)} long, would stand off "
        f"{told(found.cone)} if a stiff hem held it open; by itself it stands off "
        f"{told(found.alone.reach)}, and its hem falls into {fold_count(ply, hem, length).words}."
    )
