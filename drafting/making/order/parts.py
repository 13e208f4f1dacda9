"""The parts on the table and the steps made of them: each part is used once, each step makes one."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft, EdgeRef, Notion, Seam
from drafting.draft.piece import Piece
from drafting.fabric import Fabric
from drafting.fabric.handling import Holds
from drafting.making.model import Said, Setting, Stage, Step, Supply, said
from drafting.making.order.deeds import deeds_of
from drafting.making.order.suited import heat_of, suited
from drafting.making.order.used_up import only_glued, used_up
from drafting.making.settings.edges import edge_key
from drafting.making.settings.surface import layers_held
from drafting.making.times import minutes

PINNED = frozenset({"dart"})
"""Work that is held and sewn though no seam or edge of the draft says how."""


@dataclass
class Bench:
    """One garment in the making.

    `parts` maps each piece to the part that holds it now; `flared` holds the pieces of which the steps on
    the bias were made. `cloths` are those that were described, by role.
    """

    garment: MadeGarment
    settings: Mapping[tuple[str, str], Setting]
    fabric: Fabric | None = None
    cloths: Mapping[str, Fabric] = field(default_factory=dict)
    parts: dict[str, str] = field(default_factory=dict)
    steps: list[Step] = field(default_factory=list)
    flared: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.parts = {p.name: self.raw(p.name) for p in self.garment.draft.pieces}

    def raw(self, piece: str) -> str:
        """Return the part that a piece is as it was cut."""
        return f"{self.garment.name}.{piece}"

    def holding(self, pieces: Iterable[str]) -> list[str]:
        """Return the parts that hold these pieces, each once."""
        return list(dict.fromkeys(self.parts[piece] for piece in pieces))

    def do(
        self,
        stage: Stage,
        verb: str,
        name: str,
        pieces: Sequence[str],
        say: Iterable[Said],
        *,
        seams: Sequence[str] = (),
        edges: Sequence[tuple[str, str]] = (),
        notions: Sequence[str] = (),
        cautions: Sequence[Said] = (),
        length: float = 0.0,
        count: int = 0,
        wait: float = 0.0,
        shown: Sequence[str] = (),
    ) -> None:
        """Add a step on the parts that hold `pieces`; they become one part called `name`."""
        garment, used = self.garment.name, self.holding(pieces)
        makes = f"{garment}: {name} [{len(self.steps) + 1}]"
        setting = self._setting((*seams, *(edge_key(*ref) for ref in edges)))
        step = Step(
            key=f"{garment}/{len(self.steps) + 1} {verb}",
            stage=stage,
            verb=verb,
            garment=garment,
            say=tuple(say),
            uses=tuple(used),
            makes=makes,
            pieces=tuple(map(self.raw, shown or pieces)),
            seams=tuple(seams),
            setting=setting,
            cautions=tuple(cautions),
            minutes=minutes(verb, length, count),
            wait=wait,
            edges=tuple(edges),
            notions=tuple(notions),
            length=length,
            count=count,
        )
        self.steps.append(self._suited(step, self.met(pieces)))
        self.parts.update({piece: makes for piece, part in self.parts.items() if part in used})

    def met(self, pieces: Iterable[str]) -> tuple[Fabric, ...]:
        """Return the cloths that a step on these pieces touches, each once: a piece's own, and behind a lining the
        cloth of what it lines; interfacing goes with what it stiffens."""
        roles: dict[str, None] = {}
        for piece in (self.garment.draft[name] for name in pieces):
            roles |= dict.fromkeys((piece.cloth or self.garment.fabric, piece.material))
        known = {**self.cloths, self.garment.fabric: self.fabric}
        found = (known.get(role) for role in roles if role != "interfacing")
        return tuple(cloth for cloth in found if cloth is not None)

    def _suited(self, step: Step, cloths: Collection[Fabric]) -> Step:
        """Return the step as it is done in these cloths: its words, what holds it, its heat, what it uses up."""
        told = tuple(suited(one, cloths) for one in step.say)
        setting = None if only_glued(told) else step.setting
        return replace(
            step,
            say=told,
            setting=setting,
            holds=setting.holds if setting else layers_held(self.fabric) if step.verb in PINNED else None,
            heat=heat_of(step.verb, setting, cloths, told),
            does=deeds_of(told),
            takes=used_up(setting, told, step.length, bool(step.seams), self._inside_colour()),
        )

    def _inside_colour(self) -> str:
        """Return the role of the cloth that is seen inside: a lining, or else the garment's own."""
        return "lining" if self.lined() else self.garment.fabric

    def also(
        self,
        *takes: Supply,
        basted: Iterable[str] = (),
        along: Iterable[EdgeRef] = (),
        length: float = 0.0,
        setting: Setting | None = None,
        holds: Holds | None = None,
    ) -> None:
        """Add to the last step what it uses up, bastes and runs along, and how it is sewn."""
        last, own = self.steps[-1], [self.fabric] if self.fabric is not None else []
        self.steps[-1] = replace(
            last,
            takes=(*last.takes, *takes),
            basted=(*last.basted, *basted),
            along=(*last.along, *along),
            length=length or last.length,
            setting=setting or last.setting,
            heat=heat_of(last.verb, setting, own, last.say) if setting else last.heat,
            holds=holds or (setting.holds if setting else last.holds),
        )

    def take_apart(self, before: Mapping[str, str]) -> None:
        """Take apart, in the last step, what was only basted: every piece is the part it was `before`."""
        made = self.steps[-1].makes
        back = {piece: before[piece] for piece, part in self.parts.items() if part == made}
        self.parts.update(back)
        self.steps[-1] = replace(self.steps[-1], apart=tuple(dict.fromkeys(back.values())))

    def _setting(self, sewn: Iterable[str]) -> Setting | None:
        """Return how the first of these seams and edges that has a setting is sewn."""
        found = (self.settings.get((self.garment.name, name)) for name in sewn)
        return next(filter(None, found), None)

    def shell(self) -> list[str]:
        """Return the pieces of the garment's own cloth."""
        return [piece.name for piece in self.garment.draft.pieces if not piece.material]

    def lined(self) -> set[str]:
        """Return the pieces that a lining lies behind."""
        linings = (p for p in self.garment.draft.pieces if p.material == "lining")
        return {name for piece in linings for name in piece.lines}

    def notions(self, what: str) -> list[Notion]:
        """Return the notions of a kind."""
        return [notion for notion in self.garment.draft.notions if notion.what == what]

    def of(self, what: str) -> list[str]:
        """Return the notions of a kind as steps name them."""
        return [notion_key(notion) for notion in self.notions(what)]

    def drawn_through(self, what: str, edges: Iterable[EdgeRef]) -> list[str]:
        """Return the notions of a kind that go through any of these edges, as steps name them."""
        refs = set(edges)
        return [notion_key(n) for n in self.notions(what) if refs & set(n.edges)]

    def named(self, what: str, piece: str) -> list[str]:
        """Return the notions of a kind that go to one piece, as steps name them."""
        return [notion_key(n) for n in self.notions(what) if n.piece == piece]


def base_of(piece: Piece) -> str:
    """Return what a piece is called where both hands are told in one: its name without its hand's."""
    return piece.base or piece.name


def told_together(seams: Iterable[Seam]) -> str:
    """Return what seams are called that are told as one, those of the two hands: `left and right seams`."""
    names = [seam.name for seam in seams]
    return f"{' and '.join(names)} {'seam' if len(names) == 1 else 'seams'}"


def edges_told(draft: Draft, refs: Iterable[EdgeRef]) -> str:
    """Return what edges told together are called: those of both hands by one name, one hand's by its own."""
    named: dict[str, list[str]] = {}
    for ref in dict.fromkeys(refs):
        piece, edge = draft[ref[0]], draft.edge(ref)
        named.setdefault(f"{base_of(piece)} {edge.base or edge.name}", []).append(f"{piece.name} {edge.name}")
    return ", ".join(both if len(own) > 1 else own[0] for both, own in named.items())


def own_each_hand(pieces: Sequence[Piece]) -> list[Said]:
    """Return that each hand has its own, where several pieces were told by one name."""
    return [said("do.each_hand")] if len(pieces) > 1 else []


def notion_key(notion: Notion) -> str:
    """Return how steps name a notion."""
    return f"{notion.what}: {notion.where}"


def pieces_of(seam: Seam) -> list[str]:
    """Return the pieces a seam joins, each once."""
    return list(dict.fromkeys(piece for piece, _ in (*seam.a, *seam.b)))


def pieces_in(seams: Iterable[Seam]) -> list[str]:
    """Return the pieces that several seams join, each once."""
    return list(dict.fromkeys(piece for seam in seams for piece in pieces_of(seam)))
