"""A garment with a random word in the place of every name, and the words taken back again."""

from __future__ import annotations

import random
import re
from collections.abc import Iterable
from dataclasses import replace

from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, Piece


class Renamed:
    """Gives every name of a draft a random word in its place, and takes the words back again."""

    def __init__(self, seed: int) -> None:
        self._random = random.Random(seed)
        self._words: dict[tuple[str, str], str] = {}

    def __call__(self, sort: str, name: str) -> str:
        if not name:
            return ""
        letters = "".join(self._random.choices("bdfgklmnprtvz", k=10))
        return self._words.setdefault((sort, name), letters)

    def back(self, words: object) -> str:
        names = {word: name for (_, name), word in self._words.items()}
        return re.sub("[bdfgklmnprtvz]{10}", lambda m: names.get(m[0], m[0]), repr(words))

    def ref(self, ref: EdgeRef) -> EdgeRef:
        return self("piece", ref[0]), self("edge", ref[1])

    def chain(self, refs: Iterable[EdgeRef]) -> tuple[EdgeRef, ...]:
        return tuple(self.ref(ref) for ref in refs)

    def edge(self, edge: Edge) -> Edge:
        leg = edge.dart and replace(
            edge.dart, dart=self("dart", edge.dart.dart), other=self("edge", edge.dart.other)
        )
        notches = tuple(replace(n, name=self("notch", n.name)) for n in edge.notches)
        return replace(edge, name=self("edge", edge.name), twin=self("edge", edge.twin), dart=leg, notches=notches)

    def piece(self, piece: Piece) -> Piece:
        names = {key: tuple(self("piece", name) for name in getattr(piece, key)) for key in ("stiffens", "lines")}
        marks = (replace(m, name=self("mark", m.name), piece=self("piece", m.piece)) for m in piece.placements)
        return replace(
            piece,
            name=self("piece", piece.name),
            base=self("piece", piece.base),
            **names,
            edges=tuple(self.edge(edge) for edge in piece.edges),
            placements=tuple(marks),
        )

    def cut(self, cut: CutPiece) -> CutPiece:
        allowances = {self("edge", name): width for name, width in cut.allowances.items()}
        return replace(cut, piece=self.piece(cut.piece), allowances=allowances)

    def draft(self, draft: Draft) -> Draft:
        seams = (
            replace(
                s,
                name=self("seam", s.name),
                a=self.chain(s.a),
                b=self.chain(s.b),
                notches=tuple(replace(n, name=self("notch", n.name)) for n in s.notches),
            )
            for s in draft.seams
        )
        notions = (replace(n, piece=self("piece", n.piece), edges=self.chain(n.edges)) for n in draft.notions)
        return replace(
            draft,
            pieces=tuple(self.piece(piece) for piece in draft.pieces),
            seams=tuple(seams),
            notions=tuple(notions),
            chains={k: self.chain(refs) for k, refs in draft.chains.items()},
        )

    def garment(self, garment: MadeGarment) -> MadeGarment:
        pieces = tuple(self.cut(cut) for cut in garment.pattern.pieces)
        pattern = replace(garment.pattern, pieces=pieces)
        trims = (replace(t, piece=self("piece", t.piece), edge=self("edge", t.edge)) for t in garment.trims)
        return replace(
            garment, draft=self.draft(garment.draft), pattern=pattern, as_sewn=pattern, trims=tuple(trims)
        )
