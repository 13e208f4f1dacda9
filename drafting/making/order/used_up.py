"""What a step uses up because of how it is sewn or what its words say: tape, paper, glue.

Lengths in mm; a bottle or a roll is a share of one, rounded up on the list.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence

from drafting.ground.lengths import told
from drafting.making.model import Said, Setting, Supply

STAY = f"linen or cotton stay tape, {told(6.0, 'small')} to {told(8.0, 'small')}"
PAPER = f"thin paper to tear away, in strips {told(30.0, 'small')} wide"
BOUND = f"soft bias tape in its colour, folded, {told(20.0, 'small')} wide"
GLUE = "textile glue that stays soft, one tube"
TAPED = "paper tape that leaves no trace, one roll"

WAVES = frozenset({"set.much", "set.much_light", "set.clipped_much", "set.sheer"})
"""Sentences of a setting that sew over paper."""

GLUED_DOWN = frozenset(
    {
        "clipped.slit_vent",
        "clipped.slit_vent_seam",
        "clipped.facing_caught",
        "clipped.facing_ends",
        "clipped.facing_ends_turned",
    }
)
"""Sentences by which a glue alone holds an edge down: nothing is sewn along it."""

GLUED = GLUED_DOWN | frozenset(
    {
        "cold.dart",
        "cold.hem",
        "cold.neaten_open",
        "cold.press_open",
        "cold.press_side",
        "clipped.baste_interfacing",
        "clipped.fuse_bands",
        "clipped.roll_tape",
    }
)
EDGES_BOUND = frozenset({"bound.neaten", "bound.fold_across"})
HELD_BY_TAPE = frozenset(
    {
        "clipped.applique",
        "clipped.pocket_on",
        "clipped.flap_on",
        "clipped.baste_body",
        "clipped.fit_sleeves",
        "clipped.fit_write",
        "clipped.fit_write_apart",
        "clipped.take_apart",
    }
)
"""Sentences that hold with a glue, that bind an edge, and that hold with a paper tape."""

STUCK, ROLL = 10_000.0, 25_000.0
"""mm that a tube of glue holds (ours) and that a roll of tape measures (common practice)."""


def only_glued(say: Collection[Said]) -> bool:
    """Return whether a step sews nothing: all that it says is glued down."""
    return bool(say) and all(one.key in GLUED_DOWN for one in say)


def used_up(
    setting: Setting | None, say: Sequence[Said], length: float, sewn: bool, matches: str
) -> tuple[Supply, ...]:
    """Return what a step on `length` mm uses up by its setting, where it is `sewn`, and by its words.

    What is seen inside `matches` the cloth of that role in colour.
    """
    return (*(_by_setting(setting, length, matches) if setting and sewn else ()), *_by_words(say, length, matches))


def _by_setting(setting: Setting, length: float, matches: str) -> Iterator[Supply]:
    keys = {one.key for one in setting.why}
    if setting.stayed:
        yield Supply("tape", STAY, length, "mm")
    if keys & WAVES:
        yield Supply("paper", PAPER, length, "mm")
    if "set.neaten_bound" in keys:
        yield Supply("tape", BOUND, 2 * length, "mm", matches)


def _by_words(say: Iterable[Said], length: float, matches: str) -> Iterator[Supply]:
    keys = {one.key for one in say}
    if keys & GLUED:
        yield Supply("glue", GLUE, max(length, 1.0) / STUCK, "piece")
    if keys & EDGES_BOUND:
        yield Supply("tape", BOUND, length, "mm", matches)
    if keys & HELD_BY_TAPE:
        yield Supply("paper tape", TAPED, max(length, 1.0) / ROLL, "piece")
