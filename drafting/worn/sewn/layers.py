"""What lies behind each place of a piece: interfacing, lining, facings, and what was folded under.

A layer is a region of the flat piece and its material. Layers behind a part that folds under fold with it.
What lies behind no meshed piece hangs as weight on the edges that it is sewn to.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from drafting.draft.draft import EdgeRef
from drafting.draft.piece import EdgeKind, Piece
from drafting.geometry.area import Region
from drafting.worn.nouns import Ply, Reals, Whole
from drafting.worn.sewn.chosen import SewnParts
from drafting.worn.sewn.joined import Merged
from drafting.worn.sewn.rings import PieceRing, piece_ring

LIES_ON = 0.7
"""Of a second layer's area: what lies on a piece with no more of it lies elsewhere (ours)."""


@dataclass(frozen=True)
class ClothBehind:
    """A layer behind a piece: where it lies on the flat piece, and the role of its material ("": the shell's)."""

    region: Region
    material: str


def layers_of(pieces: SewnParts, ring: PieceRing) -> tuple[ClothBehind, ...]:
    """Return everything that lies behind what is left of a piece."""
    whole = piece_ring(ring.piece)
    layers = [*_second(ring.piece, whole), *_behind(pieces, ring.piece, Region.of(whole.outline), set())]
    for cut in ring.cuts:
        gone = Region.of(cut.gone)
        one, two = cut.fold[0], cut.fold[-1]
        turned = [ClothBehind(layer.region.common(gone).folded(one, two), layer.material) for layer in layers]
        stay = [ClothBehind(layer.region.less(gone), layer.material) for layer in layers]
        folded = ClothBehind(gone.folded(one, two), "")
        layers = [layer for layer in (*turned, *stay, folded) if layer.region.area > 1.0]
    return tuple(layers)


def _second(piece: Piece, whole: PieceRing) -> Iterator[ClothBehind]:
    """Yield the further copies of a piece that is cut more than once for each hand."""
    for _ in range(piece.copies - 1):
        yield ClothBehind(Region.of(whole.outline), "")


def _behind(pieces: SewnParts, piece: Piece, own: Region, seen: set[str]) -> Iterator[ClothBehind]:
    """Yield the pieces that lie behind one, and behind those in turn."""
    for other in pieces.behind:
        if other.name in seen or not _lies_behind(pieces, piece, other):
            continue
        region = Region.of(piece_ring(other).outline)
        flipped = max((region, region.folded(0j, 1j)), key=lambda r: r.common(own).area)
        if flipped.common(own).area > LIES_ON * region.area:
            seen.add(other.name)
            yield ClothBehind(flipped, other.material)
            yield from _behind(pieces, other, flipped, seen)


def _lies_behind(pieces: SewnParts, piece: Piece, other: Piece) -> bool:
    """Return whether a piece is declared to lie behind another, or is sewn to it with its own outline."""
    if piece.name in other.stiffens or piece.name in other.lines:
        return True
    declared = other.stiffens or other.lines or other.material
    return not declared and any({piece.name, other.name} == joined for joined in _joined_names(pieces))


def _joined_names(pieces: SewnParts) -> Iterator[set[str]]:
    for seam in pieces.draft.seams:
        yield {name for name, _ in (*seam.a, *seam.b)}


def plies_by_triangle(
    whole: Merged,
    cloths: Sequence[str],
    behind: Sequence[tuple[ClothBehind, ...]],
    plies: Mapping[str, Ply],
    fused: Mapping[str, Ply],
) -> tuple[tuple[Ply, ...], Whole]:
    """Return the plies that occur, and the ply of each triangle; `cloths` are those of the meshed pieces."""
    middles: Reals = whole.flat[whole.triangles].mean(axis=1)
    spots = middles[:, 0] + 1j * middles[:, 1]
    stacks: list[list[str]] = [[] for _ in spots]
    for index, layers in enumerate(behind):
        here = np.flatnonzero(whole.piece == index)
        for layer in layers:
            for triangle in here[layer.region.holds(spots[here])]:
                stacks[triangle].append(layer.material)
    told = [(cloths[piece], *sorted(stack)) for piece, stack in zip(whole.piece, stacks, strict=True)]
    kinds = {kind: at for at, kind in enumerate(dict.fromkeys(told))}
    found = tuple(stack_ply(kind[0], kind[1:], plies, fused) for kind in kinds)
    return found, np.array([kinds[kind] for kind in told], dtype=np.int64)


def stack_ply(cloth: str, stack: Sequence[str], plies: Mapping[str, Ply], fused: Mapping[str, Ply]) -> Ply:
    """Return a piece's `cloth` ("": the garment's own) with what lies behind it as one ply: loose layers add.

    `fused` holds the garment's own cloth with an interfacing of that role fused to it, as one.
    """
    held = None if cloth else next((material for material in stack if material in fused), None)
    ply = plies.get(cloth, plies[""]) if held is None else fused[held]
    left = list(stack)
    if held is not None:
        left.remove(held)
    for material in left:
        if material in plies:
            ply = _upon(ply, plies[material])
    return ply


def _upon(one: Ply, other: Ply) -> Ply:
    """Return two plies that slide on each other as one."""
    return replace(
        one,
        along=one.along + other.along,
        across=one.across + other.across,
        shear=one.shear + other.shear,
        bends_along=one.bends_along + other.bends_along,
        bends_across=one.bends_across + other.bends_across,
        weight=one.weight + other.weight,
        thickness=one.thickness + other.thickness,
        twists=one.twisting + other.twisting,
        guessed=tuple(dict.fromkeys((*one.guessed, *other.guessed))),
    )


def added_weight(
    pieces: SewnParts,
    rings: Mapping[str, PieceRing],
    whole: Merged,
    behind: Sequence[tuple[ClothBehind, ...]],
    plies: Mapping[str, Ply],
) -> Reals:
    """Return the weight on each sewn vertex beside that of its triangles, N: hems, and what hangs on edges."""
    added = np.zeros(whole.count)
    for (piece, ring), layers in zip(rings.items(), behind, strict=True):
        weight = plies[""].weight + sum(plies[m].weight for m in _all_over(ring, layers) if m in plies)
        for side in ring.sides:
            depth = _hem_depth(ring.piece, side.name)
            if depth:
                _hung(added, whole, (piece, side.name), 1e-6 * weight * depth * side.length)
    for other in _loose(pieces, rings):
        refs = [ref for ref in _sewn_to(pieces, other) if ref[0] in rings and ref[1] in rings[ref[0]]]
        share = 0.5 if pieces.halved and (other.hand or (other.fold_edge is None and not other.pair)) else 1.0
        own = plies[other.material].weight if other.material in plies else 0.0
        for ref in refs:
            _hung(added, whole, ref, 1e-6 * own * share * abs(other.area) * other.copies / len(refs))
    return added


def _all_over(ring: PieceRing, layers: tuple[ClothBehind, ...]) -> list[str]:
    """Return the materials of the layers behind all of a piece: they are turned up with its hem."""
    area = Region.of(ring.outline).area
    return [layer.material for layer in layers if layer.material == "" and layer.region.area > 0.9 * area]


def _hem_depth(piece: Piece, name: str) -> float:
    if name not in piece or piece[name].kind is not EdgeKind.HEM:
        return 0.0
    return piece[name].allowance or 0.0


def _hung(added: Reals, whole: Merged, ref: EdgeRef, weight: float) -> None:
    """Add a weight along an edge, to each vertex its share of the length."""
    flat = whole.flat_along(ref)
    steps = np.linalg.norm(np.diff(whole.flat[flat], axis=0), axis=1)
    shares = np.zeros(len(flat))
    shares[:-1] += steps / 2
    shares[1:] += steps / 2
    np.add.at(added, whole.merged[flat], weight * shares / shares.sum())


def _loose(pieces: SewnParts, rings: Mapping[str, PieceRing]) -> Iterator[Piece]:
    """Yield the pieces that lie behind none of the meshed ones."""
    held: set[str] = set()
    for ring in rings.values():
        list(_behind(pieces, ring.piece, Region.of(piece_ring(ring.piece).outline), held))
    yield from (other for other in pieces.behind if other.name not in held and not other.stiffens)


def _sewn_to(pieces: SewnParts, other: Piece) -> Iterator[EdgeRef]:
    for seam in pieces.draft.seams:
        for own, theirs in ((seam.a, seam.b), (seam.b, seam.a)):
            if any(name == other.name for name, _ in own):
                yield from (ref for ref in theirs if ref[0] != other.name)
