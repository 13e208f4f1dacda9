"""The slit that a narrow skirt is walked in by, settled once all that is let into its hem stands.

A block knows the hem as it drafts it. A godet, a pleat or fullness widens it afterwards: then the garment is
drafted again without the slit, and what hangs on that (lining, hem band) with it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from drafting.body.body import SIDES
from drafting.costume.choices import Chosen
from drafting.costume.wishes import Misfit
from drafting.draft.by_role import edges_as, is_shell
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole
from drafting.fitting.note import Done
from drafting.ground.findings import Finding, Severity
from drafting.ground.lengths import told
from drafting.ground.tolerances import GIRTH_MATCH
from drafting.shaping.skirt.cuts import BY_THE_HEM, HEM_TO_WALK

PART, CHOICE = "skirt-body", "walking_slit"

AsWished = tuple[Draft, list[Misfit], tuple[Done, ...]]


def slit_settled(found: AsWished, chosen: Chosen, drafted: Callable[[Chosen], AsWished]) -> AsWished:
    """Return a garment without the slit that its hem needs no more, or with what is to be said of it.

    `drafted` drafts it again with other choices. Where a wish names the slit itself, it stays, and that is told.
    """
    draft, misfits, _ = found
    least = max(draft.facts.get(name, 0.0) for name in (HEM_TO_WALK, *(f"{HEM_TO_WALK}_{s}" for s in SIDES)))
    if PART not in chosen.parts or not least or misfits:
        return found
    hem, slit = hem_round(draft), _has_slit(draft)
    if not slit:
        return _said(found, _hinders(hem, least)) if hem < least - GIRTH_MATCH else found
    if getattr(chosen.parts[PART], CHOICE) != BY_THE_HEM or hem < least:
        return found
    without = replace(chosen.parts[PART], **{CHOICE: "none"})
    again = drafted(replace(chosen, parts={**chosen.parts, PART: without}))
    return _said(found, _stays(hem, least)) if again[1] else _said(again, _left_out(hem, least))


def hem_round(draft: Draft) -> float:
    """Return what the hem of the shell measures all round, mm: panels and godets of both hands, pleats open."""
    return sum(
        edge.length * piece.copies * (2 if piece.both_hands else 1)
        for piece in draft.pieces
        if is_shell(piece)
        for edge in edges_as(piece, EdgeRole.HEM)
    )


def _has_slit(draft: Draft) -> bool:
    return any(edges_as(piece, EdgeRole.SLIT) for piece in draft.pieces if is_shell(piece))


def _said(found: AsWished, finding: Finding) -> AsWished:
    return replace(found[0], findings=(*found[0].findings, finding)), *found[1:]


def _finding(hem: float, least: float, level: Severity, sentence: str) -> Finding:
    return Finding("walking", level, "hem", hem, least, sentence)


def _hinders(hem: float, least: float) -> Finding:
    said = (
        f"The hem measures {told(hem)} round and has no slit: with less than {told(least)} it hinders the step, "
    )
    said += 'on stairs above all. Take `walking_slit = "yes"`, or a wider hem.'
    return _finding(hem, least, "warning", said)


def _left_out(hem: float, least: float) -> Finding:
    said = f"With what is let in the hem measures {told(hem)} round; {told(least)} are enough to walk in, so the "
    return _finding(hem, least, "note", f"{said}centre is sewn down to the hem, without a slit.")


def _stays(hem: float, least: float) -> Finding:
    said = f"With what is let in the hem measures {told(hem)} round, and {told(least)} are enough to walk in "
    said += "without a slit. It stays, as a step or a note of yours names an edge of it."
    return _finding(hem, least, "note", said)
