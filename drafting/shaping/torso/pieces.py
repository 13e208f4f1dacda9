"""A torso as a draft: back and front pieces, their seams, girths, chains and findings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft, EdgeRef, Girth, Seam, SeamNotch
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.geometry import line
from drafting.geometry.area import is_simple
from drafting.geometry.crossing import crossings
from drafting.geometry.turning import inflections
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import angle_said, told
from drafting.shaping.torso.back import back_pieces, centre_edge
from drafting.shaping.torso.bust_dart import FrontPiece, across_is_drawn, front_panel
from drafting.shaping.torso.dart_mouth import dart_seams
from drafting.shaping.torso.plan import TorsoEase
from drafting.shaping.torso.princess import PLACES as PRINCESS
from drafting.shaping.torso.princess import Panels, princess_panels
from drafting.shaping.torso.shape import TorsoKind, TorsoShape, fit_drop, open_drop, shape_torso


@dataclass(frozen=True)
class TorsoStyle:
    """How a torso is cut: to waist or hip, darts or close, where the bust is shaped, what opens."""

    to_hip: bool
    darts: bool
    bust_dart: str
    opening: str
    back_shaping: str = "ease"
    yoke_depth: float = 0.0
    sleeved: bool = True
    yokes: bool = True

    @property
    def kind(self) -> TorsoKind:
        up = self.bust_dart in PRINCESS
        return TorsoKind(self.to_hip, self.darts, up, self.back_shaping, self.yoke_depth, self.yokes)


def torso_draft(body: Body, ease: TorsoEase, style: TorsoStyle) -> Draft:
    """Return back and front for `body`, whose measures are those to draft to.

    Raises `DraftError` where these measures leave no room for an armhole.
    """
    drop = fit_drop(body, ease, style.kind) if style.sleeved else open_drop(body, ease)
    shape = shape_torso(body, ease, drop, style.kind)
    _refuse_wavy(shape)
    backs = back_pieces(shape, style.to_hip, style.opening)
    pieces, panels = _fronts(shape, style)
    _refuse_crossing(shape, pieces)
    _refuse_neck(pieces)
    facts = {
        "armhole_drop": drop,
        "bust_dart_degrees": shape.plan.kappa,
        "side_lean": shape.bottom.front.lean,
        "front_waist_length": shape.plan.front_neck - shape.plan.waist,
        "back_waist_length": shape.upper_back.nape.imag - shape.plan.waist,
        "scale": shape.plan.scale,
    }
    if shape.upper_back.yoke:
        facts["yoke_depth"] = shape.upper_back.depth
    return Draft(
        (*backs, *pieces),
        _seams(backs, pieces, panels, ease),
        _girths(body, ease, style, shape),
        (*shape.plan.findings, *_belly_said(shape), *_yoke_said(shape, style), *_said(drop, ease, style.sleeved)),
        facts,
        _chains(backs, pieces),
    )


def _yoke_said(shape: TorsoShape, style: TorsoStyle) -> tuple[Finding, ...]:
    """Return what is said where a yoke is not cut off as deep as it was asked to be."""
    asked, drawn = style.yoke_depth, shape.upper_back.depth
    if not shape.upper_back.yoke or not asked or abs(drawn - asked) < tol.GIRTH_MATCH:
        return ()
    why = "less cannot be sewn" if drawn > asked else "it ends where the armhole turns"
    said = f"The yoke is cut off {told(drawn)} below the nape, {told(asked)} were asked for: {why}."
    return (Finding("yoke depth", "note", "back-yoke", drawn, asked, said),)


def _refuse_wavy(shape: TorsoShape) -> None:
    """Refuse an armhole so wide for its height, or on so slanting a side, that it cannot be smooth."""
    halves = (
        ("front", shape.front_armhole, shape.bottom.front.lean),
        ("back", shape.back_armhole, shape.bottom.back.lean),
    )
    for name, path, lean in halves:
        if inflections(path, tol.TURN_MATTERS):
            wide, high = (abs(getattr(path.end - path.start, part)) for part in ("real", "imag"))
            raise DraftError(
                f"no smooth {name} armhole can be drawn",
                value=f"{told(wide)} wide and {told(high)} high, on a side seam that leans by {lean:.0f} degrees",
                turn="choose other bust or waist ease or a deeper armhole, or check the widths "
                "across, the shoulder and the waist girth",
            )


CROSSES_FROM = 20.0
"""degrees: a front whose side leans out by more is looked at, whether it lies over itself."""


def _refuse_crossing(shape: TorsoShape, fronts: tuple[Piece, ...]) -> None:
    """Refuse a front let out so far under its bust dart that it would lie over itself."""
    lean = -shape.bottom.front.lean
    if lean > CROSSES_FROM and not all(is_simple(piece.outline) for piece in fronts):
        raise DraftError(
            "the front would lie over itself",
            value=f"its side leans out by {lean:.0f} degrees under a bust dart of {shape.plan.kappa:.0f} degrees",
            turn="choose less waist ease or more bust ease, or check bust, high bust and waist girth",
        )


def _refuse_neck(fronts: tuple[Piece, ...]) -> None:
    """Refuse a neckline so wide and deep that it cuts into a level line between its ends, as the width across."""
    for piece in fronts:
        necks = edges_as(piece, EdgeRole.NECK)
        for path in (path for level in piece.levels for path in level.paths):
            met = [cross.point for neck in necks for cross in crossings(path, neck.path)]
            if any(min(abs(at - path.start), abs(at - path.end)) >= 1.0 for at in met):
                raise DraftError(
                    "the front neckline would cut into the width across the front", turn="choose less neck_ease"
                )


# ------------------------------------------------------------------------------------- pieces


def _fronts(shape: TorsoShape, style: TorsoStyle) -> tuple[tuple[Piece, ...], Panels | None]:
    plan = shape.plan
    low = plan.hip if style.to_hip else plan.waist
    top = 1j * plan.front_neck + plan.neck.front.end
    centre = centre_edge(line(top, complex(0, low)), style.opening == "front")
    opens = style.opening == "front"
    if style.bust_dart in PRINCESS:
        panels = princess_panels(shape, style.bust_dart, centre)
        front = _piece(panels.centre, opens, "Front", {"bust_point": plan.bust_point})
        side = _piece(panels.side, True, "Side front", {"bust_point": plan.bust_point})
        return (front, side), panels
    panel = front_panel(shape, style.bust_dart, centre)
    points = {"bust_point": plan.bust_point, "side_neck": shape.front_neck}
    return (_piece(panel, opens, "Front", points),), None


def _piece(panel: FrontPiece, pair: bool, title: str, points: dict[str, complex]) -> Piece:
    return Piece(
        panel.name,
        panel.edges,
        pair=pair,
        levels=panel.levels,
        darts=panel.darts,
        title=title,
        points=points,
        role=panel.role,
    )


# -------------------------------------------------------------------------------------- seams


def edges_up(pieces: tuple[Piece, ...], role: EdgeRole) -> tuple[EdgeRef, ...]:
    """Return the edges of this role, from the lower edge upwards: those of a side panel come first,
    as its outline runs first."""
    return tuple((piece.name, edge.name) for piece in reversed(pieces) for edge in edges_as(piece, role))


def _seams(
    backs: tuple[Piece, ...], fronts: tuple[Piece, ...], panels: Panels | None, ease: TorsoEase
) -> tuple[Seam, ...]:
    shoulders = edges_up(backs, EdgeRole.SHOULDER), tuple(reversed(edges_up(fronts, EdgeRole.SHOULDER)))
    seams = [
        Seam("side", edges_up(fronts, EdgeRole.SIDE), (("back", "side"),), kind=SeamKind.SIDE),
        Seam("shoulder", *shoulders, ease.shoulder, kind=SeamKind.SHOULDER),
    ]
    if len(backs) > 1:
        half = backs[1]["yoke"].length / 2
        notch = SeamNotch("yoke", half, half, 2)
        yoke = (("back", "yoke"),), (("back-yoke", "yoke"),)
        seams.append(Seam("back yoke", *yoke, notches=(notch,), kind=SeamKind.YOKE))
    if panels:
        notch = SeamNotch("bust", panels.notch, panels.notch)
        seams.append(
            Seam(
                "princess",
                (("front", "princess"),),
                (("front-side", "princess"),),
                notches=(notch,),
                kind=SeamKind.PRINCESS,
            )
        )
    return (*seams, *(seam for piece in (*backs, *fronts) for seam in dart_seams(piece)))


def _chains(backs: tuple[Piece, ...], fronts: tuple[Piece, ...]) -> dict[str, tuple[EdgeRef, ...]]:
    """The stretches that other blocks fit onto, each in outline order; the waist from front to back."""
    waist = [
        (piece.name, edge.name)
        for piece in (*fronts, backs[0])
        for edge in piece.edges
        if edge.role is EdgeRole.WAIST
    ]
    return ({"waist": tuple(waist)} if waist else {}) | {
        "front_armhole": edges_up(fronts, EdgeRole.ARMHOLE),
        "back_armhole": edges_up(backs, EdgeRole.ARMHOLE),
        "front_neck": edges_up(fronts, EdgeRole.NECK),
        "back_neck": edges_up(backs, EdgeRole.NECK),
        "front_shoulder": edges_up(fronts, EdgeRole.SHOULDER),
    }


def _girths(body: Body, ease: TorsoEase, style: TorsoStyle, shape: TorsoShape) -> tuple[Girth, ...]:
    plan = shape.plan
    back, front, inside = body["across_back_width"], body["across_front_width"], 2 * ease.narrower
    found = [
        Girth("bust", body["bust_girth"], ease.bust, ease.bust),
        Girth("waist", body["waist_girth"], ease.waist, ease.waist),
        Girth("across_back", back, ease.across_back, 2 * plan.across_back - back, width=True, inside=inside),
    ]
    if style.to_hip:
        found.append(Girth("hip", body["hip_girth"], ease.hip, ease.hip + 2 * shape.bottom.hung))
    if across_is_drawn(shape, style.bust_dart):
        settled = 2 * plan.across_front - front
        found.append(Girth("across_front", front, ease.across_front, settled, width=True, inside=inside))
    return tuple(found)


def _belly_said(shape: TorsoShape) -> Iterator[Finding]:
    let, left, more = shape.bottom.front.let, shape.plan.kappa, 2 * shape.bottom.hung
    if let > 0:
        rest = f"{angle_said(left)} left" if left else "none is left to sew"
        said = (
            f"The waist is larger in front than the bust: the bust dart opens by {angle_said(let)} at the waist "
            f"to let the belly in, and {rest}. The front's lower edge rises towards the side."
        )
        yield Finding("bust dart", "note", "front", let, 0.0, said)
    if more >= 0.05:
        said = (
            f"The hip is {told(more)} wider than asked: under the belly the front's side hangs straight down "
            "from the waist and does not run in again."
        )
        yield Finding("hip", "note", "front", more, 0.0, said)


def _said(drop: float, ease: TorsoEase, sleeved: bool) -> tuple[Finding, ...]:
    moved = drop - ease.drop
    if abs(moved) < 0.5:
        return ()
    way = "deeper" if moved > 0 else "shallower"
    why = "so that a sleeve for this arm has a good cap" if sleeved else "to leave a side seam above the waist"
    return (
        Finding(
            "armhole",
            "note",
            "bodice",
            drop,
            ease.drop,
            f"The underarm lies {told(drop)} below the armpit fold, {told(abs(moved))} {way} than chosen, {why}.",
        ),
    )


def with_body_girths(draft: Draft, share: float) -> Draft:
    """Return a draft made to reduced measures with its girths told against the body's own.

    `share` is finished over body where the cloth is to stretch; what the reduction takes counts as
    negative ease that was asked for.
    """

    def told(girth: Girth) -> Girth:
        own = girth.body / share
        less = girth.body - own
        return replace(
            girth,
            body=own,
            asked_ease=girth.asked_ease + less,
            settled_ease=girth.settled_ease + less,
            stretch_used=1 / share - 1,
        )

    return replace(draft, girths=tuple(told(girth) for girth in draft.girths))
