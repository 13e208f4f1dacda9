r"""A welt pocket: a mouth cut into a piece, a folded welt that stands over it, two bags behind, one faced. Mm.

       .-------------.  mouth between the seams of the bags
.------| welt        |------.  sewn on along its lower line
|      '-------------'      |
|            bag            |
 '-------------------------'
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import PieceRole, SeamKind
from drafting.geometry import Path, line, turn
from drafting.geometry.arc import arc
from drafting.geometry.area import outside
from drafting.geometry.crossing import crossings
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion

TURNED = 10.0
"""mm of allowance along the edges that are sewn to the mouth (common practice)."""

WIDER, FACED, STAYED = 10.0, 45.0, 15.0
"""mm: what a bag has beyond the mouth at either side, how deep its facing is, how far past the welt the stay
reaches (common practice: 10 to 15, 40 to 50, 15 to 20)."""

LESS = (7.0, 4.0)
"""mm that a bag has beyond the mouth where it would come too near a seam (ours: room for its own seam)."""

BAG, LEAST_BAG, STEP = 120.0, 45.0, 5.0
"""mm: depth of a bag below the welt's lower line, the least, and by how much it is shortened at a time (ours)."""

SHALLOW = 60.0
"""mm: what lies in a bag no deeper falls out as the wearer bends (ours)."""

NOTHING = 0.5
"""mm2: no bag reaches over its piece by less (ours: the curves' own roughness)."""

ROUNDED, FROM_EDGE = 15.0, 8.0
"""mm: radius of a bag's lower corners, and how far it keeps from the stitching line (ours)."""


@dataclass(frozen=True)
class Welt:
    """A welt `width` long and `height` deep whose top's middle lies at `top`, turned by `tilt` degrees; its bag
    reaches `wider` past either end of the mouth."""

    name: str
    title: str
    top: complex
    width: float
    height: float
    tilt: float
    wider: float = WIDER

    def placed(self, path: Path) -> Path:
        """Return a path drawn about the middle of the welt's top as it lies on the piece."""
        return path.turned(0j, turn(self.tilt)).moved(self.top)

    @property
    def outline(self) -> Path:
        """The finished welt as it lies on the piece, anticlockwise."""
        w, h = self.width / 2, self.height
        return self.placed(line(complex(-w, 0), complex(-w, -h), complex(w, -h), complex(w, 0), complex(-w, 0)))


def with_welt(draft: Draft, piece: Piece, welt: Welt, cloth: str) -> Draft:
    """Return the draft with the welt's pieces, seams and marks; `cloth` is the role of the bags' own."""
    welt, depth = _bagged(piece, welt)
    pieces = tuple(_pieces(piece, welt, depth, cloth))
    own, bag, facing, stay = pieces
    marks = (
        Placement(own.name, welt.outline, "welt", piece=own.name),
        Placement(f"{own.name} mouth", welt.placed(_mouth(welt)), "named mark"),
        Placement(bag.name, welt.placed(_bag_ring(welt, depth)), "pocket bag", piece=bag.name),
    )
    x0, x1 = bag["top"].path.end.real, bag["top"].path.start.real
    strip = Path.joined(edge.path for edge in facing.edges)
    laid = strip.moved(complex(x0, bag["top"].path.start.imag - FACED))
    assert abs(x1 - x0 - facing["top"].length) < 1e-6
    bag = replace(bag, placements=(Placement(facing.name, laid, "pocket facing", piece=facing.name),))
    stiff = interfacing(own)
    marked = replace(piece, placements=(*piece.placements, *marks))
    return draft.with_pieces([marked]) + Draft(
        (own, bag, facing, stiff, stay),
        (*_seams(own), _bag_seam(bag)),
        findings=tuple(_said(piece, welt, depth)),
        notions=(interfacing_notion(stiff), interfacing_notion(stay)),
    )


def _mouth(welt: Welt) -> Path:
    return line(complex(-welt.width / 2, -welt.height / 2), complex(welt.width / 2, -welt.height / 2))


def _bag_ring(welt: Welt, depth: float) -> Path:
    """Return the bag's outline about the middle of the welt's top: its U, and its top along the mouth."""
    round_, top = _bag_paths(welt, depth)
    return Path.joined([round_, top])


def _bag_paths(welt: Welt, depth: float) -> tuple[Path, Path]:
    w, top, low = welt.width / 2 + welt.wider, -welt.height / 2, -welt.height - depth
    r = min(ROUNDED, w / 2, depth / 2)
    left = arc(complex(r - w, low + r), complex(-w, low + r), 90.0)
    right = arc(complex(w - r, low + r), complex(w - r, low), 90.0)
    round_ = Path.joined(
        [
            line(complex(-w, top), complex(-w, low + r)),
            left,
            line(complex(r - w, low), complex(w - r, low)),
            right,
            line(complex(w, low + r), complex(w, top)),
        ]
    )
    return round_, line(complex(w, top), complex(-w, top))


def _bagged(piece: Piece, welt: Welt) -> tuple[Welt, float]:
    """Return the welt with the widest bag of those that hang deepest inside the piece, and how deep that is."""
    tried = [
        (replace(welt, wider=wider), _bag_depth(piece, replace(welt, wider=wider))) for wider in (WIDER, *LESS)
    ]
    return max(tried, key=lambda one: one[1])


def _bag_depth(piece: Piece, welt: Welt) -> float:
    """Return how deep the bag can be, so that it ends inside the piece: `LEAST_BAG` where it does neither way."""
    depth = BAG
    while depth > LEAST_BAG and not _lies_inside(piece, welt.placed(_bag_ring(welt, depth))):
        depth -= STEP
    return max(depth, LEAST_BAG)


def _lies_inside(piece: Piece, ring: Path) -> bool:
    x0, y0, x1, y1 = ring.bounds
    middle = complex((x0 + x1) / 2, (y0 + y1) / 2)
    grown = ring.mapped(lambda p: p + FROM_EDGE * (p - middle) / max(abs(p - middle), 1e-9))
    return outside(grown, piece.outline) <= NOTHING


def _pieces(piece: Piece, welt: Welt, depth: float, cloth: str) -> Iterator[Piece]:
    """Yield welt, bag, facing and the stay behind the mouth, each cut as often as the piece."""
    copies = piece.copies * (2 if piece.fold_edge is not None else 1)
    own = Piece(
        welt.name,
        tuple(_welt_edges(welt)),
        grain=piece.grain - welt.tilt,
        pair=piece.pair,
        hand=piece.hand,
        title=f"{welt.title}, for the {piece.title or piece.name}",
        copies=copies,
        role=PieceRole.POCKET,
    )
    fold = Placement("fold", line(1j * welt.height, complex(welt.width, welt.height)), "fold")
    yield replace(own, placements=(fold,))
    round_, top = _bag_paths(welt, depth)
    bag = Edge("round", round_), Edge("top", top, EdgeKind.FREE, allowance=TURNED)
    yield _beside(own, "bag", welt, bag, copies=2 * copies, cloth=cloth, grain=90.0)
    yield _beside(own, "facing", welt, tuple(_box(welt.width + 2 * welt.wider, FACED)))
    stay = tuple(_stay(welt))
    yield _beside(own, "stay", welt, stay, material="interfacing", stiffens=(piece.name,), grain=piece.grain)


def _beside(own: Piece, part: str, welt: Welt, edges: tuple[Edge, ...], **differs: Any) -> Piece:
    """Return another part of the pocket, cut as the welt is but for what differs."""
    return replace(own, name=f"{welt.name}-{part}", title=f"{welt.title} {part}", edges=edges, **differs)


def _welt_edges(welt: Welt) -> Iterator[Edge]:
    """Yield the welt unfolded: twice as high, its ends parted at the fold."""
    w, h = welt.width, welt.height
    yield Edge("lower", line(0j, complex(w, 0)), EdgeKind.FREE, allowance=TURNED)
    yield Edge("right_lower", line(complex(w, 0), complex(w, h)))
    yield Edge("right_upper", line(complex(w, h), complex(w, 2 * h)))
    yield Edge("upper", line(complex(w, 2 * h), 2j * h), EdgeKind.FREE, allowance=TURNED)
    yield Edge("left_upper", line(2j * h, 1j * h))
    yield Edge("left_lower", line(1j * h, 0j))


def _box(wide: float, high: float) -> Iterator[Edge]:
    corners = (0j, complex(wide, 0), complex(wide, high), 1j * high, 0j)
    for name, a, b in zip(("lower", "right", "top", "left"), corners[:-1], corners[1:], strict=True):
        yield Edge(name, line(a, b), EdgeKind.FREE, allowance=TURNED if name in ("lower", "top") else 0.0)


def _stay(welt: Welt) -> Iterator[Edge]:
    """Yield the strip of interfacing behind the mouth, where it lies on the piece."""
    w, h = welt.width / 2 + STAYED, welt.height
    ring = (complex(-w, STAYED), complex(-w, -h - STAYED), complex(w, -h - STAYED), complex(w, STAYED))
    names = ("left", "bottom", "right", "top")
    for name, a, b in zip(names, ring, (*ring[1:], ring[0]), strict=True):
        yield Edge(name, welt.placed(line(a, b)), EdgeKind.FREE, allowance=0.0)


def _seams(own: Piece) -> Iterator[Seam]:
    """Yield the seams that close the welt's ends, right sides together over its fold."""
    for side, a, b in (("right", "right_lower", "right_upper"), ("left", "left_upper", "left_lower")):
        yield Seam(
            f"{own.name} {side} end",
            ((own.name, a),),
            ((own.name, b),),
            start=None,
            end=None,
            kind=SeamKind.MADE_UP,
        )


def _bag_seam(bag: Piece) -> Seam:
    ref = ((bag.name, "round"),)
    return Seam(bag.name.replace("-", " "), ref, ref, start=None, end=None, kind=SeamKind.BAG)


def _said(piece: Piece, welt: Welt, depth: float) -> Iterator[Finding]:
    on = name_in_words(piece.name)
    if outside(welt.placed(_bag_ring(welt, depth)), piece.outline) > NOTHING:
        said = (
            f"The bag of the pocket, {told(depth)} deep, reaches over a stitching line of the {on} beside its "
            "mouth, and would be caught in that seam: move the pocket away from it, or make it narrower."
        )
        yield Finding("pocket", "warning", welt.name, depth, BAG, said)
    elif depth < BAG:
        said = f"The bag of the pocket is {told(depth)} deep, so that it ends inside the {on}."
        if depth < SHALLOW:
            said += " What is put into it falls out: move the pocket away from the seams, or make it narrower."
        yield Finding("pocket", "warning" if depth < SHALLOW else "note", welt.name, depth, BAG, said)
    legs = [leg for dart in piece.darts for leg in (dart.leg_a, dart.leg_b)]
    if any(crossings(welt.outline, leg) for leg in legs):
        said = (
            f"The pocket lies across a dart of the {piece.name}: mark it anew once the dart is sewn, as long as "
            f"its welt, {told(welt.width)}."
        )
        yield Finding("pocket", "note", welt.name, welt.width, None, said)
