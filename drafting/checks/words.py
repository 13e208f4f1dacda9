"""How checks put things: names as words, lengths with unit, one answer in one call."""

from __future__ import annotations

import re

from drafting.draft.draft import EdgeRef, Seam
from drafting.draft.roles import SeamKind
from drafting.ground.findings import Finding, Severity
from drafting.ground.lengths import told


def plain(name: str) -> str:
    """Return the name of a piece, an edge, a seam or a level as words.

    >>> plain("cap_front"), plain("side-body")
    ('cap front', 'side body')
    """
    return name.replace("_", " ").replace("-", " ")


def capital(text: str) -> str:
    """Return `text` with its first letter large and the rest as it is; a file's name keeps its own.

    >>> capital("the cap is long"), capital("wearer.toml has changed")
    ('The cap is long', 'wearer.toml has changed')
    """
    return text if FILE_NAME.match(text) else text[:1].upper() + text[1:]


FILE_NAME = re.compile(r"\S+\.(?:toml|csv|journal|lays|taking|readings)\b")


def mm(length: float) -> str:
    """Return a length for a sentence, told as finely as a check measures."""
    return told(length, "fine")


def degrees(angle: float) -> str:
    return f"{angle:.1f} degrees"


def edge_words(ref: EdgeRef) -> str:
    """Return `front shoulder` for ("front", "shoulder")."""
    return f"{plain(ref[0])} {plain(ref[1])}"


def seam_words(seam: Seam) -> str:
    """Return `Side seam` for the seam `side`; a dart stays a dart."""
    name = capital(plain(seam.name))
    return name if seam.kind is SeamKind.DART else f"{name} seam"


def chain_words(chain: tuple[EdgeRef, ...], other: tuple[EdgeRef, ...]) -> str:
    """Return a chain by its pieces, or by its edges where both chains lie on the same pieces."""
    pieces = list(dict.fromkeys(piece for piece, _ in chain))
    if set(pieces) != {piece for piece, _ in other}:
        return " + ".join(plain(piece) for piece in pieces)
    return " + ".join(edge_words(ref) for ref in chain)


def ok_or_error(holds: bool) -> Severity:
    return "ok" if holds else "error"


def verdict(
    check: str, holds: bool, where: str, found: float, wanted: float, message: str, *, fails: Severity = "error"
) -> Finding:
    """Return the finding of a check that asks for a number: `ok` or, where not, `fails`."""
    return Finding(check, "ok" if holds else fails, where, found, wanted, message)
