"""Which pieces a block draws, and which of them a choice changes, as `drafting blocks NAME` lists them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from drafting.blocks import Block
from drafting.costume.choices import choose
from drafting.costume.garment import drafted
from drafting.costume.stand_in import STRETCHY, stand_ins
from drafting.draft.piece import Piece
from drafting.ground.errors import DraftError, InputError
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin

EdgeNames = Mapping[str, tuple[str, ...]]
"""The names of the edges round each piece, by its name."""


def pieces_listed(block: Block) -> Iterator[str]:
    """Yield the lines of the pieces that the defaults give an invented adult, and the edges round each."""
    usual = _edges(block, {})
    if usual:
        yield "  pieces, and the edges round each, where nothing is chosen"
        yield from (f"      {name}: {', '.join(edges)}" for name, edges in usual.items())


def changes_listed(block: Block) -> Iterator[str]:
    """Yield a line for each word, or yes and no, that makes other pieces or other edges than the defaults do.

    Each is tried by itself on the same adult, and those that change alike share a line; what cannot be had
    there by itself is not listed.
    """
    usual = _edges(block, {})
    for choice in block.choices if usual else ():
        alike: dict[str, list[str]] = {}
        for value in choice.words or ((True, False) if isinstance(choice.default, bool) else ()):
            other = _edges(block, {choice.name: Given(value)}) if value != choice.default else {}
            if change := _change(usual, other) if other else "":
                word = value if isinstance(value, str) else "yes" if value else "no"
                alike.setdefault(change, []).append(word)
        yield from (f"      {choice.name} = {' | '.join(words)}: {change}" for change, words in alike.items())


def _change(usual: EdgeNames, other: EdgeNames) -> str:
    """Return which pieces are there instead, and which edges of those that stay: nothing where all is as usual."""
    parts = [f"{name} ({', '.join(edges)})" for name, edges in other.items() if name not in usual]
    for name, edges in other.items():
        had = usual.get(name, edges)
        more, less = ([e for e in one if e not in two] for one, two in ((edges, had), (had, edges)))
        told = [f"with {', '.join(more)}"] if more else []
        told += [f"without {', '.join(less)}"] if less else []
        parts += [f"{name} {' and '.join(told)}"] if told else []
    gone = [name for name in usual if name not in other]
    return "; ".join([*parts, *([f"no {', '.join(gone)}"] if gone else [])])


def _edges(block: Block, asked: Mapping[str, Given]) -> EdgeNames:
    """Return the pieces and their edges; none for a block that alters others, or where it cannot be had."""
    return {piece.name: tuple(edge.name for edge in piece.edges) for piece in _pieces(block, asked)}


def _pieces(block: Block, asked: Mapping[str, Given]) -> tuple[Piece, ...]:
    body = stand_ins()[0]
    try:
        chosen = choose(block, asked, body_scale(body), Origin())
        return drafted(body, STRETCHY, block, chosen).pieces
    except (DraftError, InputError):
        return ()
