"""A draft with the notes of a fitting carried out on it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.draft import Draft
from drafting.fabric import Fabric
from drafting.fitting.note import Done, Note
from drafting.ground.findings import Finding


@dataclass(frozen=True)
class Fitted:
    """A draft that follows its notes, what each of them moved, and what is to be said of it."""

    draft: Draft
    done: tuple[Done, ...] = ()
    findings: tuple[Finding, ...] = ()


def fitted(draft: Draft, notes: Sequence[Note], body: Body, fabric: Fabric | None) -> Fitted:
    """Return the draft of one hand with each of its notes carried out, in the order given.

    The notes are those of that hand alone: their side says nothing any more here.
    """
    if not notes:
        return Fitted(draft)
    del body, fabric
    said = tuple(
        Finding("fitting", "warning", str(note.where), None, None, f"no alteration knows how to {note.verb} here")
        for note in notes
    )
    return Fitted(draft, (), said)
