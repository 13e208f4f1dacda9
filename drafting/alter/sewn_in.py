"""Interfacing for a cloth that takes no fusible: another material is bought, cut and basted in."""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.draft import Draft, Notion
from drafting.draft.roles import FACINGS, PieceRole
from drafting.fabric import Fabric, handling
from drafting.fabric.sorts import Sort
from drafting.ground.findings import Finding

THIN: frozenset[Sort] = frozenset({"sheer", "lace"})
"""Sorts through which any other interfacing would show (common practice)."""

ORGANZA = "organza in the cloth's colour, or a second layer of the cloth, sewn in"
CANVAS = "hair canvas, sewn in"
WOVEN = "a sewn-in interfacing of woven cotton, lighter than the cloth"
FIRM = "a firm sewn-in canvas, or buckram where the hem is boned"

FIRMER = {PieceRole.UNDER_COLLAR: CANVAS, PieceRole.FRONT: CANVAS, PieceRole.TAIL: FIRM}
"""What is firmed with more than light cotton (common practice)."""


def sewn_in(draft: Draft, fabric: Fabric | None) -> Draft:
    """Return the draft with every interfacing of a kind that is sewn in, where the cloth takes no fusible.

    The draft says so once; one whose cloth may be fused, or that has no interfacing, stays as it is.
    """
    stiff = [notion for notion in draft.notions if notion.what == "interfacing"]
    if fabric is None or handling(fabric).fuses or not stiff:
        return draft
    notions = tuple(_of_kind(n, draft, fabric) if n.what == "interfacing" else n for n in draft.notions)
    said = any(f.check == "interfacing" and f.value == "sewn in" for f in draft.findings)
    return replace(draft, notions=notions, findings=draft.findings if said else (*draft.findings, _said(fabric)))


def _of_kind(notion: Notion, draft: Draft, fabric: Fabric) -> Notion:
    kind = ORGANZA if THIN & set(fabric.possible_sorts) else _firm(notion, draft)
    return replace(notion, kind=kind, note=f"{kind}; same grain as the cloth")


def _firm(notion: Notion, draft: Draft) -> str:
    """Return what firms a piece that no thin cloth is made of, by what the interfacing lies behind."""
    stiffens = draft[notion.piece].stiffens if notion.piece in draft else ()
    shell = next((draft[name] for name in stiffens if name in draft), None)
    if shell is None or (shell.role is PieceRole.FRONT and not _tailored(draft)):
        return WOVEN
    return FIRMER.get(shell.role, WOVEN)


def _tailored(draft: Draft) -> bool:
    """Return whether a front is a coat's or a waistcoat's: lined, or under a collar. A facing lines nothing."""
    return any(
        piece.role is PieceRole.UNDER_COLLAR or (piece.lines and piece.role not in FACINGS)
        for piece in draft.pieces
    )


def _said(fabric: Fabric) -> Finding:
    return Finding(
        "interfacing",
        "note",
        "interfacing",
        "sewn in",
        None,
        f"{fabric.title} takes no fusible: baste a sewn-in interfacing to the wrong side, just inside the "
        "stitching line.",
    )
