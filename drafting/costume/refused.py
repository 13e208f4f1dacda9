"""What else a garment cannot have, once one of its choices cannot be drafted: all of it at once.

A draft stops at the first thing that cannot be. The choice that alone brings it about is left out, and the
garment is drafted again, until it stands or nobody alone is at fault.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping

from drafting.blocks import Block
from drafting.costume.choices import Chosen, block_named, choose, garment_choices, sewn_so
from drafting.costume.file import CostumeFile, Garment
from drafting.costume.garment import wished
from drafting.costume.proportion import in_proportion
from drafting.ground.errors import DraftError
from drafting.ground.scale import body_scale, style_growth
from drafting.reading.given import Given, Origin

MOST_DRAFTS = 40
"""Drafts of one garment tried before it is left at what was found (ours: a few seconds)."""


def chosen_on_wearer(
    costume: CostumeFile, garment: Garment, block: Block, given: Mapping[str, Given], origin: Origin
) -> Chosen:
    """Return the choices of a garment of a costume from raw values; raises `InputError`."""
    body = costume.wearer
    sewn = sewn_so(body, costume.fabrics.get(garment.fabric))
    return choose(block, given, body_scale(body), origin, sewn, style_growth(body))


def refused_besides(costume: CostumeFile, garment: Garment, first: DraftError) -> Iterator[DraftError]:
    """Yield what is refused of a garment besides the `first` refusal of its draft."""
    block, cloth, body = block_named(garment.block), costume.fabrics.get(garment.fabric), costume.wearer
    notes, origin = costume.fittings.lines_of(garment.name), Origin(costume.path, costume.unit)

    def draft(given: Mapping[str, Given]) -> None:
        sized = in_proportion(garment_choices(block), given, body, origin)
        wished(body, cloth, block, chosen_on_wearer(costume, garment, block, sized, origin), garment.wishes, notes)

    left, now, tries = dict(garment.choices), first, Tries(draft)
    while left and tries.left:
        name = next((one for one in left if _same(tries.refusal({one: left[one]}), now)), None)
        if name is None:
            return
        del left[name]
        found = tries.refusal(left)
        if found is None or _same(found, now):
            return
        yield found
        now = found


class Tries:
    """A count of drafts: when it is spent, nothing more is refused."""

    def __init__(self, draft: Callable[[Mapping[str, Given]], None]) -> None:
        self.draft, self.left = draft, MOST_DRAFTS

    def refusal(self, given: Mapping[str, Given]) -> DraftError | None:
        """Return why these choices cannot be drafted, None where they can."""
        if not self.left:
            return None
        self.left -= 1
        try:
            self.draft(given)
        except DraftError as error:
            return error
        return None


def _same(one: DraftError | None, other: DraftError) -> bool:
    """Return whether two refusals say the same but for their numbers."""
    return one is not None and _shape(one) == _shape(other)


def _shape(error: DraftError) -> str:
    return re.sub(r"[0-9.,/⟨⟩| ]+", " ", error.what)
