"""Sleeve placket: the slit above the cuff lies in the sleeve's back, not in its seam, and is bound or faced.

A quarter of the hem from the seam, the slit runs up along the warp. A continuous strip binds both its edges; or a
narrow strip binds the edge beside the seam, and a placket with a pointed end laps over it from the other.

      slit    .------- strip, cut on, twice the slit -------.      placket, folded   .'.
       |      '---------------------------------------------'      lengthwise        | : |
    ---'------ hem                                                                   | : |
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edges_as, piece_as
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, Half, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import Path, line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale
from drafting.ground.sources import practice
from drafting.shaping.details.small_pieces import turned_under

FROM_SEAM = 0.25
"""Share of the hem between the slit and the underarm seam (common practice: halfway to the elbow's line)."""

HIGHEST = 0.45
"""Share of the underarm seam that a slit reaches up at most (ours: below the elbow)."""

STRIP = 12.0
"""mm at adult scale: a strip's finished width (common practice: 8 to 15)."""

POINT, PAST = 0.6, 15.0
"""Of a placket's width: how high its point rises; mm at adult scale that it goes on over the slit's end
(common practice: it is stitched across there)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the slit of a sleeve, in mm."""

    sleeve_opening: str = choice(
        "seam",
        "word",
        "where the sleeve opens above its cuff: in the seam, or in a slit in its back, bound or with a placket",
        words=("seam", "bound", "placket"),
        group="cuff",
        source=practice(),
    )
    placket_length: float = choice(
        120.0,
        "mm",
        "length of the slit in the sleeve's back; never too short for the hand",
        low=30,
        high=250,
        scales=True,
        source=practice("⟨100⟩ to ⟨150⟩"),
        group="cuff",
    )
    placket_width: float = choice(
        25.0,
        "mm",
        "finished width of the placket that laps over the slit",
        low=12,
        high=50,
        scales=True,
        source=practice("⟨20⟩ to ⟨28⟩"),
        group="cuff",
    )


def sleeve_placket(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with the slit moved from the sleeve's seam into its back, with what finishes it.

    A sleeve without a slit is left as it is, with a finding.
    """
    if choices.sleeve_opening == "seam":
        return draft
    sleeve = piece_as(draft, PieceRole.SLEEVE)
    hems = edges_as(sleeve, EdgeRole.HEM) if sleeve else ()
    if sleeve is None or len(hems) != 1 or not edges_as(sleeve, EdgeRole.SLIT):
        return replace(draft, findings=(*draft.findings, _nothing_opens()))
    scale, needed = body_scale(body), min(edge.length for edge in edges_as(sleeve, EdgeRole.SLIT))
    whole, seam_length = _closed(sleeve)
    long = min(max(choices.placket_length, needed), HIGHEST * seam_length)
    parted, at, chain = _parted(whole, hems[0])
    made = _finished(choices, long, scale)
    marks = tuple(
        Placement(piece.name, line(at, at + 1j * long), "slit edge" if number else "slit", piece=piece.name)
        for number, piece in enumerate(made)
    )
    sleeve = replace(parted, placements=(*parted.placements, *reversed(marks)))
    kept = tuple(f for f in draft.findings if (f.check, f.where) != ("hand", sleeve.name))
    drawn = replace(
        draft.with_pieces([sleeve]),
        seams=tuple(_free_at_hem(seam) for seam in draft.seams),
        findings=(*kept, _said(choices, long)),
        facts={**draft.facts, "sleeve_slit": long},
        chains={**draft.chains, "sleeve_hem": chain},
    )
    return drawn + Draft(made)


def _closed(sleeve: Piece) -> tuple[Piece, float]:
    """Return the sleeve with its seam closed down to the hem, and how long the shorter side of that is."""
    edges = list(sleeve.edges)
    for slit in edges_as(sleeve, EdgeRole.SLIT):
        at = edges.index(slit)
        before, after = edges[at - 1], edges[(at + 1) % len(edges)]
        first = before.role is EdgeRole.UNDERARM
        seam = before if first else after
        whole = Path.joined([seam.path, slit.path] if first else [slit.path, seam.path])
        shift = 0.0 if first else slit.length
        notches = tuple(replace(notch, at=notch.at + shift) for notch in seam.notches)
        edges[edges.index(seam)] = replace(seam, path=whole, notches=notches)
        edges.remove(slit)
    made = replace(sleeve, edges=tuple(edges))
    return made, min(edge.length for edge in edges_as(made, EdgeRole.UNDERARM))


def _parted(sleeve: Piece, hem: Edge) -> tuple[Piece, complex, tuple[EdgeRef, ...]]:
    """Return the sleeve with its hem parted at the slit, the place of that, and the hem as it runs from there."""
    at = sleeve.index(hem.name)
    ends_behind = sleeve.edges[(at + 1) % len(sleeve.edges)].half is Half.BACK
    share = 1 - FROM_SEAM if ends_behind else FROM_SEAM
    paths = hem.path.split(share * hem.length)
    names = (hem.name, f"{hem.name}_behind") if ends_behind else (f"{hem.name}_behind", hem.name)
    sewn = [None if hem.sewn is None else part * hem.sewn for part in (share, 1 - share)]
    parts = [
        replace(hem, name=name, path=path, sewn=length, notches=())
        for name, path, length in zip(names, paths, sewn, strict=True)
    ]
    edges = (*sleeve.edges[:at], *parts, *sleeve.edges[at + 1 :])
    chain = (sleeve.name, names[1]), (sleeve.name, names[0])
    return replace(sleeve, edges=edges), paths[0].end, chain


def _free_at_hem(seam: Seam) -> Seam:
    """Return a sleeve's seam without a demand on its corners at the hem, which the cuff takes in."""
    return replace(seam, end=None) if seam.kind is SeamKind.SLEEVE else seam


def _finished(choices: Choices, long: float, scale: float) -> tuple[Piece, ...]:
    """Return what finishes the slit: a strip for both edges, or a placket and a strip for one."""
    turned = turned_under(scale)
    if choices.sleeve_opening == "bound":
        strip = _ring(2 * long, 2 * STRIP * scale, turned)
        return (_strip(strip),)
    under = _ring(long, 2 * STRIP * scale, turned)
    wide, high = choices.placket_width, long + PAST * scale
    corners = (0j, complex(2 * wide, 0), complex(2 * wide, high), complex(wide, high))
    peak = complex(wide / 2, high + POINT * wide), complex(0, high)
    names = ("lower", "inner", "top", "point_behind", "point", "outer")
    ring = tuple(
        Edge(name, line(a, b), EdgeKind.FREE, allowance=turned)
        for name, a, b in zip(names, (*corners, *peak), (*corners[1:], *peak, corners[0]), strict=True)
    )
    fold = Placement("fold", line(complex(wide, 0), complex(wide, high)), "fold")
    placket = Piece("sleeve-placket", ring, pair=True, title="Sleeve placket", placements=(fold,))
    return (replace(placket, role=PieceRole.PLACKET), _strip(under))


def _strip(ring: tuple[Edge, ...]) -> Piece:
    """Return the strip along a slit: it goes round nothing, so it is not to give along itself."""
    name, title = "slit-strip", "Slit strip"
    return Piece(name, ring, grain=0.0, stretch=90.0, pair=True, title=title, role=PieceRole.BINDING)


def _ring(long: float, wide: float, turned: float) -> tuple[Edge, ...]:
    a, b, c, d = 0j, complex(long, 0), complex(long, wide), complex(0, wide)
    sides = (("sewn", a, b), ("end", b, c), ("inner", c, d), ("start", d, a))
    return tuple(Edge(name, line(p, q), EdgeKind.FREE, allowance=turned) for name, p, q in sides)


def _said(choices: Choices, long: float) -> Finding:
    how = "a strip binds both its edges" if choices.sleeve_opening == "bound" else "a placket laps over it"
    text = f"The sleeve opens in a slit of {told(long)} in its back, so that the hand passes; {how}."
    return Finding("hand", "note", "sleeve", long, None, text)


def _nothing_opens() -> Finding:
    text = "The sleeve does not open at its hem, so it gets no slit in its back: choose a cuff_depth, or seam."
    return Finding("hand", "warning", "sleeve", None, None, text)
