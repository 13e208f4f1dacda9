"""The tail's pieces: the back's skirt with vent and pleat, flared panels, godets. And their seams.

         tail-1                          tail-2
    waist  pleat_top                      waist
   .-------.--.                         .--------.
   |       :  |                        /        /
   | front :  | pleat                 / front  / back
   |   fold:  |                      /        /
   '-------'--'                     '-.______/
       hem                              hem

The back's skirt has the same pleat at its other side, and the vent along the centre back.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass, replace

from drafting.draft.by_role import edges_as
from drafting.draft.draft import Corner, EdgeRef, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.geometry import Cubic, Path, line, smooth, unit
from drafting.geometry.path import cubics
from drafting.shaping.coat.skirt import Tail
from drafting.shaping.details.buttons import button_mark
from drafting.shaping.flare.other_ways import Godet
from drafting.shaping.flare.tail_bend import TailPanel

FOOT = 1.12
"""Half back at the hem over half back at the waist (ours)."""

PLEAT_TOP = 0.85
"""Depth of the pleat at the waist over its depth at the hem (from memory)."""

VENT_SLANT = 0.3
"""How far the vent's top slants down, as a share of the vent's width: it hangs better (memory)."""

BOW = (0.30, 0.68, 0.64)
"""The front edge's bow: where its handles stand, and the lower over the upper (ours)."""


@dataclass(frozen=True)
class TailStyle:
    """Widths of vent and pleat (at the hem), bow of the front edge, allowance atop the pleat, mm; warp of the
    godets, degrees to their middle's level."""

    vent: float
    pleat: float
    bow: float
    allowance: float = 10.0
    godet_warp: float = 45.0


@dataclass(frozen=True)
class BackSkirt:
    """The back's skirt: corner of waist and centre, hook of the side pleat, hem points. Back frame."""

    centre: complex
    hook: complex
    low: complex
    fold_end: complex

    @property
    def fold(self) -> Path:
        return line(self.hook, self.fold_end)

    def longer(self, factor: float) -> BackSkirt:
        """Return the skirt whose fold is longer by a factor; the whole hem goes down with it."""
        down = (factor - 1) * (self.fold_end - self.hook)
        return replace(self, low=self.low + 1j * down.imag, fold_end=self.fold_end + down)


def skirt_of(waist: Path, drop: float) -> BackSkirt:
    """Return the skirt below the back's waist; `drop` mm long at the centre. Back frame."""
    low = waist.start - 1j * drop
    return BackSkirt(waist.start, waist.end, low, low + FOOT * (waist.end - waist.start).real)


def with_skirt(back: Piece, skirt: BackSkirt, style: TailStyle, button: float = 0.0) -> Piece:
    """Return the back piece (as it lies in the draft) with its skirt, vent and pleat.

    A `button` so many mm wide stands at the pleat's hook, touching its fold.
    """
    flat = back.mirrored()
    fold_end = skirt.fold_end
    out = 1j * skirt.fold.leave
    vent_top, vent_low = skirt.centre - style.vent * (1 + 1j * VENT_SLANT), skirt.low - style.vent
    pleat_low, pleat_top = fold_end + style.pleat * out, skirt.hook + PLEAT_TOP * style.pleat * out
    hem = Path.joined(
        [
            line(vent_low, skirt.low),
            Path((smooth(skirt.low, fold_end, 1 + 0j, out, may_wave=True),)),
            line(fold_end, pleat_low),
        ]
    )
    new = (
        Edge("vent_top", line(skirt.centre, vent_top), EdgeKind.OPENING, role=EdgeRole.VENT),
        Edge("vent", line(vent_top, vent_low), EdgeKind.OPENING, role=EdgeRole.VENT),
        Edge("hem", hem, EdgeKind.HEM, role=EdgeRole.HEM),
        *_pleat(line(pleat_low, pleat_top), line(pleat_top, skirt.hook), style.allowance),
    )
    marks: tuple[Placement, ...] = (
        Placement("vent_fold", line(skirt.centre, skirt.low), "fold"),
        Placement("pleat_fold", line(skirt.hook, fold_end), "fold"),
    )
    if button:
        beside = skirt.hook + button / 2 * unit(skirt.centre - skirt.hook)
        marks = (*marks, button_mark("button_pleat", beside, button))
    at = next(i for i, edge in enumerate(flat.edges) if edge.role is EdgeRole.WAIST)
    edges = (*flat.edges[:at], *new, *flat.edges[at + 1 :])
    return replace(flat, edges=edges, placements=(*flat.placements, *marks)).mirrored()


def tail_pieces(tail: Tail, style: TailStyle, slit: float) -> tuple[Piece, ...]:
    """Return the panels `tail-1` (at the back) ... and the godets, lying as the left hand.

    `slit` is the share of a seam that a godet is let into.
    """
    count = len(tail.panels)
    let_in = [slit if g else 0.0 for g in tail.godets] or [0.0] * (count - 1)
    pieces = [_panel(tail, k, style, (0.0, *let_in)[k], (*let_in, 0.0)[k]) for k in range(count)]
    godets = ((k, g) for k, g in enumerate(tail.godets, 1) if g)
    return (*pieces, *(_godet(k, g, style.godet_warp) for k, g in godets))


def _panel(tail: Tail, k: int, style: TailStyle, slit_back: float, slit_front: float) -> Piece:
    panel, last = tail.panels[k], k == len(tail.panels) - 1
    marks: tuple[Placement, ...] = ()
    edges = [Edge("waist", panel.waist.reversed(), EdgeKind.SEAM, role=EdgeRole.WAIST)]
    if k == 0:
        edges += _pleated(panel, style.pleat, style.allowance)
        marks = (Placement("pleat_fold", panel.back, "fold"),)
    else:
        edges += _parted(EdgeRole.BACK, panel.back, slit_back, down=True)
        edges.append(Edge("hem", panel.hem, EdgeKind.HEM, role=EdgeRole.HEM))
    if last:
        front = bowed_front(panel, style.bow).reversed()
        edges.append(Edge("front", front, EdgeKind.OPENING, role=EdgeRole.FRONT))
    else:
        edges += _parted(EdgeRole.FRONT, panel.front, slit_front, down=False)
    title = "Tail" if last and k == 0 else f"Tail {k + 1}"
    return Piece(
        f"tail-{k + 1}",
        tuple(edges),
        grain=tail.warps[k],
        pair=True,
        placements=marks,
        title=title,
        role=PieceRole.TAIL,
        place=k + 1,
    ).mirrored()


def _pleat(inside: Path, top: Path, allowance: float) -> list[Edge]:
    """Return the edges of a side pleat: its inside, and its top, which nothing is sewn to."""
    return [
        Edge("pleat", inside, role=EdgeRole.PLEAT),
        Edge("pleat_top", top, EdgeKind.FREE, allowance=allowance, role=EdgeRole.PLEAT),
    ]


def _pleated(panel: TailPanel, width: float, allowance: float) -> list[Edge]:
    """Return the back edge of the first panel: the pleat beyond its fold, and the hem with it."""
    fold = panel.back
    out = -1j * fold.leave
    top, low = fold.start + PLEAT_TOP * width * out, fold.end + width * out
    hem = Path.joined([line(low, fold.end), panel.hem])
    return [
        *reversed(_pleat(line(top, low), line(fold.start, top), allowance)),
        Edge("hem", hem, EdgeKind.HEM, role=EdgeRole.HEM),
    ]


def _parted(role: EdgeRole, seam: Path, slit: float, *, down: bool) -> list[Edge]:
    """Return a panel's seam edge in ring order, its lower part apart where a godet is let in."""
    if slit <= 0:
        return [Edge(role.value, seam if down else seam.reversed(), role=role)]
    upper, lower = seam.split((1 - slit) * seam.length)
    parts = [Edge(role.value, upper, role=role), Edge(f"{role.value}_slit", lower, role=role)]
    return parts if down else [replace(e, path=e.path.reversed()) for e in reversed(parts)]


def bowed_front(panel: TailPanel, bow: float) -> Path:
    """Return the front edge downwards: the front ruling bowed outwards, carried along rigidly."""
    a, d = panel.front.start, panel.front.end
    out = 1j * unit(d - a) * bow
    return Path((Cubic(a, a + BOW[0] * (d - a) + out, a + BOW[1] * (d - a) + BOW[2] * out, d),))


def _godet(number: int, shape: Godet, warp: float) -> Piece:
    edges = (
        Edge("left", shape.left),
        Edge("hem", shape.hem, EdgeKind.HEM, role=EdgeRole.HEM),
        Edge("right", shape.right),
    )
    return Piece(
        f"godet-{number}",
        edges,
        grain=warp,
        pair=True,
        title=f"Godet {number}",
        role=PieceRole.GODET,
        place=number,
    )


# -------------------------------------------------------------------------------------- seams


def tail_seams(pieces: tuple[Piece, ...], back: str, waist: tuple[EdgeRef, ...], side: float) -> tuple[Seam, ...]:
    """Return the tail's seams: pleat, panels, godets, and the waist to the body's chain.

    `back` names the piece with the pleat, `waist` the body's edges from front to back; `side` is where
    its own seam meets, mm.
    """
    panels = [p for p in pieces if p.role is PieceRole.TAIL]
    places = [*itertools.accumulate(p["waist"].length for p in panels)][:-1]
    marks = sorted(
        [("side body", side), *((f"tail {k}", at) for k, at in enumerate(places, 1))], key=lambda mark: mark[1]
    )
    apart = [m for i, m in enumerate(marks) if i == 0 or m[1] - marks[i - 1][1] > 3.0]
    found = [
        Seam(
            "side pleat",
            ((back, "pleat"),),
            ((panels[0].name, "pleat"),),
            start=None,
            end=None,
            kind=SeamKind.PLEAT,
        ),
        Seam(
            "coat waist",
            tuple((p.name, "waist") for p in panels),
            tuple(reversed(waist)),
            start=None,
            end=None,
            notches=tuple(SeamNotch(n, at, at) for n, at in apart),
            kind=SeamKind.WAIST,
        ),
    ]
    for k, (one, two) in enumerate(itertools.pairwise(panels), 1):
        found += _joined(one, two, f"godet-{k}")
    return tuple(found)


def _joined(one: Piece, two: Piece, godet: str) -> list[Seam]:
    """Return the seam between two panels, and where a godet is let in, its two seams."""
    slit = len(edges_as(one, EdgeRole.FRONT)) > 1
    length = one["front"].length
    notches = tuple(SeamNotch(n, s * length, s * length) for n, s in (("upper", 0.36), ("lower", 0.66)))
    end: Corner = None if slit else "smooth"
    found = [
        Seam(
            f"{one.name} to {two.name}",
            ((one.name, "front"),),
            ((two.name, "back"),),
            start="smooth",
            end=end,
            notches=notches,
        )
    ]
    if slit:
        sides = ((one, "front_slit", "right", "back"), (two, "back_slit", "left", "front"))
        found += [
            Seam(f"{godet} {which} edge", ((panel.name, edge),), ((godet, side),), start=None, end=None)
            for panel, edge, side, which in sides
        ]
    return found


def body_waist(path: Path) -> Path:
    """Return the body's waist chain (front to back, pieces lying as the left hand) in the coat frame,
    from back to front."""
    return Path(cubics(path.mirrored().reversed()))
