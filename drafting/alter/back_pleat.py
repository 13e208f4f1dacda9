"""A pleat in a shirt's back: cloth let in below the yoke, none of it in the yoke.

A box pleat stands on the face, an inverted one behind it; both lie at the centre back. Two side pleats lie under
the shoulder blades, folded towards the armholes. All open from the yoke's seam and run out into the hem.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.alter.style.pleat import pleat_lines, pleated
from drafting.body import Body
from drafting.draft.by_role import edge_as, piece_as, the_edge
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.sources import practice
from drafting.reading.style import PleatWish
from drafting.reading.style_places import OutlinePlace

UNDER_BLADE = (0.6, 0.7, 0.8, 0.5, 0.4, 0.3, 0.2)
"""Shares of the half yoke, from the centre, where a side pleat may lie, the best first: over the blade, unless a
waist dart is in its way (common practice; the shares are ours)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the back's pleat, in mm."""

    back_pleat: str = choice(
        "none",
        "word",
        "pleat below the yoke: none, a box pleat or an inverted one at the centre back, or one towards each side",
        words=("none", "box", "inverted", "side pleats"),
        group="style",
        source=practice(),
    )
    back_pleat_depth: float = choice(
        20.0,
        "mm",
        "how deep each fold lies under; it takes twice that of cloth, and two folds are laid over the whole back",
        low=5,
        high=60,
        scales=True,
        source=practice("⟨15⟩ to ⟨25⟩: ⟨60⟩ to ⟨100⟩ over the back"),
        group="style",
    )


def back_pleat(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its back pleated below the yoke.

    A back without a yoke is left as it is, with a finding.
    """
    if choices.back_pleat == "none":
        return draft
    back = piece_as(draft, PieceRole.BACK)
    yoke, hem = (edge_as(back, role) if back else None for role in (EdgeRole.YOKE, EdgeRole.HEM))
    if back is None or yoke is None or hem is None:
        return replace(draft, findings=(*draft.findings, _nowhere()))
    depth = choices.back_pleat_depth
    places = {"box": (depth,), "inverted": (0.0,)}.get(choices.back_pleat)
    wishes = [_wish(back, choices, at) for at in places or (share * yoke.length for share in UNDER_BLADE)]
    wish = next((one for one in wishes if _finds_room(back, one)), wishes[0])
    made = pleated(draft, wish)
    if choices.back_pleat == "inverted":  # at the centre the yoke now meets the pleat, not the fold
        made = replace(made, seams=tuple(_free_at_centre(seam, back) for seam in made.seams))
    return replace(made, findings=(*made.findings, _said(choices)), facts={**made.facts, "back_pleat": 4 * depth})


def _wish(back: Piece, choices: Choices, at: float) -> PleatWish:
    """Return the pleat whose fold lies `at` mm from the centre along yoke and hem."""
    yoke, hem = (
        OutlinePlace(edge=the_edge(back, role).name, distance=at, beside=_centre(back))
        for role in (EdgeRole.YOKE, EdgeRole.HEM)
    )
    upwards = at == 0.0  # the fold of the back is what moves: the run from hem to yoke
    return PleatWish(
        piece=back.name,
        start=hem if upwards else yoke,
        end=yoke if upwards else hem,
        kind="knife",
        depth=choices.back_pleat_depth,
        towards="start" if upwards else _towards(back, outwards=choices.back_pleat != "box"),
    )


def _finds_room(back: Piece, wish: PleatWish) -> bool:
    try:
        pleat_lines(back, wish)
    except DraftError:
        return False
    return True


def _free_at_centre(seam: Seam, back: Piece) -> Seam:
    """Return a yoke's seam without a demand on the corner at its centre."""
    if seam.kind is not SeamKind.YOKE:
        return seam
    return replace(seam, end=None) if _ends_at_centre(back) else replace(seam, start=None)


def _centre(back: Piece) -> str:
    return next(e.name for e in back.edges if e.role in (EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM))


def _towards(back: Piece, *, outwards: bool) -> str:
    """Return which way the fold points along the yoke's seam in outline order."""
    return "start" if _ends_at_centre(back) is outwards else "end"


def _ends_at_centre(back: Piece) -> bool:
    """Return whether the back's edge along the yoke ends at the centre in outline order."""
    at = next(i for i, edge in enumerate(back.edges) if edge.role is EdgeRole.YOKE)
    return back.edges[(at + 1) % len(back.edges)].name == _centre(back)


def _said(choices: Choices) -> Finding:
    wide = 4 * choices.back_pleat_depth
    text = f"The back is {told(wide)} wider than its yoke and is laid in folds there; below they hang open."
    return Finding("back pleat", "note", "back", wide, None, text)


def _nowhere() -> Finding:
    text = "The back has no yoke that a pleat could hang from: choose back_shaping = yoke and length = hip."
    return Finding("back pleat", "warning", "back", None, None, text)
