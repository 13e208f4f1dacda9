"""How deep each hem is turned up: by the part of the garment, the hem's own curve, and the cloth.

A turn-up of depth d on a hem of radius R is longer (flared) or shorter (tapered) along its raw edge than
the cloth it is turned onto, by 2d/R of its length. What can be eased away or stretched under the iron
bounds the depth, so that it lies flat.
"""

from __future__ import annotations

import cmath
import itertools
import math
from collections.abc import Collection, Iterator, Mapping
from dataclasses import replace
from enum import StrEnum

from drafting.draft.bias import hung_pieces
from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft
from drafting.draft.frame import Limb
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import SLEEVES, EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.finish.choices import FinishChoices, is_let_out
from drafting.geometry import Path
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.ground.remembered import remembered

LEAST_HEM = 10.0
"""mm: no hem of a person is narrower (common practice: 10 to 15 where a hem is curved)."""

LEAST_DOLL = 6.0
"""mm: no doll's is (common practice: 1/4 in)."""

EASED, STRETCHED = 0.04, 0.08
"""Of a raw edge: how much too long presses flat, and how much too short is stretched (ours: the first
gives a full circle of 600 mm the trade's 10 to 15)."""

KNIT_GIVES = 0.5
"""Of a knit's stretch: what its turn-up is stretched or eased by beside that (ours)."""

KNIT_HEM = 25.0
"""mm: a knit's hem is turned up once, no deeper (common practice: 20 to 30)."""

SHEER, SHEER_HEM = 60.0, 10.0
"""g/m2 and mm: what weighs no more shows its hem, which is rolled or turned twice, narrow (from memory)."""

BELOW_ARMHOLE = 15.0
"""mm: so far below the armhole lies the raw edge of a short sleeve's hem, clear of its seam (ours)."""

WINDOW = 150.0
"""mm: a hem's curve counts over this length; what curves one way and back within it is pressed (ours)."""

STEP, MIN_STEPS = 25.0, 6
"""mm, and least number: the steps in which a hem's turning is read (ours)."""


class HemSort(StrEnum):
    """Whose hem it is."""

    SHIRT = "shirt"
    SLEEVE = "sleeve"
    LEG = "leg"
    COAT = "coat"
    SKIRT = "skirt"
    CAPE = "cape"


STRAIGHT = {
    HemSort.SHIRT: 20.0,
    HemSort.SLEEVE: 35.0,
    HemSort.LEG: 40.0,
    HemSort.COAT: 45.0,
    HemSort.SKIRT: 40.0,
    HemSort.CAPE: 40.0,
}
"""mm: how deep a straight hem is turned up (common practice: sleeves 30 to 40, trousers, skirts, capes 30 to 50,
coats 40 to 50; a shirt is worn tucked in, 15 to 25)."""

CAPS = (EdgeRole.CAP, EdgeRole.CAP_PART)

ROLES = frozenset({EdgeRole.HEM, EdgeRole.STAND_HEM, EdgeRole.FACING_HEM})
"""What is turned up; a waist waits for its band, and a casing has a depth of its own."""


def sort_of(piece: Piece) -> HemSort:
    """Return whose hem a piece has, from what it and its edges were declared to be."""
    roles = {edge.role for edge in piece.edges}
    if piece.role in SLEEVES:
        return HemSort.SLEEVE
    if EdgeRole.INSEAM in roles:
        return HemSort.LEG
    if piece.role is PieceRole.TAIL or EdgeRole.PLEAT in roles:
        return HemSort.COAT
    if piece.frame and piece.frame.limb is Limb.HANGS and EdgeRole.NECK in roles:
        return HemSort.CAPE
    return HemSort.SHIRT if EdgeRole.SHOULDER in roles or EdgeRole.ARMHOLE in roles else HemSort.SKIRT


def _faced_by(draft: Draft, piece: Piece) -> Piece:
    """Return the piece whose hem a piece has: a facing's is turned up with that of the piece it lies behind."""
    return draft[piece.lines[0]] if piece.role is PieceRole.FACING and piece.lines else piece


def hem_sorts(draft: Draft) -> dict[str, HemSort]:
    """Return whose hem each piece has whose hem is open, by name: one for all that a hem runs on over.

    A godet, and a part that a style line cut off, has the hem of what it is sewn to; of several sorts it is the
    first that says more than `skirt`, which is what nothing says.
    """
    sorts = {piece.name: sort_of(_faced_by(draft, piece)) for piece, _ in _open_hems(draft)}
    while True:
        joined = [{name for name, edge in (*s.a, *s.b) if _at_hem(draft, sorts, name, edge)} for s in draft.seams]
        found = dict(sorts)
        for names in joined:
            told_more = sorted((found[name] for name in names), key=(*_MORE, HemSort.SKIRT).index)
            found |= dict.fromkeys(names, told_more[0]) if told_more else {}
        if found == sorts:
            return sorts
        sorts = found


_MORE = tuple(sort for sort in HemSort if sort is not HemSort.SKIRT)


def _at_hem(draft: Draft, known: Collection[str], name: str, edge: str) -> bool:
    """Return whether an edge of a piece that is `known` to have an open hem ends at it."""
    if name not in known:
        return False
    piece = draft[name]
    at, count = piece.index(edge), len(piece.edges)
    return any(_is_open(piece, piece.edges[(at + step) % count]) for step in (-1, 1))


def turned_up(draft: Draft, fabric: Fabric | None, choices: FinishChoices, scale: float) -> Draft:
    """Return the draft with the depth of each hem settled, and what can be let out said.

    Hems that are sewn to one another are equally deep. A depth that was typed, or that an edge asks for
    itself, stands; `scale` (1: a person) makes a doll's smaller.
    """
    draft = _cut_longer(draft, choices.hang_length * scale)
    draft = replace(draft, findings=(*draft.findings, *_let_out_said(draft, choices)))
    if choices.hem_allowance:
        return draft
    sorts = hem_sorts(draft)
    depths = _depths(draft, fabric, choices, scale, sorts)
    pieces = (_deepened(piece, depths[sorts[piece.name]][0]) for piece, _ in _open_hems(draft))
    said = (_less_said(sort, *depth) for sort, depth in depths.items() if depth[0] < depth[1] - 1.0)
    return replace(draft.with_pieces(pieces), findings=(*draft.findings, *said))


def _cut_longer(draft: Draft, drops: float) -> Draft:
    """Return the draft with the hems of what hangs on the bias cut `drops` mm longer, and that said."""
    hung = {
        n: [e for e in p.edges if e.role is EdgeRole.HEM and (e.kind is not EdgeKind.SEAM or _faced(draft, n, e))]
        for n, p in hung_pieces(draft).items()
    }
    names = [name for name, edges in hung.items() if edges and not draft[name].material]
    if not drops or not names:
        return draft
    pieces = (draft[name].with_edges(*(replace(e, drops=drops) for e in edges)) for name, edges in hung.items())
    said = Finding(
        check="hang length",
        level="note",
        where=", ".join(names),
        value=drops,
        wanted=None,
        sentence=f"What hangs on the bias ({', '.join(map(name_in_words, names))}) is cut {told(drops)} longer "
        "at the hem (`hang_length`): it is cut away when the hem is levelled, after hanging.",
    )
    return replace(draft.with_pieces(pieces), findings=(*draft.findings, said))


def _faced(draft: Draft, piece: str, edge: Edge) -> bool:
    """Return whether a hem is sewn to a facing and to nothing else: it is levelled before."""
    sewn = [seam for seam in draft.seams if (piece, edge.name) in (*seam.a, *seam.b)]
    return bool(sewn) and all(seam.kind is SeamKind.FACING for seam in sewn)


def _depths(
    draft: Draft, fabric: Fabric | None, choices: FinishChoices, scale: float, sorts: Mapping[str, HemSort]
) -> dict[HemSort, tuple[int, float, bool]]:
    """Return the depth of each sort of hem there is, mm, what it would be were it straight and long, and whether
    it is a short sleeve's."""
    least = LEAST_HEM if scale == 1.0 else LEAST_DOLL
    found: dict[HemSort, tuple[int, float, bool]] = {}
    for piece, edges in _open_hems(draft):
        sort = sorts[piece.name]
        wanted = scale * _by_cloth(STRAIGHT[sort], fabric) + choices.hem_growth
        flat = min(flat_depth(edge.path, fabric) for edge in edges)
        room = _room(piece, edges) - BELOW_ARMHOLE * scale
        here = round(max(least, min(wanted, flat, room))), wanted, room < min(wanted, flat)
        found[sort] = min(here, found.get(sort, here))
    return found


def _room(piece: Piece, hems: list[Edge]) -> float:
    """Return how far a sleeve's underarm lies above its hem, mm; without end where there is none."""
    caps = [end.imag for edge in edges_as(piece, *CAPS) for end in (edge.path.start, edge.path.end)]
    if piece.role not in SLEEVES or not caps:
        return math.inf
    return min(caps) - max(end.imag for edge in hems for end in (edge.path.start, edge.path.end))


def _open_hems(draft: Draft) -> list[tuple[Piece, list[Edge]]]:
    """Return each piece with hems whose depth nobody has settled yet, and those hems."""
    found = ((piece, [edge for edge in piece.edges if _is_open(piece, edge)]) for piece in draft.pieces)
    return [(piece, edges) for piece, edges in found if edges and not _ends_at_waist(_faced_by(draft, piece))]


def _ends_at_waist(piece: Piece) -> bool:
    """Return whether a waist is all that a piece has for a hem: a stand and a facing are as deep as it there."""
    return bool(edges_as(piece, EdgeRole.WAIST)) and not edges_as(piece, EdgeRole.HEM)


def _is_open(piece: Piece, edge: Edge) -> bool:
    return not piece.material and edge.kind is EdgeKind.HEM and edge.allowance is None and edge.role in ROLES


@remembered(64)
def _deepened(piece: Piece, depth: int) -> Piece:
    deep = (replace(edge, allowance=float(depth)) for edge in piece.edges if _is_open(piece, edge))
    return piece.with_edges(*deep)


def _by_cloth(depth: float, fabric: Fabric | None) -> float:
    """Return the depth of a straight hem in this cloth, mm."""
    if fabric is None:
        return depth
    if fabric.weave == "knit":
        return min(depth, KNIT_HEM)
    sheer = fabric.mass is not None and fabric.mass <= SHEER
    return min(depth, SHEER_HEM) if sheer else depth


def flat_depth(hem: Path, fabric: Fabric | None = None) -> float:
    """Return the greatest depth (mm) at which a turn-up along `hem` still lies flat.

    >>> from drafting.geometry.arc import arc
    >>> import math
    >>> round(flat_depth(arc(0j, -711.4j, 90)), 1)  # a full circle, waist 70 cm, 60 cm long
    14.2
    """
    gives = KNIT_GIVES * fabric.greatest_stretch if fabric and fabric.weave == "knit" else 0.0
    return min(((EASED if radius > 0 else STRETCHED) + gives) * abs(radius) / 2 for radius in _radii(hem))


@remembered(256)
def _radii(hem: Path) -> tuple[float, ...]:
    """Return the radius of each stretch of a hem, mm; below 0 where the cloth lies outside the curve."""
    count = max(MIN_STEPS, math.ceil(hem.length / STEP))
    points = hem.evenly(count + 1)
    ways = [two - one for one, two in itertools.pairwise(points)]
    turns = [cmath.phase(after / before) for before, after in itertools.pairwise(ways)]
    step = hem.length / count
    run = min(len(turns), max(1, round(WINDOW / step)))
    turned = (sum(turns[i : i + run]) for i in range(len(turns) - run + 1))
    return tuple(run * step / turn if abs(turn) > 1e-6 else math.inf for turn in turned)


def _let_out_said(draft: Draft, choices: FinishChoices) -> Iterator[Finding]:
    """Yield by how much which seams can be let out: what their edges hold beyond the seam allowance."""
    edges = [(edge, piece) for piece in draft.pieces for edge in piece.edges if is_let_out(edge, piece)]
    held = [choices.width(edge, piece) - choices.seam_allowance for edge, piece in edges]
    if choices.let_out and held:
        roles = " and ".join(sorted({edge.role.value for edge, _ in edges}))
        yield Finding(
            check="let out",
            level="note",
            where=roles,
            value=min(held),
            wanted=choices.let_out,
            sentence=f"Seams that can be let out by {told(min(held))} ({roles}) are cut with "
            f"{told(min(held) + choices.seam_allowance)} of allowance: do not trim them.",
        )


def _less_said(sort: HemSort, depth: int, straight: float, short: bool) -> Finding:
    name = "hem" if sort is HemSort.SHIRT else f"{sort} hem"  # a waistcoat's and a bodice's too
    if short:
        said = (
            f"The sleeve is short: its hem is turned up {told(depth)}, so that it ends below the armhole "
            f"({told(straight)} were the sleeve longer)."
        )
        return Finding("short sleeve", "note", name, depth, straight, said)
    return Finding(
        check="curved hem",
        level="note",
        where=name,
        value=depth,
        wanted=straight,
        sentence=f"The {name} curves: it is turned up {told(depth)}, as what is deeper would not lie flat "
        f"({told(straight)} were it straight). For a deeper one face it.",
    )
