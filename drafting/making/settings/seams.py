"""Every seam's setting, put together from cloth, body and workroom."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Literal

from drafting.body import Body
from drafting.checks.enclosed import french
from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.costume.workroom import Workroom
from drafting.draft.bias import BIASED, bias_angle
from drafting.draft.by_role import between_yokes, piece_roles
from drafting.draft.draft import Draft, Seam
from drafting.draft.openings import bare_necks, opens
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric, handling
from drafting.fabric.handling import Neatens, has_pile
from drafting.making.model import Setting, said
from drafting.making.settings.edges import (
    ADDED,
    BARRED,
    BUTTONHOLE,
    OVERCAST,
    ZIP,
    added_setting,
    bars_setting,
    buttonhole_setting,
    edge_settings,
    lining_key,
    overcast_setting,
    zip_setting,
)
from drafting.making.settings.feet import feeding, foot_for, set_lighter
from drafting.making.settings.inner_darts import inner_dart_key, inner_dart_setting
from drafting.making.settings.lengthening import Gives, lengthens
from drafting.making.settings.lining_covers import lined_along
from drafting.making.settings.needles import needle_for
from drafting.making.settings.pressing import encloses, heat, press_for, pressed_on, side_pressed
from drafting.making.settings.pulling_on import OPENS, neck_passes
from drafting.making.settings.stitches import LITTLE, TIGHT, Stitch, stitch_for, without_overedge
from drafting.making.settings.surface import bars_met, layers_held, suited_length, surface_said, unpinned


def settings(made: Made, room: Workroom | None = None) -> Mapping[tuple[str, str], Setting]:
    """Return how everything is sewn, by garment and the seam's name.

    Hems, casings and openings stand under `hem: piece.edge` (`edges.edge_key`), the seams of a lining under
    `lining: seam` (`edges.lining_key`).
    """
    room = room or Workroom()
    fabrics = made.costume.fabrics
    found: dict[tuple[str, str], Setting] = {}
    for garment in made.garments:
        for seam in garment.draft.seams:
            cloths = seam_cloths(garment, seam, fabrics)
            found[garment.name, seam.name] = setting(garment, seam, cloths, room, made.costume.wearer)
            if (lining := fabrics.get("lining")) and lined_along(garment.draft, seam):
                found[garment.name, lining_key(seam.name)] = _to_the_back(setting(garment, seam, (lining,), room))
        shell = fabrics.get(garment.fabric)
        edges = edge_settings(garment, made.costume.wearer, shell, room)
        found |= {(garment.name, key): edge for key, edge in edges.items()}
        for piece in (piece for piece in garment.draft.pieces if piece.darts):
            cloth = fabrics.get(piece.cut_from or garment.fabric)
            found[garment.name, inner_dart_key(piece.name)] = inner_dart_setting(cloth, room)
        found |= {(garment.name, key): how(shell, room) for key, how in BESIDE_SEAMS.items()}
        if any(notion.what == "zip" for notion in garment.draft.notions):
            found[garment.name, ZIP] = zip_setting(shell, room)
        if any(mark.what == "buttonhole" for piece in garment.draft.pieces for mark in piece.placements):
            found[garment.name, BUTTONHOLE] = buttonhole_setting(shell, room)
    return found


BESIDE_SEAMS: Mapping[str, Callable[[Fabric | None, Workroom], Setting]] = MappingProxyType(
    {ADDED: added_setting, BARRED: bars_setting, OVERCAST: overcast_setting}
)
"""How every garment's work is sewn that lies along no seam and no turned edge."""


def along_lines(found: Mapping[tuple[str, str], Setting]) -> Mapping[tuple[str, str], Setting]:
    """Return the settings that lie along a seam or a turned edge."""
    return {key: how for key, how in found.items() if key[1] not in BESIDE_SEAMS}


def _to_the_back(lining: Setting) -> Setting:
    """Return a lining's setting: its seams bear nothing and are all pressed to the back (common practice)."""
    lining = replace(lining, stayed=False)
    return lining if lining.press == "not" else replace(lining, press="to one side", onto=said("side.back"))


def seam_cloths(garment: MadeGarment, seam: Seam, fabrics: Mapping[str, Fabric]) -> tuple[Fabric, ...]:
    """Return the cloths that meet in a seam, the heaviest first; those nobody described are left out."""
    pieces = (garment.draft[piece] for piece, _ in (*seam.a, *seam.b))
    roles = dict.fromkeys(piece.cut_from or garment.fabric for piece in pieces)
    known = [fabrics[role] for role in roles if role in fabrics]
    return tuple(sorted(known, key=lambda cloth: -(cloth.mass or 0.0)))


def setting(
    garment: MadeGarment, seam: Seam, cloths: tuple[Fabric, ...], room: Workroom, body: Body | None = None
) -> Setting:
    """Return how one seam is sewn and pressed; a neck's opens over the head of `body`."""
    draft, fabric = garment.draft, cloths[0] if cloths else None
    knit = any(cloth.weave == "knit" for cloth in cloths)
    gives = lengthens(draft, seam, fabric)
    if body is not None:
        gives = max(gives, neck_passes(draft, seam, body, fabric), key=lambda one: one.share)
    stayed = must_not_stretch(draft, seam, knit, gives, soft=any(handling(cloth).sags for cloth in cloths))
    firm = not knit and (fabric is None or fabric.greatest_stretch < OPENS)
    gives = Gives() if stayed or (seam.kind in INSIDE and firm) else gives
    stitch = suited_length(_sewn(seam, stitch_for(gives, knit, _uncut(seam, room))), fabric)
    needle, stands_in = needle_for(fabric, room)
    foot = foot_for(fabric, gives.share, stitch.number, room)
    light, dots = set_lighter(fabric, gives.share, foot, room), heat(cloths, room)
    press, neatens = press_for(draft, seam, stitch.number, fabric), _neatened_as(cloths)
    why = (
        *stitch.why,
        *([said("set.stand_in")] if stands_in else []),
        *unpinned(feeding(gives.share, knit, stitch.number, foot, light), *cloths),
        *pressed_on(next(filter(has_pile, cloths), fabric), dots, room),
        *(said("set.try_over", measure=name) for name in _unmeasured(draft, seam, body, fabric)),
        *bars_met(fabric, seam.kind),
        *surface_said(fabric, neatens, enclosed=_lies_inside(draft, seam, press, fabric)),
    )
    return Setting(
        stitch=stitch.number,
        seam_class=3 if encloses(draft, seam) else 1,
        stitch_length=stitch.length,
        needle=needle,
        foot=foot,
        width=stitch.width,
        pressure="lighter" if light else "usual",
        lengthens=gives.share,
        stayed=stayed,
        press=press,
        onto=side_pressed(draft, seam) if press == "to one side" else None,
        dots=dots,
        why=why,
        trials=(said("set.trial_stretch", share=gives.share),) if gives.share > LITTLE else (),
        cause=gives.cause,
        holds=layers_held(*cloths),
        neatens=neatens,
        pile=any(map(has_pile, cloths)),
    )


WAYS: tuple[Neatens, ...] = ("none", "overcast", "french", "bound")
"""How raw edges are neatened, from what needs nothing: where cloths meet, the one that needs most decides."""


def _neatened_as(cloths: tuple[Fabric, ...]) -> Neatens | Literal[""]:
    """Return how the raw edges are neatened where these cloths meet: a lining beside felt ravels."""
    ways: list[Neatens] = ["none" if cloth.weave == "knit" else handling(cloth).neatens for cloth in cloths]
    return max(ways, key=WAYS.index, default="")


INSIDE = (SeamKind.MADE_UP, SeamKind.DART)
"""Seams that lie folded inside a collar, a cuff or a dart: what draws at the body does not lengthen them in firm
cloth (common practice)."""


TURNED_IN = (*INSIDE, SeamKind.ATTACHED, SeamKind.FACING)
"""Seams whose raw edges end up between two layers, or in a fold."""


def _lies_inside(draft: Draft, seam: Seam, press: str, fabric: Fabric | None) -> bool:
    """Return whether nothing of a seam's raw edges is seen or touched once it is sewn."""
    return press == "not" or seam.kind in TURNED_IN or between_yokes(draft, seam) or french(draft, seam, fabric)


def _uncut(seam: Seam, room: Workroom) -> Workroom:
    """Return the room for a seam: a dart and a pleat are sewn along a fold."""
    return without_overedge(room) if seam.kind in FOLDED else room


FOLDED = (SeamKind.DART, SeamKind.LAID_PLEAT)
"""Seams of a piece with itself along a fold."""


def _unmeasured(draft: Draft, seam: Seam, body: Body | None, fabric: Fabric | None) -> tuple[str, ...]:
    """Return the head's girth where a closed neck that stretches has to pass over one that nobody measured."""
    stretch = fabric.greatest_stretch if fabric is not None else 0.0
    if body is None or "head_girth" in body or stretch < OPENS or opens(draft):
        return ()
    necks = {(piece.name, edge.name) for piece, edge in bare_necks(draft)}
    return ("head_girth",) if necks & {*seam.a, *seam.b} else ()


def _sewn(seam: Seam, stitch: Stitch) -> Stitch:
    """Return the stitch, closer where a plain seam takes the strain of sitting down."""
    strained = stitch.number == "301" and seam.kind is SeamKind.CROTCH
    return replace(stitch, length=TIGHT) if strained else stitch


LEANS = 8.0
"""degrees off the thread from which a shoulder grows in soft cloth (ours: most slope by 15 to 25)."""


def must_not_stretch(draft: Draft, seam: Seam, knit: bool, gives: Gives, *, soft: bool = False) -> bool:
    """Return whether a seam is stayed: a shoulder of a knit or of `soft` cloth, or a bias edge on a straight one.

    A seam that closes a sleeve bears nothing and is left alone. Nothing else is stayed that the body must stretch.
    """
    if seam.kind is SeamKind.SHOULDER and not knit:
        return soft and _shoulder_grows(draft, seam)
    if knit:
        return all(draft.edge(ref).role is EdgeRole.SHOULDER for ref in seam.a)
    if gives.by_the_body or seam.kind is SeamKind.SLEEVE:
        return False
    if PieceRole.BINDING in piece_roles(draft, (*seam.a, *seam.b)):
        return False
    held = set(_wholly_stiffened(draft))
    chains = [[ref for ref in chain if ref[0] not in held] for chain in (seam.a, seam.b)]
    a, b = (max((bias_angle(draft, ref) for ref in chain), default=0.0) for chain in chains)
    return max(a, b) > BIASED and min(a, b) < BIASED / 2


def _shoulder_grows(draft: Draft, seam: Seam) -> bool:
    """Return whether a shoulder lies off the thread, and neither a second layer nor an interfacing holds it."""
    refs = (*seam.a, *seam.b)
    held = {piece for piece, _ in refs} & set(_wholly_stiffened(draft))
    return max(bias_angle(draft, ref) for ref in refs) > LEANS and not held and not between_yokes(draft, seam)


def _wholly_stiffened(draft: Draft) -> Iterator[str]:
    """Yield the pieces that an interfacing covers: one of a part only has the role of that part."""
    for piece in draft.pieces:
        if piece.material == "interfacing":
            yield from (name for name in piece.stiffens if draft[name].role is piece.role)
