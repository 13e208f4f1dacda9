"""A drawn leg cut off below the knee: both legs' seams by equal lengths, the hem drawn square to them anew. mm."""

from __future__ import annotations

from dataclasses import replace

from drafting.body import Body
from drafting.draft.by_role import the_edge
from drafting.draft.draft import Draft, Girth, Seam
from drafting.draft.piece import Level, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path, smooth
from drafting.geometry.brent import brent_zero
from drafting.shaping.limbs import leg_girth_at

HEM_LEVEL = "trouser_hem"
"""The level line along a trouser's hem, and the girth that is counted there."""

KEPT = 10.0
"""mm of a slit that are kept at least when its foot is cut off (ours)."""

MOST_OPENED = 0.5
"""Of the side seam: so much of it is opened at most (ours)."""


def cut_at_knee(draft: Draft, legs: tuple[Piece, Piece], below: float, body: Body) -> Draft:
    """Return the draft with its `legs` (front and back) ending `below` mm under the knee; one that ends above that
    already stays as it is. The side has to be open above the hem, and is as far above the new one. The hem is
    counted against the leg there."""
    front, _ = legs
    level = front.points["crease_knee"].imag - below
    slit, inseam = (the_edge(front, role).path for role in (EdgeRole.SLIT, EdgeRole.INSEAM))
    if max(min(p.start.imag, p.end.imag) for p in (slit, inseam)) >= level - 1.0:
        return draft
    off = {EdgeRole.SLIT: min(_up_to(slit, level), slit.length - KEPT), EdgeRole.INSEAM: _up_to(inseam, level)}
    short = [_shorter(leg, off) for leg in legs]
    kept = slit.length - off[EdgeRole.SLIT]
    wanted = min(slit.length, kept + MOST_OPENED * the_edge(front, EdgeRole.SIDE).length)
    made = [_opened(leg, wanted - kept) for leg in short]
    hem = sum(the_edge(leg, EdgeRole.HEM).length for leg in made)
    leg = leg_girth_at(body, max(inseam.start.imag, inseam.end.imag) - level)
    return replace(
        draft.with_pieces(made),
        seams=tuple(_moved(seam, legs, kept - wanted) for seam in draft.seams),
        girths=tuple(_counted(girth, hem, leg) for girth in draft.girths),
        facts={**draft.facts, "hem_width": hem, "slit": wanted},
    )


def _up_to(path: Path, level: float) -> float:
    """Return how much of a seam lies between its end at the hem and a level; all of it where it does not reach."""
    down = path if path.start.imag < path.end.imag else path.reversed()
    if down.end.imag <= level:
        return down.length
    return float(brent_zero(lambda s: down.at(s).imag - level, 0.0, down.length, within=1e-9))


def _shorter(leg: Piece, off: dict[EdgeRole, float]) -> Piece:
    """Return a leg whose slit and inside leg are cut off by so much, its hem square to both."""
    hem = the_edge(leg, EdgeRole.HEM)
    at = leg.index(hem.name)
    before, after = leg.edges[at - 1], leg.edges[(at + 1) % len(leg.edges)]
    low, _ = before.path.split(before.length - off[before.role])
    _, high = after.path.split(off[after.role])
    path = Path((smooth(low.end, high.start, low.arrive * 1j, high.leave / 1j),))
    levels = tuple(Level(v.name, (path,), v.kind) if v.name == HEM_LEVEL else v for v in leg.levels)
    edges = (replace(hem, path=path), replace(before, path=low), replace(after, path=high))
    return replace(leg.with_edges(*edges), levels=levels)


def _opened(leg: Piece, by: float) -> Piece:
    """Return a leg whose slit runs on `by` mm up its side seam."""
    slit, side = the_edge(leg, EdgeRole.SLIT), the_edge(leg, EdgeRole.SIDE)
    if leg.edges[(leg.index(slit.name) + 1) % len(leg.edges)] is side:
        low, high = Path.joined([slit.path, side.path]).split(slit.length + by)
    else:
        high, low = Path.joined([side.path, slit.path]).split(side.length - by)
    return leg.with_edges(replace(slit, path=low), replace(side, path=high))


def _moved(seam: Seam, legs: tuple[Piece, Piece], by: float) -> Seam:
    """Return the side seam with its notches counted from where it now begins; any other as it is."""
    sides = {(leg.name, the_edge(leg, EdgeRole.SIDE).name) for leg in legs}
    if not sides & {*seam.a, *seam.b}:
        return seam
    notches = (replace(n, a=n.a + by, b=n.b + by) for n in seam.notches)
    return replace(seam, notches=tuple(n for n in notches if n.a > 0))


def _counted(girth: Girth, hem: float, leg: float) -> Girth:
    if girth.level != HEM_LEVEL:
        return girth
    return replace(girth, body=leg, asked_ease=hem - leg, settled_ease=hem - leg)
