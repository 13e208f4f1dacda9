"""The centre of a skirt that opens: a zip at the top, a seam below it, and a slit to walk in a narrow hem. mm."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.draft.draft import Draft, Notion, Seam
from drafting.draft.piece import Edge, EdgeKind, Notch, Piece
from drafting.draft.roles import EdgeRole, Half, SeamKind
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.details.zips import sold_zip

ZIP_ALLOWANCE, SLIT_ALLOWANCE = 20.0, 30.0
"""mm: along a zip and the seam below it, and along a slit, turned inside (common practice: 20 to 25, 25 to 40)."""


@dataclass(frozen=True)
class OpenCentre:
    """What opens: `zip` mm from the waist (0: sewn all the way), `slit` mm from the hem, at the back or not."""

    zip: float
    slit: float
    behind: bool

    @property
    def side(self) -> str:
        return "back" if self.behind else "front"


def with_opening(piece: Piece, centre: OpenCentre) -> tuple[Piece, tuple[Seam, ...]]:
    """Return one hand of a piece that was whole at the centre that opens, and the seam below its opening.

    The edge runs up behind and down in front, as outlines do. A piece whose other middle is on a fold stays one.
    """
    edge = middle_edge(piece, centre.behind)
    up = edge.half is Half.BACK
    path = edge.path.reversed() if up else edge.path
    zipped = min(centre.zip, 0.8 * path.length)
    slit = min(centre.slit, path.length - zipped - 0.1 * path.length)
    parts = list(_parts(edge, path.length, zipped, slit, 2 if up else 1))
    at = 0.0
    edges = []
    for part, length in parts:
        run = path.part(at, at + length) if length < path.length - 1e-9 else path
        at += length
        edges.append(replace(part, path=run.reversed() if up else run, notches=_turned(part, length, up)))
    if up:
        edges.reverse()
    place = piece.index(edge.name)
    whole = (*piece.edges[:place], *edges, *piece.edges[place + 1 :])
    chain = ((piece.name, f"{edge.name}_seam"),)
    tops, lows = (None if zipped else "square"), (None if slit else "square")
    seam = Seam(
        f"centre {centre.side} {piece.name}" if piece.name != centre.side else f"centre {centre.side}",
        chain,
        chain,
        start=lows if up else tops,  # type: ignore[arg-type]
        end=tops if up else lows,  # type: ignore[arg-type]
        kind=SeamKind.CENTRE,
    )
    folded = any(one.kind is EdgeKind.FOLD for one in whole)
    return replace(piece, edges=whole, pair=not folded), (seam,)


def middle_edge(piece: Piece, behind: bool) -> Edge:
    """Return the first edge of a piece on the centre back, or the centre front, in the order drawn."""
    half = Half.BACK if behind else Half.FRONT
    found = [e for e in piece.edges if e.half is half and e.role in (EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM)]
    return next((e for e in found if e.kind is EdgeKind.OPENING), found[0])


def _turned(part: Edge, length: float, up: bool) -> tuple[Notch, ...]:
    return tuple(replace(n, at=length - n.at) for n in part.notches) if up else part.notches


def _parts(edge: Edge, length: float, zipped: float, slit: float, strokes: int) -> Iterator[tuple[Edge, float]]:
    """Yield the parts of a centre from the waist down, each with its length."""
    if zipped:
        stop = (Notch("zip_stop", zipped, strokes),)
        yield (replace(edge, kind=EdgeKind.OPENING, allowance=ZIP_ALLOWANCE, notches=stop), zipped)
    sewn = replace(edge, name=f"{edge.name}_seam", kind=EdgeKind.SEAM, allowance=ZIP_ALLOWANCE, notches=())
    yield sewn, length - zipped - slit
    if slit:
        open_end = replace(edge, name="slit", kind=EdgeKind.OPENING, role=EdgeRole.SLIT, notches=())
        yield replace(open_end, allowance=SLIT_ALLOWANCE), slit


def opening_said(piece: Piece, centre: OpenCentre) -> Draft:
    """Return what is bought and said of the opening in this piece."""
    length = middle_edge(piece, centre.behind).length
    sold = sold_zip(length)
    note = f"stopped with a bar at the notch, {told(length)} below the waist seam"
    bought = Notion("zip", f"centre {centre.side}", 1, sold, note, "invisible zip", piece=piece.name)
    said = Finding(
        "closing",
        "note",
        centre.side,
        length,
        sold,
        f"The {centre.side} closes with an invisible zip of {told(length)}, to the notch; below it the seam is "
        f"sewn. Buy one of {told(sold, 'ready')}, and shorten it at the notch, under a bar. The centre has "
        f"{told(ZIP_ALLOWANCE)} of allowance.",
    )
    found = [said]
    if "slit" in piece:
        slit = piece["slit"].length
        found.append(
            Finding(
                "slit",
                "note",
                f"{piece.name}.slit",
                slit,
                None,
                f"To walk in, the centre {centre.side} seam is left open for its lowest {told(slit)}, its "
                f"allowances of {told(SLIT_ALLOWANCE)} turned inside.",
            )
        )
    return Draft(findings=tuple(found), facts={"zip": length}, notions=(bought,))
