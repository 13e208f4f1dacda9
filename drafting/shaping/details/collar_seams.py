"""The ring, marks and seams of a shirt collar: on the neckline, fall on stand, edges on their twin's. mm."""

from __future__ import annotations

from drafting.draft.chain import Chain
from drafting.draft.draft import Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.geometry import Path, line
from drafting.shaping.details.buttons import Button, button_mark, hole_mark
from drafting.shaping.details.collar_lines import Stand

MIDDLE = 0.45
"""Height of a stand's button over that of the stand behind: half of what it has in front (by eye)."""


def neck_seam(piece: str, front: Chain, back: Chain, extension: float) -> Seam:
    """The neck edge, front to centre back, against the neckline; notched at centre and shoulder."""
    marks = [("shoulder", front.path.length)]
    if extension:
        marks.insert(0, ("centre front", extension))
    return _on_neck(piece, (*reversed(front.refs), *reversed(back.refs)), marks)


def to_centre(piece: str, front: Chain, back: Chain, extension: float) -> Seam:
    """The neck edge of a collar that ends at the centre front, where the button stand begins."""
    refs = [ref for ref, role in zip(front.refs, front.edges, strict=True) if role is not EdgeRole.STAND_NECK]
    marks = [("shoulder", front.path.length - extension)]
    return _on_neck(piece, (*reversed(refs), *reversed(back.refs)), marks)


def _on_neck(piece: str, neckline: tuple[tuple[str, str], ...], marks: list[tuple[str, float]]) -> Seam:
    return Seam(
        "collar",
        ((piece, "neck"),),
        neckline,
        start=None,
        end=None,
        notches=tuple(SeamNotch(name, at, at) for name, at in marks),
        kind=SeamKind.ATTACHED,
    )


def top_seam(lines: Stand, back: float) -> Seam:
    """The fall's lower edge on the stand's top, up to the centre front; notched near the shoulder."""
    at = lines.top.length - back
    return Seam(
        "collar fall",
        (("collar", "stand"),),
        (("collar-stand", "top"),),
        start=None,
        end=None,
        notches=(SeamNotch("shoulder", at, at),),
        kind=SeamKind.MADE_UP,
    )


def twin_seam(name: str, piece: Piece, edge: str) -> Seam:
    """An edge sewn to the same edge of the piece's twin."""
    ref = (piece.name, edge)
    return Seam(name, (ref,), (ref,), start=None, end=None, kind=SeamKind.MADE_UP)


def collar_ring(low: Edge, high: Edge, front: Path, *between: Edge) -> tuple[Edge, ...]:
    """Return half a collar's ring: `low` runs front to back, `high` back to front, `between` on to its `front`."""
    behind = line(low.path.end, high.path.start)
    fold = Edge("centre", behind, EdgeKind.FOLD, role=EdgeRole.CENTRE)
    return (low, fold, high, *between, Edge("front", front, role=EdgeRole.FRONT))


def stand_marks(lines: Stand, extension: float, share: float, button: Button, closing: str) -> list[Placement]:
    """Return the centre front of a stand, its button and its hole; `share` of its height is there."""
    centre = lines.neck.at(extension)
    across, up = lines.neck.tangent(extension), share * (lines.top.end - centre)
    at = centre + 1j * across * MIDDLE * share * lines.top.start.imag
    over, under = closing.split()[0], closing.split()[-1]
    return [
        Placement("centre_front", line(centre, centre + up), "centre"),
        button_mark(f"button_{under}", at, button.diameter, under),
        hole_mark(f"buttonhole_{over}", at, -across, button.hole, over),
    ]
